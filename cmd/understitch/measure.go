package main

import (
	"github.com/spf13/cobra"

	"understitch/cmd/understitch/internal/report"
	"understitch/cmd/understitch/internal/tables"
	"understitch/model/measured"
)

func newMeasure(w *world) *cobra.Command {
	var s selection
	var format string
	cmd := &cobra.Command{
		Use:   "measure [PATH…]",
		Short: "prints every figure that is computed of a garment",
		Long: `measure prints what the tape would tell: the lengths of edges, widths and girths at
levels, what darts take in, where notches lie, both sides of each seam and which
way they run, closures and runs, in every size. Nothing is judged.

The text form is in the unit of the spec; the JSON form (docs/measurements.schema.json)
is in millimetres and not rounded. A figure that cannot be had is left out; where a
girth is missing only because a width was not measured, the text says which.`,
		Example: `  understitch measure rink-dress` + suffix + `
  understitch measure --size 38 --format json`,
		RunE: func(cmd *cobra.Command, paths []string) error {
			if err := oneOf("format", format, []string{"text", "json"}); err != nil {
				return err
			}
			s.noRules, s.figures = true, true
			got, err := s.inspect(cmd.Context(), w, paths, false)
			if err != nil {
				return err
			}
			if format == "json" {
				err = report.WriteJSON(w.stdout, measurements(got))
			} else {
				err = writeTables(w, got)
			}
			if err != nil {
				return err
			}
			for _, r := range got.reports {
				got.trouble = got.trouble || !r.Complete()
			}
			if got.trouble {
				return status(statusTrouble)
			}
			return nil
		},
	}
	s.flags(cmd.Flags())
	cmd.Flags().StringVar(&format, "format", "text", "the `form` of the figures: text or json")
	return cmd
}

// measurements is the document of all garments. One that could not be read has
// an entry without sizes.
func measurements(got *garments) measured.Document {
	doc := measured.Document{Version: measured.Version, Garments: []measured.Garment{}}
	for _, r := range got.reports {
		g := measured.Garment{File: r.File, Name: r.Garment, Sizes: []measured.Size{}}
		g.Sizes = append(g.Sizes, r.Figures...)
		doc.Garments = append(doc.Garments, g)
	}
	return doc
}

func writeTables(w *world, got *garments) error {
	first := true
	for _, r := range got.reports {
		if len(r.Figures) == 0 {
			continue // told of on standard error
		}
		if err := tables.Write(w.stdout, r.Models[0], r.Figures, w.columns(), first); err != nil {
			return err
		}
		first = false
	}
	return nil
}
