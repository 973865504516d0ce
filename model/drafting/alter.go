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
			term, fault := term(a, e)
			if fault != "" {
				return []model.Diagnostic{{Severity: "error", Summary: fault, Place: a.Place}}
			}
			shifts[e] = append(shifts[e], term)
		}
	}
	for _, p := range g.Pieces() {
		if fault := redraw(p, shifts); fault != "" {
			return []model.Diagnostic{{Severity: "error", Summary: fault, Place: p.Place}}
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
	type amount struct{ y, inward float64 }
	var amounts []amount
	for _, v := range a.Inward {
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
		return nil, a.Address() + ": " + err.Error()
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
	// With y downward the cloth of a clockwise outline lies on the right of the
	// way round it, which is towards smaller x where the edge runs down.
	if region.Clockwise() == (fall > 0) {
		return -1, true
	}
	return 1, true
}

// redraw moves the piece's edges and makes their corners meet again.
func redraw(p *model.Piece, shifts map[*model.Edge]curve.Shift) string {
	moved := make([]*curve.Path, len(p.Edges))
	altered := false
	for i, e := range p.Edges {
		moved[i] = e.Path
		if shift := shifts[e]; len(shift) > 0 {
			moved[i] = e.Path.Sideways(shift, alterTolerance)
			altered = true
		}
	}
	if !altered {
		return ""
	}
	if e := p.FirstPaper(); e != nil {
		return p.Address() + " cannot be altered: " + e.Address() + " has no drawing"
	}
	closed, open := curve.CloseCorners(moved, cornerRun)
	if open >= 0 {
		e := p.Edges[open]
		return "as altered, " + e.Address() + " and " + e.Neighbour(true).Address() + " do not meet any more"
	}
	carry(p, shifts, closed)
	p.Store = model.Store{}
	for i, e := range p.Edges {
		if closed[i] != e.Path {
			e.Drafted, e.Path, e.Store = e.Path, closed[i], model.Store{}
		}
		if shift := shifts[e]; len(shift) > 0 && e.Cut != nil {
			e.Cut = e.Cut.Sideways(shift, alterTolerance)
		}
	}
	return ""
}

// carry takes notches and darts given by a distance along to the same height on
// the new line.
func carry(p *model.Piece, shifts map[*model.Edge]curve.Shift, redrawn []*curve.Path) {
	along := func(e *model.Edge, at float64) float64 {
		if redrawn[e.Index] == e.Path || at > e.Length() {
			return at
		}
		mark := e.Path.At(at)
		mark.X += shifts[e].At(mark.Y)
		s, _ := redrawn[e.Index].Nearest(mark)
		return s
	}
	for _, n := range p.Notches {
		if model.Known(n.At) && n.On.Drawn() {
			n.At = along(n.On, n.At)
		}
	}
	for _, d := range p.Darts {
		if d.On != nil {
			d.At = along(d.On, d.At)
		}
	}
}
