package measuring

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"understitch/model"
)

// LayersInward are the garment's layers from the outermost to the innermost.
func LayersInward(g *model.Garment) []*model.Layer {
	out := slices.Clone(g.Layers)
	slices.SortStableFunc(out, func(a, b *model.Layer) int { return cmp.Compare(a.Order, b.Order) })
	return out
}

// LayerOver is the layer that lies next over another, or nil for the outermost.
func LayerOver(g *model.Garment, l *model.Layer) *model.Layer {
	var over *model.Layer
	for _, other := range LayersInward(g) {
		if other == l {
			return over
		}
		over = other
	}
	return nil
}

// LevelsDown are the garment's levels from the top down. Where some have no
// height, as in a garment of paper pieces, they stay as the spec lists them.
func LevelsDown(g *model.Garment) []*model.Level {
	out := slices.Clone(g.Levels)
	if slices.ContainsFunc(out, func(l *model.Level) bool { return !model.Known(l.Y) }) {
		return out
	}
	slices.SortStableFunc(out, func(a, b *model.Level) int { return cmp.Compare(a.Y, b.Y) })
	return out
}

// RoomAt is what a layer measures round at a level, in millimetres.
type RoomAt struct {
	Level        *model.Level
	Outer, Inner float64
}

// Room is how much more the outer layer measures round.
func (r RoomAt) Room() float64 { return r.Outer - r.Inner }

// Rooms are the levels at which two layers can be compared all round, from the
// top down: both close round the body there, or, as with a lining that is turned
// out with its shell and closes by it, insides lay every piece of the one in the
// other, and the widths of the pieces are added.
func Rooms(g *model.Garment, outer, inner *model.Layer) []RoomAt {
	var out []RoomAt
	for _, l := range LevelsDown(g) {
		round, errOuter := Girth(g, outer, l)
		within, errInner := Girth(g, inner, l)
		if errOuter == nil && errInner == nil {
			out = append(out, RoomAt{l, round, within})
		} else if r, ok := roomInside(g, outer, inner, l); ok {
			out = append(out, r)
		}
	}
	return out
}

// roomInside adds up the widths of two layers' pieces, where insides name each of
// those that reach the level once.
func roomInside(g *model.Garment, outer, inner *model.Layer, l *model.Level) (RoomAt, bool) {
	out, named := RoomAt{Level: l}, map[*model.Piece]bool{}
	for _, n := range InsidesAt(g, outer, inner, l) {
		if HangFrom(g, n.Outer, l) && HangFrom(g, n.Inner, l) {
			continue // at a waist seam the pieces above are measured
		}
		for _, side := range []struct {
			pieces model.Group
			sum    *float64
		}{{n.Outer, &out.Outer}, {n.Inner, &out.Inner}} {
			w, err := GroupWidth(side.pieces, l)
			if err != nil {
				return RoomAt{}, false
			}
			*side.sum += w.Net * side.pieces.Times()
			for _, p := range side.pieces {
				if runsOut(g, n, p, l) != nil {
					return RoomAt{}, false
				}
				if named[p] {
					return RoomAt{}, false
				}
				named[p] = true
			}
		}
	}
	for _, p := range slices.Concat(outer.Pieces, inner.Pieces) {
		if p.Reaches(l) && !named[p] && !hangsFrom(g, p, l) || Unmeasured(g, p, l) != nil {
			return RoomAt{}, false
		}
	}
	return out, len(named) > 0
}

// InsidesAt are the insides of two layers whose pieces both reach a level.
func InsidesAt(g *model.Garment, outer, inner *model.Layer, l *model.Level) []*model.Inside {
	var out []*model.Inside
	for _, n := range g.Insides {
		if n.Outer.Layer() == outer && n.Inner.Layer() == inner && n.Outer.Reaches(l) && n.Inner.Reaches(l) {
			out = append(out, n)
		}
	}
	return out
}

// EaseAt is the ease that the layer states at a level, and whether it does.
func EaseAt(l *model.Layer, level *model.Level) (model.Range, bool) {
	for _, e := range l.Ease {
		if e.Level == level {
			return e.Range, true
		}
	}
	return model.Range{}, false
}

// RoomChange is how the room between two layers may change from one level to a
// lower one by what the spec states: the clearances of their insides, each as
// often as its pieces are cut, the eases of the layers, and what their pleats let
// out. Where nothing is
// stated at both levels the room is to stay as it is.
func RoomChange(g *model.Garment, outer, inner *model.Layer, upper, lower *model.Level) model.Range {
	return changeOfInsides(g, outer, inner, upper, lower).Hull(changeOfEase(outer, inner, upper, lower)).Hull(changeOfPleats(outer, inner, upper, lower))
}

// changeOfPleats is what the pleats of either layer let out between two levels.
func changeOfPleats(outer, inner *model.Layer, upper, lower *model.Level) model.Range {
	opened := func(l *model.Layer) float64 {
		return model.Group(l.Pieces).Opened(lower) - model.Group(l.Pieces).Opened(upper)
	}
	return model.Exactly(opened(outer) - opened(inner))
}

func changeOfInsides(g *model.Garment, outer, inner *model.Layer, upper, lower *model.Level) model.Range {
	sum := model.Exactly(0)
	for _, n := range InsidesAt(g, outer, inner, upper) {
		if !n.States(upper) || !n.States(lower) || !n.Outer.Reaches(lower) || !n.Inner.Reaches(lower) {
			continue
		}
		times := min(n.Outer.Times(), n.Inner.Times())
		change := n.Allowed(lower).Less(n.Allowed(upper))
		sum.Low += change.Low * times
		sum.High += change.High * times
	}
	return sum
}

func changeOfEase(outer, inner *model.Layer, upper, lower *model.Level) model.Range {
	var at [2]model.Range
	for i, l := range []*model.Level{upper, lower} {
		around, ok := EaseAt(outer, l)
		within, okInner := EaseAt(inner, l)
		if !ok || !okInner {
			return model.Exactly(0)
		}
		at[i] = around.Less(within)
	}
	return at[1].Less(at[0])
}

// SharedAlong reports whether two layers share an edge that lies along a level,
// all of it nearer to it than near: both have one girth there. An edge known by
// tape alone lies along the level whose name it carries.
func SharedAlong(g *model.Garment, outer, inner *model.Layer, l *model.Level, near float64) bool {
	for _, s := range g.Shares {
		if len(s.Outer) == 0 || len(s.Inner) == 0 || s.Outer[0].Edge.Piece.Layer != outer || s.Inner[0].Edge.Piece.Layer != inner {
			continue
		}
		for _, st := range slices.Concat(s.Outer, s.Inner) {
			if liesAlong(st.Edge, l, near) {
				return true
			}
		}
	}
	return false
}

func liesAlong(e *model.Edge, l *model.Level, near float64) bool {
	if !e.Drawn() {
		return e.Name == l.Name
	}
	y, ok := e.Piece.LevelY(l)
	b := e.Path.Bounds()
	return ok && math.Abs(b.Min.Y-y) < near && math.Abs(b.Max.Y-y) < near
}

// runsOut is the reason why two layers have no girth at a level where an inside lays a
// piece of theirs: the level leaves the piece over an edge past which the cloth does not
// go on, as a leg opening or a hem. An edge that the two layers share is none, as they
// end there together; nor is one of which nothing is said and that the other piece has
// by the same name. Nil where there is no such edge.
func runsOut(g *model.Garment, n *model.Inside, p *model.Piece, l *model.Level) error {
	w, err := WidthOf(p, l)
	if err != nil {
		return err
	}
	for _, s := range w.Spans {
		for _, end := range []struct {
			edge int
			at   float64
		}{{s.E0, s.S0}, {s.E1, s.S1}} {
			open := GoesOn(g, p, l, end.edge, end.at)
			if open == nil || sharedAt(g, p.Edges[end.edge], end.at, n.Outer.Layer(), n.Inner.Layer()) || laidOpen(g, n, p.Edges[end.edge]) {
				continue
			}
			return open
		}
	}
	return nil
}

// laidOpen reports whether nothing is said of an edge, and the other side of the inside
// has one of its name.
func laidOpen(g *model.Garment, n *model.Inside, e *model.Edge) bool {
	if len(g.Uses(e)) > 0 {
		return false
	}
	others := n.Inner
	if n.Inner.Has(e.Piece) {
		others = n.Outer
	}
	return slices.ContainsFunc(others, func(o *model.Piece) bool {
		return slices.ContainsFunc(o.Edges, func(other *model.Edge) bool { return other.Name == e.Name && !openEdge(g, other) })
	})
}

// Opening is the edge of an opening, finished or held in by elastic alone, over which a
// level leaves a layer; nil where there is another reason for a missing girth.
func Opening(g *model.Garment, reason error) *model.Edge {
	var open *model.Open
	if errors.As(reason, &open) && open.Edge != nil && openEdge(g, open.Edge) {
		return open.Edge
	}
	return nil
}

// openEdge reports whether an edge is finished or held in by elastic alone, as a leg
// opening is.
func openEdge(g *model.Garment, e *model.Edge) bool {
	uses := g.Uses(e)
	return len(uses) > 0 && !slices.ContainsFunc(uses, func(u model.Use) bool { return u.Kind != model.Finished && u.Kind != model.Gathered })
}

// RunsOut is the reason why two layers cannot be compared round at a level at which
// insides lay their pieces in each other: the level leaves one of them over an edge
// that is open. Nil where it leaves none so.
func RunsOut(g *model.Garment, outer, inner *model.Layer, l *model.Level) error {
	for _, n := range InsidesAt(g, outer, inner, l) {
		for _, p := range slices.Concat(n.Outer, n.Inner) {
			if hangsFrom(g, p, l) {
				continue
			}
			if open := runsOut(g, n, p, l); open != nil {
				return open
			}
		}
	}
	return nil
}

// sharedAt reports whether two layers share a place of an edge.
func sharedAt(g *model.Garment, e *model.Edge, at float64, outer, inner *model.Layer) bool {
	return slices.ContainsFunc(g.Uses(e), func(u model.Use) bool {
		s, ok := u.Thing.(*model.Share)
		return ok && u.Err == nil && at > u.From-model.CornerReach && at < u.To+model.CornerReach && joins(s, outer, inner)
	})
}

// joins reports whether the share holds edges of an outer and an inner layer
// together.
func joins(s *model.Share, outer, inner *model.Layer) bool {
	of := func(l *model.Layer) func(model.Stretch) bool {
		return func(s model.Stretch) bool { return s.Edge.Piece.Layer == l }
	}
	return slices.ContainsFunc(s.Outer, of(outer)) && slices.ContainsFunc(s.Inner, of(inner))
}
