package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"understitch/cmd/understitch/internal/report"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

func newExplain(w *world) *cobra.Command {
	var at string
	var s selection
	cmd := &cobra.Command{
		Use:   "explain RULE [--at ADDRESS SPEC]",
		Short: "explains one rule; with --at, how it came to its figures on one thing",
		Long: `explain tells what a rule asks for, why, how it is reckoned, and what to do, with an
example of each. With --at it tells instead how the figures of one thing of a spec
were reached: each length, dart, ease and allowance that entered, so that they
can be verified with a tape. The rules of the house that holds here, or for the spec,
are known too.`,
		Example: `  understitch explain tape-cut
  understitch explain seam-walk --at seam.side --size 38 skirt` + suffix,
		Args: func(_ *cobra.Command, args []string) error { return checkAt(at, args) },
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return namesOf(builtin.Rules()), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			engine, err := rules.New(builtin.Rules())
			if err != nil {
				return fmt.Errorf("the rules that are built in are not in order: %w", err)
			}
			in := &inspect.Inspector{Engine: engine}
			file := "-" + suffix
			if len(args) > 1 {
				file = args[1]
			}
			rule, err := ruleNamed(in.Standards(file).Engine.Rules(), args[0])
			if err != nil {
				return err
			}
			if at != "" {
				return s.account(cmd.Context(), w, rule, at, args[1])
			}
			_, err = fmt.Fprint(w.stdout, explanation(rule, w.columns()))
			return err
		},
	}
	cmd.Flags().StringVar(&at, "at", "", "tell how the figures of this thing of a spec were reached: an `ADDRESS` like seam.side")
	cmd.Flags().StringVar(&s.size, "size", "", "with --at: only this `size`")
	return cmd
}

func namesOf(list []*rules.Rule) []string {
	var names []string
	for _, r := range list {
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
	about := fmt.Sprintf("of the family %s; a finding is at most of severity %s", r.Family, r.Severity)
	if r.Doc.Since != "" { // a house counts no versions
		about += "; since version " + r.Doc.Since
	}
	text(about)
	if r.Firm != "" {
		text("its findings cannot be waived: " + r.Firm)
	}
	part("Why", r.Doc.Why)
	part("How it is reckoned", r.Doc.How)
	if r.Doc.Nothing != "" {
		part("When there is nothing to judge", r.Doc.Nothing)
	}
	part("What to do", r.Doc.Fix)
	if len(r.Limits) > 0 {
		b.WriteString("\nLimits\n")
	}
	for _, l := range r.Limits {
		text(fmt.Sprintf("%s = %s: %s. Source: %s", l.Name, report.LimitText(l), l.Text, l.Source))
	}
	if r.Doc.House != "" {
		example(&b, "The house file of both examples", r.Doc.House)
	}
	if r.Doc.Bad != "" {
		example(&b, "Wrong", r.Doc.Bad)
	}
	if r.Doc.Good != "" {
		example(&b, "Right", r.Doc.Good)
	}
	return b.String()
}

func example(b *strings.Builder, heading, spec string) {
	b.WriteString("\n" + heading + "\n")
	for line := range strings.Lines(strings.TrimRight(spec, "\n") + "\n") {
		b.WriteString(strings.TrimRight("    "+line, " \n") + "\n")
	}
}
