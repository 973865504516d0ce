package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"understitch/cmd/understitch/internal/report"
	"understitch/rules"
	"understitch/rules/builtin"
)

func newExplain(w *world) *cobra.Command {
	return &cobra.Command{
		Use:   "explain RULE",
		Short: "explains one rule: what, why, how, its limits, and examples",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("explain takes the name of one rule; \"understitch rules\" lists them")
			}
			return nil
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return ruleNames(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			for _, r := range builtin.Rules() {
				if r.Name == args[0] {
					_, err := fmt.Fprint(w.stdout, explanation(r, w.columns()))
					return err
				}
			}
			return fmt.Errorf("there is no rule %q%s", args[0], orNearest(args[0], ruleNames(), "; \"understitch rules\" lists them"))
		},
	}
}

func ruleNames() []string {
	var names []string
	for _, r := range builtin.Rules() {
		names = append(names, r.Name)
	}
	return names
}

func explanation(r *rules.Rule, width int) string {
	var b strings.Builder
	text := func(paragraphs string) {
		for p := range strings.SplitSeq(paragraphs, "\n\n") {
			for _, l := range report.Wrap(p, width) {
				b.WriteString(l + "\n")
			}
		}
	}
	part := func(heading, body string) {
		b.WriteString("\n" + heading + "\n")
		text(body)
	}
	text(r.Name + ": " + r.Doc.Title)
	text(fmt.Sprintf("of the family %s; a finding is at most of severity %s; since version %s", r.Family, r.Severity, r.Doc.Since))
	part("Why", r.Doc.Why)
	part("How it is reckoned", r.Doc.How)
	part("What to do", r.Doc.Fix)
	if len(r.Limits) > 0 {
		b.WriteString("\nLimits\n")
	}
	for _, l := range r.Limits {
		text(fmt.Sprintf("%s = %s: %s. Source: %s", l.Name, limitText(l), l.Text, l.Source))
	}
	if r.Doc.House != "" {
		example(&b, "The house file of both examples", r.Doc.House)
	}
	example(&b, "Wrong", r.Doc.Bad)
	example(&b, "Right", r.Doc.Good)
	return b.String()
}

func example(b *strings.Builder, heading, spec string) {
	b.WriteString("\n" + heading + "\n")
	for line := range strings.Lines(strings.TrimRight(spec, "\n") + "\n") {
		b.WriteString(strings.TrimRight("    "+line, " \n") + "\n")
	}
}
