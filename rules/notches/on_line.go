package notches

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/rules"
)

//go:embed testdata/notch-on-line.bad.garment.hcl
var onLineBad string

//go:embed testdata/notch-on-line.good.garment.hcl
var onLineGood string

// OnLine checks that every notch lies on its seam line as it is drawn now.
var OnLine = rules.Rule{
	Name:     "notch-on-line",
	Family:   "notches",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "A notch lies on the seam line as it is now",
		Why: "After a fitting the line moves and the notch stays where it was. It is then cut into the garment, or falls outside it, and marks no " +
			"place of the seam any more.",
		How: "Of a notch given by a point, the distance from that point to the nearest place on its edge is measured. One given by at may not lie " +
			"further along than the edge is long. One given by a level needs an edge that the level crosses. Proposed is the place on the line at " +
			"the level that the notch marks; else the one where it meets its partner; else the nearest that keeps clear of corners, darts and other notches.",
		Fix: "Move the notch to the place given. Then look whether its partner still meets it.",
		Bad: onLineBad, Good: onLineGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "off", Value: 0.5, Unit: rules.Millimetres, Text: "how far a notch may lie off its line", Source: "common practice, no source: the width of a pencil line"},
		{Name: "clear", Value: 12.7, Unit: rules.Millimetres, Text: "how far the place proposed keeps from corners, darts and other notches", Source: "Pop quiz: notching challenge, fashion-incubator.com"},
	},
	Each: rules.Notches(onLine),
}

func onLine(p *rules.Pass, n *model.Notch) {
	along, off, err := n.Position()
	say := rules.Say{Place: n.Given, Related: []rules.Related{{Message: "its edge", Place: n.On.Place}}}
	switch {
	case err != nil && n.Level != nil && n.On.Drawn():
		say.Message = func() string {
			return fmt.Sprintf("%s lies nowhere: %s. Give it a place along the edge, or put it on the edge that the level crosses.", n.Address(), err)
		}
		p.Fault(say)
	case err != nil:
		p.Cannot(err, rules.Say{Place: n.Given})
	case n.ByPoint:
		to := placeFor(p, n, along)
		say.Message = func() string {
			return fmt.Sprintf("%s lies %s off %s as it is now; no more than %s is allowed. %s",
				n.Address(), p.Show(off), n.On.Address(), p.Show(p.Limit("off")), to.says(p, n))
		}
		say.Mend, say.Account = move(p, n, n.On, to.along), offLineAccount(p, n, along, off)
		p.AtMost(off, "off", say)
	case model.Known(n.At):
		inside(p, n, say)
	default:
		p.Good(say) // a level that crosses its edge
	}
}

// inside judges a notch that is given by its distance along the edge.
func inside(p *rules.Pass, n *model.Notch, say rules.Say) {
	length, beyond := n.On.Length(), n.Beyond()
	nearest := length
	if beyond < 0 {
		nearest = 0
	}
	to := placeFor(p, n, nearest)
	say.Message = func() string {
		text := fmt.Sprintf("%s is to lie %s along %s, which is %s long: it is %s beyond its end. ",
			n.Address(), p.Show(n.At), n.On.Address(), p.Show(length), p.Show(max(beyond, -beyond)))
		return text + to.says(p, n)
	}
	say.Mend, say.Account = move(p, n, n.On, to.along), alongAccount(n, beyond)
	p.AtMost(max(beyond, -beyond), "off", say)
}
