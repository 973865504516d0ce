package model

import (
	"fmt"
	"slices"
)

// Part is a part of an edge, in millimetres along it as drawn.
type Part struct {
	From, To float64
	Half     string // on the left or the right half of the garment only; "" on both
}

// Length of the part.
func (p Part) Length() float64 { return p.To - p.From }

// Unused are the parts of the edge with which nothing is done: not sewn, shared,
// folded, closed, finished or held in by elastic.
func (g *Garment) Unused(e *Edge) ([]Part, error) {
	uses, err := g.placedUses(e)
	if err != nil {
		return nil, err
	}
	if !slices.ContainsFunc(uses, func(u Use) bool { return u.Half != "" }) {
		return unused(e, uses), nil
	}
	left, right := unused(e, onHalf(uses, Left)), unused(e, onHalf(uses, Right))
	var out []Part
	for _, p := range left {
		if !slices.Contains(right, p) {
			p.Half = Left
		}
		out = append(out, p)
	}
	for _, p := range right {
		if !slices.Contains(left, p) {
			p.Half = Right
			out = append(out, p)
		}
	}
	return out, nil
}

// onHalf are the uses that one half of the garment has.
func onHalf(uses []Use, half string) []Use {
	return slices.DeleteFunc(slices.Clone(uses), func(u Use) bool { return u.Half != "" && u.Half != half })
}

func unused(e *Edge, uses []Use) []Part {
	slices.SortStableFunc(uses, func(a, b Use) int {
		switch {
		case a.From < b.From:
			return -1
		case a.From > b.From:
			return 1
		}
		return 0
	})
	var out []Part
	at := 0.0
	for _, u := range uses {
		if u.From > at {
			out = append(out, Part{From: at, To: u.From})
		}
		at = max(at, u.To)
	}
	if at < e.Length() {
		out = append(out, Part{From: at, To: e.Length()})
	}
	return out
}

// Overlap is a part of an edge that two things claim.
type Overlap struct {
	Part
	A, B Use
}

// mostOverlaps is how many parts of one edge are told apart that are used twice:
// more than anybody would mend one by one.
const mostOverlaps = 1000

// UsedTwice are the parts of the edge that two of its seams, closures and folds
// claim. The halves of a mirrored pair, which one join names on both its sides,
// are one use.
func (g *Garment) UsedTwice(e *Edge) ([]Overlap, error) {
	uses, err := g.placedUses(e)
	if err != nil {
		return nil, err
	}
	var out []Overlap
	for i, a := range uses {
		for _, b := range uses[:i] {
			if !a.Kind.Joining() || !b.Kind.Joining() || a.Thing == b.Thing || a.yields(b) {
				continue
			}
			if part := (Part{From: max(a.From, b.From), To: min(a.To, b.To)}); part.Length() > 0 {
				out = append(out, Overlap{part, b, a})
				if len(out) == mostOverlaps {
					return out, nil
				}
			}
		}
	}
	return out, nil
}

// yields reports whether two uses of one part of an edge are on different halves of
// the garment: a seam is sewn where a closure does not open it.
func (u Use) yields(o Use) bool {
	if u.Half == "" {
		u, o = o, u
	}
	return u.Half != "" && (o.Half == "" && o.Kind == Sewn || o.Half != "" && o.Half != u.Half)
}

// placedUses are the edge's uses, or the reason why one of them lies on no
// known part of it.
func (g *Garment) placedUses(e *Edge) ([]Use, error) {
	uses := slices.Clone(g.Uses(e))
	for _, u := range uses {
		if u.Err != nil {
			return nil, u.Err
		}
	}
	return uses, nil
}

// cornerReach is how close to a corner, in millimetres, a level may leave the
// cloth and still count as leaving over the edge on the other side of the
// corner: a level is often drawn exactly through one.
const CornerReach = 0.5

// JoinedToItself is the seam or closure that joins an edge of a piece to the same
// edge of its other half, or nil.
func (g *Garment) JoinedToItself(e *Edge) *Join {
	for _, j := range g.Joins() {
		if Has(j.Sides[0], e) && Has(j.Sides[1], e) {
			return j
		}
	}
	return nil
}

// Shared reports whether one share names both edges, one on either side.
func (g *Garment) Shared(outer, inner *Edge) bool {
	return slices.ContainsFunc(g.Shares, func(s *Share) bool { return Has(s.Outer, outer) && Has(s.Inner, inner) })
}

// Has reports whether a side names an edge, or a part of it.
func Has(side []Stretch, e *Edge) bool {
	return slices.ContainsFunc(side, func(s Stretch) bool { return s.Edge == e })
}

// UseKind tells what is done with a stretch of edge.
type UseKind string

// What can be done with an edge.
const (
	Sewn     UseKind = "seam"
	Shared   UseKind = "share"
	Closed   UseKind = "closure"
	Folded   UseKind = "fold"
	Finished UseKind = "finish"
	Gathered UseKind = "elastic"
)

// Joining reports whether the cloth goes on past the edge, so that a girth
// measured across it is closed.
func (k UseKind) Joining() bool { return k == Sewn || k == Closed || k == Folded }

// Use is one thing that is done with a stretch of an edge, from one distance to
// another along it as drawn.
type Use struct {
	Kind     UseKind
	Thing    Thing
	From, To float64
	Half     string // on the left or the right half of the garment only; "" on both
	Err      error  // the stretch cannot be placed, and why
}

// uses are those of every edge of a garment, once they are listed.
type uses struct {
	of       map[*Edge][]Use
	partners map[*Edge][]*Edge
}

// Uses are everything the garment does with an edge. An edge that is named on
// both sides of a join, as the halves of a mirrored pair are, has two uses by
// that join.
func (g *Garment) Uses(e *Edge) []Use {
	kept := In[uses](&g.Store)
	if kept.of == nil {
		kept.of = g.allUses()
	}
	return kept.of[e]
}

func (g *Garment) allUses() map[*Edge][]Use {
	uses := map[*Edge][]Use{}
	half := ""
	add := func(kind UseKind, thing Thing, stretches ...Stretch) {
		for _, s := range stretches {
			from, to, err := s.Extent()
			uses[s.Edge] = append(uses[s.Edge], Use{kind, thing, from, to, half, err})
		}
	}
	for _, p := range g.Pieces() {
		for _, e := range p.Edges {
			if p.Fold == e {
				add(Folded, p, Stretch{Edge: e})
			}
			if e.Finish != "" {
				add(Finished, e, Stretch{Edge: e})
			}
		}
	}
	for _, j := range g.Joins() {
		kind := Sewn
		if _, ok := j.Thing.(*Closure); ok {
			kind = Closed
		}
		half = j.Half
		for _, side := range j.Sides {
			add(kind, j.Thing, side...)
		}
	}
	half = ""
	for _, s := range g.Shares {
		add(Shared, s, s.Outer...)
		add(Shared, s, s.Inner...)
	}
	for _, el := range g.Elastics {
		add(Gathered, el, el.Edges...)
	}
	return uses
}

// Partners are the edges that an edge is joined to.
func (g *Garment) Partners(e *Edge) []*Edge {
	kept := In[uses](&g.Store)
	if kept.partners == nil {
		kept.partners = map[*Edge][]*Edge{}
		for _, j := range g.Joins() {
			for i, side := range j.Sides {
				for _, s := range side {
					for _, other := range j.Sides[1-i] {
						kept.partners[s.Edge] = append(kept.partners[s.Edge], other.Edge)
					}
				}
			}
		}
	}
	return kept.partners[e]
}

// Describe names a use for a message: "seam.side", "the fold of shell.front".
func (u Use) Describe() string {
	switch u.Kind {
	case Folded:
		return fmt.Sprintf("the fold of %s", u.Thing.Address())
	case Finished:
		return "its finish"
	}
	return u.Thing.Address()
}
