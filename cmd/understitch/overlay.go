package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/cmd/understitch/internal/report"
	"understitch/rules"
)

// pictures are the forms of a drawing, by the ending of the file's name.
func pictures(p *printing) []report.Format {
	return []report.Format{
		{Name: "html", Text: "one page with all sizes, findings and cut sheets", Write: func(w io.Writer, d *report.Document, look report.Look) error {
			format, err := formatNamed("output", "html")
			if err != nil {
				return err
			}
			return format.Write(w, d, look)
		}},
		{Name: "svg", Text: "one picture of one garment in one size", Write: writeSVG},
		{Name: "pdf", Text: "one garment in one size at full scale, to print", Write: p.write},
	}
}

func writeSVG(w io.Writer, d *report.Document, _ report.Look) error {
	sheet, _ := d.Drawing(0, d.FirstSize(0), drawing.Options{})
	if sheet == nil {
		return errors.New("there is nothing to draw")
	}
	return drawing.WriteSVG(w, sheet)
}

func newOverlay(w *world) *cobra.Command {
	var s selection
	var p printing
	var output string
	cmd := &cobra.Command{
		Use:   "overlay PATH --output FILE",
		Short: "draws the inner layer on the outer one, with the findings marked",
		Long: `overlay draws a garment: the inner pieces laid on the outer ones as they are drafted
or by the edges they share, seams laid along each other notch against notch, and
tapes with their metal and their cuts. Findings are marked where they are.

The ending of the output's name says what is made: .html a page of all sizes that
needs nothing else, with the spec and a cut sheet; .svg one picture of one size;
.pdf one size at full scale, tiled to the paper, with test squares and a cut sheet.
The drawing is made whatever was found: the exit status is 0 when it could be made
in full, and 2 when something could not be read.`,
		Example: `  understitch overlay rink-dress` + suffix + ` --output rink-dress.html
  understitch overlay rink-dress` + suffix + ` --size 38 --output rink-dress.svg
  understitch overlay rink-dress` + suffix + ` --size 38 --paper a3 --output rink-dress.pdf`,
		RunE: func(cmd *cobra.Command, paths []string) error {
			format, err := pictureNamed(output, &p)
			if err != nil {
				return err
			}
			if err := p.valid(cmd.Flags(), format); err != nil {
				return err
			}
			got, err := s.inspect(cmd.Context(), w, paths, false)
			if err != nil {
				return err
			}
			return got.draw(w, format, output)
		},
	}
	s.flags(cmd.Flags())
	p.flags(cmd.Flags())
	cmd.Flags().StringVar(&output, "output", "", "write the drawing to this `file`; its ending, "+strings.Join(endings(), " or ")+", says what it is")
	return cmd
}

func endings() []string {
	var out []string
	for _, f := range pictures(&printing{}) {
		out = append(out, "."+f.Name)
	}
	return out
}

// pictureNamed finds what an output is to be by its name.
func pictureNamed(output string, p *printing) (report.Format, error) {
	if output == "" {
		return report.Format{}, fmt.Errorf("--output needs the name of a file that ends in %s", strings.Join(endings(), " or "))
	}
	for _, f := range pictures(p) {
		if strings.EqualFold(filepath.Ext(output), "."+f.Name) {
			return f, nil
		}
	}
	return report.Format{}, fmt.Errorf("--output %q: the name must end in %s", output, strings.Join(endings(), " or "))
}

// draw writes the drawing to a file.
func (got *garments) draw(w *world, format report.Format, output string) error {
	doc := report.Of(got.reports, report.Options{Version: version(), Least: rules.Error, Closest: 3, Rules: got.engine.Rules()})
	if len(doc.Garments) == 0 {
		return status(statusTrouble)
	}
	if format.Name != "html" && len(doc.Garments) > 1 {
		return fmt.Errorf("a .%s is of one garment, and there are %d under the path; name one, or make a page (.html)", format.Name, len(doc.Garments))
	}
	if format.Name != "html" && doc.Garments[0].Name == "" {
		return status(statusTrouble) // why has been told
	}
	if err := (reportFile{format, filepath.Clean(output)}).write(w, doc, "never"); err != nil {
		return fmt.Errorf("%s cannot be written: %w", output, err)
	}
	if got.trouble || doc.Summary.Unreadable > 0 {
		return status(statusTrouble)
	}
	return nil
}

// draws reports whether one of the reports that are asked for holds drawings,
// for which the garments' models are kept.
func (r *reporting) draws() bool {
	draws := r.format == "html"
	for _, f := range r.files {
		draws = draws || f.format.Name == "html"
	}
	return draws
}
