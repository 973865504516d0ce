package spec

import (
	"math"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
	"understitch/model/sewing"
)

// ends reads where a traced piece is cut off straight across. Its new edge stands
// last until the piece is drawn; an edge of the same name that is traced makes
// room for it.
func (b *drafter) ends(d *pieceDraft) {
	p, all := d.piece, d.block.all("ends")
	if len(all) == 0 {
		return
	}
	c := all[0]
	switch {
	case len(all) > 1:
		b.fault(all[1].header, "The first stands on "+lineOf(c.header)+".", "a piece is cut off once")
		return
	case d.from == nil:
		b.fault(c.header, "Draw the edge with edge \""+c.name+"\" { … }.", "ends cuts a traced piece off, and %s is not traced from another", p.Address())
		return
	case d.block.named("edge", c.name) != nil:
		b.fault(c.header, "Give one of them another name.", "edge %s is there twice", c.name)
		return
	}
	level := b.levelAt(c.attr("level"))
	p.Edges = slices.DeleteFunc(p.Edges, func(e *model.Edge) bool { return e.Name == c.name })
	d.traces = slices.DeleteFunc(d.traces, func(x *edgeTrace) bool { return x.edge.Name == c.name })
	if p.Fold != nil && p.Fold.Name == c.name {
		p.Fold = nil
	}
	e := &model.Edge{Name: c.name, Piece: p, PaperLength: math.NaN(), Allowance: d.unstated, Place: place(c.header)}
	b.finishing(c, e)
	p.Edges = append(p.Edges, e)
	for i, e := range p.Edges {
		e.Index = i
	}
	if level == nil {
		return
	}
	p.Ends = &model.Ends{Edge: e, Level: level, Place: place(c.attr("level").Range())}
}

// fold reads which edge is laid to the fold; none takes off the fold of the piece
// that this one is traced from.
func (b *drafter) fold(e hclsyntax.Expression, d *pieceDraft) {
	if word := ""; d.from != nil && plainWord(e, &word) && word == "none" && edgeNamed(d.piece, word) == nil {
		d.piece.Fold = nil
		return
	}
	d.piece.Fold = b.edgeOf(e, d.piece)
}

// whole reports, when all lines are drawn, what was said of an edge that is not
// there any more, and a piece that names a new edge beside its trace and not all
// others.
func (b *drafter) whole() {
	for _, d := range b.pieces {
		for _, e := range d.piece.CutOff {
			b.cutOff(d, e)
		}
		if len(d.fresh) > 0 {
			b.listed(d)
		}
	}
}

// openOutline is how far, in millimetres, two listed edges lie apart where one
// between them must have been left out of the list, rather than a point be wrong
// (common practice, no source).
const openOutline = 10

// listed reports edges that a piece does not list.
func (b *drafter) listed(d *pieceDraft) {
	p := d.piece
	var missing []string
	for _, s := range d.from.piece.Edges {
		if edgeNamed(p, s.Name) == nil {
			missing = append(missing, s.Name)
		}
	}
	if len(missing) == 0 {
		return
	}
	for _, e := range p.Edges {
		next := e.Neighbour(true)
		if !e.Drawn() || !next.Drawn() {
			if len(d.fresh) < len(p.Edges) {
				continue
			}
		} else if e.Path.End().Dist(next.Path.Start()) <= openOutline {
			continue
		}
		b.failed = true
		b.keep(model.Diagnostic{Severity: "error", Place: d.fresh[0].Place,
			Summary: d.from.piece.Address() + " has no edge " + d.fresh[0].Name + ", so " + p.Address() + " must list all of its edges in order",
			Detail:  "After " + e.Name + " the outline is open. Not listed: " + sewing.Listed(missing) + "."})
		return
	}
}

// cutOff reports what names an edge that was cut off.
func (b *drafter) cutOff(d *pieceDraft, e *model.Edge) {
	ends := d.piece.Ends
	for from := d.from; ends == nil; from = from.from {
		ends = from.piece.Ends
	}
	report := func(at model.Place) {
		b.failed = true
		b.keep(model.Diagnostic{Severity: "error", Place: at,
			Summary: e.Address() + " is cut off at the " + ends.Level.Name + " level",
			Detail:  "The edge there is " + d.piece.Address() + "." + ends.Edge.Name + "."})
	}
	for _, s := range b.stretchesRead {
		if s.Edge == e {
			report(s.Place)
		}
	}
	for _, x := range b.pieces {
		for _, t := range x.traces {
			if t.edge.TracedFrom() == e && !slices.Contains(x.piece.CutOff, t.edge) && slices.Contains(x.piece.Edges, t.edge) {
				report(t.edge.Traced.Place)
			}
		}
	}
}
