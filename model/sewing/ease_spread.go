package sewing

import (
	"cmp"
	"math"
	"slices"

	"understitch/model"
)

// EaseMark is a place that the two sides of an eased share have in common: an
// end, a notch on both, a place where pieces meet on both, or a level at which the
// ease begins or ends. Distances are millimetres along either side, darts closed.
type EaseMark struct {
	Name         string
	Notch        *model.Notch // of the outer side; nil at other places
	Inner        *model.Notch
	Outer, Along float64 // along the outer and along the inner side
}

// Off is how much further along the outer side the mark lies.
func (m EaseMark) Off() float64 { return m.Outer - m.Along }

// EaseStretch lies between two marks that follow each other.
type EaseStretch struct {
	From, To     EaseMark
	Outer, Inner float64 // its length on either side
	Over         bool    // whether any of it lies where the ease is stated to lie
}

// Ease is how much longer the stretch is on the outer side.
func (s EaseStretch) Ease() float64 { return s.Outer - s.Inner }

// Percent is the ease as a share of what it is eased on to.
func (s EaseStretch) Percent() float64 { return percentOf(s.Ease(), s.Inner) }

func percentOf(ease, of float64) float64 {
	if of == 0 {
		return math.NaN()
	}
	return 100 * ease / of
}

// EaseSpread is how the ease of an eased share is spread along it.
type EaseSpread struct {
	Marks     []EaseMark
	Stretches []EaseStretch
	From, To  float64 // where along the outer side the ease is stated to lie
	Ease      float64 // in all
	Inner     float64 // what the inner side measures where the ease is stated to lie
}

// Percent is the ease in all, as a share of what the inner side measures where it
// is stated to lie.
func (s EaseSpread) Percent() float64 { return percentOf(s.Ease, s.Inner) }

// markNear is how near, in millimetres, a mark must lie to where ease begins or
// ends to be that place (common practice, no source: a pencil line and its
// width).
const markNear = 1

// SpreadOf finds how the ease of an eased share is spread, from mark to mark.
func SpreadOf(share *model.Share, outer, inner *Walk) (EaseSpread, error) {
	s := EaseSpread{To: outer.Length, Ease: outer.Length - inner.Length, Inner: inner.Length}
	s.Marks = []EaseMark{{Name: "the start"}}
	add := func(m EaseMark) {
		last := s.Marks[len(s.Marks)-1]
		if m.Outer > last.Outer+model.NearEnd && m.Along > last.Along+model.NearEnd && m.Outer < outer.Length-model.NearEnd && m.Along < inner.Length-model.NearEnd {
			s.Marks = append(s.Marks, m)
		}
	}
	over, err := s.bounds(share, outer, inner)
	if err != nil {
		return s, err
	}
	for _, m := range sortedMarks(append(commonMarks(outer, inner), over...)) {
		add(m)
	}
	s.Marks = append(s.Marks, EaseMark{Name: "the end", Outer: outer.Length, Along: inner.Length})
	for i := 1; i < len(s.Marks); i++ {
		from, to := s.Marks[i-1], s.Marks[i]
		s.Stretches = append(s.Stretches, EaseStretch{From: from, To: to, Outer: to.Outer - from.Outer, Inner: to.Along - from.Along,
			Over: to.Outer > s.From+markNear && from.Outer < s.To-markNear})
	}
	if len(share.Over) > 0 {
		s.Inner = math.Max(0, s.To-s.From-s.Ease)
	}
	return s, nil
}

// commonMarks are the notches and the places where pieces meet that both sides
// have.
func commonMarks(outer, inner *Walk) []EaseMark {
	var out []EaseMark
	pairs, _, _ := PairNotches(outer, inner)
	for _, p := range pairs {
		out = append(out, EaseMark{Name: p.A.Notch.Address(), Notch: p.A.Notch, Inner: p.B.Notch, Outer: p.A.At, Along: p.B.At})
	}
	if len(outer.Crossings()) == len(inner.Crossings()) {
		for _, p := range PairCrossings(outer, inner, 0) {
			out = append(out, EaseMark{Name: "the start of " + outer.Runs[p.A.Run].Edge.Address(), Outer: p.A.At, Along: p.B.At})
		}
	}
	return out
}

// sortedMarks orders marks along the outer side.
func sortedMarks(marks []EaseMark) []EaseMark {
	slices.SortStableFunc(marks, func(a, b EaseMark) int { return cmp.Compare(a.Outer, b.Outer) })
	return marks
}

// bounds finds where along the outer side the ease is stated to lie, and gives the
// levels there that cross the inner side too.
func (s *EaseSpread) bounds(share *model.Share, outer, inner *Walk) ([]EaseMark, error) {
	if len(share.Over) == 0 {
		return nil, nil
	}
	s.From, s.To = math.Inf(1), math.Inf(-1)
	var marks []EaseMark
	for _, st := range share.Over {
		on, other, outside := outer, inner, true
		if !on.has(st.Edge) {
			on, other, outside = inner, outer, false
		}
		from, to, err := st.Extent()
		if err != nil {
			return nil, err
		}
		a, okA := on.along(st.Edge, from)
		b, okB := on.along(st.Edge, to)
		if !okA || !okB {
			return nil, model.Missingf("%s is not all of it part of %s", st, share.Address())
		}
		if !outside { // by as much as the ease the outer side is longer there
			a, b = min(a, b), max(a, b)
			b += s.Ease
		}
		s.From, s.To = min(s.From, a, b), max(s.To, a, b)
		if !outside {
			continue
		}
		for _, m := range []model.Mark{st.From, st.To} {
			if m.Kind != model.AtLevel {
				continue
			}
			here, err := st.Edge.MarkAt(m)
			if err != nil {
				return nil, err
			}
			at, _ := on.along(st.Edge, here)
			if there, ok := other.atLevel(m.Level); ok {
				marks = append(marks, EaseMark{Name: "the " + m.Level.Name + " level", Outer: at, Along: there})
			}
		}
	}
	s.From, s.To = max(s.From, 0), min(s.To, outer.Length)
	return marks, nil
}

func (w *Walk) has(e *model.Edge) bool {
	return slices.ContainsFunc(w.Runs, func(r Run) bool { return r.Edge == e })
}

// along is where along the walk a place of an edge lies.
func (w *Walk) along(e *model.Edge, at float64) (float64, bool) {
	for _, r := range w.Runs {
		if r.Edge != e || at < min(r.From, r.To)-model.NearEnd || at > max(r.From, r.To)+model.NearEnd {
			continue
		}
		return r.Start + math.Abs(e.Net(at)-e.Net(r.From)), true
	}
	return 0, false
}

// atLevel is where a level crosses the walk, and whether it does so once.
func (w *Walk) atLevel(l *model.Level) (float64, bool) {
	found, out := 0, 0.0
	for _, r := range w.Runs {
		at, err := r.Edge.LevelAt(l)
		if err != nil {
			continue
		}
		if s, ok := w.along(r.Edge, at); ok {
			found, out = found+1, s
		}
	}
	return out, found == 1
}
