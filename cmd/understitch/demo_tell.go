package main

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"understitch/cmd/understitch/internal/report"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
	"understitch/rules/planted"
)

const (
	shownInFull = "faulty/ball-gown.faulty" + suffix
	demoPage    = "understitch-demo.html"
)

// tryout is the wardrobe as it was checked, beside what was planted in it.
type tryout struct {
	w       *world
	r       *reporting
	reports []*inspect.Report
	found   []string // of each report: what was found, beside what was planted
	unlike  int      // how many garments have a fault too many or one too few
}

// compare holds each report against the faults that its spec states.
func (t *tryout) compare(files fs.FS) error {
	for _, r := range t.reports {
		src, err := fs.ReadFile(files, r.File)
		if err != nil {
			return err
		}
		differences := planted.Differences(r.Result.Findings, string(src))
		if len(differences) == 0 && r.Complete() {
			t.found = append(t.found, asPlanted(r.Result.Findings))
			continue
		}
		t.unlike++
		t.found = append(t.found, "NOT AS PLANTED: "+strings.Join(differences, "; "))
	}
	return nil
}

func asPlanted(findings []rules.Finding) string {
	var n [rules.Error + 1]int
	for _, f := range findings {
		n[f.Severity]++
	}
	var parts []string
	for severity := rules.Error; severity > rules.Off; severity-- {
		switch {
		case n[severity] == 1:
			parts = append(parts, "1 "+severity.String())
		case n[severity] > 1:
			parts = append(parts, fmt.Sprintf("%d %ss", n[severity], severity))
		}
	}
	if parts == nil {
		return "sound: no fault planted, none found"
	}
	return "as planted: " + strings.Join(parts, ", ")
}

// tell reports one faulty garment in full and each other one in a line, and
// writes the page of all of them.
func (t *tryout) tell() error {
	i := slices.IndexFunc(t.reports, func(r *inspect.Report) bool { return r.File == shownInFull })
	one := report.Of(t.reports[i:i+1], report.Options{Version: version(), Least: t.r.least, Rules: builtin.Rules()})
	t.line("This is how understitch reports a faulty garment, %s:", path.Base(shownInFull))
	t.line("")
	format, err := formatNamed("format", "text")
	if err != nil {
		return err
	}
	if err := format.Write(t.w.stdout, one, t.w.look(t.r.color)); err != nil {
		return err
	}
	t.line("")
	t.line("The wardrobe of the Harbour Lane Playhouse, %d garments:", len(t.reports))
	for i, r := range t.reports {
		t.line("  %-38s %s", strings.TrimSuffix(r.File, suffix), t.found[i])
	}
	t.line(`"understitch check" on these garments would end with exit status 1: the faulty ones`)
	t.line("must not be cut. This demo ends with 0, because it found exactly what was planted.")
	return t.page()
}

func (t *tryout) page() error {
	format, err := formatNamed("format", "html")
	if err != nil {
		return err
	}
	doc := report.Of(t.reports, report.Options{Version: version(), Least: t.r.least, Closest: t.r.closest, Rules: builtin.Rules()})
	if err := (reportFile{format, demoPage}).write(t.w, doc, "never"); err != nil {
		return fmt.Errorf("%s cannot be written: %w", demoPage, err)
	}
	for _, f := range t.r.files {
		if err := f.write(t.w, doc, t.r.color); err != nil {
			return fmt.Errorf("the report %s cannot be written: %w", f.file, err)
		}
	}
	t.line("To see where each fault is, open %s in a browser.", demoPage)
	return nil
}

func (t *tryout) line(format string, args ...any) {
	fmt.Fprintf(t.w.stdout, format+"\n", args...)
}
