package sheet

import (
	"math"
	"strconv"
	"strings"
)

// Style is how the figures of a drawing are written.
type Style int

// The styles. Plain and Paths serve garments that are made in one size.
const (
	Drafted Style = iota // from draft values, these from body measures
	Graded               // each figure graded by itself
	Plain                // plain figures
	Paths                // path data
)

// Hand is how somebody writes specs.
type Hand struct {
	Style    Style
	Named    bool // corners are named points
	OneLine  bool // blocks with one attribute stand on one line
	Explicit bool // small lengths are written as mm(…)
}

// writer writes one garment.
type writer struct {
	strings.Builder
	g      *Garment
	h      Hand
	indent int
	names  map[string]string // in a piece with named corners: by how the point is written
}

func (w *writer) line(text string) {
	for range w.indent {
		w.WriteString("  ")
	}
	w.WriteString(text)
	w.WriteByte('\n')
}

// block writes a block with its attributes and what is inside it.
func (w *writer) block(head string, attrs []string, inside func()) {
	if len(attrs) == 0 && inside == nil {
		w.line(head + " {}")
		return
	}
	if len(attrs) == 1 && inside == nil && w.h.OneLine {
		w.line(head + " { " + attrs[0] + " }")
		return
	}
	w.line(head + " {")
	w.indent++
	for _, a := range attrs {
		w.line(a)
	}
	if inside != nil {
		inside()
	}
	w.indent--
	w.line("}")
}

// bare is a length in the garment's unit, without the unit.
func (w *writer) bare(mm float64) string { return bare(mm, w.g.Unit) }

func bare(mm float64, unit string) string {
	size, digits := 1.0, 2
	switch unit {
	case "cm":
		size, digits = 10, 3
	case "in":
		size, digits = 25.4, 4
	}
	k := math.Pow10(digits)
	v := math.Round(mm/size*k) / k
	if v == 0 {
		v = 0 // not -0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// short is a small length, perhaps with its unit said.
func (w *writer) short(mm float64) string {
	if w.h.Explicit {
		return "mm(" + bare(mm, "mm") + ")"
	}
	return w.bare(mm)
}

// num writes a length in the hand's style.
func (w *writer) num(n Num) string {
	if len(w.g.Sizes) > 1 && w.h.Style != Drafted && n.Step() != 0 {
		return "graded(" + w.bare(n.Base()) + ", " + w.bare(n.Step()) + ")"
	}
	if w.h.Style != Drafted || n.Fixed() {
		return w.bare(n.Base())
	}
	var out strings.Builder
	for i, t := range n.Terms {
		times := math.Abs(t.Times)
		sign := " + "
		switch {
		case t.Times < 0 && i == 0:
			sign = "-"
		case t.Times < 0:
			sign = " - "
		case i == 0:
			sign = ""
		}
		out.WriteString(sign)
		if times != 1 {
			out.WriteString(strconv.FormatFloat(times, 'g', 6, 64) + " * ")
		}
		out.WriteString("draft." + t.Fig.Name)
	}
	out.WriteString(w.more(n.C))
	return out.String()
}

// more adds so many mm to an expression; nothing for none.
func (w *writer) more(mm float64) string {
	text := w.bare(math.Abs(mm))
	switch {
	case text == "0":
		return ""
	case mm < 0:
		return " - " + text
	}
	return " + " + text
}

func (w *writer) pt(p Pt) string {
	text := "[" + w.num(p.X) + ", " + w.num(p.Y) + "]"
	if name, ok := w.names[text]; ok {
		return name
	}
	return text
}

func (w *writer) pts(list []Pt) string {
	texts := make([]string, len(list))
	for i, p := range list {
		texts[i] = w.pt(p)
	}
	if one := "[" + strings.Join(texts, ", ") + "]"; len(one) < 100 {
		return one
	}
	gap := "\n" + strings.Repeat("  ", w.indent+2)
	return "[" + gap + strings.Join(texts, ","+gap) + ",\n" + strings.Repeat("  ", w.indent+1) + "]"
}

// path writes lines and curves as path data, in figures of the base size.
func (w *writer) path(e *Edge) string {
	xy := func(p Pt) string { return w.bare(p.X.Base()) + " " + w.bare(p.Y.Base()) }
	var out strings.Builder
	out.WriteString("M " + xy(e.Pts[0]))
	if e.Form == Line {
		for _, p := range e.Pts[1:] {
			out.WriteString(" L " + xy(p))
		}
		return strconv.Quote(out.String())
	}
	for i := 1; i+2 < len(e.Pts); i += 3 {
		out.WriteString(" C " + xy(e.Pts[i]) + " " + xy(e.Pts[i+1]) + " " + xy(e.Pts[i+2]))
	}
	return strconv.Quote(out.String())
}

func (w *writer) rng(r Range) string {
	end := func(v *float64) string {
		if v == nil {
			return "null"
		}
		return w.bare(*v)
	}
	return "[" + end(r.Low) + ", " + end(r.High) + "]"
}

func (w *writer) levelRanges(list []LevelRange) string {
	var out []string
	for _, l := range list {
		out = append(out, l.Level+" = "+w.rng(l.Range))
	}
	return "{ " + strings.Join(out, ", ") + " }"
}

func (w *writer) figures(list []Figure) string {
	if len(list) == 0 {
		return "{}"
	}
	var out []string
	for _, f := range list {
		out = append(out, f.Name+" = "+w.bare(f.MM))
	}
	return "{ " + strings.Join(out, ", ") + " }"
}

func (w *writer) lengths(list []float64) string {
	var out []string
	for _, v := range list {
		out = append(out, w.bare(v))
	}
	return "[" + strings.Join(out, ", ") + "]"
}

func stretch(s Stretch) string {
	if s.From == "" && s.To == "" {
		return s.Edge
	}
	return "part(" + s.Edge + ", " + s.From + ", " + s.To + ")"
}

func side(list []Stretch) string {
	var out []string
	for _, s := range list {
		out = append(out, stretch(s))
	}
	if len(out) == 1 {
		return out[0]
	}
	return "[" + strings.Join(out, ", ") + "]"
}
