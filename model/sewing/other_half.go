package sewing

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// OtherHalf finds what shows that a piece which is cut more than once is a left
// and a right: a seam, closure or share that joins an edge of it to the same edge
// of the other one, or to an edge of a mirrored pair or of a piece on the fold.
// Thing is nil where nothing does.
func OtherHalf(g *model.Garment, p *model.Piece) (e, other *model.Edge, thing model.Thing) {
	for _, e := range p.Edges {
		if j := g.JoinedToItself(e); j != nil {
			return e, e, j.Thing
		}
		for _, s := range g.Shares {
			if model.Has(s.Outer, e) && model.Has(s.Inner, e) {
				return e, e, s
			}
		}
	}
	halves := func(q *model.Piece) bool { return q != p && (q.Fold != nil || q.Cut > 1 && q.Mirrored) }
	for _, e := range p.Edges {
		for _, j := range g.Joins() {
			if other := across(j.Sides, e, halves); other != nil {
				return e, other, j.Thing
			}
		}
		for _, s := range g.Shares {
			if other := across([2][]model.Stretch{s.Outer, s.Inner}, e, halves); other != nil {
				return e, other, s
			}
		}
	}
	return nil, nil, nil
}

// across is an edge on the other side than e's, of a piece that is left and right.
func across(sides [2][]model.Stretch, e *model.Edge, halves func(*model.Piece) bool) *model.Edge {
	for i, side := range sides {
		if !model.Has(side, e) {
			continue
		}
		for _, s := range sides[1-i] {
			if halves(s.Edge.Piece) {
				return s.Edge
			}
		}
	}
	return nil
}

// mirrored is how far, in millimetres, two halves of a piece may differ and be
// each other's mirror image: what a pencil line hides.
const mirrored = 0.5

// OwnMirrorImage reports whether a piece is the same as its mirror image, so that
// it can be turned over: its outline is, and its notches and darts are. Of a piece
// without a drawing it is known only by the lengths of its edges.
func OwnMirrorImage(p *model.Piece) bool {
	n := len(p.Edges)
	for axis := range 2 * n { // through the middle of an edge, or through a corner
		if mirrorImage(p, func(i int) int { return ((axis-i)%n + n) % n }) {
			return true
		}
	}
	return false
}

// mirrorImage reports whether each edge of the piece is the mirror image of another.
func mirrorImage(p *model.Piece, partner func(int) int) bool {
	for i, e := range p.Edges {
		other := p.Edges[partner(i)]
		if math.Abs(e.Length()-other.Length()) > mirrored || !notchesMirrored(e, other) || len(e.Mouths()) != len(other.Mouths()) {
			return false
		}
	}
	if !p.Drawn() {
		return true
	}
	var forth, back []*curve.Path
	for i := range p.Edges {
		forth = append(forth, p.Edges[i].Path)
		back = append(back, p.Edges[partner(i)].Path.Reverse())
	}
	a, b := curve.Join(forth...), curve.Join(back...)
	return curve.Deviation(a, b.Move(curve.Fit(a, b, true)), mirrored/10).Low <= mirrored
}

func notchesMirrored(e, other *model.Edge) bool {
	var here, there []float64
	for _, n := range e.Piece.Notches {
		at, _, err := n.Position()
		if err != nil {
			continue
		}
		if n.On == e {
			here = append(here, at)
		}
		if n.On == other {
			there = append(there, other.Length()-at)
		}
	}
	slices.Sort(here)
	slices.Sort(there)
	return slices.EqualFunc(here, there, func(x, y float64) bool { return math.Abs(x-y) <= mirrored })
}
