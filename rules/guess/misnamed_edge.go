package guess

import (
	"math"
	"slices"

	"understitch/model"
)

// Misjoin is a seam that names an edge which is not meant: what it joins does not
// fit, or is taken by another seam already, while an edge that nothing takes would
// fit in its stead.
type Misjoin struct {
	Swaps []Swap
	Sides [2][]model.Stretch // as they are meant
}

// Swap is one edge that is named and the one that is meant.
type Swap struct {
	Named model.Stretch
	Meant *model.Edge
}

// misjoins looks for seams that name a wrong edge.
type misjoins struct {
	g      *model.Garment
	fits   float64             // how near the sides of a seam come to their ease where an edge fits, in millimetres
	joined map[*model.Edge]int // how many seams, closures and folds take an edge
	taken  map[*model.Edge]int // how many things do anything with it
}

// Misjoins are the seams of a garment that name a wrong edge. An edge fits into a
// seam if the sides come within fits, in millimetres, of the seam's ease. Of two
// seams that name the same edges the later is taken to be the one that was copied
// and not changed.
func Misjoins(g *model.Garment, fits float64) map[*model.Seam]*Misjoin {
	kept := model.In[foundMisjoins](&g.Store)
	if kept.of == nil || kept.fits != fits {
		kept.of, kept.fits = newMisjoins(g, fits).all(), fits
	}
	return kept.of
}

// foundMisjoins are those of a garment, once they were looked for.
type foundMisjoins struct {
	fits float64
	of   map[*model.Seam]*Misjoin
}

func newMisjoins(g *model.Garment, fits float64) *misjoins {
	m := &misjoins{g, fits, map[*model.Edge]int{}, map[*model.Edge]int{}}
	for _, s := range g.Seams {
		m.take(1, true, slices.Concat(s.Sides[0], s.Sides[1])...)
	}
	for _, c := range g.Closures {
		for _, j := range g.JoinsOf(c) {
			m.take(1, true, slices.Concat(j.Sides[0], j.Sides[1])...)
		}
	}
	for _, s := range g.Shares {
		m.take(1, false, slices.Concat(s.Outer, s.Inner)...)
	}
	for _, el := range g.Elastics {
		m.take(1, false, el.Edges...)
	}
	for _, p := range g.Pieces() {
		for _, e := range p.Edges {
			if p.Fold == e || e.Finish != "" {
				m.take(1, p.Fold == e, model.Stretch{Edge: e})
			}
		}
	}
	return m
}

// take counts one thing that takes edges, each of them once: the halves of a
// mirrored pair are one edge.
func (m *misjoins) take(n int, joins bool, stretches ...model.Stretch) {
	var seen []*model.Edge
	for _, st := range stretches {
		if slices.Contains(seen, st.Edge) {
			continue
		}
		seen = append(seen, st.Edge)
		m.taken[st.Edge] += n
		if joins {
			m.joined[st.Edge] += n
		}
	}
}

func (m *misjoins) all() map[*model.Seam]*Misjoin {
	out := map[*model.Seam]*Misjoin{}
	for _, s := range slices.Backward(m.g.Seams) {
		wrong := m.of(s)
		if wrong == nil {
			continue
		}
		out[s] = wrong
		m.take(-1, true, slices.Concat(s.Sides[0], s.Sides[1])...)
		m.take(1, true, slices.Concat(wrong.Sides[0], wrong.Sides[1])...)
	}
	return out
}

// of is what is wrong with a seam's edges; nil where nothing is.
func (m *misjoins) of(s *model.Seam) *Misjoin {
	was := misses(s.Ease, s.Sides)
	for _, swaps := range m.otherLayer(s) {
		if sides := swapped(s.Sides, swaps); misses(s.Ease, sides) <= m.fits {
			return &Misjoin{swaps, sides}
		}
	}
	for _, swaps := range m.otherEdge(s, was) {
		if sides := swapped(s.Sides, swaps); misses(s.Ease, sides) <= m.fits && misses(s.Ease, sides) < was {
			return &Misjoin{swaps, sides}
		}
	}
	return nil
}

// otherLayer are the edges of one layer that bear the names of edges of another
// which the seam takes, though another seam takes them too.
func (m *misjoins) otherLayer(s *model.Seam) [][]Swap {
	var out [][]Swap
	for _, l := range m.g.Layers {
		var swaps []Swap
		fits := true
		for _, st := range slices.Concat(s.Sides[0], s.Sides[1]) {
			if st.Edge.Piece.Layer == l {
				continue
			}
			meant := edgeOf(l, st.Edge.Piece.Name, st.Edge.Name)
			fits = fits && meant != nil && whole(st) && m.joined[st.Edge] > 1 && m.taken[meant] == 0
			swaps = append(swaps, Swap{st, meant})
		}
		if fits && len(swaps) > 0 {
			out = append(out, swaps)
		}
	}
	return out
}

// otherEdge are the edges of a piece with which nothing is done, for one that the
// seam takes and that something else takes too: another seam, or where it does not
// fit into the seam anything.
func (m *misjoins) otherEdge(s *model.Seam, was float64) [][]Swap {
	var out [][]Swap
	for _, st := range slices.Concat(s.Sides[0], s.Sides[1]) {
		if !whole(st) || m.taken[st.Edge] < 2 || m.joined[st.Edge] < 2 && was <= m.fits {
			continue
		}
		for _, e := range st.Edge.Piece.Edges {
			if m.taken[e] == 0 {
				out = append(out, []Swap{{st, e}})
			}
		}
	}
	return out
}

func whole(st model.Stretch) bool { return st.From.Kind == model.NoMark && st.To.Kind == model.NoMark }

func edgeOf(l *model.Layer, piece, name string) *model.Edge {
	for _, p := range l.Pieces {
		for _, e := range p.Edges {
			if p.Name == piece && e.Name == name {
				return e
			}
		}
	}
	return nil
}

// swapped are the sides of a seam with the edges that are meant.
func swapped(sides [2][]model.Stretch, swaps []Swap) [2][]model.Stretch {
	var out [2][]model.Stretch
	for i, side := range sides {
		out[i] = slices.Clone(side)
		for k := range out[i] {
			for _, w := range swaps {
				if w.Named == out[i][k] {
					out[i][k].Edge = w.Meant
				}
			}
		}
	}
	return out
}

// misses is how far the sides of a seam are from what is meant of their lengths;
// without end where a length is not known.
func misses(ease model.Range, sides [2][]model.Stretch) float64 {
	var lengths [2]float64
	for i, side := range sides {
		for _, st := range side {
			length, err := st.SewnLength()
			if err != nil || !model.Known(length) {
				return math.Inf(1)
			}
			lengths[i] += length
		}
	}
	return math.Abs(ease.Beyond(lengths[0] - lengths[1]))
}
