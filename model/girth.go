package model

import "understitch/model/curve"

// Girth is what a layer measures round at a level: the widths of its pieces,
// darts closed, each as often as it is cut and twice on a fold. It stands only
// where the layer closes round the body there: where the level runs out over an
// armhole or a neckline the figure is missing, and the reason names the edge.
func (g *Garment) Girth(layer *Layer, level *Level) (float64, error) {
	sum, pieces := 0.0, 0
	for _, p := range layer.Pieces {
		if !p.Reaches(level) {
			continue
		}
		w, err := p.Width(level)
		if err != nil {
			return 0, err
		}
		if e := g.openAt(p, w.Spans); e != nil {
			return 0, missing("%s is open at the %s level: %s is not sewn, folded or closed there", layer.Address(), level.Name, e.Address())
		}
		sum += w.Net * p.Times()
		pieces++
	}
	if pieces == 0 {
		return 0, missing("no piece of %s reaches the %s level", layer.Address(), level.Name)
	}
	return sum, nil
}

// openAt finds an edge over which a level runs out of the cloth, or nil.
func (g *Garment) openAt(p *Piece, spans []curve.Span) *Edge {
	for _, s := range spans {
		for _, end := range []struct {
			edge int
			at   float64
		}{{s.E0, s.S0}, {s.E1, s.S1}} {
			if end.edge < 0 {
				continue // a gap in the outline is reported as such
			}
			if e := p.Edges[end.edge]; !g.joinedAt(e, end.at) {
				return e
			}
		}
	}
	return nil
}

// cornerReach is how close to a corner, in millimetres, a level may leave the
// cloth and still count as leaving over the edge on the other side of the
// corner: a level is often drawn exactly through one.
const cornerReach = 0.5

// joinedAt reports whether the cloth goes on past a place of an edge.
func (g *Garment) joinedAt(e *Edge, s float64) bool {
	for _, u := range g.Uses(e) {
		if u.Kind.Joining() && u.Err == nil && s > u.From-cornerReach && s < u.To+cornerReach {
			return true
		}
	}
	atStart, atEnd := s < cornerReach, s > e.Length()-cornerReach
	if !atStart && !atEnd {
		return false
	}
	next := e.Neighbour(atEnd)
	for _, u := range g.Uses(next) {
		touches := u.From < cornerReach
		if atStart {
			touches = u.To > next.Length()-cornerReach
		}
		if u.Kind.Joining() && u.Err == nil && touches {
			return true
		}
	}
	return false
}
