package notches

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/rules"
)

//go:embed testdata/notch-depth.bad.garment.hcl
var depthBad string

//go:embed testdata/notch-depth.good.garment.hcl
var depthGood string

// Depth checks that a notch is not cut as deep as the stitch line.
var Depth = rules.Rule{
	Name:     "notch-depth",
	Family:   "notches",
	Severity: rules.Error,
	Settled:  true,
	Doc: rules.Doc{
		Title: "A notch does not reach the stitch line",
		Why: "A notch that is cut through the allowance comes out as a hole in the finished seam. One that is cut through most of it weakens the " +
			"seam there.",
		How: "The depth of the notch is held against the allowance of its edge: half of it is a warning, all of it an error. A notch that states " +
			"no depth is not judged.",
		Nothing: "No depth is stated.",
		Fix:     "Cut the notch shallower, or give the edge more allowance.",
		Bad:     depthBad, Good: depthGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "warn", Value: 0.5, Unit: rules.Ratio, Text: "how much of the allowance a notch may take: a warning past this", Source: "common practice, no source"},
		{Name: "error", Value: 0.99, Unit: rules.Ratio, Text: "a notch that takes more than this is as deep as the allowance: an error", Source: "In or out, 2014, studiokatdesigns.com: notches larger than the allowance came out as holes"},
	},
	Each: rules.Notches(depth),
}

func depth(p *rules.Pass, n *model.Notch) {
	allowance := n.On.Allowance.Width
	switch {
	case !model.Known(n.Depth):
		p.NothingHere()
	case !model.Known(allowance):
		p.Cannot(fmt.Errorf("%s states no allowance, nor does its piece or the house", n.On.Address()), rules.Say{})
	case allowance <= 0:
		judgeWithout(p, n)
	default:
		share := n.Depth / allowance
		p.Steps(share, rules.Say{
			Account: depthAccount(n, share),
			Message: func() string {
				return fmt.Sprintf("%s is %s deep in an allowance of %s, %s %% of it. Cut it no deeper than %s.",
					n.Address(), p.Show(n.Depth), p.Show(allowance), model.Decimal(share*100, 0), p.Show(allowance*p.Limit("warn")))
			},
			Related: []rules.Related{{Message: "its edge", Place: n.On.Place}},
			Mend:    &rules.Mend{Title: fmt.Sprintf("cut %s no deeper than %s", n.Address(), p.Show(allowance*p.Limit("warn")))},
		})
	}
}

// judgeWithout judges a notch on an edge that has no allowance to cut it in.
func judgeWithout(p *rules.Pass, n *model.Notch) {
	if n.Depth <= 0 {
		p.Good(rules.Say{})
		return
	}
	p.Fault(rules.Say{
		Message: func() string {
			return fmt.Sprintf("%s is %s deep, and %s has no allowance to cut it in. Mark it without cutting: depth = 0.",
				n.Address(), p.Show(n.Depth), n.On.Address())
		},
		Related: []rules.Related{{Message: "its edge", Place: n.On.Place}},
	})
}
