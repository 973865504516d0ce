package drafting

import (
	"math"
	"slices"

	"understitch/model"
)

// marks puts the notches and darts that came along with an edge on its line, and
// takes those off that lie beyond the stretch.
func (l *laying) marks(e *model.Edge, s *tracedLine) {
	p := l.piece
	p.Notches = slices.DeleteFunc(p.Notches, func(n *model.Notch) bool {
		if n.On != e || n.Traced == nil {
			return false
		}
		place, _, err := n.Traced.Position()
		if err != nil {
			return false // it is reported at its source, and here
		}
		at, on := s.along(place)
		switch {
		case !on && n.Traced.Beyond() == 0:
			return true
		case n.ByPoint:
			n.Point = s.motion.Apply(n.Traced.Point)
		case model.Known(n.At):
			if !on { // beyond the end of its own edge too
				at = math.Abs(place - s.from)
			}
			n.At = at
		}
		return false
	})
	p.Darts = slices.DeleteFunc(p.Darts, func(d *model.Dart) bool {
		if d.On != e || d.Traced == nil {
			return false
		}
		middle, half := d.Traced.Middle(), d.Traced.Intake/2
		at, on := s.along(middle)
		low, high := middle-half, middle+half
		if d.Pleat != nil { // half of it may lie beyond the fold
			low, high, d.Pleat.AtEnd = max(low, 0), min(high, source(e).Length()), false
		}
		_, first := s.along(low)
		_, last := s.along(high)
		inside := middle >= 0 && middle <= source(e).Length()
		switch {
		case !on && !first && !last:
			return inside
		case first != last && (math.Min(s.from, s.to) > 0 || math.Max(s.from, s.to) < source(e).Length()):
			l.fail(faultAt(e.Traced.Place, "End it before or beyond the dart, or leave the dart by without.",
				"the stretch that %s is traced from ends in the mouth of %s", e.Address(), d.Traced.Address()))
		}
		d.At, d.Tip = at, s.motion.Apply(d.Traced.Tip)
		return false
	})
}

// onPaper traces an edge that is known by its length alone.
func (l *laying) onPaper(e *model.Edge) {
	t := e.Traced
	of := t.Of
	switch {
	case t.Evenly != 0 || len(t.Inward) > 0:
		l.fail(faultAt(t.Place, "Measure the edge as it is to be, and state its length.", "%s has no drawing that could be moved inward", of.Address()))
		return
	case t.At != nil || len(t.Through) > 0:
		l.fail(faultAt(t.Place, "", "%s has no drawing that could meet a line", of.Address()))
		return
	}
	from, to := 0.0, of.PaperLength
	for _, m := range []struct {
		mark model.Mark
		at   *float64
	}{{t.From, &from}, {t.To, &to}} {
		if m.mark.Kind == model.NoMark {
			continue
		}
		s, err := of.MarkAt(m.mark)
		if err != nil {
			l.fail(faultAt(m.mark.Place, "", "%s", err))
			return
		}
		*m.at = s
	}
	low, high := math.Min(from, to), math.Max(from, to)
	e.PaperLength = high - low
	if high-low < nearEnd {
		l.fail(faultAt(t.Place, "", "the stretch of %s that %s is traced from has no length", of.Address(), e.Address()))
		return
	}
	along := func(at float64) (float64, bool) {
		inside := at >= low-nearEnd && at <= high+nearEnd
		if low == 0 && at < 0 || high == of.PaperLength && at > high {
			inside = true // beyond the end of the other edge too
		}
		if from > to {
			return high - at, inside
		}
		return at - low, inside
	}
	p := l.piece
	p.Notches = slices.DeleteFunc(p.Notches, func(n *model.Notch) bool {
		if n.On != e || n.Traced == nil || !model.Known(n.Traced.At) {
			return false
		}
		at, on := along(n.Traced.At)
		n.At = at
		return !on
	})
	p.Darts = slices.DeleteFunc(p.Darts, func(d *model.Dart) bool {
		if d.On != e || d.Traced == nil {
			return false
		}
		at, on := along(d.Traced.Middle())
		d.At = at
		if d.Pleat != nil {
			d.Pleat.AtEnd = false
		}
		return !on
	})
}
