// Package page makes one HTML file of what was found out about garments: the
// ruling, the drawing with its findings, the list of them with the lines of the
// spec that they are about, and the cut sheet.
//
// The file is whole in itself: it asks for nothing over a network and works when
// it is opened from a disk, sent by mail or printed. It can be read without its
// script, which adds the switches for sizes and layers, the zoom, and the way
// from a finding to its place and back, by mouse, finger or keyboard.
//
// A page is kept small enough to be opened on a telephone: past some bytes of
// drawings, sources and findings it leaves out first further sizes, then further
// drawings; the last findings take one line each, and in the end are only counted.
// It says so where they would stand. Errors come before others when not all can
// be listed in full.
//
// The package knows nothing of rules or specs; who calls it has put everything
// in words. All of it is escaped here.
package page

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"

	"understitch/cmd/understitch/internal/drawing"
)

// Page is what the file shows.
type Page struct {
	Verdict  Verdict
	Advice   string
	Tool     string // the program and its version
	Garments []*Garment
}

// Verdict is the ruling and its reasons.
type Verdict struct {
	Ruling  string // "may be cut", "do not cut" or "cannot say"
	Reasons string
}

// Garment is everything about one garment.
type Garment struct {
	File     string
	Title    string
	Verdict  Verdict
	About    string // what was checked, in a few words
	Sizes    []string
	First    string // the size that is shown first
	Findings []Finding
	Trouble  []Note // what could not be read
	Closest  []Note
	Waived   []Note
	Undone   []Note
	Source   []byte

	// Draw draws the garment in a size and makes its cut sheet; nil where there
	// is nothing to draw it from.
	Draw func(size string) (*drawing.Sheet, *drawing.CutSheet)
}

// Finding is one fault, in words.
type Finding struct {
	Number   int
	Severity string
	Subject  string
	Rule     string
	Message  string
	Figure   string
	Facts    []Note // figure, sizes, what else to look at
	Sizes    []string
	Place    string // file, line and column
	Line     int    // in the garment's own file; 0 where it lies in another
	From, To int    // the columns of that line that are meant, from 1; To is one past the end
}

// Note is a word or two and what they head.
type Note struct{ Head, Text string }

//go:embed page.html
var markup string

//go:embed page.css
var style string

//go:embed page.js
var script string

// Write writes the page.
func Write(w io.Writer, p Page) error {
	t, err := template.New("page").Funcs(template.FuncMap{
		"sample": func(s drawing.Sample) template.HTML { return template.HTML(s.SVG()) },
	}).Parse(markup)
	if err != nil {
		return fmt.Errorf("the page's own template is not in order: %w", err)
	}
	var b bytes.Buffer // a page that fails half way is worse than none
	if err := t.Execute(&b, p.view()); err != nil {
		return err
	}
	_, err = io.WriteString(w, harmless(b.String()))
	return err
}
