package allowances

import (
	"fmt"

	"understitch/model"
	"understitch/rules"
)

// onFold says of two edges laid on each other, one of which lies on the fold and
// takes no allowance, what is wrong there: not the allowance but the fold. It
// reports whether they are such.
func onFold(p *rules.Pass, a, b *model.Edge, say *rules.Say) bool {
	if b.Piece.Fold == b {
		a, b = b, a
	}
	if a.Piece.Fold != a || b.Piece.Fold == b || a.Allowance.Own {
		return false
	}
	say.Place = a.Place
	say.Related = []rules.Related{{Message: b.Address() + " is not on a fold", Place: b.Place}, {Message: "the piece on the fold", Place: a.Piece.Place}}
	say.Message = func() string {
		return fmt.Sprintf("%s lies on the fold and has no allowance, and %s, which it is laid on, is cut with one of %s. Take %s off the fold, or lay both to it.",
			a.Address(), b.Address(), p.Show(b.Allowance.Width), a.Address())
	}
	say.Mend = &rules.Mend{Title: fmt.Sprintf("take %s off the fold: cut = %d in place of fold = %s", a.Address(), 2*a.Piece.Cut, a.Name)}
	return true
}
