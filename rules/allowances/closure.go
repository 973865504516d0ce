package allowances

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/rules"
)

//go:embed testdata/allowance-closure.bad.garment.hcl
var closureBad string

//go:embed testdata/allowance-closure.good.garment.hcl
var closureGood string

// Closure checks that an edge which takes a fastener has room for it.
var Closure = rules.Rule{
	Name:     "allowance-closure",
	Family:   "allowances",
	Severity: rules.Error,
	Settled:  true,
	Doc: rules.Doc{
		Title: "An edge that takes a fastener has the allowance it needs",
		Why: "Tape, zip or buttons are sewn through the allowance. Where it is too narrow the fastener holds in one row of stitches at the raw " +
			"edge, and pulls out. It cannot be added once the cloth is cut.",
		How: "The allowance of both edges is held against what the closure needs: what it states as its allowance, else the house's for closures, " +
			"else the least given below. The halves of a mirrored pair are one edge.",
		Fix: "Widen the edge's allowance, or state at the closure what its fastener needs.",
		Bad: closureBad, Good: closureGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "least", Value: 19, Unit: rules.Millimetres, Text: "the allowance a fastener needs where neither its closure nor the house says", Source: "3/4 inch at the centre back and any seam with a zip: Seam and hem allowances, mudmosh.com; metric habit is 2 to 2.5 cm: common practice, no source"},
		{Name: "short", Value: 0.5, Unit: rules.Millimetres, Text: "how far an allowance may fall short of that", Source: pencil},
	},
	Each: rules.Closures(closure),
}

func closure(p *rules.Pass, c *model.Closure) {
	done := map[*model.Edge]bool{}
	for _, j := range p.Garment.JoinsOf(c) {
		first, second := j.Sides[0], j.Sides[1]
		for i := range max(len(first), len(second)) {
			var pair []*model.Edge
			for _, side := range j.Sides {
				if i < len(side) && !done[side[i].Edge] {
					done[side[i].Edge] = true
					pair = append(pair, side[i].Edge)
				}
			}
			closureEdges(p, c, pair)
		}
	}
}

// closureEdges checks edges that are closed on each other: two, or one of a pair.
func closureEdges(p *rules.Pass, c *model.Closure, pair []*model.Edge) {
	needed := need(p.Garment, c, p.Limit("least"))
	alike := len(pair) == 2 && pair[0].Allowance.Width == pair[1].Allowance.Width
	for i, e := range pair {
		width := e.Allowance.Width
		if !model.Known(width) {
			p.Cannot(unstated(e), rules.Say{Key: e.Address(), Place: e.Place})
			continue
		}
		other := pair[len(pair)-1-i]
		var under []rules.Under
		if i == 1 && alike { // what the closure needs is one figure
			under = []rules.Under{{Rule: "allowance-closure", Subject: c.Address(), Key: other.Address()}}
		}
		p.Within(width, model.AnyFrom(needed), "short", rules.Say{
			Key:     e.Address(),
			Under:   under,
			Place:   stated(e),
			Account: neededAccount(p.Garment, c, e, needed),
			Message: func() string {
				who, carries, widen := e.Address(), "carries", "it"
				if alike {
					who, carries, widen = e.Address()+" and "+other.Address(), "carry", "both"
				}
				return fmt.Sprintf("%s %s an allowance of %s, and %s needs %s to be sewn to it. Widen %s by %s.",
					who, carries, p.Show(width), c.Address(), p.Show(needed), widen, p.Show(needed-width))
			},
			Related: []rules.Related{{Message: "the closure", Place: c.Place}},
			Mend:    widened(p, needed, alike, e, other),
		})
	}
}

// widened gives an edge, or both edges of a closure, the allowance it needs.
func widened(p *rules.Pass, needed float64, both bool, e, other *model.Edge) *rules.Mend {
	if both {
		return setBoth(p, e, other, needed)
	}
	return set(p, e, needed)
}
