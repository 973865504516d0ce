package layering

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/drafting"
)

// EdgeInside is an edge and the one that lies along it on a piece that its own is
// laidInside with.
type EdgeInside struct {
	Edge, Other *model.Edge
	Inside      *model.Inside
}

// InsideWith are the edges that lie along an edge on the pieces in which its own
// lies, or which lie in it: in each inside the one of the same name, or else the one
// that follows it as both were drafted, no further off than near and with its
// cloth on the same side. An edge without such a counterpart has none.
func InsideWith(g *model.Garment, e *model.Edge, near float64) []EdgeInside {
	var out []EdgeInside
	for _, n := range g.Insides {
		others := n.Inner
		switch {
		case n.Outer.Has(e.Piece):
		case n.Inner.Has(e.Piece):
			others = n.Outer
		default:
			continue
		}
		if o := along(n, g, e, others, near); o != nil && o.Drawn() {
			out = append(out, EdgeInside{e, o, n})
		}
	}
	return out
}

// along is the edge of other pieces of the inside that lies along an edge.
func along(n *model.Inside, g *model.Garment, e *model.Edge, others model.Group, near float64) *model.Edge {
	var named []*model.Edge
	for _, p := range others {
		for _, o := range p.Edges {
			if o.Name == e.Name {
				named = append(named, o)
			}
		}
	}
	if len(named) == 1 {
		return named[0]
	}
	frame, err := LaidOn(n, g)
	if err != nil || !e.Drawn() {
		return nil
	}
	var nearest *model.Edge
	least := near
	for _, p := range others {
		for _, o := range p.Edges {
			if !o.Drawn() {
				continue
			}
			line, other := e.AsDrafted(), o.AsDrafted()
			if n.Outer.Has(e.Piece) {
				other = other.Move(frame)
			} else {
				line = line.Move(frame)
			}
			off := math.Min(strays(line, other), strays(other, line)) // the shorter lies along the longer
			if off <= least && sameSide(e, o) {
				nearest, least = o, off
			}
		}
	}
	return nearest
}

// strays is how far one line lies from another at most, at a few places of it.
func strays(line, from *curve.Path) float64 {
	most := 0.0
	for _, part := range []float64{0.1, 0.3, 0.5, 0.7, 0.9} {
		_, off := from.Nearest(line.At(part * line.Length()))
		most = math.Max(most, off)
	}
	return most
}

// sameSide reports whether the cloth lies on the same side of two edges, across.
// Edges that run across have no such side.
func sameSide(a, b *model.Edge) bool {
	as, okA := drafting.Inward(a)
	bs, okB := drafting.Inward(b)
	return okA && okB && as == bs
}

// Inward is how far the garment's alterations took an edge in at a level, all
// together; below zero where they let it out. It is nothing for an edge that
// they leave alone.
func Inward(g *model.Garment, e *model.Edge, l *model.Level) float64 {
	y, ok := e.Piece.LevelY(l)
	sum := 0.0
	for _, a := range g.Alterations {
		if !ok || !a.Alters(e) {
			continue
		}
		if ramp, fault := drafting.Ramp(a, e.Piece); fault == "" {
			sum += ramp.At(y)
		}
	}
	return sum
}

// TakenApart is a level at which two laidInside edges were taken in by other amounts.
type TakenApart struct {
	Level       *model.Level
	Edge, Other float64 // how far each was taken in
}

// TakenApart are the levels at which both edges run and were not taken in alike,
// to within so much.
func (n EdgeInside) TakenApart(g *model.Garment, within float64) []TakenApart {
	var out []TakenApart
	for _, l := range Compared(n.Inside, g) {
		if !runsAt(n.Edge, l) || !runsAt(n.Other, l) {
			continue
		}
		if a, b := Inward(g, n.Edge, l), Inward(g, n.Other, l); math.Abs(a-b) > within {
			out = append(out, TakenApart{l, a, b})
		}
	}
	return out
}

// runsAt reports whether the edge as drafted comes to the height of a level.
func runsAt(e *model.Edge, l *model.Level) bool {
	y, ok := e.Piece.LevelY(l)
	box := e.AsDrafted().Bounds()
	return ok && y > box.Min.Y-model.NearEnd && y < box.Max.Y+model.NearEnd
}

// RoomKept reports whether the inside's clearance lies within what is asked for, by
// so much past it, at every level that can be compared.
func RoomKept(n *model.Inside, g *model.Garment, beyond float64) bool {
	levels := Compared(n, g)
	for _, l := range levels {
		clearance, err := ClearanceAt(n, l)
		if err != nil || math.Abs(n.Allowed(l).Beyond(clearance)) > beyond {
			return false
		}
	}
	return len(levels) > 0
}

// AlterAlike has every alteration that names the one edge name the other too, and
// no other one. It is for a garment whose alterations are still to be made.
func AlterAlike(g *model.Garment, as, follows *model.Edge) {
	for _, a := range g.Alterations {
		a.Edges = slices.DeleteFunc(slices.Clone(a.Edges), func(e *model.Edge) bool { return e == follows })
		if slices.Contains(a.Edges, as) {
			a.Edges = append(a.Edges, follows)
		}
	}
}
