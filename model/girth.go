package model

import (
	"math"

	"understitch/model/curve"
)

// Girth is what a layer measures round at a level: the widths of its pieces,
// darts closed, each as often as it is cut and twice on a fold. It stands only
// where the layer closes round the body there: where the level runs out over an
// armhole or a neckline, or into a piece whose width is not known, the figure
// is missing, and the reason names the edge or the piece. A level that lies on
// a seam between pieces above and pieces below is measured on those above.
func (g *Garment) Girth(layer *Layer, level *Level) (float64, error) {
	for _, p := range layer.Pieces {
		if !p.Drawn() && !p.OwnLevels && len(p.Widths) == 0 {
			return 0, missing("%s has no drawing and no width at the %s level (a piece that lies at no level says levels = {})", p.Address(), level.Name)
		}
	}
	sum, pieces := 0.0, 0
	for _, p := range layer.Pieces {
		if !p.Reaches(level) || g.HangsFrom(p, level) {
			continue
		}
		w, err := p.Width(level)
		if err != nil {
			return 0, err
		}
		for _, s := range w.Spans {
			if err := g.goesOn(p, level, s.E0, s.S0); err != nil {
				return 0, err
			}
			if err := g.goesOn(p, level, s.E1, s.S1); err != nil {
				return 0, err
			}
		}
		sum += w.Net * p.Times()
		pieces++
	}
	if pieces == 0 {
		return 0, missing("no piece of %s reaches the %s level", layer.Address(), level.Name)
	}
	return sum, nil
}

// HangsFrom reports whether the piece only begins at the level, sewn there to
// one that ends at it: the two are one line of cloth, and measured once.
func (g *Garment) HangsFrom(p *Piece, l *Level) bool {
	if !p.Drawn() || !touches(p, l, func(b curve.Box) float64 { return b.Min.Y }) {
		return false
	}
	for _, e := range p.Edges {
		for _, partner := range g.Partners(e) {
			above := partner.Piece
			if above != p && above.Layer == p.Layer && above.Drawn() && touches(above, l, func(b curve.Box) float64 { return b.Max.Y }) {
				return true
			}
		}
	}
	return false
}

// touches reports whether the level runs through one end of the piece's height.
func touches(p *Piece, l *Level, end func(curve.Box) float64) bool {
	y, ok := p.LevelY(l)
	region, err := p.Region()
	return ok && err == nil && math.Abs(end(region.Bounds())-y) < nearEnd
}

// goesOn tells why the cloth of the layer does not go on along the level past a
// place of the piece's outline, or nil where it does.
func (g *Garment) goesOn(p *Piece, level *Level, edge int, at float64) error {
	if edge < 0 {
		return nil // a gap in the outline is reported as such
	}
	e := p.Edges[edge]
	var into *Piece
	for _, u := range g.usesAt(e, at) {
		if u.Kind == Folded {
			return nil
		}
		for _, next := range g.across(u, e) {
			if next.Reaches(level) {
				return nil
			}
			into = next
		}
	}
	if into != nil {
		return missing("%s is not closed at the %s level: it runs over %s into %s, which has no width there", p.Layer.Address(), level.Name, e.Address(), into.Address())
	}
	return missing("%s is open at the %s level: %s is not sewn, folded or closed there", p.Layer.Address(), level.Name, e.Address())
}

// across are the pieces that a use joins an edge, or its neighbour at a corner,
// to.
func (g *Garment) across(u Use, e *Edge) []*Piece {
	var out []*Piece
	if j := g.JoinOf(u.Thing); j != nil {
		for i, side := range j.Sides {
			for _, s := range side {
				if s.Edge.Piece != e.Piece {
					continue
				}
				for _, other := range j.Sides[1-i] {
					out = append(out, other.Edge.Piece)
				}
			}
		}
	}
	return out
}

// cornerReach is how close to a corner, in millimetres, a level may leave the
// cloth and still count as leaving over the edge on the other side of the
// corner: a level is often drawn exactly through one.
const cornerReach = 0.5

// usesAt are the uses by which the cloth may go on past a place of an edge.
func (g *Garment) usesAt(e *Edge, s float64) []Use {
	var out []Use
	for _, u := range g.Uses(e) {
		if u.Kind.Joining() && u.Err == nil && s > u.From-cornerReach && s < u.To+cornerReach {
			out = append(out, u)
		}
	}
	atStart, atEnd := s < cornerReach, s > e.Length()-cornerReach
	if !atStart && !atEnd {
		return out
	}
	next := e.Neighbour(atEnd)
	for _, u := range g.Uses(next) {
		meets := u.From < cornerReach
		if atStart {
			meets = u.To > next.Length()-cornerReach
		}
		if u.Kind.Joining() && u.Err == nil && meets {
			out = append(out, u)
		}
	}
	return out
}
