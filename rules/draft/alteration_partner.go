package draft

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/rules"
)

//go:embed testdata/alteration-partner.bad.garment.hcl
var alterationPartnerBad string

//go:embed testdata/alteration-partner.good.garment.hcl
var alterationPartnerGood string

// AlterationPartner checks that what a fitting altered on one side of a seam, or
// on one layer, is altered on the other.
var AlterationPartner = rules.Rule{
	Name:     "alteration-partner",
	Family:   "draft",
	Severity: rules.Warning,
	Doc: rules.Doc{
		Title: "An alteration of one edge is answered on the edge it is sewn to, and on the other layer",
		Why: "A seam is taken in on the front and forgotten on the back, or on the shell and not on the lining. It can still be sewn, and the " +
			"garment hangs to one side, or strains where one layer is smaller than the other was meant to be.",
		How: "For each edge that an alteration re-drew, look which edges are sewn to it, closed to it or shared with it along any part. Each of " +
			"them must have been re-drawn by some alteration as well. The two halves of a mirrored pair are one edge, and paper cannot be " +
			"re-drawn. Where the two sides now differ by more than the limits below, seam-walk, closure-edges or shared-edge reports it instead. " +
			"By how much each of them was altered is not compared.",
		Fix: "Name the other edge in the alteration too. Where only the one was meant, waive this finding with the reason.",
		Bad: alterationPartnerBad, Good: alterationPartnerGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "walk", Value: 1.6, Unit: rules.Millimetres, Text: "sides of a seam or closure that differ by more than this are left to seam-walk and closure-edges", Source: "1/16 inch, 10 Patternwork Skills, Threads 200, 2018/19, as in seam-walk"},
		{Name: "share", Value: 1, Unit: rules.Millimetres, Text: "edges of a share that differ by more than this are left to shared-edge", Source: "common practice, no source"},
	},
	Each: rules.Alterations(alterationPartner),
}

func alterationPartner(p *rules.Pass, a *model.Alteration) {
	p.NothingHere()
	for _, e := range a.Edges {
		if by := p.Garment.AlteredBy(e); len(by) == 0 || by[0] != a {
			continue // left as it was drafted, or looked at with the first alteration of it
		}
		for _, l := range p.Garment.LaidOn(e) {
			if l.Other.Drawn() {
				answered(p, a, l)
			}
		}
	}
}

// answered judges one edge that is laid on an altered one.
func answered(p *rules.Pass, a *model.Alteration, l model.LaidOn) {
	say := rules.Say{Key: l.Edge.Address() + " on " + l.Other.Address() + " by " + l.By().Address()}
	switch {
	case len(p.Garment.AlteredBy(l.Other)) > 0:
		p.Good(say)
	case reportedElsewhere(p, l):
	default:
		say.Message = func() string {
			how := "is sewn to"
			if l.Share != nil {
				how = "shares its line with"
			}
			return fmt.Sprintf("%s re-drew %s, and nothing re-drew %s, which %s by %s%s. Alter both, or accept this with the reason.",
				a.Address(), l.Edge.Address(), l.Other.Address(), "it "+how, l.By().Address(), difference(p, l))
		}
		say.Related = []rules.Related{
			{Message: l.Edge.Address() + " was re-drawn", Place: l.Edge.Place},
			{Message: l.Other.Address() + " is as it was drafted", Place: l.Other.Place},
		}
		say.Mend = &rules.Mend{Title: fmt.Sprintf("name %s in %s as well", l.Other.Address(), a.Address())}
		p.Fault(say)
	}
}

// reportedElsewhere reports whether another rule finds the sides to differ.
func reportedElsewhere(p *rules.Pass, l model.LaidOn) bool {
	if l.Share != nil {
		apart, err := p.Garment.ShareApart(l.Share)
		return err == nil && apart > p.Limit("share")
	}
	now, _ := l.Longer()
	return math.Abs(l.Join.Ease.Beyond(now)) > p.Limit("walk")
}

// difference says what the alterations made of the two sides' lengths.
func difference(p *rules.Pass, l model.LaidOn) string {
	now, drafted := l.Longer()
	if !model.Known(drafted) {
		return ""
	}
	return fmt.Sprintf("; the two sides differed by %s and now differ by %s", p.Show(math.Abs(drafted)), p.Show(math.Abs(now)))
}
