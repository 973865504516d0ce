package layers

import (
	"cmp"
	_ "embed"
	"fmt"
	"slices"

	"understitch/model"
	"understitch/model/layering"
	"understitch/rules"
)

//go:embed testdata/hem-drop.bad.garment.hcl
var hemDropBad string

//go:embed testdata/hem-drop.good.garment.hcl
var hemDropGood string

// HemDrop checks that a lining ends above the hem of its shell.
var HemDrop = &rules.Rule{
	Name:     "hem-drop",
	Family:   "layers",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "A lining that hangs free ends above the hem of its shell",
		Why: "A free lining sinks as it is worn, and shows below the shell with the first step. It is also the first thing to be forgotten when " +
			"the shell is shortened.",
		How: "Measure down each edge that runs to the hem, on the inner piece and on the outer, from the lowest level that crosses both, or from " +
			"the edge at their upper end that the layers share. Where there is neither, the heights of the two hems on the draft are compared; " +
			"a draft without levels may lie any way round, and how far apart they lie is measured the way that the outer edge runs. The least " +
			"difference counts. A lining that ends too little above the hem is a warning, one that hangs below it an error. Edges belong together by their names, or by where they are drawn. This is asked where both pieces of a " +
			"inside have an edge finished as hem. A lining that is sewn to its shell's hem is not judged: its pleat may hang lower than its edge.",
		Nothing: "One of the pieces has no hem, or the hems are sewn together.",
		Fix: "Shorten the inner piece at the hem, or lengthen the outer one, all along; or say by a seam or a share that the lining is sewn to the " +
			"hem.",
		Bad: hemDropBad, Good: hemDropGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "least", Value: 19, Unit: rules.Millimetres,
		Text:   "how far above the outer hem an inner one ends at least",
		Source: "3/4 inch, Free-hanging lining, doinaalexei.com/316",
	}, {
		Name: "below", Value: 0.5, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "how far below the outer hem an inner one may hang without an error",
	}},
	Each: rules.Insides(hemDrop),
}

func hemDrop(p *rules.Pass, n *model.Inside) {
	drops, err := layering.HemDrops(p.Garment, n)
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	if len(drops) == 0 {
		p.NothingHere()
		return
	}
	least := slices.MinFunc(drops, func(a, b layering.HemDrop) int { return cmp.Compare(a.Drop, b.Drop) })
	say := rules.Say{Place: least.Inner.Place, Account: hemAccount(least), Related: []rules.Related{
		{Message: least.Outer.Address() + " runs down to the outer hem", Place: least.Outer.Place},
	}}
	for _, d := range drops {
		if d != least {
			say.Related = append(say.Related, rules.Related{
				Message: fmt.Sprintf("along %s it ends %s the outer hem", d.Inner.Address(), aboveOrBelow(p, d.Drop)), Place: d.Inner.Place,
			})
		}
	}
	say.Message = func() string {
		asked, inner, outer := p.Limit("least"), least.Inner.Piece.Address(), least.Outer.Piece.Address()
		return fmt.Sprintf("%s ends %s the hem of %s along %s, %s; it is to end at least %s above it. Shorten %s at the hem by %s, all along, or lengthen %s.",
			inner, aboveOrBelow(p, least.Drop), outer, least.Inner.Address(), least.From, p.Show(asked), inner, p.Show(asked-least.Drop), outer)
	}
	say.Mild = least.Drop >= -p.Limit("below")
	p.AtLeast(least.Drop, p.Limit("least"), say)
}

func aboveOrBelow(p *rules.Pass, drop float64) string {
	if drop < 0 {
		return p.Show(-drop) + " below"
	}
	return p.Show(drop) + " above"
}
