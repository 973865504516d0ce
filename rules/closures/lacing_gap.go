package closures

import (
	_ "embed"
	"fmt"
	"math"
	"strings"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/reckoned"
	"understitch/rules"
)

//go:embed testdata/lacing-gap.bad.garment.hcl
var lacingGapBad string

//go:embed testdata/lacing-gap.good.garment.hcl
var lacingGapGood string

// LacingGap checks that a lacing can be laced to one gap all along.
var LacingGap = &rules.Rule{
	Name:     "lacing-gap",
	Family:   "closures",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "One gap of a lacing serves all levels",
		Why: "A laced bodice is drawn in until its edges are so far apart all the way down. Where the cloth is too large at one level and too small at " +
			"another, the edges cannot lie side by side: the lacing makes a V, and the bodice turns on the body.",
		How: "At each level at which the lacing closes the layer, take what the layer measures round without the gap off the body and the ease that " +
			"the layer states there. That is the gap needed, from the least to the greatest ease. One gap must lie in all of these, and in the gap that " +
			"the closure states. Where the layer states no ease at a level, the body itself is taken, and the gap may differ by a limit.",
		Nothing: "The closure is no lacing that states its gap, or the wearer's measures are not known at the levels that it closes.",
		Fix:     "Take in or let out the layer at the level whose gap differs, state the ease that is intended, or widen the gap.",
		Bad:     lacingGapBad, Good: lacingGapGood, Since: "0.2",
	},
	Limits: []rules.Limit{
		{Name: "beyond", Value: 0.5, Unit: rules.Millimetres, Source: "common practice, no source", Text: "how far outside what each level needs the gap may be"},
		{Name: "uneven", Value: 10, Unit: rules.Millimetres, Source: "common practice, no source",
			Text: "how far round a layer that states no ease at a level may be off the body there when it is laced"},
	},
	Each: rules.Closures(lacingGap),
}

func lacingGap(p *rules.Pass, c *model.Closure) {
	p.NothingHere() // unless a gap is stated and needed
	if c.Gap == nil {
		return
	}
	unstated := model.Range{Low: -p.Limit("uneven"), High: p.Limit("uneven")}
	needs := measuring.Needs(p.Garment, c, &unstated)
	if len(needs) == 0 {
		return
	}
	serves := measuring.Serves(needs, *c.Gap)
	short := math.Max(serves.Low-serves.High, 0)
	say := rules.Say{Place: c.Stated.Or("gap", c.Place)}
	var each []string
	for _, n := range needs {
		each = append(each, fmt.Sprintf("%s at the %s level", p.Garment.ShowRange(n.Gap), n.Level.Name))
		say.Related = append(say.Related, rules.Related{Message: fmt.Sprintf("the %s level needs a gap of %s", n.Level.Name, p.Garment.ShowRange(n.Gap)), Place: n.Level.Place})
	}
	say.Account = gapAccount(p.Garment, c, needs, serves, short)
	say.Message = func() string {
		return fmt.Sprintf("no one gap of %s serves all levels: %s, and %s may be laced to %s. One gap would need %s more room. Take the layer in where it needs less, let it out where it "+
			"needs more, or state another gap.", c.Address(), strings.Join(each, ", "), c.Address(), p.Garment.ShowRange(*c.Gap), p.Show(short))
	}
	p.AtMost(short, "beyond", say)
}

func gapAccount(g *model.Garment, c *model.Closure, needs []measuring.GapNeed, serves model.Range, short float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(1, "%s may be laced to a gap of %s", c.Address(), g.ShowRange(*c.Gap))
		for _, n := range needs {
			l.Beside(1, n.Cloth, "%s round at the %s level, without the gap", c.Starts(0).Edge.Piece.Layer.Address(), n.Level.Name)
			l.Beside(1, n.Level.Body, "the body there, with an ease of %s", g.ShowRange(n.Ease))
			l.Say(1, "needs a gap of %s", g.ShowRange(n.Gap))
		}
		if short == 0 {
			l.Say(1, "a gap of %s serves all levels", g.ShowRange(serves))
		}
		l.Beside(1, serves.Low, "the widest of what is needed at least")
		l.Beside(1, serves.High, "the closest of what is allowed at most")
		l.Result(0, short, "is what is missing for one gap")
	}
}
