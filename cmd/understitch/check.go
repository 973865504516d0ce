package main

import (
	"github.com/spf13/cobra"

	"understitch/cmd/understitch/internal/report"
	"understitch/rules/inspect"
)

func newCheck(w *world) *cobra.Command {
	var s selection
	var r reporting
	var a acceptance
	cmd := &cobra.Command{
		Use:   "check [PATH…]",
		Short: "checks garments and reports what is wrong with them",
		Long: `check finds the garments (*` + suffix + `) under the paths, or here, and checks each in
all its sizes. It tells what is wrong, with the figure and the place; what came
closest to it; what was accepted; and what could not be checked, and why.

What existing styles have wrong already can be accepted until it gets worse:
--write-known writes it down, --known goes by it. Writing the file again takes
out what is mended and adds nothing, unless --add-known asks for it.

The exit status is 0 where nothing forbids cutting, 1 where something does, and 2
where something could not be read or checked.`,
		Example: `  understitch check
  understitch check wardrobe/rink-dress` + suffix + ` --size 38
  understitch check --bodies customers.csv --bodies-unit cm
  understitch check --format json > report.json
  understitch check --write-known known.jsonl
  understitch check --known known.jsonl
  understitch check --format github --report sarif=report.sarif --report junit=report.xml`,
		RunE: func(cmd *cobra.Command, paths []string) error {
			if err := r.valid(); err != nil {
				return err
			}
			if err := a.valid(&s, paths); err != nil {
				return err
			}
			s.told = r.format == "text" && isTerminal(w.stdout) && isTerminal(w.stderr)
			s.trim = func(one *inspect.Report) { report.Trim(one, r.closest) }
			got, err := s.inspect(cmd.Context(), w, paths, !r.draws())
			if err != nil {
				return err
			}
			if err := a.apply(w, got); err != nil {
				return err
			}
			return r.write(w, got.reports, got.engine.Rules(), got.trouble)
		},
	}
	s.flags(cmd.Flags())
	a.flags(cmd.Flags())
	r.flags(cmd.Flags())
	return cmd
}
