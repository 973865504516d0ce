package draft

import (
	"fmt"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

// twoLefts finds a piece that is cut twice alike and has to be left and right:
// two left fronts that close on each other, two left sleeves.
func twoLefts(p *rules.Pass, piece *model.Piece) {
	if piece.Cut < 2 || piece.Mirrored || piece.Fold != nil {
		return
	}
	say := rules.Say{Key: "alike", Account: cutAccount(piece)}
	e, other, thing := sewing.OtherHalf(p.Garment, piece)
	if thing == nil || sewing.OwnMirrorImage(piece) {
		return
	}
	say.Place = piece.Place
	say.Related = []rules.Related{{Message: thing.Address() + " joins it", Place: thing.Where()}}
	say.Message = func() string {
		why := fmt.Sprintf("%s joins %s to %s, which is cut as a left and a right", thing.Address(), e.Address(), other.Address())
		if other == e {
			why = fmt.Sprintf("%s joins %s to its own other half", thing.Address(), e.Address())
		}
		return fmt.Sprintf("%s is cut %d times alike, and %s: there would be two left ones and no right one. Take out mirrored = false.", piece.Address(), piece.Cut, why)
	}
	say.Mend = &rules.Mend{Title: fmt.Sprintf("cut %s as a mirrored pair", piece.Address())}
	p.Fault(say)
}
