package notches

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/notch-unique.bad.garment.hcl
var uniqueBad string

//go:embed testdata/notch-unique.good.garment.hcl
var uniqueGood string

// Unique checks that no two seams of a layer are notched alike.
var Unique = rules.Rule{
	Name:     "notch-unique",
	Family:   "notches",
	Severity: rules.Note,
	Doc: rules.Doc{
		Title: "No piece can be sewn to a wrong one by its notches",
		Why: "Where two seams of about one length are notched alike, a machinist can sew a panel to the wrong neighbour, or upside down, and every " +
			"notch meets. It is found when the garment is closed, or on the body.",
		How: "Lay every two seams of a layer along each other, once from the same end and once turned round. They can be mistaken where they are " +
			"about equally long, have as many notches of the same kinds in the same order, and each notch lies nearer than the limit to one of " +
			"the other seam. Seams without notches are not compared, nor are those of different layers: a lining is meant to be notched as its " +
			"shell is.",
		Nothing: "No seam before it on its layer has a notch, it has none itself, or it joins two layers.",
		Fix:     "Move a notch of one of the seams by more than the limit, on both its sides, or make it a double notch.",
		Bad:     uniqueBad, Good: uniqueGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "apart", Value: 12.7, Unit: rules.Millimetres, Text: "how far lengths or notches must differ to be told apart", Source: "Pop quiz: notching challenge, part 2, fashion-incubator.com: notch distances on different seams should differ by 1/2 in"},
	},
	Each: rules.Seams(unique),
}

func unique(p *rules.Pass, s *model.Seam) {
	p.NothingHere()
	layer := oneLayer(s)
	if layer == nil {
		return
	}
	walk, err := firstSide(p, s)
	if err != nil {
		p.Cannot(err, rules.Say{Place: s.Join})
		return
	}
	if len(walk.Notches) == 0 {
		return
	}
	for _, other := range p.Garment.Seams {
		if other == s {
			break
		}
		there, err := firstSide(p, other)
		if oneLayer(other) != layer || err != nil || len(there.Notches) == 0 {
			continue
		}
		say := rules.Say{Key: other.Address(), Place: s.Join, Account: alikeAccount(s, other, walk, there), Related: []rules.Related{{Message: "the seam before it", Place: other.Join}}}
		if !sewing.AlikeNotched(walk, there, p.Limit("apart")) {
			p.Good(say)
			continue
		}
		say.Message = func() string {
			return fmt.Sprintf("%s and %s can be mistaken for each other: they are %s and %s long, and their notches lie within %s of the same places. Move a notch of one of them, on both its sides, or make it a double one.",
				s.Address(), other.Address(), p.Show(walk.Length), p.Show(there.Length), p.Show(p.Limit("apart")))
		}
		p.Fault(say)
	}
}

// firstSide is the seam's first side laid out.
func firstSide(p *rules.Pass, s *model.Seam) (*sewing.Walk, error) {
	a, _, err := sewing.Walks(p.Garment, p.Garment.JoinOf(s))
	return a, err
}

// oneLayer is the layer that all the seam's pieces are of, or nil.
func oneLayer(s *model.Seam) *model.Layer {
	layer := s.Sides[0][0].Edge.Piece.Layer
	for _, side := range s.Sides {
		for _, st := range side {
			if st.Edge.Piece.Layer != layer {
				return nil
			}
		}
	}
	return layer
}
