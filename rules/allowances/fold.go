package allowances

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/rules"
)

//go:embed testdata/allowance-fold.bad.garment.hcl
var foldBad string

//go:embed testdata/allowance-fold.good.garment.hcl
var foldGood string

// Fold checks that an edge on the fold carries no allowance.
var Fold = rules.Rule{
	Name:     "allowance-fold",
	Family:   "allowances",
	Severity: rules.Error,
	Settled:  true,
	Doc: rules.Doc{
		Title: "An edge on the fold carries no allowance",
		Why:   "The edge is laid to the fold as it is cut: an allowance there makes the piece wider by twice its width.",
		How: "The allowance that the fold edge states itself must be nothing. What the piece or the house states for edges in general does not " +
			"hold for a fold.",
		Nothing: "The piece is not on the fold.",
		Fix:     "Take the allowance out, or cut the piece with a seam there and take out the fold.",
		Bad:     foldBad, Good: foldGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "most", Value: 0, Unit: rules.Millimetres, Text: "the allowance an edge on the fold may carry", Source: "follows from how a fold is cut"},
	},
	Each: rules.Pieces(fold),
}

func fold(p *rules.Pass, piece *model.Piece) {
	e := piece.Fold
	switch {
	case e == nil:
		p.NothingHere()
	case !e.Allowance.Own:
		p.Good(rules.Say{Place: e.Place, Account: func(l *reckoned.Lines) { l.Say(0, "%s is on the fold and states no allowance", e.Address()) }})
	default:
		p.AtMost(e.Allowance.Width, "most", rules.Say{
			Place:   e.Allowance.Place,
			Account: foldAccount(e),
			Message: func() string {
				return fmt.Sprintf("%s lies on the fold and carries an allowance of %s: the piece comes out %s wider. Take it out.",
					e.Address(), p.Show(e.Allowance.Width), p.Show(2*e.Allowance.Width))
			},
			Related: []rules.Related{{Message: "the piece on the fold", Place: piece.Place}},
			// Where the stitch line is drawn nothing else hangs on the figure.
			Mend: &rules.Mend{
				Title: "take the allowance off the fold", Safe: piece.DrawnOn == model.StitchLine,
				Edits: []rules.Edit{{Place: e.Allowance.Place, Text: "0"}},
			},
		})
	}
}
