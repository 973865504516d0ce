package layers

import (
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/layering"
	"understitch/model/sewing"
	"understitch/rules"
)

// drawn judges what only a drawing shows: the shape of each part between
// meeting pieces, and the corners. A corner beside a part that is at fault
// would only say the same again.
func (s *sharing) drawn(parts []sewing.SharedPart) {
	sound := make([]bool, len(parts))
	for i, part := range parts {
		sound[i] = s.shape(part)
	}
	if sound[0] {
		s.end(false)
	}
	for i, part := range parts[:len(parts)-1] {
		if sound[i] && sound[i+1] {
			s.crossing(*part.Behind)
		}
	}
	if sound[len(parts)-1] {
		s.end(true)
	}
}

// shape judges how the lines of one part lie on each other; it reports whether
// the part is without fault. Where the lengths are at fault already the shapes
// cannot agree.
func (s *sharing) shape(part sewing.SharedPart) bool {
	a, b := part.Lengths()
	outer, inner := s.outer.Runs[part.FirstA].Edge, s.inner.Runs[part.FirstB].Edge
	if math.Abs(a-b) > s.Limit("length") && s.explained(part) {
		return false
	}
	say := rules.Say{Key: "shape " + outer.Address(), Place: s.innerPlace(inner),
		Under: slices.Concat(underLegs(s.outer, part.FirstA, part.LastA), underLegs(s.inner, part.FirstB, part.LastB))}
	bound, err := part.Apart()
	if err != nil {
		s.Cannot(err, say)
		return true // a corner between drawn edges can still be judged
	}
	say.Account = s.shapeAccount(part, bound.High)
	if bound.High > s.Limit("shape") {
		s.parts(part, bound, &say)
	}
	s.AtMost(bound.High, "shape", say)
	return bound.High <= s.Limit("shape")
}

// explained reports whether a finding about lengths covers the part.
func (s *sharing) explained(part sewing.SharedPart) bool {
	return s.lengthFault || part.Before != nil && s.joinFault[*part.Before] || part.Behind != nil && s.joinFault[*part.Behind]
}

// underLegs names the findings that a dart along a part of a side has legs which
// differ: its place or its tip is wrong, and the closed edge has no shape to
// speak of.
func underLegs(w *sewing.Walk, first, last int) []rules.Under {
	var out []rules.Under
	for _, r := range w.Runs[first : last+1] {
		for _, d := range r.Edge.Piece.Darts {
			if d.On == r.Edge {
				out = append(out, rules.Under{Rule: "dart-legs", Subject: d.Address()})
			}
		}
	}
	return out
}

// parts says where the lines of a part differ: the place at which they stand
// furthest apart when they are laid together by their ends, as on the table.
func (s *sharing) parts(part sewing.SharedPart, bound curve.Bound, say *rules.Say) {
	parting, err := part.Parting(s.Limit("shape") / 2)
	if err != nil {
		return
	}
	outer, at := s.outer.PlaceIn(part.FirstA, part.LastA, parting.At)
	length, other := part.Lengths()
	inner, _ := s.inner.PlaceIn(part.FirstB, part.LastB, s.inner.Runs[part.FirstB].Start+(parting.At-s.outer.Runs[part.FirstA].Start)*other/length)
	say.Place, say.Spot = s.innerPlace(inner), layering.Spot{Piece: outer.Piece.Address(), At: outer.Path.At(at)}
	say.Related = []rules.Related{
		{Message: outer.Address() + " is drawn here", Place: outer.Place},
		{Message: inner.Address() + " is drawn here", Place: inner.Place},
	}
	say.Message = func() string {
		return fmt.Sprintf("%s and %s are not of one shape: laid on each other as closely as they can be, they still stand %s apart; "+
			"no more than %s is allowed. %s they part most, by %s, %s. Draft both from one line.",
			s.partText(s.outer, part.FirstA, part.LastA), s.partText(s.inner, part.FirstB, part.LastB), s.Show(bound.High), s.Show(s.Limit("shape")),
			laidBy(parting.By), s.Show(parting.Apart), placeOn(s.Pass, outer, at))
	}
}

func laidBy(by sewing.LaidBy) string {
	switch by {
	case sewing.ByStart:
		return "With the starts laid together and as much as goes with them"
	case sewing.ByEnd:
		return "With the ends laid together and as much as goes with them"
	}
	return "With both ends laid together"
}

func (s *sharing) partText(w *sewing.Walk, first, last int) string {
	var names []string
	for _, r := range w.Runs[first : last+1] {
		names = append(names, r.Edge.Address())
	}
	return sewing.Listed(names)
}

// end judges the corners at the share's start or end.
func (s *sharing) end(atEnd bool) {
	cornerA, cornerB := s.outer.Corner(atEnd), s.inner.Corner(atEnd)
	if cornerA == nil || cornerB == nil {
		return
	}
	a, b := s.outer.Runs[0].Edge, s.inner.Runs[0].Edge
	if atEnd {
		a, b = s.outer.Runs[len(s.outer.Runs)-1].Edge, s.inner.Runs[len(s.inner.Runs)-1].Edge
	}
	end := "start"
	if atEnd {
		end = "end"
	}
	say := rules.Say{Key: cornerKey(a, cornerA), End: end, Place: s.innerPlace(b), Under: s.underShares(a, cornerA)}
	say.Related = []rules.Related{
		{Message: cornerA.Address() + " is drawn here", Place: cornerA.Place},
		{Message: cornerB.Address() + " is drawn here", Place: cornerB.Place},
		{Message: "it meets " + b.Address(), Place: b.Place},
	}
	s.angles(s.outer.EndAngle(atEnd), s.inner.EndAngle(atEnd), say,
		fmt.Sprintf("%s meets %s", a.Address(), cornerA.Name), fmt.Sprintf("%s meets %s", b.Address(), cornerB.Name))
}

// underShares names the findings of other shares about the same corner: the
// layers share the edge beside it as well. Of two shares the first reports the
// corner; a fault of that edge's own length or shape explains it.
func (s *sharing) underShares(edge, beside *model.Edge) []rules.Under {
	var out []rules.Under
	earlier := true
	for _, other := range s.Garment.Shares {
		if other == s.share {
			earlier = false
			continue
		}
		if other.Match != model.Identical || !slices.ContainsFunc(other.Outer, func(st model.Stretch) bool { return st.Edge == beside }) {
			continue
		}
		out = append(out,
			rules.Under{Rule: "shared-edge", Subject: other.Address(), Key: "length"},
			rules.Under{Rule: "shared-edge", Subject: other.Address(), Key: "shape " + beside.Address()})
		if earlier {
			out = append(out, rules.Under{Rule: "shared-edge", Subject: other.Address(), Key: cornerKey(beside, edge)})
		}
	}
	return out
}

func cornerKey(e, beside *model.Edge) string {
	return fmt.Sprintf("corner %s %s", e.Address(), beside.Name)
}

// crossing judges the angle that two meeting pieces make together.
func (s *sharing) crossing(pair sewing.CrossingPair) {
	a, b := s.outer.Runs[pair.A.Run], s.inner.Runs[pair.B.Run]
	say := rules.Say{Key: "corner " + a.Edge.Address(), Place: s.innerPlace(b.Edge)}
	say.Related = []rules.Related{
		{Message: a.Edge.Address() + " is drawn here", Place: a.Edge.Place},
		{Message: b.Edge.Address() + " is drawn here", Place: b.Edge.Place},
	}
	s.angles(s.outer.CrossingAngle(pair.A), s.inner.CrossingAngle(pair.B), say,
		fmt.Sprintf("%s follows %s", a.Edge.Address(), s.outer.Runs[pair.A.Run-1].Edge.Address()),
		fmt.Sprintf("%s follows %s", b.Edge.Address(), s.inner.Runs[pair.B.Run-1].Edge.Address()))
}

// angles judges two angles of cloth, in degrees, where both are known.
func (s *sharing) angles(outer, inner float64, say rules.Say, atOuter, atInner string) {
	if !model.Known(outer) || !model.Known(inner) {
		return
	}
	off := math.Abs(outer - inner)
	say.Account = anglesAccount(outer, atOuter, inner, atInner)
	say.Message = func() string {
		return fmt.Sprintf("the corners of %s differ by %s: %s where %s, %s where %s; no more than %s is allowed. "+
			"Draw the edges that run into it alike on both layers.", s.share.Address(), degrees(off),
			degrees(outer), atOuter, degrees(inner), atInner, degrees(s.Limit("corner")))
	}
	s.AtMost(off, "corner", say)
}

func degrees(v float64) string { return model.Decimal(v, 1) + " degrees" }
