package fullscale

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"understitch/cmd/understitch/internal/drawing"
)

// Point is a typographic point in millimetres, for [drawing.Options] of the
// drawing that is printed at full scale.
const Point = 25.4 / 72

// Job is what is printed: one garment in one size.
type Job struct {
	Title   string
	Name    string
	Size    string // "" where the spec names no sizes
	Ruling  string // "may be cut", "do not cut", "cannot say"
	Reasons string
	Forbids bool // the ruling is against cutting
	Advice  string
	Tool    string // the program that made it

	Findings []Finding
	Trouble  []string // what could not be read

	Full     *drawing.Sheet // drawn with [Point] to the point
	Reduced  *drawing.Sheet // the same, drawn to fit a screen
	Cut      *drawing.CutSheet
	Separate bool // each piece by itself, not inner pieces laid on outer ones
}

// named is the garment's title with the size.
func named(j Job) string {
	if j.Size == "" {
		return j.Title
	}
	return j.Title + ", size " + j.Size
}

// Finding is one fault, in words, under the number that its tags bear.
type Finding struct {
	Number   int
	Severity string
	Subject  string
	Message  string
	Figure   string // may be ""
	Sizes    string // in which sizes, in words; "" where it need not be said
	Place    string
}

// Paper is a size of paper, upright, in millimetres.
type Paper struct {
	Name       string
	Wide, High float64
}

// Papers lists the sizes of paper (A sizes: ISO 216:2007; letter: ANSI/ASME
// Y14.1, 8.5 by 11 in).
func Papers() []Paper {
	return []Paper{
		{"a4", 210, 297},
		{"letter", 8.5 * 25.4, 11 * 25.4},
		{"a3", 297, 420},
		{"a0", 841, 1189},
	}
}

// PaperNamed finds a size of paper.
func PaperNamed(name string) (Paper, error) {
	var known []string
	for _, p := range Papers() {
		if strings.EqualFold(p.Name, name) {
			return p, nil
		}
		known = append(known, p.Name)
	}
	return Paper{}, fmt.Errorf("there is no paper %q; there is %s", name, strings.Join(known, ", "))
}

// Write prints a job on paper of one size. Nothing is written when it fails.
func Write(out io.Writer, j Job, p Paper) error {
	w := newWriter(p)
	w.describe(j)
	w.layers(j.Full)
	pages := plan(w, j, p)
	for i, page := range pages {
		w.page(page)
		page.draw(w, j)
		w.foot(j, page, i+1, len(pages))
	}
	var b bytes.Buffer
	if err := w.pdf.Output(&b); err != nil {
		return fmt.Errorf("the pages cannot be made: %w", err)
	}
	_, err := out.Write(b.Bytes())
	return err
}

// describe fills in what the file says of itself. Readers want a date in it;
// one that is always the same keeps the file the same.
func (w *writer) describe(j Job) {
	always := time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)
	w.pdf.SetCreationDate(always)
	w.pdf.SetModificationDate(always)
	w.pdf.SetCatalogSort(true)
	w.pdf.SetProducer(shown(j.Tool), true)
	w.pdf.SetTitle(shown(named(j)), true)
	// A reader that shrinks pages to the printer's room must not do it unasked.
	w.pdf.SetDisplayMode("fullpage", "single")
}

// writer draws on the pages of one file. All lengths are millimetres from the
// top left of the page, but for sizes of letters, which are points.
type writer struct {
	pdf      *fpdf.Fpdf
	paper    Paper
	optional map[string]int // the PDF's layers
}
