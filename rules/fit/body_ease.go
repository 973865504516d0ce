package fit

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/rules"
	"understitch/rules/guess"
)

//go:embed testdata/body-ease.bad.garment.hcl
var bodyEaseBad string

//go:embed testdata/body-ease.good.garment.hcl
var bodyEaseGood string

// BodyEase checks each layer's girths against the body.
var BodyEase = &rules.Rule{
	Name:     "body-ease",
	Family:   "body",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "Each layer measures round as much more or less than the body as was asked for",
		Why: "A layer that is too small takes the strain of the whole garment, or does not close. One that is too large folds under the others. " +
			"Both show only on the body, when every layer is cut.",
		How: "Measure the layer's pieces across at the level, darts closed, and add them up, each as often as it is cut and twice on a fold. Take " +
			"off what the body measures there. What is left must lie in the ease that the layer states. A level that lies above or below all that is drawn " +
			"of the layer has no girth, and an ease is not asked for there. Where a lacing that states its gap closes the layer, " +
			"lacing-gap compares it, at all levels together.",
		Nothing: "The layer states no ease.",
		Fix:     "Take in or let out seams at that level, on every layer that has them, or state the ease that is meant.",
		Bad:     bodyEaseBad, Good: bodyEaseGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "beyond", Value: 0.5, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "how far past the stated ease a girth may be",
	}},
	Each: rules.Layers(bodyEase),
}

func bodyEase(p *rules.Pass, l *model.Layer) {
	for _, e := range l.Ease {
		judgeEase(p, l, e)
	}
	p.NothingHere() // no ease stated, or all of it judged
}

func judgeEase(p *rules.Pass, l *model.Layer, e model.LevelRange) {
	level := e.Level
	say := rules.Say{
		Key: level.Name, Place: e.Place, Account: easeAccount(p.Garment, l, e),
		Related: []rules.Related{{Message: "the level " + level.Name, Place: level.Place}},
	}
	if !model.Known(level.Body) {
		p.Cannot(unknown(p.Garment, level.Measure, level.Address()+" does not say what the wearer measures there"), say)
		return
	}
	girth, err := measuring.Girth(p.Garment, l, level)
	if above, below, missed := guess.Misses(p.Garment, l, level); err != nil && missed {
		say.Message = func() string {
			return fmt.Sprintf("%s states an ease at the %s level, which lies at %s, and its pieces reach from %s to %s. Look at the height of the level, or take the ease out.",
				l.Address(), level.Name, p.Show(level.Y), p.Show(above), p.Show(below))
		}
		p.Fault(say)
		return
	}
	if err != nil {
		p.Cannot(err, say)
		return
	}
	if e.Range.Any() {
		p.Good(say)
		return
	}
	if laced(p.Garment, l, level) {
		return // what its gap takes up is for lacing-gap to compare, at all levels together
	}
	ease := girth - level.Body
	say.Message = func() string {
		off := e.Range.Beyond(ease)
		how, mend := "small", "let it out"
		if off > 0 {
			how, mend = "large", "take it in"
		}
		return fmt.Sprintf("%s measures %s round at the %s level against %s of the body: an ease of %s, where %s is asked for. "+
			"It is %s too %s; %s by as much in all, or state the ease that is meant.", l.Address(), p.Show(girth), level.Name,
			p.Show(level.Body), p.Show(ease), p.Garment.ShowRange(e.Range), p.Show(math.Abs(off)), how, mend)
	}
	p.Within(ease, e.Range, "beyond", say)
}

// laced reports whether a lacing that states its gap closes the layer at a level: it
// can be laced wider or closer there.
func laced(g *model.Garment, l *model.Layer, level *model.Level) bool {
	sum, err := measuring.SumGirth(g, l, level)
	return err == nil && slices.ContainsFunc(sum.Laps, func(lap measuring.GirthLap) bool { return lap.Closure.Gap != nil })
}
