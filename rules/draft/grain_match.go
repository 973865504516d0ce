package draft

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/grain-match.bad.garment.hcl
var grainMatchBad string

//go:embed testdata/grain-match.good.garment.hcl
var grainMatchGood string

// GrainMatch checks that pieces which are sewn to each other agree in grain.
var GrainMatch = rules.Rule{
	Name:     "grain-match",
	Family:   "draft",
	Severity: rules.Warning,
	Doc: rules.Doc{
		Title: "Pieces that are sewn to each other agree in grain",
		Why: "Cloth gives along the bias and not along the grain. A piece whose grain is turned against its neighbour's hangs and stretches " +
			"differently: the seam twists round the body, and the hem drops on one side.",
		How: "Lay the two pieces of a seam with their levels in line, one of them turned over where both are drawn the same way round, and measure " +
			"the angle between their grain lines. Pieces without levels, as the parts of a sleeve, are laid together along the straight line " +
			"between the seam's ends, where the seam runs along the grain. Pieces cut another way of the cloth, cut_on = \"cross\" or \"bias\", are " +
			"not compared with those on the straight, nor are pieces without a grain line. A piece that disagrees with several others is reported " +
			"once.",
		Nothing: "The pieces do not both have a grain line, or are cut different ways of the cloth, or the seam runs across the grain of pieces without levels.",
		Fix:     "Turn the grain line of the piece named, or say which way of the cloth it is cut: cut_on = \"bias\".",
		Bad:     grainMatchBad, Good: grainMatchGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "grain", Value: 3, Unit: rules.Degrees, Text: "how far the grains of two pieces may be from each other", Source: "common practice, no source"},
	},
	Each: rules.Seams(grainMatch),
}

func grainMatch(p *rules.Pass, s *model.Seam) {
	p.NothingHere()
	undrawn(p, s)
	pairs := sewing.GrainPairs(p.Garment)
	odd := oddGrains(pairs, p.Limit("grain"))
	told := map[*model.Piece]bool{}
	for _, pair := range pairs {
		wrong, right := pair.B, pair.A
		if odd[wrong] < odd[right] {
			wrong, right = right, wrong
		}
		if pair.Off > p.Limit("grain") {
			if told[wrong] {
				continue // with an earlier seam
			}
			told[wrong] = true
		}
		if pair.Seam != s {
			continue
		}
		p.AtMost(pair.Off, "grain", rules.Say{
			Key: pair.A.Address() + " and " + pair.B.Address(), Place: wrong.Place, Account: grainAccount(p.Garment, pair),
			Message: func() string {
				return fmt.Sprintf("the grain of %s is turned by %s° against that of %s, which it is sewn to by %s; no more than %s° is allowed. Turn its grain line, or say which way of the cloth it is cut: cut_on = \"bias\".",
					wrong.Address(), model.Decimal(pair.Off, 1), right.Address(), s.Address(), model.Decimal(p.Limit("grain"), 1))
			},
			Related: []rules.Related{{Message: "the piece it is sewn to", Place: right.Place}, {Message: "the seam", Place: s.Join}},
		})
	}
}

// undrawn says which pieces of a seam have grain lines that cannot be compared,
// as one of them is not drawn.
func undrawn(p *rules.Pass, s *model.Seam) {
	for _, first := range s.Sides[0] {
		for _, second := range s.Sides[1] {
			a, b := first.Edge.Piece, second.Edge.Piece
			if a == b || a.CutOn != b.CutOn || len(a.Grain) != 2 || len(b.Grain) != 2 {
				continue
			}
			for _, piece := range []*model.Piece{a, b} {
				if err := piece.Undrawn(); err != nil {
					p.Cannot(err, rules.Say{Key: piece.Address(), Place: s.Join})
				}
			}
		}
	}
}

// oddGrains counts how many of its neighbours each piece disagrees with: the one
// that disagrees with more has the wrong grain.
func oddGrains(pairs []sewing.GrainPair, limit float64) map[*model.Piece]int {
	out := map[*model.Piece]int{}
	for _, pair := range pairs {
		if pair.Off > limit {
			out[pair.A]++
			out[pair.B]++
		}
	}
	return out
}
