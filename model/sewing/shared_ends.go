package sewing

import (
	"slices"

	"understitch/model"
)

// What the edges that two shared lines run into at their ends have in common, as
// evidence for which end lies on which (weights by judgement, no source; each is
// more than all that stand after it together). They choose between the two ways
// round, no figure contains them.
const (
	endsAtCentre = 18 // both lie at the middle of the body: on a fold, or joined to their own other half
	endsShared   = 6  // the layers share them too
	endsNamed    = 2  // they bear one name
	endsUsed     = 1  // the same is done with both: sewn to another edge, or finished
)

// endsTell finds from the edges at the ends of two shared lines whether these run
// the same way: a fold lies on a fold, and an armhole not on a neckline. A line
// that is turned end for end can have the very same shape and lie nowhere where
// it must, so this comes before all that the lines show by themselves. It tells
// nothing where the two ways round have as much for them.
func endsTell(g *model.Garment, a, b *Walk) (same, ok bool) {
	a0, a1, b0, b1 := a.Corner(false), a.Corner(true), b.Corner(false), b.Corner(true)
	direct := endsAlike(g, a0, b0) + endsAlike(g, a1, b1)
	crossed := endsAlike(g, a0, b1) + endsAlike(g, a1, b0)
	if d := direct - crossed; d >= endsNamed || -d >= endsNamed {
		return direct > crossed, true
	}
	return false, false // what is done with one end alone may differ between layers
}

// unlikeEnds weighs against a way to lay shared lines how little their ends have
// in common, and how many edges it lays elsewhere than on that of the piece in
// which theirs lies.
func unlikeEnds(g *model.Garment) func(a, b *Walk) float64 {
	return func(a, b *Walk) float64 {
		alike := endsAlike(g, a.Corner(false), b.Corner(false)) + endsAlike(g, a.Corner(true), b.Corner(true))
		return float64(astray(g, a, b) - alike)
	}
}

// astray counts the edges of two shared lines that belong on each other, as their
// pieces lie in each other, and do not meet.
func astray(g *model.Garment, a, b *Walk) int {
	middle := func(w *Walk, r Run) float64 { return (r.Start + r.Length/2) / w.Length }
	n := 0
	for _, x := range a.Runs {
		for _, y := range b.Runs {
			inside := slices.ContainsFunc(g.Insides, func(n *model.Inside) bool { return n.Outer.Has(x.Edge.Piece) && n.Inner.Has(y.Edge.Piece) })
			if inside && farApart(middle(a, x), middle(b, y)) {
				n++
			}
		}
	}
	return n
}

func endsAlike(g *model.Garment, x, y *model.Edge) int {
	if x == nil || y == nil {
		return 0
	}
	sum := 0
	if atCentre(g, x) && atCentre(g, y) {
		sum += endsAtCentre
	}
	if g.Shared(x, y) {
		sum += endsShared
	}
	if x.Name == y.Name {
		sum += endsNamed
	}
	if use := endUse(g, x); use != "" && use == endUse(g, y) {
		sum += endsUsed
	}
	return sum
}

// atCentre reports whether an edge lies between a piece and its own other half.
func atCentre(g *model.Garment, e *model.Edge) bool {
	return e.Piece.Fold == e || g.JoinedToItself(e) != nil
}

// endUse is what is done with an edge, for comparison; "" where nothing is said.
func endUse(g *model.Garment, e *model.Edge) string {
	switch {
	case len(g.Partners(e)) > 0:
		return "sewn"
	case e.Finish != "":
		return e.Finish
	}
	return ""
}

// laidInside reports whether two edges are of pieces that an inside lays in each other
// as they are drawn on one sheet.
func laidInside(g *model.Garment, a, b *model.Edge) bool {
	return slices.ContainsFunc(g.Insides, func(n *model.Inside) bool {
		return n.OneFrame() && n.Outer.Has(a.Piece) && n.Inner.Has(b.Piece)
	})
}
