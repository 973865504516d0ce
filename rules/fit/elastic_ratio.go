package fit

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/elastic-ratio.bad.garment.hcl
var elasticRatioBad string

//go:embed testdata/elastic-ratio.good.garment.hcl
var elasticRatioGood string

// ElasticRatio checks that an elastic is cut to the share of its edge that was
// asked for.
var ElasticRatio = &rules.Rule{
	Name:     "elastic-ratio",
	Family:   "body",
	Severity: rules.Warning,
	Doc: rules.Doc{
		Title: "An elastic is as long, for its edge, as was asked for",
		Why: "An elastic that is too long for its edge does not hold it in. One that is too short cuts in and gathers the cloth. When the edge is " +
			"altered or graded the elastic is easily left as it was.",
		How: "The edges are added up along their stitch lines, darts closed. A line that goes on into the other half of a piece on the fold, or of " +
			"a mirrored pair, counts twice. That length times the two ends of the ratio gives the shortest and the longest elastic. An elastic " +
			"that states no ratio is not judged. Where it has sections, each takes its own part of the line times its own ratio, and what they take must " +
			"add up to the elastic.",
		Nothing: "The elastic states no ratio.",
		Fix:     "Cut the elastic to a length that the message names, or state the ratio that is meant.",
		Bad:     elasticRatioBad, Good: elasticRatioGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "beyond", Value: 0.5, Unit: rules.Millimetres,
		Text:   "how far past the stated ratio an elastic may be",
		Source: "common practice, no source",
	}},
	Each: rules.Elastics(elasticRatio),
}

func elasticRatio(p *rules.Pass, e *model.Elastic) {
	if len(e.Sections) > 0 {
		sections(p, e)
		return
	}
	if e.Ratio.Any() {
		p.NothingHere()
		return
	}
	whole, err := sewing.WholeOf(p.Garment, e.Edges)
	edges := whole.Length
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	asked := model.Range{Low: e.Ratio.Low * edges, High: e.Ratio.High * edges}
	say := rules.Say{Account: elasticAccount(p.Garment, e, asked)}
	for _, s := range e.Edges {
		say.Related = append(say.Related, rules.Related{Message: "it is sewn to " + s.String(), Place: s.Edge.Place})
	}
	say.Message = func() string {
		both := ""
		if whole.Halves {
			both = ", both halves together"
		}
		how, mend := "long", "shorten"
		if e.Length < asked.Low {
			how, mend = "short", "lengthen"
		}
		return fmt.Sprintf("%s is %s long on an edge of %s (%s%s), %s of it, where %s is asked for. It is %s too %s; %s it (%s), or state the ratio that is meant.",
			e.Address(), p.Show(e.Length), p.Show(edges), sewing.SideText(e.Edges), both, model.Decimal(e.Length/edges, 3), ratios(e.Ratio),
			p.Show(math.Abs(asked.Beyond(e.Length))), how, mend, p.Garment.ShowRange(asked))
	}
	p.Within(e.Length, asked, "beyond", say)
}

// sections checks that what the parts of an elastic take by their own ratios adds up
// to the elastic.
func sections(p *rules.Pass, e *model.Elastic) {
	parts, asked, err := sewing.Sections(p.Garment, e)
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	say := rules.Say{Account: sectionsAccount(p.Garment, e, asked)}
	var each []string
	for _, s := range parts {
		text := fmt.Sprintf("%s on %s of %s", p.Garment.ShowRange(s.Takes), p.Show(s.Edges), s.Along())
		each = append(each, text)
		say.Related = append(say.Related, rules.Related{Message: "a section takes " + text, Place: s.Section.Place})
	}
	say.Message = func() string {
		how, mend := "long", "shorten"
		if e.Length < asked.Low {
			how, mend = "short", "lengthen"
		}
		return fmt.Sprintf("%s is %s long, and its sections take %s: %s in all. It is %s too %s; %s it, or state the ratios that are intended.",
			e.Address(), p.Show(e.Length), sewing.Listed(each), p.Garment.ShowRange(asked), p.Show(math.Abs(asked.Beyond(e.Length))), how, mend)
	}
	p.Within(e.Length, asked, "beyond", say)
}

// ratios writes a range of plain shares.
func ratios(r model.Range) string {
	switch {
	case math.IsInf(r.Low, -1):
		return "at most " + model.Decimal(r.High, 3)
	case math.IsInf(r.High, 1):
		return "at least " + model.Decimal(r.Low, 3)
	case r.Low == r.High:
		return model.Decimal(r.Low, 3)
	}
	return model.Decimal(r.Low, 3) + " to " + model.Decimal(r.High, 3)
}
