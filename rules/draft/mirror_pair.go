package draft

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/rules"
)

//go:embed testdata/mirror-pair.bad.garment.hcl
var mirrorPairBad string

//go:embed testdata/mirror-pair.good.garment.hcl
var mirrorPairGood string

// MirrorPair checks that pieces which need another half are cut with one.
var MirrorPair = rules.Rule{
	Name:     "mirror-pair",
	Family:   "draft",
	Severity: rules.Error,
	Under:    []string{"edge-unused"},
	Doc: rules.Doc{
		Title: "Pairs are mirrored and whole, and single pieces are single",
		Why: "A piece that is cut once and joined to its own other half leaves half a garment. Of three mirrored pieces one has no partner. Both " +
			"are found when the cloth is cut and there is none left.",
		How: "Count how many are cut. Mirrored pieces are cut in twos; a piece cut once is not mirrored. A piece that a seam or closure joins to " +
			"itself is cut more than once, or lies on the fold. A piece cut once and off the fold, all along whose seams there is twice as much to sew " +
			"to as there is of it, is cut too seldom; where its seams do not tell, the piece that lies on it in an inside may. Two that are cut are taken to be a mirrored pair unless the piece says mirrored = " +
			"false. Then they must not be left and right: not be joined to their own other half, nor to a mirrored pair, unless the piece is the same as " +
			"its mirror image.",
		Fix: "Say cut = 2, take out mirrored = false, or lay the piece to the fold; or take out mirrored, or the seam that joins the edge to itself.",
		Bad: mirrorPairBad, Good: mirrorPairGood, Since: "0.1",
	},
	Each: rules.Pieces(mirrorPair),
}

func mirrorPair(p *rules.Pass, piece *model.Piece) {
	say := rules.Say{Key: "mirrored", Account: cutAccount(piece)}
	fault := ""
	switch {
	case !piece.Mirrored:
	case piece.Cut == 1 && piece.Fold != nil:
		fault = "%s is cut once, on the fold, and is to be mirrored: it holds both its halves already. Take mirrored out, or take it off the fold and cut 2."
	case piece.Cut == 1:
		fault = "%s is cut once and is to be mirrored: there is nothing that could mirror it. Cut 2, or take mirrored out."
	case piece.Cut%2 == 1:
		fault = "%s is cut " + fmt.Sprint(piece.Cut) + " times and is to be mirrored: one of them has no other half. Cut one more or less, or say mirrored = false."
	}
	if fault == "" {
		p.Good(say)
	} else {
		say.Message = func() string { return fmt.Sprintf(fault, piece.Address()) }
		p.Fault(say)
	}
	cutShort(p, piece)
	twoLefts(p, piece)
	for _, e := range piece.Edges {
		if j := p.Garment.JoinedToItself(e); j != nil {
			otherHalf(p, piece, e, j)
		}
	}
}

// otherHalf judges a piece whose edge is joined to itself.
func otherHalf(p *rules.Pass, piece *model.Piece, e *model.Edge, j *model.Join) {
	say := rules.Say{Key: e.Name, Account: cutAccount(piece), Related: []rules.Related{{Message: "joins it to itself", Place: j.Where()}}}
	if piece.Cut > 1 || piece.Fold != nil {
		p.Good(say)
		return
	}
	say.Message = func() string {
		return fmt.Sprintf("%s joins %s to itself, but %s is cut once and not on the fold: there is no second half to join. Cut 2, or lay the piece to the fold.",
			j.Address(), e.Address(), piece.Address())
	}
	say.Mend = &rules.Mend{Title: fmt.Sprintf("cut 2 of %s", piece.Address())}
	say.Cures = []rules.Cure{cutting(piece, 2)}
	p.Fault(say)
}
