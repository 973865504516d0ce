package model

import "slices"

// LeavesOpen is the first level at which a layer does not close round the body
// because nothing is done with an edge: its cloth ends there, and the girth of the
// layer, which a body or another layer stands against, cannot be had. It is nil
// where something is done with the edge, or where no girth is asked for at the
// levels that it crosses.
func (g *Garment) LeavesOpen(e *Edge) *Level {
	unused, err := g.Unused(e)
	if err != nil || len(unused) == 0 {
		return nil
	}
	for _, l := range g.Levels {
		if g.girthAsked(e.Piece.Layer, l) && g.endsAt(e, unused, l) {
			return l
		}
	}
	return nil
}

// girthAsked reports whether something is to be compared with the girth of a layer
// at a level: the body, by an ease that the layer states, or another layer.
func (g *Garment) girthAsked(layer *Layer, level *Level) bool {
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
func (g *Garment) endsAt(e *Edge, unused []Part, l *Level) bool {
	p := e.Piece
	if !p.Reaches(l) {
		return false
	}
	if !p.Drawn() {
		return len(g.Uses(e)) == 0 && g.lieOf(e) == lieDown
	}
	y, _ := p.LevelY(l)
	box := e.Path.Bounds()
	w, err := p.Width(l)
	if err != nil || y < box.Min.Y+cornerReach || y > box.Max.Y-cornerReach {
		return false // an edge that lies along the level is not crossed by it
	}
	ends := func(edge int, at float64) bool {
		in := func(u Part) bool { return at >= u.From && at <= u.To }
		return edge == e.Index && slices.ContainsFunc(unused, in) && g.goesOn(p, l, edge, at) != nil
	}
	for _, s := range w.Spans {
		if ends(s.E0, s.S0) || ends(s.E1, s.S1) {
			return true
		}
	}
	return false
}
