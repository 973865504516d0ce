package closures

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/zip-length.bad.garment.hcl
var zipLengthBad string

//go:embed testdata/zip-length.good.garment.hcl
var zipLengthGood string

// ZipLength checks that a zip in stock fits its opening.
var ZipLength = &rules.Rule{
	Name:     "zip-length",
	Family:   "closures",
	Severity: rules.Warning,
	Doc: rules.Doc{
		Title: "A zip in stock fits its opening",
		Why: "Zips are made in fixed lengths. One that is longer than its opening ends in the seam below and bulges there. One that is much " +
			"shorter leaves a hole above its slider, or an opening too small to get into.",
		How: "The opening is measured along the stitch line, darts closed; an edge that runs up to the fold, or to the seam of a pair, counts both halves. The longest zip in " +
			"stock that goes into it may be shorter by a few percent and no more: no zip is exactly as long as it says, and room is left at its " +
			"top.",
		Nothing: "The closure is no zip, or states no zips in stock.",
		Fix:     "Draft the opening to a length that a zip has, sew it up to that length from below, or shorten a longer zip.",
		Bad:     zipLengthBad, Good: zipLengthGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "short", Value: 3, Unit: rules.Percent,
		Text:   "how much shorter than its opening a zip may be",
		Source: "2 to 3 percent off the opening, Zipper measurement, 2012, apparel-merchandising.com",
	}},
	Each: rules.Closures(zipLength),
}

func zipLength(p *rules.Pass, c *model.Closure) {
	if c.Kind != "zip" || len(c.Stock) == 0 {
		p.NothingHere()
		return
	}
	say := rules.Say{Place: c.Starts(0).Place}
	whole, err := sewing.WholeClosure(p.Garment, c, 0)
	opening := whole.Length
	if err != nil {
		p.Cannot(err, say)
		return
	}
	share := 1 - p.Limit("short")/100
	shorter, longer := c.ZipsAround(opening)
	zip := shorter
	if zip == 0 {
		zip = longer
	}
	say.Account = zipAccount(p.Garment, c, zip, opening*share, p.Limit("short"))
	say.Message = func() string {
		if shorter == 0 {
			return fmt.Sprintf("%s is %s long, and the shortest zip in stock, %s, is %s too long for it. Lengthen the opening to %s, or shorten the zip.",
				c.Address(), p.Show(opening), p.Show(longer), p.Show(longer-opening), p.Show(longer))
		}
		text := fmt.Sprintf("%s is %s long, and the longest zip in stock that goes into it, %s, is %s shorter; no more than %s %% (%s) is allowed. "+
			"Shorten the opening to between %s and %s", c.Address(), p.Show(opening), p.Show(shorter), p.Show(opening-shorter),
			model.Decimal(p.Limit("short"), 1), p.Show(opening*(1-share)), p.Show(shorter), p.Show(shorter/share))
		if longer != 0 {
			return text + fmt.Sprintf(", lengthen it to %s, or shorten a zip of %s to go into it.", p.Show(longer), p.Show(longer))
		}
		return text + "."
	}
	p.Within(zip, model.Range{Low: opening * share, High: opening}, "", say)
}
