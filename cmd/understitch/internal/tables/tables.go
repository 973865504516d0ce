// Package tables writes the figures of a garment as tables for the cutting
// table: a row a figure, a column a size, lengths in the unit of the spec. What
// cannot be had is a dash, and a row of dashes is left out; of a girth that is
// missing only because somebody did not measure, the last lines tell the reason.
//
// The figures come from package measured, which knows no order; the order of
// the rows is that of the spec.
package tables

import (
	"fmt"
	"io"
	"strings"

	"understitch/cmd/understitch/internal/report"
	"understitch/model"
	"understitch/model/measured"
)

// Write writes the tables of one garment, which is given in one of its sizes for
// the order of the rows, and its figures in each of them. Width is
// the columns there are; where the sizes do not fit beside one
// another they are set below each other in blocks.
func Write(w io.Writer, g *model.Garment, sizes []measured.Size, width int, first bool) error {
	t := &table{unit: g.Unit, sizes: sizes}
	for _, s := range sizes {
		t.heads = append(t.heads, s.Size)
	}
	t.garment(g)
	if !first {
		if _, err := io.WriteString(w, "\n"); err != nil {
			return err
		}
	}
	head := g.File
	if g.Title != "" {
		head += ": " + g.Title
	}
	if _, err := fmt.Fprintf(w, "%s\nlengths in %s, on the stitch line\n", report.Clean(head), t.unit.Name); err != nil {
		return err
	}
	return t.print(w, width)
}

// table gathers rows before they are laid out.
type table struct {
	unit  model.Unit
	heads []string
	sizes []measured.Size
	rows  []row

	unknown []string // what could be measured and was not, and why
}

// row is a heading (no cells), or a figure in every size.
type row struct {
	indent int
	name   string
	cells  []string
}

func (t *table) heading(indent int, name string) { t.rows = append(t.rows, row{indent, name, nil}) }

// length adds a row of a length.
func (t *table) length(indent int, name string, of func(measured.Size) *float64) {
	t.row(indent, name, of, func(v float64) string {
		return fmt.Sprintf("%.*f", digits(t.unit), v/t.unit.Millimetre)
	})
}

// area adds a row of an area.
func (t *table) area(indent int, name string, of func(measured.Size) *float64) {
	square := t.unit.Millimetre * t.unit.Millimetre
	t.row(indent, name+", "+t.unit.Name+"²", of, func(v float64) string { return fmt.Sprintf("%.1f", v/square) })
}

func (t *table) row(indent int, name string, of func(measured.Size) *float64, show func(float64) string) {
	r := row{indent: indent, name: name}
	some := false
	for _, s := range t.sizes {
		v := of(s)
		if v == nil {
			r.cells = append(r.cells, "-")
			continue
		}
		some = true
		r.cells = append(r.cells, show(*v))
	}
	if some {
		t.rows = append(t.rows, r)
	}
}

// digits are the digits after the point that a length is told to: a tenth of a
// millimetre, or what is near it.
func digits(u model.Unit) int {
	return map[string]int{"mm": 1, "cm": 2, "in": 3}[u.Name]
}

// dropEmpty takes out headings with nothing beneath them.
func (t *table) dropEmpty() {
	var kept []row
	for i := len(t.rows) - 1; i >= 0; i-- {
		r := t.rows[i]
		if r.cells == nil && (len(kept) == 0 || kept[len(kept)-1].indent <= r.indent) {
			continue
		}
		kept = append(kept, r)
	}
	for i, j := 0, len(kept)-1; i < j; i, j = i+1, j-1 {
		kept[i], kept[j] = kept[j], kept[i]
	}
	t.rows = kept
}

// print lays the rows out, as many sizes beside one another as there is room
// for.
func (t *table) print(w io.Writer, width int) error {
	t.dropEmpty()
	names, cells := 0, 6
	for _, r := range t.rows {
		if r.cells != nil {
			names = max(names, 2*r.indent+report.Columns(report.Clean(r.name)))
		}
		for _, c := range r.cells {
			cells = max(cells, len(c))
		}
	}
	for _, h := range t.heads {
		cells = max(cells, report.Columns(report.Clean(h)))
	}
	names = min(names, max(width-cells-2, 20))
	fit := max((width-names)/(cells+2), 1)
	var b strings.Builder
	for from := 0; from < len(t.heads); from += fit {
		to := min(from+fit, len(t.heads))
		b.WriteString("\n")
		if to-from > 1 || t.heads[from] != "" {
			b.WriteString(strings.Repeat(" ", names))
			for _, h := range t.heads[from:to] {
				b.WriteString(pad(report.Clean(h), cells+2))
			}
			b.WriteString("\n")
		}
		for _, r := range t.rows {
			t.printRow(&b, r, names, cells, from, to)
		}
	}
	for _, text := range t.unknown {
		b.WriteString("\n" + strings.Join(report.Wrap(report.Clean(text), width), "\n") + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (t *table) printRow(b *strings.Builder, r row, names, cells, from, to int) {
	name := strings.Repeat(" ", 2*r.indent) + report.Clean(r.name)
	if r.cells == nil {
		b.WriteString(name + "\n")
		return
	}
	b.WriteString(name)
	gap := names - report.Columns(name)
	if gap < 0 { // the name has a line to itself
		b.WriteString("\n")
		gap = names
	}
	b.WriteString(strings.Repeat(" ", gap))
	for _, c := range r.cells[from:to] {
		b.WriteString(pad(c, cells+2))
	}
	b.WriteString("\n")
}

func pad(text string, columns int) string {
	return strings.Repeat(" ", max(columns-report.Columns(text), 1)) + text
}
