package seams

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/reckoned"
	"understitch/rules"
)

// tooWide reports a dart that takes more than its place can have, or more than any dart
// does. How much room there is up to that says nothing.
func tooWide(p *rules.Pass, d *model.Dart) bool {
	place, has := "", math.Inf(1)
	if d.On != nil {
		place, has = d.On.Address(), d.On.Length()
	} else if w, err := measuring.WidthAtHeight(d.Piece, d.Centre.Y); err == nil {
		place, has = d.Piece.Address()+" at its height", w.Gross
	}
	say := rules.Say{Key: "intake", Account: func(l *reckoned.Lines) { l.Result(0, d.Intake, "is what %s takes out", d.Address()) }}
	switch {
	case d.Intake > has*p.Limit("share"):
		say.Account = shareAccount(d, place, has)
		say.Message = func() string {
			return fmt.Sprintf("%s takes %s out of the %s of %s, and a dart takes no more than %s %% of its place. Look at the figure and at its unit.",
				d.Address(), p.Show(d.Intake), p.Show(has), place, model.Decimal(100*p.Limit("share"), 0))
		}
		p.AtMost(d.Intake/has, "share", say)
	case d.Intake > p.Limit("widest"):
		say.Message = func() string {
			return fmt.Sprintf("%s takes out %s, and no dart is wider than %s. Look at the figure and at its unit.", d.Address(), p.Show(d.Intake), p.Show(p.Limit("widest")))
		}
		p.AtMost(d.Intake, "widest", say)
	default:
		return false
	}
	return true
}
