package draft

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/rules"
)

//go:embed testdata/size-step.bad.garment.hcl
var sizeStepBad string

//go:embed testdata/size-step.good.garment.hcl
var sizeStepGood string

// SizeStep checks that measures and lengths move steadily from size to size.
var SizeStep = rules.Rule{
	Name:     "size-step",
	Family:   "draft",
	Severity: rules.Note,
	Doc: rules.Doc{
		Title: "Measures and lengths move steadily from size to size",
		Why: "One figure mistyped in a size table makes one size that fits nobody. Its seams match, for they are all drawn from the same wrong " +
			"figure, so nothing else finds it before the size is worn.",
		How: "Write each body measure down over the sizes, and so the two sides of every seam and the girths at the levels, and note the step from " +
			"each size to the next. A figure that is out of step makes the step before it too large and the one behind it too small, or the other " +
			"way round. It is reported where putting that one figure in step with its neighbours makes the steps even again, all but a small " +
			"share. Steps that change from one size on, as published tables have them, do not come even by that and are passed over. At the first " +
			"and the last size the two look alike; a figure there must be off by more than a whole step. A length is not reported at a size at " +
			"which a body measure is. Fewer than four sizes tell nothing.",
		Nothing: "Fewer than three figures are graded over the sizes.",
		Fix:     "Look the figure up where it was taken from. The one its neighbours suggest is given.",
		Bad:     sizeStepBad, Good: sizeStepGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "slip", Value: 5, Unit: rules.Millimetres, Text: "how far a figure may be from what its neighbours suggest", Source: "common practice, no source"},
		{Name: "left", Value: 1.0 / 3, Unit: rules.Ratio, Text: "the share of the unevenness that may be left once a figure that is out of step is put right", Source: "common practice, no source; set so that the grades of ASTM D5585-11e1, 5/8 to 2 in, are passed over"},
	},
	Across: sizeStep,
}

// fewest is how many sizes it takes to tell a slip from a change of grade.
const fewest = 4

func sizeStep(sizes []*model.Garment, look func(model.Thing, func(*rules.Pass))) {
	if len(sizes) < fewest {
		return
	}
	look(sizes[0], func(p *rules.Pass) {
		p.NothingHere()
		told := map[int]bool{} // sizes at which a measure has been found wrong
		for _, s := range measuring.BodySeries(sizes) {
			told[step(p, sizes, s, "body."+s.Name)] = true
		}
		for _, s := range measuring.LengthSeries(sizes) {
			slip := s.Slip(p.Limit("left"))
			if out := math.Abs(slip.Off) > p.Limit("slip"); out && told[slip.At] {
				continue // it follows from what has been said
			} else if out {
				told[slip.At] = true
			}
			step(p, sizes, s, s.Name)
		}
	})
}

// step judges one figure over all sizes, and gives the size at which it is out of
// step, or -1.
func step(p *rules.Pass, sizes []*model.Garment, s measuring.Series, name string) int {
	slip := s.Slip(p.Limit("left"))
	p.AtMost(math.Abs(slip.Off), "slip", rules.Say{
		Key: name, Size: sizes[slip.At].Size, Place: s.Place, Account: stepAccount(sizes, s, name, slip),
		Message: func() string {
			return fmt.Sprintf("%s is %s in size %s and falls out of step%s: its neighbours suggest %s, which is %s off. Look the figure up.",
				name, p.Show(s.Values[slip.At]), sizes[slip.At].Size, between(p, sizes, s, slip.At), p.Show(slip.Meant), p.Show(math.Abs(slip.Off)))
		},
	})
	if math.Abs(slip.Off) > p.Limit("slip") {
		return slip.At
	}
	return -1
}

// between names the figures at the sizes beside one.
func between(p *rules.Pass, sizes []*model.Garment, s measuring.Series, at int) string {
	one := func(i int) string { return p.Show(s.Values[i]) + " in size " + sizes[i].Size }
	switch at {
	case 0:
		return " with " + one(1)
	case len(sizes) - 1:
		return " with " + one(at-1)
	}
	return " between " + one(at-1) + " and " + one(at+1)
}
