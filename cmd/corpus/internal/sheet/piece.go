package sheet

import (
	"strconv"
	"strings"
)

func (w *writer) piece(p *Piece) {
	var attrs []string
	add := func(text string) { attrs = append(attrs, text) }
	if p.Cut > 1 {
		add("cut = " + strconv.Itoa(p.Cut))
	}
	if p.Mirrored != "" {
		add("mirrored = " + p.Mirrored)
	}
	if p.Fold != "" {
		add("fold = " + p.Fold)
	}
	if p.Drawn != "" {
		add("drawn = " + strconv.Quote(p.Drawn))
	}
	if p.Allowance != nil {
		add("allowance = " + w.short(*p.Allowance))
	}
	if len(p.Grain) == 2 {
		add("grain = " + w.pts(p.Grain))
	}
	if p.Levels != nil || p.NoLevels {
		add("levels = " + w.figures(p.Levels))
	}
	if len(p.Width) > 0 {
		var texts []string
		for _, l := range p.Width {
			texts = append(texts, l.Level+" = "+w.num(l.At))
		}
		add("width = { " + strings.Join(texts, ", ") + " }")
	}
	w.block("piece "+strconv.Quote(p.Name), attrs, func() {
		w.corners(p)
		for _, e := range p.Edges {
			w.edge(e)
		}
		for _, d := range p.Darts {
			w.dart(d)
		}
		for _, n := range p.Notches {
			w.notch(n)
		}
		w.names = nil
	})
}

// corners writes the piece's corners as named points, where the hand does so.
func (w *writer) corners(p *Piece) {
	if !w.h.Named || w.h.Style == Paths {
		return
	}
	names := map[string]string{}
	var attrs []string
	for _, e := range p.Edges {
		if e.Form == Tape || len(e.Pts) == 0 {
			continue
		}
		text := w.pt(e.Pts[0])
		if _, ok := names[text]; ok {
			continue
		}
		name := string(rune('a' + len(attrs)))
		names[text] = name
		attrs = append(attrs, name+" = "+text)
	}
	if len(attrs) > 0 {
		w.block("points", attrs, nil)
		w.names = names
	}
}

func (w *writer) edge(e *Edge) {
	var attrs []string
	switch {
	case e.Form == Tape:
		attrs = append(attrs, "length = "+w.num(e.Length))
	case w.h.Style == Paths && e.Form != Smooth:
		attrs = append(attrs, "path = "+w.path(e))
	default:
		attrs = append(attrs, e.Form+" = "+w.pts(e.Pts))
	}
	if e.CutLine != nil {
		attrs = append(attrs, "cut_line = { "+e.Form+" = "+w.pts(e.CutLine)+" }")
	}
	if e.Allowance != nil {
		attrs = append(attrs, "allowance = "+w.short(*e.Allowance))
	}
	if e.Finish != "" {
		attrs = append(attrs, "finish = "+strconv.Quote(e.Finish))
	}
	if e.Role != "" {
		attrs = append(attrs, "role = "+strconv.Quote(e.Role))
	}
	w.block("edge "+strconv.Quote(e.Name), attrs, nil)
}

func (w *writer) dart(d *Dart) {
	var attrs []string
	if d.On != "" {
		attrs = append(attrs, "on = "+d.On, "at = "+w.num(d.At))
	}
	attrs = append(attrs, "intake = "+w.num(d.Intake))
	if d.Tip != nil {
		attrs = append(attrs, "tip = "+w.pt(*d.Tip))
	}
	if d.Centre != nil {
		attrs = append(attrs, "centre = "+w.pt(*d.Centre), "up = "+w.bare(d.Up), "down = "+w.bare(d.Down))
	}
	w.block("dart "+strconv.Quote(d.Name), attrs, nil)
}

func (w *writer) notch(n *Notch) {
	attrs := []string{"on = " + n.On}
	switch {
	case n.At != nil:
		attrs = append(attrs, "at = "+w.num(*n.At))
	case n.Point != nil:
		attrs = append(attrs, "point = "+w.pt(*n.Point))
	default:
		attrs = append(attrs, "level = "+n.Level)
	}
	if n.Kind != "" {
		attrs = append(attrs, "kind = "+strconv.Quote(n.Kind))
	}
	if n.Depth > 0 {
		attrs = append(attrs, "depth = "+w.short(n.Depth))
	}
	w.block("notch "+strconv.Quote(n.Name), attrs, nil)
}
