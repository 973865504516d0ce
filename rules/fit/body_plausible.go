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
	Family:   "body",
	Severity: rules.Note,
	Doc: rules.Doc{
		Title: "The wearer's measures belong to one body",
		Why: "A figure that was misread off the tape, or written into the wrong column, is drafted as faithfully as the right one. The lengths " +
			"that pass between the legs are the hardest to take, and no fitting puts them right.",
		How: "From height and hip girth one can say about what the others will be. Crotch length, from the waist in front through the legs to the " +
			"waist behind: 5.2 cm, and 0.157 of the height, and 0.307 of the hip. Trunk length, from the shoulder through the legs and back: 17.2 " +
			"cm, and 0.454 of the height, and 0.634 of the hip. Two women in three lie within 3.1 cm of the first and 3.9 cm of the second: that " +
			"is the usual spread. The figure is how many times that spread the measure lies off. The shares are from the 1,986 women of a survey " +
			"of 2012 (Gordon and others, NATICK/TR-15/007, 2014). About one real body in eighty exceeds the limit; those of men and of children go " +
			"by other shares.",
		Nothing: "The height and the hip are not both stated, or no other measure is of which it is known how it goes with them.",
		Fix:     "Take the measure again, and look whether it stands in the right column and unit. Where the body is so, leave it.",
		Bad:     bodyPlausibleBad, Good: bodyPlausibleGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "apart", Value: 2.5, Unit: rules.Ratio, Source: "common practice, no source",
		Text: "how many times the usual spread a measure may lie off what goes with height and hip",
	}},
	Each: rules.Whole(bodyPlausible),
}

func bodyPlausible(p *rules.Pass, g *model.Garment) {
	for _, l := range body.Likelihoods(g.Body) {
		p.AtMost(math.Abs(l.Off()), "apart", rules.Say{Key: l.Measure, Account: likelihoodAccount(l, l.Off()), Message: func() string {
			how := "short"
			if l.Off() > 0 {
				how = "long"
			}
			whose := "the wearer's"
			if g.Size != "" {
				whose = "in " + g.Size + " the"
			}
			return fmt.Sprintf("%s %s of %s is unusually %s for a height of %s and a hip of %s: about %s would be usual, give or take %s. "+
				"Take it again, or look whether it was written down in the right place and unit.", whose, bodyName(l.Measure), p.Show(l.Stated), how,
				p.Show(l.Stature), p.Show(l.Hip), p.Show(l.Expected), p.Show(l.StandardDeviation*p.Limit("apart")))
		}})
	}
	p.NothingHere() // too little is stated, or all of it judged
}
