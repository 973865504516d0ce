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
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "Measures and lengths move steadily from size to size",
		Why: "One figure mistyped in a size table makes one size that fits nobody. Its seams match, for they are all drawn from the same wrong " +
			"figure, so nothing else finds it before the size is worn.",
		How: "Write each body measure down over the sizes, and so the two sides of every seam and the girths at the levels, and note the step from " +
			"each size to the next. A figure that is out of step makes the step before it too large and the one behind it too small, or the other " +
			"way round. It is reported where putting that one figure in step with its neighbours makes the steps even again, all but a small " +
			"share. Steps that change from one size on, as published tables have them, do not come even by that and are passed over. At the first " +
			"and the last size the two look alike; a figure there must be off by more than a whole step. A length is not reported at a size at " +
			"which a body measure is. Of three sizes the steps of the other measures, girths beside girths, show which figure is the odd one. A figure " +
			"that is off by more than four usual steps is a warning; one that goes back where most measures grow is an error. Sizes that are not listed " +
			"in the order in which their bodies grow are a warning; if their names are numbers in order, bodies are exchanged, and that is an error.",
		Nothing: "Fewer than three figures are graded over the sizes.",
		Fix:     "Look the figure up where it was taken from. The one its neighbours suggest is given.",
		Bad:     sizeStepBad, Good: sizeStepGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "slip", Value: 5, Unit: rules.Millimetres, Text: "how far a figure may be from what its neighbours suggest", Source: "common practice, no source"},
		{Name: "far", Value: 4, Unit: rules.Ratio, Text: "how many usual steps a figure may be off and still be a note", Source: "common practice, no source"},
		{Name: "left", Value: 1.0 / 3, Unit: rules.Ratio, Text: "the share of the unevenness that may be left once a figure that is out of step is put right", Source: "common practice, no source; set so that the grades of ASTM D5585-11e1, 5/8 to 2 in, are passed over"},
	},
	Across: sizeStep,
}

// fewest is how many sizes it takes to tell a slip from a change of grade by the steps
// of one figure alone.
const fewest = 4

// fewestSizes is how many sizes it takes by the steps of other measures too.
const fewestSizes = 3

func sizeStep(sizes []*model.Garment, look func(model.Thing, func(*rules.Pass))) {
	if len(sizes) < fewestSizes {
		return
	}
	look(sizes[0], func(p *rules.Pass) {
		p.NothingHere()
		t := &table{p, sizes, measuring.BodySeries(sizes), map[int]bool{}}
		if !t.ordered() {
			return
		}
		t.measures()
		if len(sizes) < fewest {
			return
		}
		for _, s := range measuring.LengthSeries(sizes) {
			t.length(s)
		}
	})
}

// length judges a length over all sizes. Where a measure of that size is wrong, it
// follows from that.
func (t *table) length(s measuring.Series) {
	slip := s.Slip(t.Limit("left"))
	out := math.Abs(slip.Off) > t.Limit("slip")
	if out && t.wrong[slip.At] {
		return
	}
	t.wrong[slip.At] = t.wrong[slip.At] || out
	t.AtMost(math.Abs(slip.Off), "slip", rules.Say{
		Key: s.Name, Size: t.sizes[slip.At].Size, Place: s.Place, Note: true, Account: stepAccount(t.sizes, s, s.Name, slip),
		Message: func() string {
			return fmt.Sprintf("%s is %s in size %s and falls out of step%s: its neighbours suggest %s, which is %s off. Look the figure up.",
				s.Name, t.Show(s.Values[slip.At]), t.sizes[slip.At].Size, between(t.Pass, t.sizes, s, slip.At), t.Show(slip.Meant), t.Show(math.Abs(slip.Off)))
		},
	})
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
