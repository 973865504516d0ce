// Package rulepages writes the reference of the rules, docs/rules, from the
// rules' own documentation: a page for each rule with its pictures, and a list
// of all. What explain prints and what these pages say is one text. The pictures
// are drawn by running the rule over its examples, so that they cannot show
// something else than the rule finds.
package rulepages

import (
	"bytes"
	"context"
	"fmt"
	"path"
	"slices"
	"strings"
	"testing/fstest"
	"time"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/cmd/understitch/internal/report"
	"understitch/rules"
	"understitch/rules/inspect"
)

// Files are all pages and pictures by their path below docs/rules.
func Files(list []*rules.Rule) (map[string][]byte, error) {
	out := map[string][]byte{"README.md": []byte(index(list))}
	for _, r := range list {
		pictures := map[string]string{}
		for _, e := range []struct{ kind, spec string }{{"wrong", r.Doc.Bad}, {"right", r.Doc.Good}} {
			picture, err := draw(r, e.spec)
			if err != nil {
				return nil, fmt.Errorf("%s, %s example: %w", r.Name, e.kind, err)
			}
			if picture == nil {
				continue // known by tape alone
			}
			name := path.Join("pictures", r.Name+"-"+e.kind+".svg")
			out[name], pictures[e.kind] = picture, name
		}
		out[r.Name+".md"] = []byte(page(r, pictures))
	}
	return out, nil
}

// draw runs one rule over a spec and draws what came of it; nil where nothing
// in the spec is drawn.
func draw(r *rules.Rule, spec string) ([]byte, error) {
	engine, err := rules.New([]*rules.Rule{r})
	if err != nil {
		return nil, err
	}
	files := fstest.MapFS{"example.garment.hcl": {Data: []byte(spec)}}
	if r.Doc.House != "" {
		files["house.hcl"] = &fstest.MapFile{Data: []byte(r.Doc.House)}
	}
	in := &inspect.Inspector{Engine: engine, FS: files}
	// The examples' waivers are dated; the pages must not change with the day.
	got := in.File(context.Background(), "example.garment.hcl", inspect.Options{Today: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)})
	if !got.Complete() {
		return nil, got.Diagnostics[0]
	}
	doc := report.Of([]*inspect.Report{got}, report.Options{})
	size := doc.FirstSize(0)
	if f := got.Result.Findings; len(f) > 0 && f[0].Size != "" {
		size = f[0].Size // where the fault shows most
	}
	sheet, _ := doc.Drawing(0, size, drawing.Options{})
	if sheet == nil || !slices.ContainsFunc(sheet.Panels, func(p *drawing.Panel) bool { return p.Missing == "" }) {
		return nil, nil
	}
	var b bytes.Buffer
	err = drawing.WriteSVG(&b, sheet)
	return b.Bytes(), err
}

func index(list []*rules.Rule) string {
	var b strings.Builder
	b.WriteString("# The rules\n\n")
	b.WriteString("Every figure is a default with a name, which `house.hcl` can change. `understitch rules` lists what is in force where\n")
	b.WriteString("you stand; `understitch explain RULE` prints a page of this folder, and with `--at ADDRESS SPEC` how the figures of one\n")
	b.WriteString("thing of your own spec were reached.\n")
	family := ""
	for _, r := range list {
		if r.Family != family {
			family = r.Family
			fmt.Fprintf(&b, "\n## %s\n\n| rule | what must hold | at most |\n| --- | --- | --- |\n", family)
		}
		fmt.Fprintf(&b, "| [%s](%s.md) | %s | %s |\n", r.Name, r.Name, r.Doc.Title, r.Severity)
	}
	return b.String()
}

func page(r *rules.Rule, pictures map[string]string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n\n%s\n\n", r.Name, r.Doc.Title)
	fmt.Fprintf(&b, "Family: %s. A finding is at most of severity %s. Since version %s.", r.Family, r.Severity, r.Doc.Since)
	if r.Firm != "" {
		fmt.Fprintf(&b, " It cannot be waived: %s.", r.Firm)
	}
	fmt.Fprintf(&b, "\n\n## Why\n\n%s\n\n## How it is reckoned\n\n%s\n", r.Doc.Why, r.Doc.How)
	if r.Doc.Nothing != "" {
		fmt.Fprintf(&b, "\n## When there is nothing to judge\n\n%s\n", r.Doc.Nothing)
	}
	fmt.Fprintf(&b, "\n## What to do\n\n%s\n", r.Doc.Fix)
	if len(r.Limits) > 0 {
		b.WriteString("\n## Limits\n\n| name | default | what it limits | source |\n| --- | --- | --- | --- |\n")
		for _, l := range r.Limits {
			fmt.Fprintf(&b, "| `%s` | %s | %s | %s |\n", l.Name, report.LimitText(l), l.Text, l.Source)
		}
	}
	if r.Doc.House != "" {
		fmt.Fprintf(&b, "\n## The house file of both examples\n\n```hcl\n%s\n```\n", strings.TrimSpace(r.Doc.House))
	}
	example(&b, "Wrong", r.Doc.Bad, pictures["wrong"])
	example(&b, "Right", r.Doc.Good, pictures["right"])
	return b.String()
}

func example(b *strings.Builder, heading, spec, picture string) {
	fmt.Fprintf(b, "\n## %s\n\n", heading)
	if picture != "" {
		fmt.Fprintf(b, "![%s, drawn](%s)\n\n", strings.ToLower(heading), picture)
	}
	fmt.Fprintf(b, "```hcl\n%s\n```\n", strings.TrimSpace(spec))
}
