package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/cmd/understitch/internal/fullscale"
	"understitch/cmd/understitch/internal/page"
	"understitch/cmd/understitch/internal/report"
)

// printing says how a drawing is printed at full scale.
type printing struct {
	paper    string
	separate bool
}

const usualPaper = "a4"

func (p *printing) flags(f *pflag.FlagSet) {
	var names []string
	for _, paper := range fullscale.Papers() {
		names = append(names, paper.Name)
	}
	f.StringVar(&p.paper, "paper", usualPaper, "the `paper` of a .pdf: "+strings.Join(names, ", "))
	f.BoolVar(&p.separate, "separate", false, "in a .pdf each piece by itself, not the inner pieces laid on the outer ones")
}

// valid tells which flags cannot be followed.
func (p *printing) valid(f *pflag.FlagSet, format report.Format) error {
	for _, name := range []string{"paper", "separate"} {
		if f.Changed(name) && format.Name != "pdf" {
			return fmt.Errorf("--%s is for a .pdf, and this is a .%s", name, format.Name)
		}
	}
	if _, err := fullscale.PaperNamed(p.paper); err != nil {
		return fmt.Errorf("--paper: %w", err)
	}
	return nil
}

// write prints the document's only garment.
func (p *printing) write(w io.Writer, d *report.Document, _ report.Look) error {
	paper, err := fullscale.PaperNamed(p.paper)
	if err != nil {
		return err
	}
	size := d.FirstSize(0)
	full, cut := d.Drawing(0, size, drawing.Options{Point: fullscale.Point})
	reduced, _ := d.Drawing(0, size, drawing.Options{})
	if full == nil || reduced == nil {
		return errors.New("there is nothing to draw")
	}
	told := d.Page()
	g := told.Garments[0]
	j := fullscale.Job{
		Title: report.Clean(full.Title), Name: report.Clean(full.Name), Size: report.Clean(full.Size),
		Ruling: g.Verdict.Ruling, Reasons: g.Verdict.Reasons, Forbids: g.Verdict.Ruling != report.MayCut.String(),
		Advice: told.Advice, Tool: told.Tool, Full: full, Reduced: reduced, Cut: cut, Separate: p.separate,
	}
	for _, f := range g.Findings {
		j.Findings = append(j.Findings, printed(f))
	}
	for _, t := range g.Trouble {
		j.Trouble = append(j.Trouble, t.Head+": "+t.Text)
	}
	return fullscale.Write(w, j, paper)
}

func printed(f page.Finding) fullscale.Finding {
	out := fullscale.Finding{
		Number: f.Number, Severity: f.Severity, Subject: f.Subject, Message: f.Message, Figure: f.Figure, Place: f.Place,
	}
	switch len(f.Sizes) {
	case 0:
	case 1:
		out.Sizes = "size " + f.Sizes[0]
	default:
		out.Sizes = "sizes " + strings.Join(f.Sizes, ", ")
	}
	return out
}
