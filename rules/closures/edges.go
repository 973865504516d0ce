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
			"of a mirrored pair, one edge named twice, are equal by themselves.",
		Fix: "True the two edges to one length: shorten the longer or lengthen the shorter at the end that meets nothing, and carry the change to " +
			"the layers that share the edge.",
		Bad: edgesBad, Good: edgesGood, Since: "0.1",
	},
	Limits: rules.Steps(1.6, 3.2, rules.Millimetres, "how far the two edges differ in length",
		"1/16 and 1/8 inch, 10 Patternwork Skills, Threads 200, 2018/19"),
	Each: rules.Closures(edges),
}

func edges(p *rules.Pass, c *model.Closure) {
	say := rules.Say{Place: c.Edges[1].Place}
	var lengths [2]float64
	for i := range lengths {
		whole, err := sewing.WholeClosure(p.Garment, c, i)
		if err != nil {
			p.Cannot(err, say)
			return
		}
		l := whole.Length
		lengths[i] = l
		say.Related = append(say.Related, rules.Related{
			Message: fmt.Sprintf("%s is %s long", c.Edges[i], p.Show(l)), Place: c.Edges[i].Edge.Place,
		})
	}
	diff := lengths[0] - lengths[1]
	say.Account = edgesAccount(p.Garment, c, diff)
	say.Message = func() string {
		longer, shorter := 0, 1
		if diff < 0 {
			longer, shorter = 1, 0
		}
		return fmt.Sprintf("%s is %s longer than %s, which it is closed to (%s against %s); no more than %s is allowed. "+
			"Shorten the one or lengthen the other.", c.Edges[longer], p.Show(math.Abs(diff)), c.Edges[shorter],
			p.Show(lengths[longer]), p.Show(lengths[shorter]), p.Show(p.Limit("warn")))
	}
	p.Steps(diff, say)
}
