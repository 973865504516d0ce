package main

import (
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"understitch/cmd/understitch/internal/report"
	"understitch/rules"
	"understitch/rules/inspect"
)

func newCheck(w *world) *cobra.Command {
	var s selection
	var r reporting
	cmd := &cobra.Command{
		Use:   "check [PATH…]",
		Short: "checks garments and reports what is wrong with them",
		Long: `check finds the garments (*` + suffix + `) under the paths, or here, and checks each in
all its sizes. It tells what is wrong, with the figure and the place; what came
closest to it; what was accepted; and what could not be checked, and why.

The exit status is 0 where nothing forbids cutting, 1 where something does, and 2
where something could not be read or checked.`,
		Example: `  understitch check
  understitch check wardrobe/rink-dress` + suffix + ` --size 38
  understitch check --bodies customers.csv --bodies-unit cm
  understitch check --format json > report.json`,
		RunE: func(cmd *cobra.Command, paths []string) error {
			if err := r.valid(); err != nil {
				return err
			}
			got, err := s.inspect(cmd.Context(), w, paths, true)
			if err != nil {
				return err
			}
			return r.write(w, got.reports, got.trouble)
		},
	}
	s.flags(cmd.Flags())
	r.flags(cmd.Flags())
	return cmd
}

// reporting says how what was found is written down.
type reporting struct {
	format      string
	minSeverity string
	closest     int
	color       string
	least       rules.Severity
}

func (r *reporting) flags(f *pflag.FlagSet) {
	f.StringVar(&r.format, "format", "text", "the `form` of the report: text or json")
	f.StringVar(&r.minSeverity, "min-severity", "error", "the least `severity` of a finding that forbids cutting: error, warning or note")
	f.IntVar(&r.closest, "closest", 3, "list this `number` of the checks that passed with least room left")
	f.StringVar(&r.color, "color", "auto", "colour `when`: auto, always or never")
}

// valid settles the flags and tells which cannot be followed.
func (r *reporting) valid() error {
	severity, ok := rules.SeverityNamed(r.minSeverity)
	if !ok || severity == rules.Off {
		return oneOf("min-severity", r.minSeverity, []string{"error", "warning", "note"})
	}
	r.least = severity
	if r.closest < 0 {
		return fmt.Errorf("--closest %d: a number from 0", r.closest)
	}
	var formats []string
	for _, f := range report.Formats() {
		formats = append(formats, f.Name)
	}
	if err := oneOf("format", r.format, formats); err != nil {
		return err
	}
	return oneOf("color", r.color, []string{"auto", "always", "never"})
}

// write writes the report to standard output and settles the exit status.
func (r *reporting) write(w *world, reports []*inspect.Report, trouble bool) error {
	doc := report.Of(reports, report.Options{Version: version(), Least: r.least, Closest: r.closest})
	for _, f := range report.Formats() {
		if f.Name != r.format {
			continue
		}
		if err := f.Write(w.stdout, doc, w.look(r.color)); err != nil {
			return err
		}
	}
	switch {
	case trouble || doc.Summary.Unreadable > 0:
		return status(statusTrouble)
	case doc.Forbids():
		return status(statusFindings)
	}
	return nil
}
