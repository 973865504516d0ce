package closures

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/closure-edges.bad.garment.hcl
var edgesBad string

//go:embed testdata/closure-edges.good.garment.hcl
var edgesGood string

// Edges checks that both edges of a closure are equally long.
var Edges = &rules.Rule{
	Name:     "closure-edges",
	Family:   "closures",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "Both edges of a closure are equally long",
		Why: "A fastener holds its two edges together point by point. Where one edge is longer it stands away from the body between the fasteners, " +
			"or the neck and the hem meet in a step.",
		How: "Both edges are measured along the stitch line, darts closed, between the closure's from and to where it states them. An edge that " +
			"runs up to the fold, or to the seam of a pair, counts both halves. The two halves " +
			"of a mirrored pair, one edge named twice, are equal by themselves. What the same opening closes on another layer (also) is measured " +
			"in the same way, and must be as long as the closure, unless that layer ends before a level that the closure reaches.",
		Fix: "True the two edges to one length: shorten the longer or lengthen the shorter at the end that meets nothing, and carry the change to " +
			"the layers that share the edge.",
		Bad: edgesBad, Good: edgesGood, Since: "0.1",
	},
	Limits: rules.Steps(1.6, 3.2, rules.Millimetres, "how far the two edges differ in length",
		"1/16 and 1/8 inch, 10 Patternwork Skills, Threads 200, 2018/19"),
	Each: rules.Closures(edges),
}

func edges(p *rules.Pass, c *model.Closure) {
	joins := p.Garment.JoinsOf(c)
	for i, j := range joins {
		key := ""
		if i > 0 {
			key = sewing.SideText(j.Sides[0])
		}
		alike(p, c, key, j.Sides[0], j.Sides[1])
		if i > 0 && !p.Garment.Short(c, c.Also[i-1]) { // what one opening closes on two layers is one length
			alike(p, c, key+" in "+sewing.SideText(joins[0].Sides[0]), joins[0].Sides[0], j.Sides[0])
		}
	}
}

// alike checks that two sides of an opening are equally long.
func alike(p *rules.Pass, c *model.Closure, key string, first, second []model.Stretch) {
	say := rules.Say{Key: key, Place: second[0].Place}
	var lengths [2]float64
	var names [2]string
	for i, side := range [][]model.Stretch{first, second} {
		whole, err := sewing.WholeOf(p.Garment, side)
		if err != nil {
			p.Cannot(err, say)
			return
		}
		lengths[i], names[i] = whole.Length, sideName(c, side)
		say.Related = append(say.Related, rules.Related{
			Message: fmt.Sprintf("%s is %s long", names[i], p.Show(lengths[i])), Place: side[0].Edge.Place,
		})
	}
	diff := lengths[0] - lengths[1]
	say.Account = edgesAccount(p.Garment, first, second, diff)
	say.Message = func() string {
		longer, shorter := 0, 1
		if diff < 0 {
			longer, shorter = 1, 0
		}
		closed := "which it is closed to"
		if first[0].Edge.Piece.Layer != second[0].Edge.Piece.Layer {
			closed = "which " + c.Address() + " opens with it"
		}
		return fmt.Sprintf("%s is %s longer than %s, %s (%s against %s); no more than %s is allowed. "+
			"Shorten the one or lengthen the other.", names[longer], p.Show(math.Abs(diff)), names[shorter], closed,
			p.Show(lengths[longer]), p.Show(lengths[shorter]), p.Show(p.Limit("warn")))
	}
	p.Steps(diff, say)
}

// sideName names one side of a closure, with the marks that it states itself.
func sideName(c *model.Closure, side []model.Stretch) string {
	if s := side[0]; len(side) == 1 && (s.From != c.From || s.To != c.To) {
		return s.String()
	}
	return sewing.SideText(side)
}
