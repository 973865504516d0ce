package layers

import (
	"cmp"
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/layering"
	"understitch/rules"
)

//go:embed testdata/dart-answer.bad.garment.hcl
var dartAnswerBad string

//go:embed testdata/dart-answer.good.garment.hcl
var dartAnswerGood string

// DartAnswer checks that darts which answer each other on two layers lie on
// each other.
var DartAnswer = &rules.Rule{
	Name:     "dart-answer",
	Family:   "layers",
	Severity: rules.Warning,
	Under:    []string{"dart-legs", "shared-edge", "inner-within-outer"},
	Doc: rules.Doc{
		Title: "A dart that is answered by a dart on the layer under it has that dart in its own place, and as long",
		Why: "Two darts that shape the body at one place must come to their points at one place. When one was moved or lengthened at a fitting and " +
			"the other left, every seam still fits and the widths agree, but the point of the one layer stands beside that of the other: the " +
			"shell dimples over it, or the lining drags.",
		How: "Darts answer each other where they bear one name and open on edges that a share names together, or that bear one name, or where " +
			"both have two points. Without a name in common those that lie near each other are taken. Where one piece has more of them than the " +
			"other, a dart may be answered by two, by a pleat or by a seam, and is left. Along an edge the mouths are compared by their distance " +
			"from its ends, darts closed; darts with two points as the pieces lie on each other. What the pieces differ by between the dart and " +
			"their sides is allowed for, and so is what is to be doubted in a share that they are laid together by. Points are compared where " +
			"the mouths agree: a dart that takes out less may be shorter by as much, and one that opens on a lower edge too. How much the darts " +
			"take out is judged by the widths. A finding of shared-edge, dart-legs or inner-within-outer at the dart stands for this one.",
		Nothing: "No dart of the one piece answers one of the other.",
		Fix: "Draw the dart on both layers from one place. A lining's dart that ends sooner on purpose, or lies beside the shell's to save bulk, is a " +
			"thing to waive.",
		Bad: dartAnswerBad, Good: dartAnswerGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "place", Value: 3, Unit: rules.Millimetres, Source: "common practice, no source",
			Text: "how far a dart may lie from the one that it answers: a warning past this"},
		{Name: "point", Value: 6, Unit: rules.Millimetres, Source: "common practice, no source: a lining's dart is often left a little shorter",
			Text: "how far the points of two such darts may lie from each other: a warning past this, a note where the inner dart is the shorter one"},
		{Name: "near", Value: 25, Unit: rules.Millimetres, Source: "common practice, no source",
			Text: "how near to each other darts lie that answer each other without bearing one name"},
	},
	Each: rules.Insides(dartAnswer),
}

func dartAnswer(p *rules.Pass, inside *model.Inside) {
	p.NothingHere() // where no dart answers another
	answers, err := layering.DartAnswers(p.Garment, inside, p.Limit("near"))
	if err != nil {
		p.Cannot(err, rules.Say{})
	}
	for _, a := range answers {
		switch along := tooWideAlong(p, inside, a); {
		case !place(p, a, along):
		case a.Outer.Pleat != nil || a.Inner.Pleat != nil: // a dart may be answered by a pleat, which has no tip
			points(p, a, along)
		case untipped(a.Outer) != nil || untipped(a.Inner) != nil:
			p.Cannot(cmp.Or(untipped(a.Outer), untipped(a.Inner)), answerSay(a, "tip"))
		default:
			points(p, a, along)
		}
	}
}

// untipped is the reason why it is not known where a dart comes to its point; nil
// where it is.
func untipped(d *model.Dart) error {
	if len(d.Legs()) > 0 {
		return nil
	}
	if err := d.Piece.Undrawn(); err != nil {
		return err
	}
	return fmt.Errorf("%s has no tip", d.Address())
}

// tooWideAlong names the findings about the widths at the heights at which one of
// the darts takes something out.
func tooWideAlong(p *rules.Pass, inside *model.Inside, a layering.DartAnswer) []rules.Under {
	top, bottom := math.Inf(1), math.Inf(-1)
	for _, d := range []*model.Dart{a.Outer, a.Inner} {
		if d.Piece != a.Outer.Piece && !inside.OneFrame() {
			continue
		}
		for _, l := range d.Legs() {
			top = min(top, l.Tip.Y, l.A.Y, l.B.Y)
			bottom = max(bottom, l.Tip.Y, l.A.Y, l.B.Y)
		}
	}
	return tooWideBetween(p, inside, top, bottom)
}

// place judges where the inner dart lies, the way that it lies off more, and
// reports whether it lies where it must.
func place(p *rules.Pass, a layering.DartAnswer, along []rules.Under) bool {
	say := answerSay(a, "place")
	shift := a.Aside
	if math.Abs(a.Lower.Off()) > math.Abs(a.Aside.Off()) {
		shift = a.Lower
		if math.Abs(a.Aside.Off()) <= p.Limit("place") {
			say.Under = append(say.Under, along...)
		}
	}
	if a.Share != nil {
		say.Under = append(say.Under, rules.Under{Rule: "shared-edge", Subject: a.Share.Address()})
	}
	say.Account = shiftAccount(p, a, shift, where(a, shift == a.Lower))
	say.Message = func() string {
		return fmt.Sprintf("%s lies %s %s, which it answers; no more than %s is meant%s. Move the one or the other.",
			a.Inner.Address(), whereTo(p, a), a.Outer.Address(), p.Show(p.Limit("place")), besides(p, shift, "the pieces"))
	}
	say.Mend = &rules.Mend{Title: fmt.Sprintf("move %s back by %s, or %s as far the other way", a.Inner.Address(), p.Show(math.Abs(shift.By)),
		a.Outer.Address())}
	within(p, shift, "place", say)
	return math.Abs(shift.Off()) <= p.Limit("place")
}

// within judges a shift without regard to its sign, which is a matter of which
// way round the pieces are drawn.
func within(p *rules.Pass, s layering.DartShift, limit string, say rules.Say) {
	p.Within(math.Abs(s.By), model.Range{Low: -meant(s), High: meant(s)}, limit, say)
}

// nothing is how far, in millimetres, something that lies in its place may seem to
// lie off by the computer's arithmetic alone.
const nothing = 1e-6

// meant is how far something may lie off the way that it does; the less of the two
// ways where it lies in its place.
func meant(s layering.DartShift) float64 {
	switch {
	case math.Abs(s.By) < nothing:
		return math.Min(-s.Meant.Low, s.Meant.High)
	case s.By < 0:
		return -s.Meant.Low
	}
	return s.Meant.High
}

// besides says what is allowed beside a limit.
func besides(p *rules.Pass, s layering.DartShift, what string) string {
	if p.Show(meant(s)) == p.Show(0) {
		return ""
	}
	return fmt.Sprintf(" beside the %s that %s differ by", p.Show(meant(s)), what)
}

// whereTo says how far an inner dart lies off, and which way.
func whereTo(p *rules.Pass, a layering.DartAnswer) string {
	way := func(s layering.DartShift, more, less string) string {
		switch {
		case p.Show(math.Abs(s.By)) == p.Show(0):
			return ""
		case s.By < 0:
			return p.Show(-s.By) + " " + less
		}
		return p.Show(s.By) + " " + more
	}
	if a.Inner.On != nil {
		on := " of " + a.Outer.On.Address() + " than"
		return way(a.Aside, "nearer to the end"+on, "nearer to the start"+on)
	}
	aside, lower := way(a.Aside, "to the right of", "to the left of"), way(a.Lower, "lower than", "higher than")
	if aside != "" && lower != "" {
		return aside + " and " + lower
	}
	return aside + lower
}

// points judges where the inner dart comes to its points.
func points(p *rules.Pass, a layering.DartAnswer, along []rules.Under) {
	for _, point := range a.Points {
		say := answerSay(a, point.Name)
		say.Under = append(say.Under, along...)
		if math.Abs(point.Lean.Off()) > math.Abs(point.Longer.Off()) {
			say.Message = func() string {
				return fmt.Sprintf("%s points %s aside of %s, which it answers; no more than %s is meant. Draw both to one point.",
					a.Inner.Address(), p.Show(point.Lean.By), a.Outer.Address(), p.Show(p.Limit("point")))
			}
			say.Account = shiftAccount(p, a, point.Lean, "the point of %s, aside of the outer's middle line")
			within(p, point.Lean, "point", say)
			continue
		}
		how, mend, other := "longer", "shorten", "lengthen"
		if point.Longer.By < 0 {
			how, mend, other = "shorter", other, mend
		}
		say.Mild = point.Longer.By < 0
		by := p.Show(math.Abs(point.Longer.By))
		say.Message = func() string {
			return fmt.Sprintf("%s is %s %s to its %s than %s, which it answers; no more than %s is meant%s. Draw both to one point.", a.Inner.Address(), by, how,
				point.Name, a.Outer.Address(), p.Show(p.Limit("point")), besides(p, point.Longer, "the darts"))
		}
		say.Mend = &rules.Mend{Title: fmt.Sprintf("%s %s by %s, or %s %s by as much", mend, a.Inner.Address(), by, other, a.Outer.Address())}
		say.Account = shiftAccount(p, a, point.Longer, "%s from the middle of its widest place to its "+point.Name)
		within(p, point.Longer, "point", say)
	}
}

func answerSay(a layering.DartAnswer, what string) rules.Say {
	return rules.Say{
		Key: what + " of " + a.Inner.Address(), Place: a.Inner.Place,
		Related: []rules.Related{{Message: "the dart it answers, " + a.Outer.Address(), Place: a.Outer.Place}},
		Under:   []rules.Under{{Rule: "dart-legs", Subject: a.Outer.Address()}, {Rule: "dart-legs", Subject: a.Inner.Address()}},
	}
}
