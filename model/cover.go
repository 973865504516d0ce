package model

import "slices"

// Part is a part of an edge, in millimetres along it as drawn.
type Part struct{ From, To float64 }

// Length of the part.
func (p Part) Length() float64 { return p.To - p.From }

// Unused are the parts of the edge with which nothing is done: not sewn, shared,
// folded, closed, finished or held in by elastic.
func (g *Garment) Unused(e *Edge) ([]Part, error) {
	uses, err := g.placedUses(e)
	if err != nil {
		return nil, err
	}
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
			out = append(out, Part{at, u.From})
		}
		at = max(at, u.To)
	}
	if at < e.Length() {
		out = append(out, Part{at, e.Length()})
	}
	return out, nil
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
			if !a.Kind.Joining() || !b.Kind.Joining() || a.Thing == b.Thing {
				continue
			}
			if part := (Part{max(a.From, b.From), min(a.To, b.To)}); part.Length() > 0 {
				out = append(out, Overlap{part, b, a})
				if len(out) == mostOverlaps {
					return out, nil
				}
			}
		}
	}
	return out, nil
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
