package layers

import (
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

// eased checks a share whose outer side is eased on to its inner side: how much
// ease there is, where it lies, and whether its stretch can take so much.
func (s *sharing) eased() {
	spread, err := sewing.SpreadOf(s.share, s.outer, s.inner)
	if err != nil {
		s.Cannot(err, rules.Say{Key: "ease", Place: s.share.EasePlace})
		return
	}
	within := spread.Ease
	if len(s.share.Over) > 0 {
		within -= s.outside(spread)
	}
	s.amount(spread, within)
	s.percent(spread)
}

// amount checks how much longer the outer side is, without what lies outside the
// stretch that the ease is stated for.
func (s *sharing) amount(spread sewing.EaseSpread, ease float64) {
	say := rules.Say{Key: "ease", Place: s.share.EasePlace, Related: s.edges(), Account: s.easeAccount(spread, ease)}
	say.Message = func() string {
		beyond := s.share.Ease.Beyond(ease)
		do := "Draw the outer side shorter, or the inner one longer, by %s."
		if beyond < 0 {
			do = "Draw the outer side longer, or the inner one shorter, by %s."
		}
		return fmt.Sprintf("%s is eased by %s (%s on %s); %s is stated. "+do, s.share.Address(), s.Show(ease),
			percentText(spread.Percent()), s.Show(spread.Inner), s.Garment.ShowRange(s.share.Ease), s.Show(math.Abs(beyond)))
	}
	s.Within(ease, s.share.Ease, "ease", say)
}

// outside checks each stretch outside the stated one: there the sides are alike,
// from the nearest end on. It gives by how much they are not.
func (s *sharing) outside(spread sewing.EaseSpread) float64 {
	s.held = map[*model.Notch]bool{}
	near := s.Limit("length")
	var before, behind []sewing.EaseMark
	for _, m := range spread.Marks {
		switch {
		case m.Outer <= spread.From+near:
			before = append(before, m)
		case m.Outer >= spread.To-near:
			behind = append(behind, m)
		}
	}
	slices.Reverse(behind)
	return s.alike(before, 0, 1) + s.alike(behind, spread.Ease, -1)
}

// alike checks marks that follow each other from an end on, where the sides are as
// far apart as at that end: way is 1 from the start and -1 from the end. A mark that lies out of its place alone is a notch that
// is wrong; where all that follow do so too the stretch before it is. It gives how
// much longer the outer side is by such stretches.
func (s *sharing) alike(marks []sewing.EaseMark, off, way float64) float64 {
	limit, sum := s.Limit("length"), 0.0
	for i := 1; i < len(marks); i++ {
		from, m := marks[i-1], marks[i]
		if m.Notch != nil {
			s.held[m.Notch] = true
		}
		longer := way * (m.Off() - off)
		alone := m.Notch != nil && i+1 < len(marks) && math.Abs(marks[i+1].Off()-off) <= limit
		say := rules.Say{Key: "outside " + m.Name, Place: s.innerPlaceAt(m.Along), Account: s.placeAccount("the outer side", m.Outer, "the inner side", m.Along)}
		say.Related = s.edges()
		say.Message = func() string {
			if alone {
				return fmt.Sprintf("%s and %s, which it is laid on, lie %s apart, outside the stretch that takes the ease of %s; no more than %s is allowed. Move one of the two.",
					m.Name, m.Inner.Address(), s.Show(math.Abs(longer)), s.share.Address(), s.Show(limit))
			}
			long, short := layerOf(s.outer), layerOf(s.inner)
			if longer < 0 {
				long, short = short, long
			}
			return fmt.Sprintf("from %s to %s, outside the stretch that takes the ease of %s, %s is %s longer than %s (%s against %s); no more than %s is allowed. "+
				"Draw both alike there, or say by over where the ease lies.", from.Name, m.Name, s.share.Address(), long, s.Show(math.Abs(longer)), short,
				s.Show(math.Abs(m.Outer-from.Outer)), s.Show(math.Abs(m.Along-from.Along)), s.Show(limit))
		}
		s.AtMost(math.Abs(longer), "length", say)
		if math.Abs(longer) > limit && !alone {
			off, sum = m.Off(), sum+longer
		}
	}
	return sum
}

// astray reports whether a mark is a notch that is found to be out of its place.
func (s *sharing) astray(m sewing.EaseMark) bool {
	return m.Notch != nil && math.Abs(sewing.Misplaced(m.Off(), s.longer)) > s.Limit("length")
}

// innerPlaceAt is the line of the share that names the inner edge at a place.
func (s *sharing) innerPlaceAt(along float64) model.Place {
	e, _ := s.inner.Place(along)
	return s.innerPlace(e)
}

// percent notes more ease than its stretch can take without showing.
func (s *sharing) percent(spread sewing.EaseSpread) {
	most, what := spread.Percent(), "the stretch that takes it"
	if len(s.share.Over) == 0 {
		most = math.Inf(-1)
		for _, st := range spread.Stretches {
			if !s.astray(st.From) && !s.astray(st.To) && st.Percent() > most {
				most, what = st.Percent(), fmt.Sprintf("the stretch from %s to %s", st.From.Name, st.To.Name)
			}
		}
	}
	if !model.Known(most) || math.IsInf(most, 0) {
		return
	}
	say := rules.Say{Key: "percent", Place: s.share.EasePlace, Note: true}
	say.Message = func() string {
		return fmt.Sprintf("the ease of %s is %s of %s; past %s it is hard to sew in without tucks. Spread it over more of the edge, or ease less.",
			s.share.Address(), percentText(most), what, percentText(s.Limit("eased")))
	}
	s.AtMost(most, "eased", say)
}

func percentText(v float64) string { return model.Decimal(v, 1) + " %" }
