package drafting

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/curve"
)

// nearEnd is how close two places may lie, in millimetres, and still be one: far
// below what a pencil can draw.
const nearEnd = 0.01

// tracedLine is the stretch of a line that an edge is traced from, while it is
// laid on the piece. It knows the way from places on that line to its own.
type tracedLine struct {
	path     *curve.Path
	from, to float64 // along the line that it is traced from; from > to where it runs against it
	motion   curve.Motion
}

// source is the line that an edge is traced from, as it lies now or as it was
// before its alterations; nil on paper.
func source(e *model.Edge) *curve.Path {
	of := e.Traced.Of
	if e.Traced.Drafted && of.Drafted != nil {
		return of.Drafted
	}
	return of.Path
}

// stretchOf cuts the stretch that an edge is traced from out of its line, or says
// why there is none.
func stretchOf(e *model.Edge) (*tracedLine, *model.Diagnostic) {
	t, line := e.Traced, source(e)
	from, fault := markOn(t, t.From, line, 0)
	if fault != nil {
		return nil, fault
	}
	to, fault := markOn(t, t.To, line, line.Length())
	if fault != nil {
		return nil, fault
	}
	if math.Abs(from-to) < nearEnd {
		return nil, faultAt(t.Place, "", "the stretch of %s that %s is traced from has no length", t.Of.Address(), e.Address())
	}
	return &tracedLine{path: line.Part(from, to), from: from, to: to}, nil
}

// markOn is where a mark lies along the line that is traced.
func markOn(t *model.Trace, m model.Mark, line *curve.Path, unstated float64) (float64, *model.Diagnostic) {
	if m.Kind == model.NoMark {
		return unstated, nil
	}
	if line == t.Of.Path {
		s, err := t.Of.MarkAt(m)
		if err != nil {
			return 0, faultAt(m.Place, "", "%s", err)
		}
		return s, nil
	}
	switch m.Kind {
	case model.AtEnd:
		return line.Length(), nil
	case model.AtLevel:
		if y, ok := t.Of.Piece.LevelY(m.Level); ok {
			if s, ok := placeAt(line, y); ok {
				return s, nil
			}
		}
		return 0, faultAt(m.Place, "", "the %s level does not cross %s as it was drafted", m.Level.Name, t.Of.Address())
	case model.AtNotch:
		return 0, faultAt(m.Place, "Name a level.", "where notch %s lay before the alterations is not known", m.Notch)
	}
	return 0, nil
}

// placeAt is where a line first comes to a height.
func placeAt(line *curve.Path, y float64) (float64, bool) {
	if at := line.Crossings(y); len(at) > 0 {
		return at[0], true
	}
	switch {
	case math.Abs(line.Start().Y-y) < nearEnd:
		return 0, true
	case math.Abs(line.End().Y-y) < nearEnd:
		return line.Length(), true
	}
	return 0, false
}

// move lays the line elsewhere.
func (s *tracedLine) move(m curve.Motion) {
	s.path, s.motion = s.path.Move(m), s.motion.Then(m)
}

// back runs the line the other way.
func (s *tracedLine) back() { s.path, s.from, s.to = s.path.Reverse(), s.to, s.from }

// along is the place on the line of a place on the line that it is traced from,
// and whether that is part of it.
func (s *tracedLine) along(at float64) (float64, bool) {
	if at < min(s.from, s.to)-nearEnd || at > max(s.from, s.to)+nearEnd {
		return 0, false
	}
	return math.Min(math.Abs(at-s.from), s.path.Length()), true
}

// turnOver is the motion that turns a line over about the drafting origin.
var turnOver = curve.Mirror(curve.Point{}, curve.Point{Y: 1})

func faultAt(place model.Place, detail, format string, args ...any) *model.Diagnostic {
	return &model.Diagnostic{Severity: "error", Summary: fmt.Sprintf(format, args...), Detail: detail, Place: place}
}
