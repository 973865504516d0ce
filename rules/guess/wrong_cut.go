package guess

import (
	"slices"

	"understitch/model"
)

// CutShort is what a piece is sewn to that there is too much of for it: the edges,
// of at least two edges of other pieces, that are there twice as often as the edges
// of this piece that they are sewn to, when all that is cut is counted. It is nil
// unless that is so of every edge of the piece which is sewn to another piece: a
// piece that is cut too seldom is so along all its seams, while what is sewn to a
// piece that is cut too often (a band with its facing) is not.
//
// Only edges that one seam alone takes can be counted: of one that several take,
// each seam may take its own copy.
func CutShort(g *model.Garment, p *model.Piece) []*model.Edge {
	if p.Cut != 1 || p.Fold != nil {
		return nil
	}
	var to []*model.Edge
	for _, s := range g.Seams {
		for i, side := range s.Sides {
			for _, st := range side {
				if st.Edge.Piece != p {
					continue
				}
				other := s.Sides[1-i]
				if slices.ContainsFunc(other, func(o model.Stretch) bool { return o.Edge.Piece == p }) {
					return nil // joined to itself: mirror-pair counts that
				}
				own := timesFor(g, s, st.Edge)
				for _, o := range other {
					if own == 0 || timesFor(g, s, o.Edge) != 2*own {
						return nil
					}
					if !slices.Contains(to, o.Edge) {
						to = append(to, o.Edge)
					}
				}
			}
		}
	}
	if len(to) < 2 {
		return nil
	}
	return to
}

// timesFor is how often a seam can be sewn by what is cut of an edge that no other
// seam or closure takes; 0 where another does.
func timesFor(g *model.Garment, s *model.Seam, e *model.Edge) float64 {
	n := 0
	for _, j := range g.Joins() {
		for _, side := range j.Sides {
			for _, st := range side {
				switch {
				case st.Edge != e:
				case j.Thing != model.Thing(s) || !whole(st):
					return 0
				default:
					n++
				}
			}
		}
	}
	times := e.Piece.Times()
	if e.Piece.Fold == e {
		times = float64(e.Piece.Cut)
	}
	if n == 0 {
		return 0
	}
	return times / float64(n)
}

// CutApart is the piece that lies on this one in an inside of the two alone and is cut
// half or twice as often; nil where there is none.
func CutApart(g *model.Garment, p *model.Piece) *model.Piece {
	for _, n := range g.Insides {
		if len(n.Outer) != 1 || len(n.Inner) != 1 {
			continue
		}
		a, b := n.Outer[0], n.Inner[0]
		if b == p {
			a, b = b, a
		}
		if a == p && (a.Times() == 2*b.Times() || b.Times() == 2*a.Times()) {
			return b
		}
	}
	return nil
}
