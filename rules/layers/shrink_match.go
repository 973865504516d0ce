package layers

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/shrink-match.bad.garment.hcl
var shrinkMatchBad string

//go:embed testdata/shrink-match.good.garment.hcl
var shrinkMatchGood string

// ShrinkMatch checks that layers which are sewn together shrink alike.
var ShrinkMatch = &rules.Rule{
	Name:     "shrink-match",
	Family:   "layers",
	Severity: rules.Warning,
	Settled:  true,
	Doc: rules.Doc{
		Title: "Layers that are sewn together shrink alike, or are washed before they are cut",
		Why: "A lining that shrinks more than its shell draws up the edges that they share at the first wash, and the shell bags over it. Nothing " +
			"on the pattern shows it, and nothing mends it later.",
		How: "For each edge by which two layers are sewn together or which they share, look how it lies to the grain (down the paper where no " +
			"grain is drawn). An edge along the grain shrinks as the cloth does along, one across it as the cloth does across, a slanting one by " +
			"something between. The largest difference of the two cloths counts. A cloth that is washed before it is cut shrinks by nothing. " +
			"Layers are judged where one of them states what its cloth shrinks.",
		Nothing: "Neither cloth states what it shrinks by, or the layers are sewn together nowhere.",
		Fix:     "Wash the cloth that shrinks more before it is cut, and say so by washed = true; or choose cloths that agree.",
		Bad:     shrinkMatchBad, Good: shrinkMatchGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "apart", Value: 1, Unit: rules.Percent, Source: "common practice, no source",
		Text: "how much more one of two layers may shrink along an edge than the other, in percent of its length",
	}},
	Each: rules.Layers(shrinkMatch),
}

func shrinkMatch(p *rules.Pass, inner *model.Layer) {
	p.NothingHere() // unless a layer lies over it that states what it shrinks by
	for outer := measuring.LayerOver(p.Garment, inner); outer != nil; outer = measuring.LayerOver(p.Garment, outer) {
		if statesShrink(outer.Fabric) || statesShrink(inner.Fabric) {
			judgeShrink(p, outer, inner)
		}
	}
}

func statesShrink(f *model.Fabric) bool {
	return f != nil && (model.Known(f.ShrinkAcross) || model.Known(f.ShrinkAlong))
}

func judgeShrink(p *rules.Pass, outer, inner *model.Layer) {
	say := rules.Say{
		Key: inner.Name + " in " + outer.Name, Place: inner.Place,
		Related: []rules.Related{{Message: "the layer it is sewn to, " + outer.Address(), Place: outer.Place}},
	}
	all, err := sewing.ShrinksOf(p.Garment, outer, inner)
	if err != nil {
		p.Cannot(err, say)
		return
	}
	if len(all) == 0 {
		return
	}
	worst, most, surely := all[0], -1.0, 0.0
	for _, s := range all {
		apart := s.Outer.Less(s.Inner)
		if m := math.Max(math.Abs(apart.Low), math.Abs(apart.High)); m > most {
			worst, most = s, m
			surely = math.Abs(apart.Beyond(0))
		}
	}
	if most > p.Limit("apart") && surely <= p.Limit("apart") {
		p.Cannot(fmt.Errorf("%s is known by tape alone, and does not show how it lies to the grain", worst.Thing.Address()), say)
		return
	}
	say.Related = append(say.Related, rules.Related{Message: "they are sewn together here", Place: worst.Thing.Where()})
	say.Message = func() string {
		more, less, a, b := outer, inner, worst.Outer, worst.Inner
		if a.High < b.High {
			more, less, a, b = inner, outer, b, a
		}
		return fmt.Sprintf("along %s %s shrinks by %s and %s by %s: %s %% apart, where no more than %s %% is allowed. "+
			"Wash fabric.%s before it is cut, or choose cloths that agree.", worst.Thing.Address(), more.Address(), percents(a), less.Address(), percents(b),
			model.Decimal(most, 1), model.Decimal(p.Limit("apart"), 1), more.Fabric.Name)
	}
	say.Account = shrinkAccount(worst, outer, inner, most)
	p.AtMost(most, "apart", say)
}

// percents writes a share of a length, or the two that it lies between.
func percents(r model.Range) string {
	if r.High-r.Low < 0.05 {
		return model.Decimal(r.High, 1) + " %"
	}
	return model.Decimal(r.Low, 1) + " to " + model.Decimal(r.High, 1) + " %"
}
