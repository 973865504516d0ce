package layers

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/rules"
)

//go:embed testdata/turn-of-cloth.bad.garment.hcl
var turnOfClothBad string

//go:embed testdata/turn-of-cloth.good.garment.hcl
var turnOfClothGood string

// TurnOfCloth checks that an outer layer has room to go round the one inside it.
var TurnOfCloth = &rules.Rule{
	Name:     "turn-of-cloth",
	Family:   "layers",
	Severity: rules.Note,
	Under:    []string{"layer-girth", "inner-within-outer"},
	Doc: rules.Doc{
		Title: "An outer layer has room to go round the one inside it",
		Why: "A layer that lies outside another goes the longer way round the body, by the thickness between them. Thick cloth cut to one girth in " +
			"both layers drags outside and folds inside, though every piece agrees on the table.",
		How: "Add the thickness of both cloths and take half: by so much the one layer lies outside the other, from the middle of the cloth to the " +
			"middle. Round the body that takes 6.3 times as much (twice 3.14). By so much the outer girth must be larger, at each level that both " +
			"layers close round. This is asked of cloths that give little, whose thickness and stretch are both stated. Where an inside lets the " +
			"inner layer be larger, and where the layers share an edge along the level, nothing is said. A finding about the widths there stands for this one.",
		Nothing: "No two layers of stiff cloth, whose thickness is stated, close round the body at the level; or they share an edge along it; or the inner one is meant to be larger.",
		Fix:     "Let the seams of the outer layer out, or take those of the inner layer in, by the amount that is wanting.",
		Bad:     turnOfClothBad, Good: turnOfClothGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "short", Value: 1, Unit: rules.Millimetres, Source: "common practice, no source",
			Text: "how much of the room may be wanting"},
		{Name: "woven", Value: 10, Unit: rules.Percent, Source: "common practice, no source",
			Text: "cloth that stretches across by as much or more goes round by itself"},
		sharedNear,
	},
	Each: rules.Levels(turnOfCloth),
}

func turnOfCloth(p *rules.Pass, level *model.Level) {
	p.NothingHere() // unless two stiff layers are found that close round at this level
	var outer *model.Layer
	var unknown error // why the outer layer's girth is not known
	outerGirth := 0.0
	for _, inner := range measuring.LayersInward(p.Garment) {
		round, err := measuring.Girth(p.Garment, inner, level)
		if model.NotMeasured(err) {
			if unknown == nil {
				unknown = err
			}
		} else if err != nil {
			continue
		}
		switch {
		case outer == nil || !goesRound(p, outer, inner, level):
		case unknown != nil:
			p.Cannot(unknown, rules.Say{Key: girthKey(outer, inner), Place: inner.Place})
		default:
			judgeTurn(p, level, outer, inner, outerGirth, round)
		}
		outer, outerGirth, unknown = inner, round, err
	}
}

// goesRound reports whether the room between two layers is to be judged at a
// level.
func goesRound(p *rules.Pass, outer, inner *model.Layer, level *model.Level) bool {
	for _, l := range []*model.Layer{outer, inner} {
		f := l.Fabric
		if f == nil || !model.Known(f.Thickness) || !(f.StretchAcross < p.Limit("woven")) {
			return false
		}
	}
	g := p.Garment
	return meantLarger(g, outer, inner, level) == 0 &&
		!measuring.SharedAlong(g, outer, inner, level, p.Limit(sharedNear.Name))
}

// turn is how much further round the outer of two layers goes than the inner,
// their middles lying apart by so many millimetres: the difference of two
// circles' circumferences.
func turn(apart float64) float64 { return 2 * math.Pi * apart }

func judgeTurn(p *rules.Pass, level *model.Level, outer, inner *model.Layer, outerGirth, innerGirth float64) {
	apart := (outer.Fabric.Thickness + inner.Fabric.Thickness) / 2
	room, needed := outerGirth-innerGirth, turn(apart)
	p.Within(room, model.AnyFrom(needed), "short", rules.Say{
		Account: turnAccount(p, outer, inner, level, room, needed),
		Key:     girthKey(outer, inner), Place: inner.Place, Under: tooWide(p, outer, inner, level),
		Related: []rules.Related{
			{Message: "the layer over it, " + outer.Address(), Place: outer.Place},
			{Message: "the level " + level.Name, Place: level.Place},
		},
		Message: func() string {
			return fmt.Sprintf("%s goes round %s at the %s level with %s to spare (%s against %s). Its cloth lies %s further out, middle to middle, "+
				"and takes %s more to go round. Let %s out or take %s in by %s.", outer.Address(), inner.Address(), level.Name, p.Show(room),
				p.Show(outerGirth), p.Show(innerGirth), p.Show(apart), p.Show(needed), outer.Address(), inner.Address(), p.Show(needed-room))
		},
	})
}
