package spec

import (
	"math"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// anyRange is the range that holds everything.
func anyRange() model.Range { return model.Range{Low: math.Inf(-1), High: math.Inf(1)} }

// closure builds a closure.
func (b *drafter) closure(c *block) {
	nan := math.NaN()
	k := &model.Closure{Name: c.name, Row: 1, Needs: nan, Diameter: nan, Thickness: nan, Extension: nan,
		Place: place(c.header), Stated: c.stated()}
	b.g.Closures = append(b.g.Closures, k)
	k.Kind = b.choice(c.attr("kind"), "zip", "button", "tape", "lacing")
	if !b.opening(c.attr("edges"), &k.Edges) {
		return
	}
	all := edgesOf(k.Edges)
	if e := c.attr("also"); e != nil {
		k.Also = b.also(e)
		for _, o := range k.Also {
			all = append(all, edgesOf(o)...)
		}
	}
	b.half(c, k)
	b.lacing(c, k)
	if e := c.attr("first"); e != nil {
		b.first(e, k)
	}
	if e := c.attr("from"); e != nil {
		k.From = b.mark(e, all...)
	}
	if e := c.attr("to"); e != nil {
		k.To = b.mark(e, all...)
	}
	for _, x := range []struct {
		name string
		to   *float64
	}{
		{"lap", &k.Lap}, {"allowance", &k.Needs}, {"diameter", &k.Diameter},
		{"thickness", &k.Thickness}, {"extension", &k.Extension},
	} {
		if e := c.attr(x.name); e != nil {
			*x.to = b.length(e, atLeast0)
		}
	}
	if e := c.attr("stock"); e != nil {
		k.Stock = b.lengths(e, above0)
	}
	if e := c.attr("buttons"); e != nil {
		k.Buttons = b.lengths(e, atLeast0)
	}
	b.closureTape(c, k)
}

// closureTape reads the tape of a closure and which row of eyes it is closed
// on.
func (b *drafter) closureTape(c *block, k *model.Closure) {
	if e := c.attr("tape"); e != nil {
		k.Tape = b.tapeAt(e)
	} else if k.Kind == "tape" {
		b.fault(c.header, "Write tape = tape.NAME.", "closure %s does not state tape", k.Name)
	}
	if e := c.attr("other_tape"); e != nil {
		k.OtherTape = b.tapeAt(e)
	}
	e := c.attr("row")
	if e == nil {
		return
	}
	k.Row = b.count(e, 1, 20)
	if k.Tape != nil && len(k.Tape.WidthClosed) > 0 && k.Row > len(k.Tape.WidthClosed) {
		b.fault(e.Range(), "", "tape %s has %d rows", k.Tape.Name, len(k.Tape.WidthClosed))
	}
}

// measureRun builds a tape run over the pattern.
func (b *drafter) measureRun(c *block) {
	m := &model.Measure{Name: c.name, Place: place(c.header)}
	b.g.Measures = append(b.g.Measures, m)
	along := c.attr("along")
	for _, x := range items(along) {
		item := model.RunItem{Place: place(x.Range())}
		if t, ok := x.(*hclsyntax.ScopeTraversalExpr); ok {
			if words, n := steps(t); n == 2 && words[0] == "closure" {
				item.Closure = b.closureAt(x)
				m.Along = append(m.Along, item)
				continue
			}
		}
		st := b.stretch(x)
		item.Stretch = &st
		m.Along = append(m.Along, item)
	}
	if len(m.Along) == 0 {
		b.fault(along.Range(), "", "the list of edges is empty")
		return
	}
	for _, x := range []struct {
		name string
		to   *model.Mark
		item model.RunItem
	}{{"from", &m.From, m.Along[0]}, {"to", &m.To, m.Along[len(m.Along)-1]}} {
		e := c.attr(x.name)
		switch {
		case e == nil:
		case x.item.Stretch == nil:
			b.fault(e.Range(), "The run must begin and end on an edge for this.", "%s needs an edge at that end", x.name)
		case x.item.Stretch.From.Kind != model.NoMark || x.item.Stretch.To.Kind != model.NoMark:
			b.fault(e.Range(), "part( ) says already where it begins and ends.", "%s is stated twice", x.name)
		default:
			*x.to = b.mark(e, x.item.Stretch.Edge)
		}
	}
	m.Against, m.Body = b.bodyFigure(c.attr("against"))
	if e := c.attr("ease"); e != nil {
		m.Ease = b.lengthSpan(e)
	}
}
