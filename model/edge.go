package model

import (
	"math"
	"slices"

	"understitch/model/curve"
)

// Drawn reports whether the edge has a drawing, and not only a tape's length.
func (e *Edge) Drawn() bool { return e.Path != nil }

// Length is the length of the stitch line. A drawn edge is measured as it lies
// on the paper, dart mouths open; a paper edge as taped, darts closed.
func (e *Edge) Length() float64 {
	if e.Path == nil {
		return e.PaperLength
	}
	return e.Path.Length()
}

// SewnLength is the length with the darts on the edge closed.
func (e *Edge) SewnLength() float64 { return e.Net(e.Length()) }

// Mouth is the open mouth of a dart, from one leg to the other along the edge
// as drawn; of a pleat, what is folded away.
type Mouth struct {
	Dart     *Dart
	From, To float64
}

// mouths are the mouths on an edge, once they are found.
type mouths struct{ Once[[]Mouth] }

// Mouths are the mouths of the darts that open on the edge, in order along it.
// A paper edge has none: its tape ran over the closed darts.
func (e *Edge) Mouths() []Mouth {
	out, _ := In[mouths](&e.Store).Get(func() ([]Mouth, error) {
		var out []Mouth
		for _, d := range e.Piece.Darts {
			if d.On == e && e.Drawn() {
				at := d.Middle()
				out = append(out, Mouth{d, max(at-d.Intake/2, 0), min(at+d.Intake/2, e.Length())})
			}
		}
		slices.SortFunc(out, func(a, b Mouth) int { return int(math.Copysign(1, a.From-b.From)) })
		return out, nil
	})
	return out
}

// Net turns a distance along the edge as drawn into the distance with the
// darts before it closed. A place inside a mouth falls on the closed dart.
func (e *Edge) Net(s float64) float64 {
	net := s
	for _, m := range e.Mouths() {
		net -= max(0, min(s, m.To)-m.From)
	}
	return net
}

// Raw turns a distance with the darts closed into the distance as drawn.
func (e *Edge) Raw(net float64) float64 {
	s := net
	for _, m := range e.Mouths() {
		if s > m.From {
			s += m.To - m.From
		}
	}
	return s
}

// nearEnd is how close, in millimetres, a level may come to an edge's end and
// still be taken to pass through it: far below what a pencil can draw.
const NearEnd = 0.01

// LevelAt is the distance along the edge as drawn at which a level crosses it.
// Where it crosses several times the first counts.
func (e *Edge) LevelAt(l *Level) (float64, error) {
	if !e.Drawn() {
		return e.PaperLevel(l)
	}
	y, ok := e.Piece.LevelY(l)
	if !ok {
		return 0, Missingf("%s has no %s level of its own", e.Piece.Address(), l.Name)
	}
	if at := e.Path.Crossings(y); len(at) > 0 {
		return at[0], nil
	}
	if math.Abs(e.Path.Start().Y-y) < NearEnd {
		return 0, nil
	}
	if math.Abs(e.Path.End().Y-y) < NearEnd {
		return e.Length(), nil
	}
	return 0, Missingf("the %s level does not cross %s", l.Name, e.Address())
}

// PaperLevel finds a level on an edge without a drawing by the notch that
// carries its name.
func (e *Edge) PaperLevel(l *Level) (float64, error) {
	for _, n := range e.Piece.Notches {
		if n.On == e && n.Name == l.Name && Known(n.At) {
			return n.At, nil
		}
	}
	return 0, Missingf("%s has no drawing and no notch called %q that would mark the level", e.Address(), l.Name)
}

// MarkAt is the distance along the edge as drawn of a mark on it.
func (e *Edge) MarkAt(m Mark) (float64, error) {
	switch m.Kind {
	case AtEnd:
		return e.Length(), nil
	case AtLevel:
		return e.LevelAt(m.Level)
	case AtNotch:
		for _, n := range e.Piece.Notches {
			if n.On == e && n.Name == m.Notch {
				s, _, err := n.Position()
				return s, err
			}
		}
		return 0, Missingf("%s has no notch called %q", e.Address(), m.Notch)
	}
	return 0, nil
}

// Extent is where the stretch lies on its edge as drawn, smaller distance
// first.
func (s Stretch) Extent() (from, to float64, err error) {
	to = s.Edge.Length()
	if s.From.Kind != NoMark {
		if from, err = s.Edge.MarkAt(s.From); err != nil {
			return 0, 0, err
		}
	}
	if s.To.Kind != NoMark {
		if to, err = s.Edge.MarkAt(s.To); err != nil {
			return 0, 0, err
		}
	}
	return min(from, to), max(from, to), nil
}

// SewnLength is the length of the stretch with the darts on it closed.
func (s Stretch) SewnLength() (float64, error) {
	from, to, err := s.Extent()
	return s.Edge.Net(to) - s.Edge.Net(from), err
}

// Neighbour is the edge that meets this one at its end (or at its start).
func (e *Edge) Neighbour(atEnd bool) *Edge {
	n := len(e.Piece.Edges)
	if atEnd {
		return e.Piece.Edges[(e.Index+1)%n]
	}
	return e.Piece.Edges[(e.Index+n-1)%n]
}

// End is the point at the edge's end (or start) and the direction in which the
// edge leaves it.
func (e *Edge) End(atEnd bool) (at, leaving curve.Point) {
	if atEnd {
		return e.Path.End(), e.Path.DirectionBefore(e.Length()).Scale(-1)
	}
	return e.Path.Start(), e.Path.Direction(0)
}

// EndAt moves the end of a drawn edge, before any alteration, as a cutter would who
// re-draws it to another point; with handle set the line keeps its direction
// there. The cut line of a piece drawn with its allowances goes along by as much; one
// drawn beside the stitch line stays.
func (e *Edge) EndAt(p curve.Point, handle bool) {
	by := p.Sub(e.Path.End())
	e.redrawn(func(line *curve.Path) *curve.Path { return line.EndAt(line.End().Add(by), handle) })
}

// StartAt moves the start of a drawn edge in the same way.
func (e *Edge) StartAt(p curve.Point, handle bool) {
	by := p.Sub(e.Path.Start())
	e.redrawn(func(line *curve.Path) *curve.Path {
		return line.Reverse().EndAt(line.Start().Add(by), handle).Reverse()
	})
}

// MoveBy moves a drawn edge as a whole, before any alteration.
func (e *Edge) MoveBy(by curve.Point) {
	e.redrawn(func(line *curve.Path) *curve.Path { return line.Move(curve.Translate(by)) })
}

// Turn draws an edge the other way round, before any alteration.
func (e *Edge) Turn() { e.redrawn((*curve.Path).Reverse) }

func (e *Edge) redrawn(draw func(*curve.Path) *curve.Path) {
	for _, line := range []**curve.Path{&e.Path, &e.Cut} {
		if *line != nil {
			*line = draw(*line)
		}
	}
	e.Store, e.Piece.Store = Store{}, Store{}
}
