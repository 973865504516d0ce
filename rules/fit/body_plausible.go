package fit

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/body"
	"understitch/rules"
)

//go:embed testdata/body-plausible.bad.garment.hcl
var bodyPlausibleBad string

//go:embed testdata/body-plausible.good.garment.hcl
var bodyPlausibleGood string

// BodyPlausible checks that the wearer's measures can belong to one body.
var BodyPlausible = &rules.Rule{
	Name:     "body-plausible",
	Family:   "fit",
	Severity: rules.Note,
	Doc: rules.Doc{
		Title: "The wearer's measures belong to one body.",
		Why: "A figure that was misread off the tape, or written into the wrong column, is drafted as faithfully as the right " +
			"one. The lengths that pass between the legs are the hardest to take and the ones that no fitting puts right.",
		How: "Crotch and trunk length are compared with what stature and hip girth let expect: total crotch length 52.0 mm + 0.157 stature + " +
			"0.307 hip, standard deviation 31 mm; trunk length 171.9 mm + 0.454 stature + 0.634 hip, 39 mm (least squares over " +
			"the 1,986 women of a survey of 2012, Gordon et al., NATICK/TR-15/007, 2014). The figure is how many standard " +
			"deviations it is off. Real bodies pass the limit about once in eighty; those of men and of children follow other relations.",
		Fix: "Take the measure again, and look whether it stands in the right column and unit. Where the body is so, leave it.",
		Bad: bodyPlausibleBad, Good: bodyPlausibleGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "apart", Value: 2.5, Unit: rules.Ratio, Source: "common practice, no source",
		Text: "how many standard deviations a measure may lie from what the others let expect",
	}},
	Each: rules.Whole(bodyPlausible),
}

func bodyPlausible(p *rules.Pass, g *model.Garment) {
	for _, l := range body.Likelihoods(g.Body) {
		p.AtMost(math.Abs(l.Off()), "apart", rules.Say{Key: l.Measure, Message: func() string {
			how := "short"
			if l.Off() > 0 {
				how = "long"
			}
			whose := "the wearer's"
			if g.Size != "" {
				whose = "in " + g.Size + " the"
			}
			return fmt.Sprintf("%s %s of %s is unusually %s for a stature of %s and a hip of %s, which let expect about %s, mostly within %s. "+
				"Take it again, or look whether it was written down in the right place and unit.", whose, bodyName(l.Measure), p.Show(l.Stated), how,
				p.Show(l.Stature), p.Show(l.Hip), p.Show(l.Expected), p.Show(l.StandardDeviation*p.Limit("apart")))
		}})
	}
	p.NothingHere() // too little is stated, or all of it judged
}
