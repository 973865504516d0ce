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
	ease, alike := spread.Ease, true
	if len(s.share.Over) > 0 {
		var outside float64
		outside, alike = s.outside(spread)
		if s.share.Ease.Beyond(ease) != 0 { // what is longer outside the stretch is reported there
			ease -= outside
		}
	}
	s.amount(spread, ease)
	if alike && math.Abs(s.share.Ease.Beyond(ease)) <= s.Limit("ease") {
		s.percent(spread)
	}
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

// longerStretch is a stretch outside the ease that is longer on one layer.
type longerStretch struct {
	from, to sewing.EaseMark
	longer   float64 // the outer side
}

// outside checks each stretch outside the stated one: there the sides are alike,
// from the nearest end on. It gives how much longer the outer side is there, and
// whether all is alike.
func (s *sharing) outside(spread sewing.EaseSpread) (longer float64, alike bool) {
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
	found, aloneBefore := s.along(before, 1)
	more, aloneBehind := s.along(behind, -1)
	found = append(found, more...)
	worst := longerStretch{from: spread.Marks[0], to: spread.Marks[0]}
	for _, u := range found {
		longer += u.longer
		if math.Abs(u.longer) > math.Abs(worst.longer) {
			worst = u
		}
	}
	say := rules.Say{Key: "outside the ease", Place: s.innerPlaceAt(worst.to.Along), Related: s.edges(),
		Account: betweenAccount(worst.from, worst.to)}
	say.Message = func() string {
		long, short := layerOf(s.outer), layerOf(s.inner)
		if worst.longer < 0 {
			long, short = short, long
		}
		text := fmt.Sprintf("from %s to %s, outside the stretch that takes the ease of %s, %s is %s longer than %s (%s against %s); no more than %s is allowed. ",
			worst.from.Name, worst.to.Name, s.share.Address(), long, s.Show(math.Abs(worst.longer)), short,
			s.Show(math.Abs(worst.to.Outer-worst.from.Outer)), s.Show(math.Abs(worst.to.Along-worst.from.Along)), s.Show(near))
		for _, u := range found {
			if u != worst {
				text += fmt.Sprintf("From %s to %s they differ by %s. ", u.from.Name, u.to.Name, s.Show(math.Abs(u.longer)))
			}
		}
		return text + "Draw both alike there, or say by over where the ease lies."
	}
	s.AtMost(math.Abs(worst.longer), "length", say)
	return longer, len(found) == 0 && !aloneBefore && !aloneBehind
}

// along looks at marks that follow each other from an end on, where the sides are
// as far apart as at that end: way is 1 from the start and -1 from the end. A mark
// that lies out of its place alone is a notch that is wrong; where all that follow
// do so too the stretch before it is longer on one side.
func (s *sharing) along(marks []sewing.EaseMark, way float64) (found []longerStretch, notch bool) {
	limit, from := s.Limit("length"), marks[0]
	for i := 1; i < len(marks); i++ {
		m, longer := marks[i], way*(marks[i].Off()-from.Off())
		alone := m.Notch != nil && i+1 < len(marks) && math.Abs(marks[i+1].Off()-from.Off()) <= limit
		if m.Notch != nil {
			s.held[m.Notch] = true
		}
		if math.Abs(longer) > limit && !alone {
			found, from = append(found, longerStretch{from, m, longer}), m
			continue
		}
		if m.Notch == nil {
			continue
		}
		notch = notch || math.Abs(longer) > limit
		say := rules.Say{Key: "notch " + m.Name, Place: m.Inner.Given,
			Related: []rules.Related{{Message: m.Name + " lies here", Place: m.Notch.Given}},
			Account: betweenAccount(from, m)}
		say.Message = func() string {
			return fmt.Sprintf("%s and %s, which it is laid on, lie %s apart outside the stretch that takes the ease of %s; no more than %s is allowed. Move one of the two.",
				m.Inner.Address(), m.Name, s.Show(math.Abs(longer)), s.share.Address(), s.Show(limit))
		}
		s.AtMost(math.Abs(longer), "length", say)
	}
	return found, notch
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
	ease, of := spread.Ease, spread.Inner
	if len(s.share.Over) == 0 {
		most = math.Inf(-1)
		for _, st := range spread.Stretches {
			if !s.astray(st.From) && !s.astray(st.To) && st.Percent() > most {
				most, what = st.Percent(), fmt.Sprintf("the stretch from %s to %s", st.From.Name, st.To.Name)
				ease, of = st.Ease(), st.Inner
			}
		}
	}
	if !model.Known(most) || math.IsInf(most, 0) {
		return
	}
	say := rules.Say{Key: "percent", Place: s.share.EasePlace, Note: true, Account: percentAccount(ease, of, most, what)}
	say.Message = func() string {
		return fmt.Sprintf("the ease of %s is %s of %s; past %s it is hard to sew in without tucks. Spread it over more of the edge, or ease less.",
			s.share.Address(), percentText(most), what, percentText(s.Limit("eased")))
	}
	s.AtMost(most, "eased", say)
}

func percentText(v float64) string { return model.Decimal(v, 1) + " %" }
