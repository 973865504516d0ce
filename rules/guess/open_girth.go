package guess

import (
	"slices"

	"understitch/model"
	"understitch/model/measuring"
)

// LeavesOpen is the first level at which a layer does not close round the body
// because nothing is done with an edge: its cloth ends there, and the girth of the
// layer, which a body or another layer stands against, cannot be had. It is nil
// where something is done with the edge, or where no girth is asked for at the
// levels that it crosses.
func LeavesOpen(g *model.Garment, e *model.Edge) *model.Level {
	unused, err := g.Unused(e)
	if err != nil || len(unused) == 0 {
		return nil
	}
	for _, l := range g.Levels {
		if girthAsked(g, e.Piece.Layer, l) && endsAt(g, e, unused, l) {
			return l
		}
	}
	return nil
}

// girthAsked reports whether something is to be compared with the girth of a layer
// at a level: the body, by an ease that the layer states, or another layer.
func girthAsked(g *model.Garment, layer *model.Layer, level *model.Level) bool {
	for _, e := range layer.Ease {
		if e.Level == level {
			return true
		}
	}
	for _, other := range g.Layers {
		if other == layer {
			continue
		}
		for _, p := range other.Pieces {
			if p.Reaches(level) {
				return true
			}
		}
	}
	return false
}

// endsAt reports whether the cloth of a piece ends along a level at an unused part
// of the edge. On paper an edge that runs down the body is crossed by the levels at
// which the piece has a width; where on it is not known.
func endsAt(g *model.Garment, e *model.Edge, unused []model.Part, l *model.Level) bool {
	p := e.Piece
	if !p.Reaches(l) {
		return false
	}
	if !p.Drawn() {
		return len(g.Uses(e)) == 0 && measuring.LieOf(g, e) == measuring.LieDown
	}
	y, _ := p.LevelY(l)
	box := e.Path.Bounds()
	w, err := measuring.WidthOf(p, l)
	if err != nil || y < box.Min.Y+model.CornerReach || y > box.Max.Y-model.CornerReach {
		return false // an edge that lies along the level is not crossed by it
	}
	ends := func(edge int, at float64) bool {
		in := func(u model.Part) bool { return at >= u.From && at <= u.To }
		return edge == e.Index && slices.ContainsFunc(unused, in) && measuring.GoesOn(g, p, l, edge, at) != nil
	}
	for _, s := range w.Spans {
		if ends(s.E0, s.S0) || ends(s.E1, s.S1) {
			return true
		}
	}
	return false
}
