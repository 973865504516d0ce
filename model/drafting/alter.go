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
// the outermost it stays. Heights do not change, so several alterations of one
// edge simply add up, and one that undoes another leaves the line as it was
// drafted. The neighbours are trimmed or run on to meet the new lines. Notches
// and darts given by a distance or a level go along at their height; notches
// given by a point stay where they are.
func Alter(g *model.Garment) []model.Diagnostic {
	shifts := map[*model.Edge]curve.Shift{}
	for _, a := range g.Alterations {
		for _, e := range a.Edges {
			if !a.Moves(e) {
				continue
			}
			term, fault := term(a, e)
			if fault != "" {
				return []model.Diagnostic{{Severity: "error", Summary: fault, Place: a.Place}}
			}
			shifts[e] = append(shifts[e], term)
		}
	}
	pieces, fault := sourcesFirst(g, shifts)
	if fault != nil {
		return []model.Diagnostic{*fault}
	}
	for _, p := range pieces {
		if fault := redraw(p, shifts); fault != nil {
			return []model.Diagnostic{*fault}
		}
	}
	return nil
}

// term is what an alteration does to one edge.
func term(a *model.Alteration, e *model.Edge) (curve.Term, string) {
	if !e.Drawn() {
		return curve.Term{}, e.Address() + " has no drawing; alter its length and widths instead"
	}
	ramp, fault := Ramp(a, e.Piece)
	if fault != "" {
		return curve.Term{}, fault
	}
	inward, ok := Inward(e)
	if !ok {
		return curve.Term{}, a.Address() + " moves edges sideways, and " + e.Address() + " runs across: move its points instead"
	}
	return curve.Term{Ramp: ramp, Factor: inward}, ""
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
func redraw(p *model.Piece, shifts map[*model.Edge]curve.Shift) *model.Diagnostic {
	l := lay(p, shifts)
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
		carryEdge(e, l.lines[i], shifts[e], closed[i])
		if closed[i] != e.Path {
			e.Drafted, e.Path, e.Store = e.Path, closed[i], model.Store{}
		}
		if shift := shifts[e]; len(shift) > 0 && e.Cut != nil {
			e.Cut = e.Cut.Sideways(shift, alterTolerance)
		}
	}
	return nil
}

// carryEdge takes the notches and darts of an edge that are given by a distance
// along it to the same height on its new line.
func carryEdge(e *model.Edge, line *curve.Path, shift curve.Shift, redrawn *curve.Path) {
	along := func(at float64) float64 {
		if redrawn == line || at > line.Length() {
			return at
		}
		mark := line.At(at)
		mark.X += shift.At(mark.Y)
		s, _ := redrawn.Nearest(mark)
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
