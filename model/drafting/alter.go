package drafting

import (
	"cmp"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// How an altered line is drawn.
const (
	alterTolerance = 1e-5 // how closely the moved line is followed
	cornerRun      = 100  // how far a line is run on to meet its neighbour
)

// Alter re-draws every edge that the garment's alterations name. Between the
// levels the amount follows a monotone cubic (Fritsch and Carlson 1980), beyond
// the outermost it stays. An edge that lies across is moved down or up in the same
// way, by amounts at places along it. Sideways moves are made first, so several
// alterations of one edge simply add up, and one that undoes another leaves the line as it was
// drafted. The neighbours are trimmed or run on to meet the new lines. Notches
// and darts given by a distance or a level go along at their height; notches
// given by a point stay where they are.
func Alter(g *model.Garment) []model.Diagnostic {
	moves := map[*model.Edge]move{}
	for _, a := range g.Alterations {
		for _, e := range a.Edges {
			if !a.Moves(e) {
				continue
			}
			m, fault := moves[e], ""
			if len(a.Inward) > 0 {
				var t curve.Term
				t, fault = term(a, e)
				m.aside = append(m.aside, t)
			}
			if len(a.Down) > 0 && fault == "" && e.Drawn() {
				var t curve.Term
				t, fault = down(a, e)
				m.down = append(m.down, t)
			}
			if fault == "" && !e.Drawn() {
				fault = noDrawing(e)
			}
			if fault != "" {
				return []model.Diagnostic{{Severity: "error", Summary: fault, Place: a.Place}}
			}
			moves[e] = m
		}
	}
	pieces, fault := sourcesFirst(g, moves)
	if fault != nil {
		return []model.Diagnostic{*fault}
	}
	for _, p := range pieces {
		if fault := redraw(p, moves); fault != nil {
			return []model.Diagnostic{*fault}
		}
	}
	return nil
}

// term is what an alteration does to one edge.
func term(a *model.Alteration, e *model.Edge) (curve.Term, string) {
	if !e.Drawn() {
		return curve.Term{}, noDrawing(e)
	}
	ramp, fault := Ramp(a, e.Piece)
	if fault != "" {
		return curve.Term{}, fault
	}
	inward, ok := Inward(e)
	if !ok {
		return curve.Term{}, a.Address() + " moves edges sideways, and " + e.Address() + " runs across: move it by down or up"
	}
	return curve.Term{Ramp: ramp, Factor: inward}, ""
}

func noDrawing(e *model.Edge) string {
	return e.Address() + " has no drawing; alter its length and widths instead"
}

// Ramp is how far the alteration takes in an edge of a piece, by the heights of
// the piece's own frame.
func Ramp(a *model.Alteration, p *model.Piece) (*curve.Ramp, string) {
	return rampOf(a.Inward, p, a.Address())
}

// rampOf is an amount that goes from level to level of a piece. What states it is
// named in a message.
func rampOf(stated []model.LevelValue, p *model.Piece, by string) (*curve.Ramp, string) {
	type amount struct{ y, inward float64 }
	var amounts []amount
	for _, v := range stated {
		y, ok := p.LevelY(v.Level)
		if !ok {
			return nil, p.Address() + " has no " + v.Level.Name + " level of its own"
		}
		amounts = append(amounts, amount{y, v.Value})
	}
	slices.SortFunc(amounts, func(a, b amount) int { return cmp.Compare(a.y, b.y) })
	var ys, values []float64
	for _, v := range amounts {
		ys, values = append(ys, v.y), append(values, v.inward)
	}
	ramp, err := curve.NewRamp(ys, values)
	if err != nil {
		return nil, by + ": " + err.Error()
	}
	return ramp, ""
}

// Inward is the sideways direction in which the edge's cloth lies: 1 towards
// larger x, -1 towards smaller. There is none where the edge ends at the height
// at which it starts.
func Inward(e *model.Edge) (float64, bool) {
	region, err := e.Piece.Region()
	fall := e.Path.End().Y - e.Path.Start().Y
	if err != nil || math.Abs(fall) < 1 {
		return 0, false
	}
	return towardsCloth(region.Clockwise(), fall), true
}

// towardsCloth is the sideways direction in which the cloth of an outline lies
// beside an edge that runs so far down the paper.
func towardsCloth(clockwise bool, fall float64) float64 {
	// With y downward the cloth of a clockwise outline lies on the right of the
	// way round it, which is towards smaller x where the edge runs down.
	if clockwise == (fall > 0) {
		return -1
	}
	return 1
}

// redraw lays the piece's traced edges anew where the lines that they are traced
// from were altered, moves its edges and makes their corners meet again.
func redraw(p *model.Piece, moves map[*model.Edge]move) *model.Diagnostic {
	l := lay(p, moves)
	if l.fault != nil {
		return l.fault
	}
	if p.Ends != nil {
		if fault := l.cutAgain(); fault != nil {
			return fault
		}
	}
	altered := false
	for i, e := range p.Edges {
		altered = altered || l.moved[i] != e.Path
	}
	if !altered {
		return nil
	}
	if e := p.FirstPaper(); e != nil {
		return faultAt(p.Place, "", "%s cannot be altered: %s has no drawing", p.Address(), e.Address())
	}
	closed, open := curve.CloseCorners(l.moved, cornerRun)
	if open >= 0 {
		e := p.Edges[open]
		return faultAt(p.Place, "", "as altered, %s and %s do not meet any more", e.Address(), e.Neighbour(true).Address())
	}
	p.Store = model.Store{}
	for i, e := range p.Edges {
		carryEdge(e, l.lines[i], moves[e], closed[i])
		if closed[i] != e.Path {
			e.Drafted, e.Path, e.Store = e.Path, closed[i], model.Store{}
		}
		if m := moves[e]; !m.none() && e.Cut != nil {
			e.Cut = m.line(e.Cut)
		}
	}
	return nil
}

// carryEdge takes the notches and darts of an edge that are given by a distance
// along it to the same height on its new line.
func carryEdge(e *model.Edge, line *curve.Path, m move, redrawn *curve.Path) {
	along := func(at float64) float64 {
		if redrawn == line || at > line.Length() {
			return at
		}
		s, _ := redrawn.Nearest(m.point(line.At(at)))
		return s
	}
	for _, n := range e.Piece.Notches {
		if n.On == e && model.Known(n.At) {
			n.At = along(n.At)
		}
	}
	for _, d := range e.Piece.Darts {
		if d.On == e {
			d.At = along(d.At)
		}
	}
}
