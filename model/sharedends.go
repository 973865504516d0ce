package model

import "slices"

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
func (g *Garment) endsTell(a, b *Walk) (same, ok bool) {
	a0, a1, b0, b1 := a.Corner(false), a.Corner(true), b.Corner(false), b.Corner(true)
	direct := g.endsAlike(a0, b0) + g.endsAlike(a1, b1)
	crossed := g.endsAlike(a0, b1) + g.endsAlike(a1, b0)
	if d := direct - crossed; d >= endsNamed || -d >= endsNamed {
		return direct > crossed, true
	}
	return false, false // what is done with one end alone may differ between layers
}

func (g *Garment) endsAlike(x, y *Edge) int {
	if x == nil || y == nil {
		return 0
	}
	sum := 0
	if g.atCentre(x) && g.atCentre(y) {
		sum += endsAtCentre
	}
	if g.shared(x, y) {
		sum += endsShared
	}
	if x.Name == y.Name {
		sum += endsNamed
	}
	if use := g.endUse(x); use != "" && use == g.endUse(y) {
		sum += endsUsed
	}
	return sum
}

// atCentre reports whether an edge lies between a piece and its own other half.
func (g *Garment) atCentre(e *Edge) bool { return e.Piece.Fold == e || g.JoinedToItself(e) != nil }

// endUse is what is done with an edge, for comparison; "" where nothing is said.
func (g *Garment) endUse(e *Edge) string {
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
func (g *Garment) laidInside(a, b *Edge) bool {
	return slices.ContainsFunc(g.Insides, func(n *Inside) bool {
		return n.OneFrame() && n.Outer.Has(a.Piece) && n.Inner.Has(b.Piece)
	})
}
