package layers

import (
	"cmp"
	_ "embed"
	"fmt"
	"slices"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/rules"
)

//go:embed testdata/layer-stretch.bad.garment.hcl
var stretchBad string

//go:embed testdata/layer-stretch.good.garment.hcl
var stretchGood string

// Stretch checks that a layer smaller than the body stretches far enough.
var Stretch = &rules.Rule{
	Name:     "layer-stretch",
	Family:   "layers",
	Severity: rules.Error,
	Under:    []string{"body-ease", "layer-girth", "inner-within-outer"},
	Doc: rules.Doc{
		Title: "A layer that is smaller than the body stretches far enough to go round it",
		Why: "Layers that are worn stretched stretch together, and the one that gives least stops all the others: a velvet that gives by half does " +
			"not help over a lining that gives by a tenth. The garment does not go on, or bursts a seam.",
		How: "This is asked at each level where the wearer's measure is known and the layer closes round with less than that. To its girth, darts " +
			"closed, add as many hundredths of it as its cloth stretches across, in percent. That must reach the measure. A boned layer is meant " +
			"to press the body in and is not judged. A layer that lacks at several levels is reported once, by the worst. A finding about the layer's ease " +
			"there, or about its width against another layer's, stands for this one.",
		Nothing: "The layer names no cloth, is boned, or is nowhere smaller than the body.",
		Fix: "Take a cloth that stretches further, let the layer out at that level, or lay the pieces so that the cloth's greater stretch goes " +
			"round.",
		Bad: stretchBad, Good: stretchGood, Since: "0.1",
	},
	Each: rules.Layers(stretch),
}

func stretch(p *rules.Pass, l *model.Layer) {
	p.NothingHere() // unless it is smaller than the body somewhere
	if l.Fabric == nil || measuring.Boned(p.Garment, l) {
		return
	}
	var short []reaching
	for _, level := range measuring.LevelsDown(p.Garment) {
		round, err := measuring.Girth(p.Garment, l, level)
		if model.NotMeasured(err) && model.Known(level.Body) && model.Known(l.Fabric.StretchAcross) {
			p.Cannot(err, rules.Say{Key: level.Name, Place: l.Place})
			continue
		}
		if err != nil || !(round < level.Body) {
			continue
		}
		say := rules.Say{Key: level.Name, Place: l.Place}
		reach, err := measuring.Reach(p.Garment, l, level)
		switch {
		case err != nil:
			p.Cannot(err, say)
		case reach < level.Body:
			short = append(short, reaching{level, round, reach})
		default:
			say.Account = reachAccount(p, l, level, reach)
			p.AtLeast(reach, level.Body, say)
		}
	}
	if len(short) > 0 { // it is one cloth: the level at which it lacks most tells
		slices.SortStableFunc(short, func(a, b reaching) int { return cmp.Compare(b.lacks(), a.lacks()) })
		for i, r := range short {
			judgeStretch(p, l, r, short[:i], short[i+1:])
		}
	}
}

// wrongGirth names the findings by which a layer's girth at a level is at fault
// already, against the body or against another layer.
func wrongGirth(p *rules.Pass, l *model.Layer, level *model.Level) []rules.Under {
	out := []rules.Under{{Rule: "body-ease", Subject: l.Address(), Key: level.Name}}
	for _, other := range p.Garment.Layers {
		switch {
		case other.Order < l.Order:
			out = append(out, tooWide(p, other, l, level)...)
		case other.Order > l.Order:
			out = append(out, tooWide(p, l, other, level)...)
		}
	}
	return out
}

// reaching is how far a layer stretches at a level.
type reaching struct {
	level        *model.Level
	round, reach float64
}

func (r reaching) lacks() float64 { return r.level.Body - r.reach }

func judgeStretch(p *rules.Pass, l *model.Layer, r reaching, worse, others []reaching) {
	level, round, reach := r.level, r.round, r.reach
	say := rules.Say{
		Key: level.Name, Place: l.Place, Under: wrongGirth(p, l, level), Account: reachAccount(p, l, level, reach),
		Related: []rules.Related{
			{Message: "the level " + level.Name, Place: level.Place},
			{Message: "the cloth, fabric." + l.Fabric.Name, Place: l.Fabric.Place},
		},
	}
	for _, w := range worse { // it is one cloth
		say.Under = append(say.Under, rules.Under{Rule: "layer-stretch", Subject: l.Address(), Key: w.level.Name})
	}
	for _, o := range others {
		say.Related = append(say.Related, rules.Related{Message: fmt.Sprintf("it lacks %s at the %s level", p.Show(o.lacks()), o.level.Name), Place: o.level.Place})
	}
	say.Message = func() string {
		if !(round > 0) { // nothing to let out by a share
			return fmt.Sprintf("%s has no width left at the %s level, where the body measures %s. Look whether its pieces reach there.", l.Address(), level.Name, p.Show(level.Body))
		}
		return fmt.Sprintf("%s measures %s round at the %s level and stretches by %s %% to %s, where the body measures %s. It lacks %s: "+
			"let it out by %s, or take a cloth that stretches across by %s %% at least.", l.Address(), p.Show(round), level.Name,
			model.Decimal(l.Fabric.StretchAcross, 1), p.Show(reach), p.Show(level.Body), p.Show(level.Body-reach),
			p.Show(level.Body*round/reach-round), model.Decimal((level.Body/round-1)*100+0.05, 1))
	}
	p.AtLeast(reach, level.Body, say)
}
