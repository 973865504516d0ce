package model

import (
	"slices"
	"strings"
)

// Sources are the things that a thing is a tracing of: for an edge, notch or dart
// what it was traced from, for a piece or layer those that its edges were traced
// from, for a seam or the like the one that does the same to the edges that its
// own edges were traced from. What is wrong with such a source is wrong with the
// tracing as well.
func (g *Garment) Sources(t Thing) []Thing {
	var out []Thing
	switch t := t.(type) {
	case *Edge:
		for e := t.TracedFrom(); e != nil; e = e.TracedFrom() {
			out = append(out, e)
		}
		if from := t.Piece.TracedFrom; t.Traced == nil && from != nil { // drawn anew, and folded or sewn as the other is
			for _, e := range from.Edges {
				if e.Name == t.Name {
					out = append(out, e)
				}
			}
		}
	case *Notch:
		for n := t.Traced; n != nil; n = n.Traced {
			out = append(out, n)
		}
	case *Dart:
		for d := t.Traced; d != nil; d = d.Traced {
			out = append(out, d)
		}
	case *Piece:
		for _, p := range t.sources() {
			out = append(out, p)
		}
	case *Layer:
		for _, l := range g.Layers {
			if l != t && t.tracedFrom(l) {
				out = append(out, l)
			}
		}
	default:
		mine := involved(t)
		if len(mine) == 0 {
			return nil
		}
		for _, other := range g.alike(t) {
			if other != t && traces(mine, involved(other)) {
				out = append(out, other)
			}
		}
	}
	return out
}

// sources are the pieces that a piece's edges were traced from.
func (p *Piece) sources() []*Piece {
	var out []*Piece
	for _, e := range p.Edges {
		for of := e.TracedFrom(); of != nil; of = of.TracedFrom() {
			if of.Piece != p && !slices.Contains(out, of.Piece) {
				out = append(out, of.Piece)
			}
		}
	}
	return out
}

// tracedFrom reports whether each piece of the layer was traced from another
// layer, in part or as a whole.
func (l *Layer) tracedFrom(other *Layer) bool {
	return !slices.ContainsFunc(l.Pieces, func(p *Piece) bool {
		return !slices.ContainsFunc(p.sources(), func(s *Piece) bool { return s.Layer == other })
	})
}

// alike are the things of a garment of the same kind.
func (g *Garment) alike(t Thing) []Thing {
	switch t.(type) {
	case *Seam:
		return things(g.Seams)
	case *Share:
		return things(g.Shares)
	case *Inside:
		return things(g.Insides)
	case *Closure:
		return things(g.Closures)
	case *Elastic:
		return things(g.Elastics)
	case *Bone:
		return things(g.Bones)
	}
	return nil
}

func things[T Thing](list []T) []Thing {
	out := make([]Thing, len(list))
	for i, x := range list {
		out[i] = x
	}
	return out
}

// involved are the edges that a seam or the like has to do with, side by side.
func involved(t Thing) [][]*Edge {
	edges := func(list []Stretch) []*Edge {
		out := make([]*Edge, len(list))
		for i, s := range list {
			out[i] = s.Edge
		}
		return out
	}
	switch t := t.(type) {
	case *Seam:
		return [][]*Edge{edges(t.Sides[0]), edges(t.Sides[1])}
	case *Share:
		return [][]*Edge{edges(t.Outer), edges(t.Inner)}
	case *Closure:
		return [][]*Edge{edges(t.Edges[0]), edges(t.Edges[1])}
	case *Elastic:
		return [][]*Edge{edges(t.Edges)}
	case *Bone:
		return [][]*Edge{{t.Along.Edge}}
	case *Inside:
		var out [][]*Edge
		for _, side := range []Group{t.Outer, t.Inner} {
			var first []*Edge
			for _, p := range side {
				first = append(first, p.Edges[0])
			}
			out = append(out, first)
		}
		return out
	}
	return nil
}

// traces reports whether edges, side by side, are the others or traced from them,
// and some of them are traced. The two sides may be named the other way round.
func traces(mine, others [][]*Edge) bool {
	if len(mine) != len(others) {
		return false
	}
	some := false
	same := func(a, b []*Edge) bool {
		if len(a) != len(b) {
			return false
		}
		for i := range a {
			if a[i] != b[i] && !a[i].Traces(b[i]) {
				return false
			}
			some = some || a[i] != b[i]
		}
		return true
	}
	all := func(order ...int) bool {
		for i := range mine {
			if !same(mine[i], others[order[i]]) {
				return false
			}
		}
		return some
	}
	if len(mine) == 1 {
		return all(0)
	}
	if all(0, 1) {
		return true
	}
	some = false
	return all(1, 0)
}

// AtSource gives a key that names things by their addresses as it may read at
// their sources: with what each was traced from in its place, or the piece that
// its piece was traced from.
func (g *Garment) AtSource(key string) []string {
	out := []string{key}
	if !strings.Contains(key, ".") {
		return out
	}
	lines, pieces := key, key
	for _, p := range g.Pieces() {
		for _, e := range p.Edges {
			if of := e.TracedFrom(); of != nil {
				lines = replaceAddress(lines, e.Address(), of.Address())
			}
		}
		for _, n := range p.Notches {
			if n.Traced != nil {
				lines = replaceAddress(lines, n.Address(), n.Traced.Address())
			}
		}
		for _, d := range p.Darts {
			if d.Traced != nil {
				lines = replaceAddress(lines, d.Address(), d.Traced.Address())
			}
		}
		if p.TracedFrom != nil {
			pieces = strings.ReplaceAll(pieces, p.Address()+".", p.TracedFrom.Address()+".")
		}
	}
	return append(out, lines, pieces)
}

// replaceAddress puts one address in place of another, where that stands whole.
func replaceAddress(text, address, by string) string {
	words := strings.Split(text, " ")
	for i, w := range words {
		if w == address {
			words[i] = by
		}
	}
	return strings.Join(words, " ")
}
