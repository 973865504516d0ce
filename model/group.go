package model

import (
	"math"
	"slices"
	"strings"
)

// Group is one piece, or several pieces of a layer that are sewn to each other
// and compared as one: where two layers have their seams in different places,
// only what lies between the same lines on both can be compared.
type Group []*Piece

// Address names the pieces of the group.
func (g Group) Address() string {
	names := make([]string, len(g))
	for i, p := range g {
		names[i] = p.Address()
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// Where the first piece's block stands.
func (g Group) Where() Place { return g[0].Place }

// Layer is the layer that the pieces belong to.
func (g Group) Layer() *Layer { return g[0].Layer }

// Has reports whether a piece belongs to the group.
func (g Group) Has(p *Piece) bool {
	for _, own := range g {
		if own == p {
			return true
		}
	}
	return false
}

// Reaches reports whether every piece reaches a level.
func (g Group) Reaches(l *Level) bool {
	return g.Every(func(p *Piece) bool { return p.Reaches(l) })
}

// Drawn reports whether every piece is drawn.
func (g Group) Drawn() bool { return g.Every((*Piece).Drawn) }

// OnFold reports whether every piece is drawn as a half on the fold.
func (g Group) OnFold() bool { return g.Every(func(p *Piece) bool { return p.Fold != nil }) }

func (g Group) Every(holds func(*Piece) bool) bool {
	for _, p := range g {
		if !holds(p) {
			return false
		}
	}
	return true
}

// LevelY is the height of a level in the frame of the first piece.
func (g Group) LevelY(l *Level) (float64, bool) { return g[0].LevelY(l) }

// Times is how often what is drawn counts in a girth; 1 where the pieces differ
// in that, and each is then measured whole.
func (g Group) Times() float64 {
	times := g[0].Times()
	if g.Every(func(p *Piece) bool { return p.Times() == times }) {
		return times
	}
	return 1
}

// Allowed is the clearance that the inside asks for at a level. Where it says
// nothing that is any from nothing upward, and the inner side may be as much wider
// as its pleats let out there.
func (n *Inside) Allowed(l *Level) Range {
	for _, c := range n.Clearance {
		if c.Level == l {
			return c.Range
		}
	}
	if from := n.From(l); from != nil {
		return from.Range
	}
	if opened := n.Inner.Opened(l); opened > 0 {
		return AnyFrom(-opened / min(n.Outer.Times(), n.Inner.Times()))
	}
	return AnyFrom(0)
}

// From is the clearance that the inside asks for from a level down, where it holds
// at this level: that of the lowest one at or above it. Nil where there is none.
func (n *Inside) From(l *Level) *LevelRange {
	y, ok := n.Outer.LevelY(l)
	var best *LevelRange
	lowest := math.Inf(-1)
	for i := range n.ClearanceFrom {
		c := &n.ClearanceFrom[i]
		at, reached := n.Outer.LevelY(c.Level)
		if c.Level == l || ok && reached && at <= y && at > lowest {
			best, lowest = c, at
		}
	}
	return best
}

// States reports whether the inside itself says what it asks for at a level.
func (n *Inside) States(l *Level) bool {
	of := func(c LevelRange) bool { return c.Level == l }
	return slices.ContainsFunc(n.Clearance, of) || slices.ContainsFunc(n.ClearanceFrom, of)
}
