package layers

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/rules"
)

//go:embed testdata/layer-girth.bad.garment.hcl
var girthBad string

//go:embed testdata/layer-girth.good.garment.hcl
var girthGood string

// Girth checks that no layer measures more round than the one over it.
var Girth = &rules.Rule{
	Name:     "layer-girth",
	Family:   "layers",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "At each level a layer measures no more round than the one over it, unless it is meant to",
		Why: "Layers that are cut into other pieces than their shell, a foundation of eight panels under a gown of four, cannot be laid piece on " +
			"piece. They still have to fit inside: what is too much round stands up in folds under the shell.",
		How: "At the level, measure the pieces of each layer across, darts closed, and add them up, each as often as it is cut and twice on a " +
			"fold. This needs layers that close round the body there. Each layer is compared with the next one over it. What insides state as " +
			"larger on purpose is allowed. Where an inside compares every inner piece at that level, it is judged piece by piece by " +
			"inner-within-outer, and not here.",
		Nothing: "No two layers close round the body at the level, or insides judge it piece by piece.",
		Fix: "Take in the seams of the inner layer at that level, or let out those of the outer. Where the inner layer is meant to be larger, say " +
			"so by an inside with a clearance below nothing, such as [-3, -1].",
		Bad: girthBad, Good: girthGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "larger", Value: 1, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "how much more an inner layer may measure round than the layer over it",
	}},
	Each: rules.Levels(girth),
}

// girthKey tells the figures of a level apart.
func girthKey(outer, inner *model.Layer) string { return inner.Name + " in " + outer.Name }

func girth(p *rules.Pass, level *model.Level) {
	p.NothingHere() // unless two layers are found that close round at this level
	layers := slices.Clone(p.Garment.Layers)
	slices.SortStableFunc(layers, func(a, b *model.Layer) int { return a.Order - b.Order })
	var outer *model.Layer
	outerGirth := 0.0
	for _, inner := range layers {
		round, err := measuring.Girth(p.Garment, inner, level)
		if err != nil {
			notRound(p, level, inner, err)
			continue
		}
		if outer != nil && ownPieces(p.Garment, inner, level) {
			judgeGirth(p, level, outer, inner, outerGirth, round)
		}
		outer, outerGirth = inner, round
	}
}

// notRound says why a layer is not compared at a level. Most layers do not close
// round the body at every level. One that states an ease there is meant to, one whose
// girth was not measured may, and one that the level leaves over an opening is there.
func notRound(p *rules.Pass, level *model.Level, layer *model.Layer, reason error) {
	meant := slices.ContainsFunc(layer.Ease, func(e model.LevelRange) bool { return e.Level == level })
	others := slices.ContainsFunc(p.Garment.Layers, func(other *model.Layer) bool {
		_, err := measuring.Girth(p.Garment, other, level)
		return other != layer && (err == nil || model.NotMeasured(err))
	})
	if (meant || model.NotMeasured(reason) || measuring.Opening(p.Garment, reason) != nil) && others {
		p.Cannot(reason, rules.Say{Key: layer.Name, Place: layer.Place})
	}
}

// ownPieces reports whether some piece of an inner layer that reaches the level
// is not judged there by an inside.
func ownPieces(g *model.Garment, inner *model.Layer, level *model.Level) bool {
	return slices.ContainsFunc(inner.Pieces, func(piece *model.Piece) bool {
		return piece.Reaches(level) && !slices.ContainsFunc(g.Insides, func(n *model.Inside) bool {
			return n.Inner.Has(piece) && n.Outer.Reaches(level)
		})
	})
}

func judgeGirth(p *rules.Pass, level *model.Level, outer, inner *model.Layer, outerGirth, innerGirth float64) {
	say := rules.Say{
		Key: girthKey(outer, inner), Place: inner.Place,
		Related: []rules.Related{
			{Message: "the layer over it, " + outer.Address(), Place: outer.Place},
			{Message: "the level " + level.Name, Place: level.Place},
		},
	}
	meant := meantLarger(p.Garment, outer, inner, level)
	if math.IsInf(meant, 1) {
		p.Good(say)
		return
	}
	more := innerGirth - outerGirth
	say.Account = moreRound(p, inner, outer, level, more)
	say.Message = func() string {
		return fmt.Sprintf("%s measures %s more round at the %s level than %s, which lies over it (%s against %s); no more than %s is allowed. "+
			"Take %s in or let %s out, or state in an inside how much larger it is meant to be.", inner.Address(), p.Show(more), level.Name,
			outer.Address(), p.Show(innerGirth), p.Show(outerGirth), p.Show(meant+p.Limit("larger")), inner.Address(), outer.Address())
	}
	p.Within(more, model.Range{Low: math.Inf(-1), High: meant}, "larger", say)
}

// meantLarger is how much larger round the inner layer is by what its insides say,
// and by what the pleats of pieces that lie in none let out.
func meantLarger(g *model.Garment, outer, inner *model.Layer, level *model.Level) float64 {
	sum := 0.0
	for _, piece := range inner.Pieces {
		if y, ok := piece.LevelY(level); ok && !slices.ContainsFunc(g.Insides, func(n *model.Inside) bool { return n.Inner.Has(piece) }) {
			sum += piece.Opened(y) * piece.Times()
		}
	}
	for _, n := range g.Insides {
		if n.Outer.Layer() == outer && n.Inner.Layer() == inner && n.Outer.Reaches(level) && n.Inner.Reaches(level) && !measuring.HangFrom(g, n.Inner, level) {
			sum += math.Max(0, -n.Allowed(level).Low) * min(n.Outer.Times(), n.Inner.Times())
		}
	}
	return sum
}
