package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"understitch/cmd/understitch/internal/report"
	"understitch/model"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

func newRules(w *world) *cobra.Command {
	return &cobra.Command{
		Use:   "rules [PATH]",
		Short: "lists the rules in force, with their severities and limits",
		Long: `rules lists the rules that hold for the garments in a folder, or here, or for one
garment: what must hold, how severe a finding is, and the limits. What the house
has set is marked with the line of its file. What it sets for some garments only
(styles) is counted in for those; a folder shows what holds for all in it.`,
		Args: atMostOne("rules", "path"),
		RunE: func(_ *cobra.Command, args []string) error {
			engine, err := rules.New(builtin.Rules())
			if err != nil {
				return fmt.Errorf("the rules that are built in are not in order: %w", err)
			}
			file, err := oneGarment(args)
			if err != nil {
				return err
			}
			in := &inspect.Inspector{Engine: engine}
			s := in.Standards(file)
			for _, d := range s.Faults {
				w.problem(d)
			}
			text := rulesText(s, w.columns()) + stylesText(s, w.columns()) + housesText(s)
			if _, err := fmt.Fprint(w.stdout, text); err != nil {
				return err
			}
			if model.Errors(s.Faults) {
				return status(statusTrouble)
			}
			return nil
		},
	}
}

// oneGarment is the file that is asked about, or one that stands for all in a
// folder: no pattern is likely to have its name in mind.
func oneGarment(args []string) (string, error) {
	path := "."
	if len(args) > 0 {
		path = args[0]
	}
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return "", fmt.Errorf("%s: %s", path, readingTrouble(err))
	case info.IsDir():
		return filepath.Join(path, "-"+suffix), nil
	}
	return filepath.Clean(path), nil
}

func atMostOne(command, what string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) > 1 {
			return fmt.Errorf("%s takes one %s, not %d", command, what, len(args))
		}
		return nil
	}
}

func rulesText(s inspect.Standards, width int) string {
	var families []string
	for _, r := range s.Engine.Rules() {
		if !slices.Contains(families, r.Family) {
			families = append(families, r.Family)
		}
	}
	var b strings.Builder
	for i, family := range families {
		if i > 0 {
			b.WriteString("\n")
		}
		b.WriteString(family + "\n")
		for _, r := range s.Engine.Rules() {
			if r.Family == family {
				ruleLines(&b, r, s.Settings.InForce(r.Name), width)
			}
		}
	}
	return b.String()
}

func ruleLines(b *strings.Builder, r *rules.Rule, held rules.InForce, width int) {
	row := func(name, severity, text string) {
		const left = 32
		for _, l := range report.Wrap(text, max(width-left, 20)) {
			fmt.Fprintf(b, "  %-20s %-8s %s\n", name, severity, l)
			name, severity = "", ""
		}
	}
	from := func(p model.Place) string {
		if p.IsZero() {
			return ""
		}
		return " (set in " + report.Clean(p.String()) + ")"
	}
	row(r.Name, held.Severity.String(), report.Clean(r.Doc.Title)+from(held.SeverityAt))
	if r.Firm != "" {
		row("", "", "cannot be waived: "+r.Firm)
	}
	for i, l := range held.Limits {
		row("", "", l.Name+" = "+report.LimitText(l)+", "+l.Text+from(held.LimitsAt[i]))
	}
}

// housesText names the house files that took part, the nearest first, where there are
// several.
func housesText(s inspect.Standards) string {
	if s.House == nil || len(s.House.Model().Files) < 2 {
		return ""
	}
	text := "\nhouses, the nearest first\n"
	for _, file := range s.House.Model().Files {
		text += "  " + report.Clean(file) + "\n"
	}
	return text
}

// stylesText lists for which garments the house has rules otherwise.
func stylesText(s inspect.Standards, width int) string {
	if s.House == nil || len(s.House.Model().Styles) == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteString("\nsome garments only\n")
	for _, style := range s.House.Model().Styles {
		var names []string
		for _, r := range style.Rules {
			names = append(names, r.Rule)
		}
		line := fmt.Sprintf("%s: %s (set in %s)", style.Pattern, strings.Join(names, ", "), style.Place)
		for _, l := range report.Wrap(report.Clean(line), max(width-2, 20)) {
			b.WriteString("  " + l + "\n")
		}
	}
	return b.String()
}
