package sheet

import (
	"strconv"
	"strings"
)

// joins writes what joins pieces and what lies in what.
func (w *writer) joins() {
	g := w.g
	for _, s := range g.Seams {
		attrs := []string{"join = [" + side(s.A) + ", " + side(s.B) + "]"}
		if s.Ease != nil {
			attrs = append(attrs, "ease = "+w.rng(*s.Ease))
		}
		w.block("seam "+strconv.Quote(s.Name), attrs, nil)
	}
	for _, s := range g.Shares {
		attrs := []string{"outer = " + side(s.Outer), "inner = " + side(s.Inner)}
		if s.Match != "" {
			attrs = append(attrs, "match = "+strconv.Quote(s.Match))
		}
		if s.Ease != nil {
			attrs = append(attrs, "ease = "+w.rng(*s.Ease))
		}
		w.block("share "+strconv.Quote(s.Name), attrs, nil)
	}
	for _, n := range g.Insides {
		attrs := []string{"outer = " + n.Outer, "inner = " + n.Inner}
		if n.Align != "" {
			attrs = append(attrs, "align = "+n.Align)
		}
		if len(n.Clearance) > 0 {
			attrs = append(attrs, "clearance = "+w.levelRanges(n.Clearance))
		}
		w.block("inside "+strconv.Quote(n.Name), attrs, nil)
	}
	for _, a := range g.Alters {
		w.block("alter "+strconv.Quote(a.Name), []string{
			"edges = [" + strings.Join(a.Edges, ", ") + "]", "inward = " + w.figures(a.Inward),
		}, nil)
	}
}

func (w *writer) fasteners() {
	for _, t := range w.g.Tapes {
		w.block("tape "+strconv.Quote(t.Name), w.tape(t), nil)
	}
}

func (w *writer) tape(t *FastenerTape) []string {
	return []string{
		"kind = " + strconv.Quote(t.Kind), "pitch = mm(" + bare(t.Pitch, "mm") + ")", "head = mm(" + bare(t.Head, "mm") + ")",
		"clear = mm(" + bare(t.Clear, "mm") + ")", "width_closed = " + w.lengths(t.Width),
	}
}

// fittings writes closures, elastics, bones, runs of the tape and waivers.
func (w *writer) fittings() {
	g := w.g
	for _, c := range g.Closures {
		w.block("closure "+strconv.Quote(c.Name), w.closure(c), nil)
	}
	for _, e := range g.Elastics {
		w.block("elastic "+strconv.Quote(e.Name), []string{
			"edges = " + list(e.Edges), "length = " + w.num(e.Length), "ratio = [" + plain(e.Low) + ", " + plain(e.High) + "]",
		}, nil)
	}
	for _, b := range g.Bones {
		w.block("bone "+strconv.Quote(b.Name), []string{"along = " + stretch(b.Along), "length = " + w.bare(b.Length)}, nil)
	}
	for _, m := range g.Measures {
		attrs := []string{"along = " + list(m.Along)}
		if m.From != "" {
			attrs = append(attrs, "from = "+m.From)
		}
		if m.To != "" {
			attrs = append(attrs, "to = "+m.To)
		}
		w.block("measure "+strconv.Quote(m.Name), append(attrs, "against = body."+m.Against, "ease = "+w.rng(m.Ease)), nil)
	}
	for _, v := range g.Waivers {
		w.block("waive "+strconv.Quote(v.Rule), []string{"at = " + v.At, "reason = " + strconv.Quote(v.Reason)}, nil)
	}
}

func list(s []Stretch) string {
	if len(s) == 1 {
		return "[" + stretch(s[0]) + "]"
	}
	return side(s)
}

func (w *writer) closure(c *Closure) []string {
	attrs := []string{"kind = " + strconv.Quote(c.Kind)}
	add := func(name, text string, there bool) {
		if there {
			attrs = append(attrs, name+" = "+text)
		}
	}
	add("tape", "tape."+c.Tape, c.Tape != "")
	add("other_tape", "tape."+c.OtherTape, c.OtherTape != "")
	add("edges", "["+stretch(c.A)+", "+stretch(c.B)+"]", true)
	add("from", c.From, c.From != "")
	add("to", c.To, c.To != "")
	add("row", strconv.Itoa(c.Row), c.Row > 0)
	add("stock", w.lengths(c.Stock), len(c.Stock) > 0)
	add("buttons", w.lengths(c.Buttons), len(c.Buttons) > 0)
	add("diameter", w.bare(c.Diameter), c.Diameter > 0)
	add("thickness", w.bare(c.Thickness), c.Thickness > 0)
	add("extension", w.bare(c.Extension), c.Extension > 0)
	add("lap", w.bare(c.Lap), c.Lap > 0)
	add("allowance", w.bare(c.Allowance), c.Allowance > 0)
	return attrs
}
