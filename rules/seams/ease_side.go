package seams

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/ease-side.bad.garment.hcl
var easeSideBad string

//go:embed testdata/ease-side.good.garment.hcl
var easeSideGood string

// EaseSide checks that the side which is to be eased in is never the shorter one.
var EaseSide = rules.Rule{
	Name:     "ease-side",
	Family:   "seams",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "Ease lies on the side it is meant for: a sleeve cap is never shorter than its armhole",
		Why: "Ease belongs to the side that covers more of the body: the back shoulder, the cap of a sleeve. Where that side comes out shorter, be " +
			"it by a millimetre, the other is eased in instead. The shoulder drags to the front, and the armhole puckers under a cap that is " +
			"stretched.",
		How: "Which side is to be eased in is told by the seam's ease, not by the names of the pieces: ease from nothing upward is on the first " +
			"side, from nothing downward on the second. The two sides are walked along the stitch line, darts closed, and that side may not be " +
			"the shorter. A seam without ease, or whose ease goes either way, is not checked.",
		Nothing: "No ease is stated, or it may fall on either side.",
		Fix: "Let out the side that is to be eased in, or shorten the other. If the ease is stated for the wrong side, turn the sides round in " +
			"join.",
		Bad: easeSideBad, Good: easeSideGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "shorter", Value: 0.5, Unit: rules.Millimetres, Text: "how much shorter the side with the ease may be: the width of a pencil line", Source: "common practice, no source; that a cap shorter than its armhole is always an error: Sleeve cap ease, emmakespatterns.com"},
	},
	Each: rules.Seams(easeSide),
}

func easeSide(p *rules.Pass, s *model.Seam) {
	onFirst, onSecond := s.Ease.Low >= 0 && s.Ease.High > 0, s.Ease.High <= 0 && s.Ease.Low < 0
	if !onFirst && !onSecond {
		p.NothingHere()
		return
	}
	a, b, err := sewing.Walks(p.Garment, p.Garment.JoinOf(s))
	if err != nil {
		p.Cannot(err, rules.Say{Place: s.Join})
		return
	}
	eased, other := sewing.SideText(s.Sides[0]), sewing.SideText(s.Sides[1])
	meant := s.Ease
	if onSecond {
		eased, other, a, b = other, eased, b, a
		meant = model.Range{Low: -meant.High, High: -meant.Low}
	}
	easedLength, otherLength := a.Length, b.Length
	shorter := otherLength - easedLength
	fix := fmt.Sprintf("Let %s out by %s at least, or shorten %s.", eased, p.Show(shorter+meant.Low), other)
	mend := &rules.Mend{Title: fmt.Sprintf("let out %s by %s", eased, p.Show(shorter+meant.Low))}
	if shorter > p.Limit("shorter") && meant.Beyond(shorter) == 0 { // the other way round all is well
		fix += fmt.Sprintf(" If %s is to be eased in, turn the two sides round in join instead.", other)
		mend = &rules.Mend{Title: "turn the two sides of " + s.Address() + " round in join"}
	}
	p.AtMost(max(shorter, 0), "shorter", rules.Say{
		Place: s.Join, Account: easeSideAccount(a, b, eased, other),
		Message: func() string {
			return fmt.Sprintf("%s is to be eased on to %s, and is %s shorter (%s against %s): the ease falls on the wrong side. %s",
				eased, other, p.Show(shorter), p.Show(easedLength), p.Show(otherLength), fix)
		},
		Mend: mend,
	})
}
