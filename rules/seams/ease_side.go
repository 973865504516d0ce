package seams

import (
	_ "embed"
	"fmt"
	"math"

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
			"the shorter. A seam without ease, or whose ease goes either way, is not judged. A side that is so much shorter that seam-walk " +
			"reports it is left to that.",
		Nothing: "No ease is meant, it may fall on either side, or seam-walk finds another ease than is meant.",
		Fix: "Let out the side that is to be eased in, or shorten the other. If the ease is stated for the wrong side, turn the sides round in " +
			"join.",
		Bad: easeSideBad, Good: easeSideGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "shorter", Value: 0.5, Unit: rules.Millimetres, Text: "how much shorter the side with the ease may be: the width of a pencil line", Source: "common practice, no source; that a cap shorter than its armhole is always an error: Sleeve cap ease, emmakespatterns.com"},
		{Name: "walk", Value: 1.6, Unit: rules.Millimetres, Text: "sides that lie further than this outside the ease are left to seam-walk", Source: "1/16 inch, 10 Patternwork Skills, Threads 200, 2018/19, as in seam-walk"},
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
	if math.Abs(s.Ease.Beyond(a.Length-b.Length)) > p.Limit("walk") {
		p.NothingHere() // seam-walk reports it
		return
	}
	eased, other := sewing.SideText(s.Sides[0]), sewing.SideText(s.Sides[1])
	if onSecond {
		eased, other, a, b = other, eased, b, a
	}
	easedLength, otherLength := a.Length, b.Length
	shorter := otherLength - easedLength
	p.AtMost(max(shorter, 0), "shorter", rules.Say{
		Place: s.Join, Account: easeSideAccount(a, b, eased, other),
		Message: func() string {
			return fmt.Sprintf("%s is to be eased on to %s, and is %s shorter (%s against %s): the ease falls on the wrong side. Let it out by %s at least, or shorten the other.",
				eased, other, p.Show(shorter), p.Show(easedLength), p.Show(otherLength), p.Show(shorter))
		},
		Mend: &rules.Mend{Title: fmt.Sprintf("let out %s by %s", eased, p.Show(shorter))},
	})
}
