package layers

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

// notches judges number, kind and place of the notches on both sides.
func (s *sharing) notches() {
	pairs, onlyOuter, onlyInner := sewing.PairNotches(s.outer, s.inner)
	for _, pair := range pairs {
		s.kinds(pair)
		s.notch(pair, pairs)
	}
	s.missing(onlyOuter, false, pairs)
	s.missing(onlyInner, true, pairs)
}

// kinds says where a notch lies on one of another kind.
func (s *sharing) kinds(pair sewing.NotchPair) {
	if pair.SameKind() {
		return
	}
	outer, inner := pair.A.Notch, pair.B.Notch
	s.Fault(rules.Say{
		Key: "kind " + outer.Address(), Place: inner.Place,
		Related: []rules.Related{{Message: fmt.Sprintf("%s is a %s notch", outer.Address(), pair.A.Kind()), Place: outer.Place}},
		Message: func() string {
			return fmt.Sprintf("%s is a %s notch, and %s, which it is laid on, a %s one. Cut both alike.",
				inner.Address(), pair.B.Kind(), outer.Address(), pair.A.Kind())
		},
	})
}

// notch judges how far two paired notches are off each other.
func (s *sharing) notch(pair sewing.NotchPair, pairs []sewing.NotchPair) {
	if s.held[pair.A.Notch] {
		return
	}
	off := math.Abs(s.notchOff(pair))
	moved, kept, side := pair.B, pair.A, s.inner
	if sewing.Crowded(kept.Notch) && !sewing.Crowded(moved.Notch) { // the outer's lies where no notch belongs
		moved, kept, side = kept, moved, s.outer
	}
	edge, at := side.Place(s.counterpart(kept.At, side == s.outer, pairs))
	say := rules.Say{
		Key: "notch " + pair.A.Notch.Address(), Place: moved.Notch.Given,
		Related: []rules.Related{{Message: fmt.Sprintf("%s lies %s along %s", kept.Notch.Address(), s.Show(kept.At), s.share.Address()), Place: kept.Notch.Given}},
		Mend:    s.moved(moved.Notch, edge, at),
		Account: s.placeAccount(pair.A.Notch.Address(), pair.A.At, pair.B.Notch.Address(), pair.B.At),
		Under:   []rules.Under{{Rule: "notch-on-line", Subject: pair.A.Notch.Address()}, {Rule: "notch-on-line", Subject: pair.B.Notch.Address()}},
	}
	say.Message = func() string {
		return fmt.Sprintf("%s lies %s along %s, and %s, which it is laid on, %s: %s off; no more than %s is allowed. "+
			"To follow %s, put %s at %s along %s.", moved.Notch.Address(), s.Show(moved.At), s.share.Address(), kept.Notch.Address(),
			s.Show(kept.At), s.Show(off), s.Show(s.Limit("length")), kept.Notch.Piece.Layer.Address(), moved.Notch.Address(), s.Show(at), edge.Address())
	}
	s.AtMost(off, "length", say)
}

// notchOff is how far a pair is off, by what the lengths do not explain: ease,
// or a wrong length, may lie between any of the notches.
func (s *sharing) notchOff(pair sewing.NotchPair) float64 {
	return sewing.Misplaced(pair.Off(), s.longer)
}

// counterpart is where along one side a place of the other belongs. Where the
// sides differ in length it keeps its distance from the last sound pair of
// notches before it, or from the start.
func (s *sharing) counterpart(at float64, ofInner bool, pairs []sewing.NotchPair) float64 {
	from, to := s.outer, s.inner
	if ofInner {
		from, to = to, from
	}
	if s.share.Match == model.Eased {
		return at * to.Length / from.Length
	}
	shift := 0.0
	for _, pair := range pairs {
		before, off := pair.A.At, pair.Off()
		if ofInner {
			before, off = pair.B.At, -off
		}
		if s.lengthFault && before < at && math.Abs(s.notchOff(pair)) <= s.Limit("length") {
			shift = off
		}
	}
	return min(max(at-shift, 0), to.Length)
}

// moved sets a notch right that is given by a distance, in a spec where one
// figure serves one size.
func (s *sharing) moved(n *model.Notch, edge *model.Edge, at float64) *rules.Mend {
	if n.On != edge || !model.Known(n.At) || len(s.Garment.Sizes) > 0 {
		return nil
	}
	return &rules.Mend{
		Title: fmt.Sprintf("put %s at %s along %s", n.Address(), s.Show(at), edge.Address()),
		Edits: []rules.Edit{{Place: n.Given, Text: s.Garment.Unit.Bare(at)}},
	}
}

// missing says which notches of one side the other lacks. Where a notch of the
// other lies off its edge it may well be that one, which notch-on-line reports.
func (s *sharing) missing(lone []sewing.WalkNotch, ofInner bool, pairs []sewing.NotchPair) {
	lacking := s.inner
	if ofInner {
		lacking = s.outer
	}
	var under []rules.Under
	for _, n := range lacking.Lost {
		under = append(under, rules.Under{Rule: "notch-on-line", Subject: n.Address()})
	}
	whole := s.outer.Length
	if ofInner {
		whole = s.inner.Length
	}
	for _, n := range lone {
		if n.At < s.Limit("length") || n.At > whole-s.Limit("length") {
			continue // it marks where the shared stretch ends, and meets the other's corner
		}
		edge, at := lacking.Place(s.counterpart(n.At, ofInner, pairs))
		s.Fault(rules.Say{
			Key: "missing " + n.Notch.Address(), Place: edge.Place, Under: under,
			Related: []rules.Related{{Message: n.Notch.Address() + " stands here", Place: n.Notch.Place}},
			Message: func() string {
				return fmt.Sprintf("%s has no notch to lay on %s, %s along %s. Put a %s one at %s along %s, or take that one out.",
					layerOf(lacking), n.Notch.Address(), s.Show(n.At), s.share.Address(), n.Kind(), s.Show(at), edge.Address())
			},
		})
	}
}
