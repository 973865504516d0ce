package layers

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/rules"
)

// copies judges whether both layers have the shared edge as often: a lining cut
// once cannot be sewn to a pair.
func (s *sharing) copies() {
	if math.Abs(s.longer) > s.Limit("length") {
		return // edges of other lengths are told as such
	}
	outer, inner := timesAlong(s.outer), timesAlong(s.inner)
	say := rules.Say{Key: "copies", Place: s.share.Inner[0].Place, Related: s.edges()}
	if math.Abs(outer-inner)*s.outer.Length <= s.Limit("length") {
		s.Good(say)
		return
	}
	say.Message = func() string {
		return fmt.Sprintf("%s has the edges of %s %s as often as %s, when all that is cut is counted. "+
			"Look at cut, mirrored and fold of the pieces.", layerOf(s.inner), s.share.Address(),
			model.Decimal(inner/outer, 2), layerOf(s.outer))
	}
	s.Fault(say)
}

// timesAlong is how often a walk's edges are there when the pieces are cut, on
// average along it.
func timesAlong(w *model.Walk) float64 {
	sum := 0.0
	for _, r := range w.Runs {
		sum += r.Length * r.Edge.Piece.Times()
	}
	return sum / w.Length
}
