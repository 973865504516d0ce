package drafting

import (
	"cmp"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// move is what the alterations of an edge do to its line: they move it sideways by
// an amount that depends on the height, and then down by one that depends on how
// far across it is.
type move struct{ aside, down curve.Shift }

func (m move) none() bool { return len(m.aside) == 0 && len(m.down) == 0 }

// line is a line moved.
func (m move) line(p *curve.Path) *curve.Path {
	if len(m.aside) > 0 {
		p = p.Sideways(m.aside, alterTolerance)
	}
	if len(m.down) > 0 { // down is sideways with the paper turned over its diagonal
		turned := p.Move(diagonal)
		if lowered := turned.Sideways(m.down, alterTolerance); lowered != turned { // where all adds up to nothing the line stays
			p = lowered.Move(diagonal)
		}
	}
	return p
}

// point is a point of the line moved.
func (m move) point(p curve.Point) curve.Point {
	p.X += m.aside.At(p.Y)
	p.Y += m.down.At(p.X)
	return p
}

var diagonal = curve.Mirror(curve.Point{}, curve.Point{X: 1, Y: 1})

// down is what an alteration that lowers an edge does to it: the amounts stand at
// places along the edge, and go on from one to the next by how far across they are.
func down(a *model.Alteration, e *model.Edge) (curve.Term, string) {
	type amount struct{ x, value float64 }
	var amounts []amount
	for _, v := range a.Down {
		s, ok := placeNamed(e, v)
		if !ok {
			return curve.Term{}, a.Address() + ": " + v.Name + " is no place along " + e.Address()
		}
		amounts = append(amounts, amount{e.Path.At(s).X, v.Value})
	}
	slices.SortFunc(amounts, func(a, b amount) int { return cmp.Compare(a.x, b.x) })
	var xs, values []float64
	for _, v := range amounts {
		xs, values = append(xs, v.x), append(values, v.value)
	}
	ramp, err := curve.NewRamp(xs, values)
	if err != nil {
		return curve.Term{}, a.Address() + " moves " + e.Address() + " down, and two of its places lie under each other"
	}
	return curve.Term{Ramp: ramp, Factor: 1}, ""
}

// placeNamed is where along an edge an amount stands.
func placeNamed(e *model.Edge, v model.MarkValue) (float64, bool) {
	if v.Level != nil {
		s, err := e.LevelAt(v.Level)
		return s, err == nil
	}
	switch v.Name {
	case "start", e.Neighbour(false).Name:
		return 0, true
	case "end", e.Neighbour(true).Name:
		return e.Length(), true
	}
	for _, n := range e.Piece.Notches {
		if n.On == e && n.Name == v.Name {
			s, _, err := n.Position()
			return s, err == nil
		}
	}
	return 0, false
}
