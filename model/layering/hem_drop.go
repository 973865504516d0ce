package layering

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/measuring"
	"understitch/model/sewing"
)

// HemDrop is how far an inner hem ends above an outer one along a pair of edges
// that run down to them, in millimetres; negative where it hangs below.
type HemDrop struct {
	Outer, Inner *model.Edge // the edges that run down to the hems
	From         string      // from where both were measured, in words
	Drop         float64

	OuterDown, InnerDown float64 // how far down either hem lies from there; Drop is what they differ by
}

// FinishedHem is the finish of an edge that is turned up as a hem.
const FinishedHem = "hem"

// fall is an edge that runs down to a hem. AtEnd tells which end meets it.
type fall struct {
	edge  *model.Edge
	atEnd bool
}

// HemDrops compares the hems of an inside's pieces. There are none where one of the
// pieces has no hem, or where the inner hem is sewn to the outer one.
func HemDrops(g *model.Garment, n *model.Inside) ([]HemDrop, error) {
	outer, inner := falls(n.Outer), falls(n.Inner)
	if len(outer) == 0 || len(inner) == 0 || hemsJoined(g, n) {
		return nil, nil
	}
	var out []HemDrop
	var reason error
	for _, in := range inner {
		o, ok := in.counterpart(g, outer, n.OneFrame())
		if !ok {
			continue
		}
		d, err := hemDrop(g, n, o, in)
		if err != nil {
			reason = err
			continue
		}
		out = append(out, d)
	}
	switch {
	case len(out) > 0:
		return out, nil
	case reason != nil:
		return nil, reason
	}
	return nil, model.Missingf("no edges of %s and %s that run down to their hems go by one name or are drawn near each other", n.Outer.Address(), n.Inner.Address())
}

func falls(pieces model.Group) []fall {
	var out []fall
	for _, p := range pieces {
		for _, e := range p.Edges {
			if e.Finish != FinishedHem {
				continue
			}
			for _, atEnd := range []bool{false, true} {
				if n := e.Neighbour(atEnd); n != e && n.Finish != FinishedHem {
					out = append(out, fall{n, !atEnd})
				}
			}
		}
	}
	return out
}

// hemsJoined reports whether a hem of one side of the inside is sewn or shared
// with a hem of the other.
func hemsJoined(g *model.Garment, n *model.Inside) bool {
	for _, o := range hems(n.Outer) {
		for _, i := range hems(n.Inner) {
			if slices.Contains(g.Partners(o), i) || g.Shared(o, i) {
				return true
			}
		}
	}
	return false
}

func hems(pieces model.Group) []*model.Edge {
	var out []*model.Edge
	for _, p := range pieces {
		for _, e := range p.Edges {
			if e.Finish == FinishedHem {
				out = append(out, e)
			}
		}
	}
	return out
}

// besides is how far apart, in millimetres, the lower ends of two edges in one
// frame may be drawn and still belong together.
const besides = 60

// counterpart is the edge of the outer layer that runs down where this one does:
// that of its name, else the nearest in one frame.
func (f fall) counterpart(g *model.Garment, outer []fall, oneFrame bool) (fall, bool) {
	for _, o := range outer {
		if o.edge.Name == f.edge.Name {
			return o, true
		}
	}
	best, least := fall{}, math.Inf(1)
	if oneFrame {
		for _, o := range outer {
			if d := math.Abs(f.down(g).Cross(o.lower().Sub(f.lower()))); d < least {
				best, least = o, d
			}
		}
	}
	return best, least < besides
}

func hemDrop(g *model.Garment, n *model.Inside, outer, inner fall) (HemDrop, error) {
	d := HemDrop{Outer: outer.edge, Inner: inner.edge}
	for _, l := range slices.Backward(measuring.LevelsDown(g)) {
		below, okOuter := outer.below(l)
		within, okInner := inner.below(l)
		if okOuter && okInner {
			d.OuterDown, d.InnerDown, d.From = below, within, "measured from the "+l.Name+" level"
			d.Drop = below - within
			return d, nil
		}
	}
	if top, innerTop := outer.edge.Neighbour(!outer.atEnd), inner.edge.Neighbour(!inner.atEnd); g.Shared(top, innerTop) {
		d.OuterDown, d.InnerDown = outer.edge.SewnLength(), inner.edge.SewnLength()
		d.Drop = d.OuterDown - d.InnerDown
		d.From = "measured from " + innerTop.Address() + ", which the layers share"
		return d, nil
	}
	if outer.edge.Drawn() && inner.edge.Drawn() && (n.AsDrawn() || outer.edge.Piece.SameFrame(inner.edge.Piece)) {
		down := outer.down(g)
		d.OuterDown, d.InnerDown, d.From = outer.lower().Dot(down), inner.lower().Dot(down), "by their heights in the draft"
		d.Drop = d.OuterDown - d.InnerDown
		if !sewing.Levelled(g, outer.edge.Piece) {
			d.From = "by where they are drawn"
		}
		return d, nil
	}
	return d, model.Missingf("no level crosses both %s and %s, and the layers share no edge above them, from which to measure down to the hems", outer.edge.Address(), inner.edge.Address())
}

// down is the direction in which the edge hangs: downward on the paper where there
// are levels, and else, since such a draft may lie any way round, the way that the
// edge runs from end to end.
func (f fall) down(g *model.Garment) curve.Point {
	if sewing.Levelled(g, f.edge.Piece) {
		return curve.Point{Y: 1}
	}
	runs := f.edge.Path.End().Sub(f.edge.Path.Start()).Unit()
	if !f.atEnd {
		runs = runs.Scale(-1)
	}
	return runs
}

// below is the length of the edge from a level down to the hem, darts closed.
func (f fall) below(l *model.Level) (float64, bool) {
	at, err := f.edge.LevelAt(l)
	if err != nil {
		return 0, false
	}
	if f.atEnd {
		return f.edge.SewnLength() - f.edge.Net(at), true
	}
	return f.edge.Net(at), true
}

// lower is the drawn edge's end at the hem.
func (f fall) lower() curve.Point {
	if f.atEnd {
		return f.edge.Path.End()
	}
	return f.edge.Path.Start()
}
