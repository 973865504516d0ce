package layers

import (
	_ "embed"
	"fmt"

	"understitch/model"
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
	Doc: rules.Doc{
		Title: "A layer that is smaller than the body stretches far enough to go round it.",
		Why: "Layers that are worn stretched stretch together, and the one that gives least stops all the others: a velvet that gives by half " +
			"does not help over a lining that gives by a tenth. The garment does not go on, or bursts a seam.",
		How: "At each level where the wearer's measure is known and the layer closes round with less than that, its girth, darts " +
			"closed, times one plus the stretch of its cloth across must reach the measure. A boned layer is meant to press the " +
			"body in and is not judged. Where the layer's ease is found at fault already, nothing is said.",
		Fix: "Take a cloth that stretches further, let the layer out at that level, or lay the pieces so that the cloth's greater stretch " +
			"goes round.",
		Bad: stretchBad, Good: stretchGood, Since: "0.1",
	},
	Each: rules.Layers(stretch),
}

func stretch(p *rules.Pass, l *model.Layer) {
	p.NothingHere() // unless it is smaller than the body somewhere
	if l.Fabric == nil || p.Garment.Boned(l) {
		return
	}
	for _, level := range p.Garment.LevelsDown() {
		round, err := p.Garment.Girth(l, level)
		if err != nil || !(round < level.Body) || toldByEase(p.Garment, l, level) {
			continue
		}
		judgeStretch(p, l, level, round)
	}
}

func judgeStretch(p *rules.Pass, l *model.Layer, level *model.Level, round float64) {
	say := rules.Say{
		Key: level.Name, Place: l.Place,
		Related: []rules.Related{
			{Message: "the level " + level.Name, Place: level.Place},
			{Message: "the cloth, fabric." + l.Fabric.Name, Place: l.Fabric.Place},
		},
	}
	reach, err := p.Garment.Reach(l, level)
	if err != nil {
		p.Cannot(err, say)
		return
	}
	say.Message = func() string {
		return fmt.Sprintf("%s measures %s round at the %s level and stretches by %s %% to %s, where the body measures %s. It lacks %s: "+
			"let it out by %s, or take a cloth that stretches across by %s %% at least.", l.Address(), p.Show(round), level.Name,
			model.Decimal(l.Fabric.StretchAcross, 1), p.Show(reach), p.Show(level.Body), p.Show(level.Body-reach),
			p.Show(level.Body*round/reach-round), model.Decimal((level.Body/round-1)*100+0.05, 1))
	}
	p.AtLeast(reach, level.Body, say)
}
