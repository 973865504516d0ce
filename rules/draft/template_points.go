package draft

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/rules"
)

//go:embed testdata/template-points.bad.garment.hcl
var templatePointsBad string

//go:embed testdata/template-points.good.garment.hcl
var templatePointsGood string

// TemplatePoints checks that a line drawn by a template passes through the points
// stated for it.
var TemplatePoints = rules.Rule{
	Name:     "template-points",
	Family:   "draft",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "A line that is drawn by a template passes through its reference points",
		Why: "The back's side seam is drawn by the front's, and the draft of the back says where that seam must lie. Where the template misses those points, " +
			"the back is wider or narrower than it was drafted, though the seam walks.",
		How: "At each level that through names, measure how far the traced line lies from the drafting origin, as it is after all alterations. The figure is how far " +
			"that is from the stated point, across.",
		Nothing: "The edge is no template, or no points are stated for it.",
		Fix:     "Lay the template to another level by at, move the end of the edge before it, or correct the stated point.",
		Bad:     templatePointsBad, Good: templatePointsGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "off", Value: 0.5, Unit: rules.Millimetres, Text: "how far from a stated point the line may lie, across", Source: "common practice, no source: the width of a pencil line"},
	},
	Each: rules.Edges(templatePoints),
}

func templatePoints(p *rules.Pass, e *model.Edge) {
	p.NothingHere()
	if e.Traced == nil {
		return
	}
	for _, v := range e.Traced.Through {
		say := rules.Say{Key: v.Level.Name, Place: v.Place, Related: []rules.Related{{Message: "the template", Place: e.Traced.Of.Place}}}
		at, err := e.LevelAt(v.Level)
		if err != nil {
			p.Cannot(err, say)
			continue
		}
		x := e.Path.At(at).X
		say.Account = func(l *reckoned.Lines) {
			l.Differ(rules.Millimetres, 0, x, e.Address()+" at the "+v.Level.Name+" level, across from the drafting origin", v.Value, "the stated point")
		}
		say.Message = func() string {
			return fmt.Sprintf("%s, traced from %s, lies at %s at the %s level, %s from the stated %s. Lay the template to this level by at, or correct the point.",
				e.Address(), e.Traced.Of.Address(), p.Show(x), v.Level.Name, p.Show(math.Abs(x-v.Value)), p.Show(v.Value))
		}
		p.AtMost(math.Abs(x-v.Value), "off", say)
	}
}
