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
		Use:   "rules [FOLDER]",
		Short: "lists the rules in force, with their severities and limits",
		Long: `rules lists the rules that hold for garments in a folder, or here: what must hold,
how severe a finding is, and the limits. What the house has changed is marked with
the line of its file.`,
		Args: atMostOne("rules", "folder"),
		RunE: func(_ *cobra.Command, args []string) error {
			engine, err := rules.New(builtin.Rules())
			if err != nil {
				return fmt.Errorf("the rules that are built in are not in order: %w", err)
			}
			dir := "."
			if len(args) > 0 {
				dir = args[0]
			}
			if info, err := os.Stat(dir); err != nil {
				return fmt.Errorf("%s: %s", dir, readingTrouble(err))
			} else if !info.IsDir() {
				dir = filepath.Dir(dir)
			}
			in := &inspect.Inspector{Engine: engine}
			_, settings, diags := in.House(dir)
			for _, d := range diags {
				w.problem(d)
			}
			if _, err := fmt.Fprint(w.stdout, rulesText(engine, settings, w.columns())); err != nil {
				return err
			}
			if model.Errors(diags) {
				return status(statusTrouble)
			}
			return nil
		},
	}
}

func atMostOne(command, what string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) > 1 {
			return fmt.Errorf("%s takes one %s, not %d", command, what, len(args))
		}
		return nil
	}
}

func rulesText(engine *rules.Engine, settings *rules.Settings, width int) string {
	var families []string
	for _, r := range engine.Rules() {
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
		for _, r := range engine.Rules() {
			if r.Family == family {
				ruleLines(&b, engine, settings, r, width)
			}
		}
	}
	return b.String()
}

func ruleLines(b *strings.Builder, engine *rules.Engine, settings *rules.Settings, r *rules.Rule, width int) {
	severity, limits, house := settings.InForce(engine, r.Name)
	row := func(name, severity, text string) {
		const left = 32
		for _, l := range report.Wrap(text, max(width-left, 20)) {
			fmt.Fprintf(b, "  %-20s %-8s %s\n", name, severity, l)
			name, severity = "", ""
		}
	}
	row(r.Name, severity.String(), r.Doc.Title)
	for _, l := range limits {
		row("", "", l.Name+" = "+report.LimitText(l)+", "+l.Text)
	}
	if !house.IsZero() {
		row("", "", "set in "+report.Clean(house.String()))
	}
}
