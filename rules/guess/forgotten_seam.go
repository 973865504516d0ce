package guess

import (
	"math"
	"slices"

	"understitch/model"
)

// Lack is a place in a seam, share or elastic where an edge with which nothing is
// done may have been left out, or where an edge of another layer was written for
// it. Things are told by their addresses, so that the same place can be found in
// the garment built anew.
type Lack struct {
	Thing string // the address of what lacks the edge
	Edge  string // the address of the edge
	For   string // the address of the edge that it is to replace; "" where it is to be added
	side  int
	at    int
}

// Lacks are the places where an edge may have been left out: of a seam or a share
// that comes out, with the edge, at the lengths that are meant; of any elastic of
// its layer; and of a share that names on its side the edge of that name in another
// layer. Lengths come out if they are within fits, in millimetres, of what is meant.
func Lacks(g *model.Garment, e *model.Edge, fits float64) []Lack {
	var out []Lack
	for _, s := range g.Seams {
		if misses(s.Ease, s.Sides) <= fits {
			continue
		}
		for i, side := range s.Sides {
			for k, st := range side {
				if mistakenFor(g, st, e) && instead(s.Sides, i, k, e, false, s.Ease, fits) {
					out = append(out, Lack{Thing: s.Address(), Edge: e.Address(), For: named(st), side: i, at: k})
				}
			}
			with := s.Sides
			with[i] = append(slices.Clone(side), model.Stretch{Edge: e})
			if sideLacks(side, e) && misses(s.Ease, with) <= fits {
				out = append(out, everyPlace(s, e, i, len(side))...)
			}
		}
	}
	for _, s := range g.Shares {
		sides := [2][]model.Stretch{s.Outer, s.Inner}
		for i, side := range sides {
			with := sides
			with[i] = append(slices.Clone(side), model.Stretch{Edge: e})
			if sideLacks(side, e) && s.Match != model.Eased && misses(model.Range{}, with) < math.Min(misses(model.Range{}, sides), fits) {
				out = append(out, everyPlace(s, e, i, len(side))...)
			}
			for k, st := range side {
				if whole(st) && st.Edge.Name == e.Name && st.Edge.Piece.Name == e.Piece.Name && st.Edge.Piece.Layer != e.Piece.Layer && model.Has(sides[1-i], st.Edge) ||
					mistakenFor(g, st, e) && instead(sides, i, k, e, s.Match == model.Eased, model.Range{}, fits) {
					out = append(out, Lack{Thing: s.Address(), Edge: e.Address(), For: named(st), side: i, at: k})
				}
			}
		}
	}
	for _, c := range g.Closures {
		for k, side := range c.Edges {
			sides, st := [2][]model.Stretch(c.Edges), side[0]
			if len(side) == 1 && mistakenFor(g, st, e) && instead(sides, k, 0, e, false, model.Range{}, fits) {
				out = append(out, Lack{Thing: c.Address(), Edge: e.Address(), For: named(st), at: k})
			}
		}
	}
	for _, el := range g.Elastics {
		for k, st := range el.Edges {
			if mistakenFor(g, st, e) {
				out = append(out, Lack{Thing: el.Address(), Edge: e.Address(), For: named(st), at: k})
			}
		}
		if sideLacks(el.Edges, e) {
			out = append(out, Lack{Thing: el.Address(), Edge: e.Address(), at: len(el.Edges)})
		}
	}
	return out
}

// mistakenFor reports whether a thing that takes the whole of one edge may be meant
// to take another in its stead: one of the piece, or the one of that name, where
// something else takes the first as well.
func mistakenFor(g *model.Garment, st model.Stretch, e *model.Edge) bool {
	return whole(st) && st.Edge != e && (st.Edge.Piece == e.Piece || st.Edge.Name == e.Name) && len(g.Uses(st.Edge)) > 1
}

// instead reports whether two sides come out at the lengths that are meant with an
// edge in the place of another, and did not; of eased ones any length is meant.
func instead(sides [2][]model.Stretch, side, at int, e *model.Edge, eased bool, ease model.Range, fits float64) bool {
	if model.Has(sides[side], e) {
		return false
	}
	with := sides
	with[side] = slices.Clone(sides[side])
	with[side][at].Edge = e
	return eased || misses(ease, with) <= fits
}

func named(st model.Stretch) string { return st.Edge.Address() }

// sideLacks reports whether a list of edges is one of the edge's layer and does not
// name it.
func sideLacks(side []model.Stretch, e *model.Edge) bool {
	return len(side) > 0 && side[0].Edge.Piece.Layer == e.Piece.Layer && !model.Has(side, e)
}

func everyPlace(t model.Thing, e *model.Edge, side, n int) []Lack {
	var out []Lack
	for at := range n + 1 {
		out = append(out, Lack{Thing: t.Address(), Edge: e.Address(), side: side, at: at})
	}
	return out
}

// Fill names the edge where it is lacking. An edge whose allowance follows from
// what is done with it carries from then on what its neighbours in the list do.
func Fill(g *model.Garment, l Lack) {
	var edge *model.Edge
	for _, e := range g.Edges() {
		if e.Address() == l.Edge {
			edge = e
		}
	}
	var list *[]model.Stretch
	for _, s := range g.Seams {
		if s.Address() == l.Thing {
			list = &s.Sides[l.side]
		}
	}
	for _, s := range g.Shares {
		if s.Address() == l.Thing {
			list = [2]*[]model.Stretch{&s.Outer, &s.Inner}[l.side]
		}
	}
	for _, el := range g.Elastics {
		if el.Address() == l.Thing {
			list = &el.Edges
		}
	}
	for _, c := range g.Closures {
		if c.Address() == l.Thing && edge != nil {
			c.Edges[l.at] = slices.Clone(c.Edges[l.at])
			c.Edges[l.at][0].Edge = edge
		}
	}
	if edge == nil || list == nil {
		return
	}
	if as := (*list)[min(l.at, len(*list)-1)].Edge; !edge.Allowance.Own && !as.Allowance.Own {
		edge.Allowance = as.Allowance
	}
	if l.For != "" {
		*list = slices.Clone(*list)
		(*list)[l.at].Edge = edge
		return
	}
	*list = slices.Insert(slices.Clone(*list), l.at, model.Stretch{Edge: edge, Place: edge.Place})
}
