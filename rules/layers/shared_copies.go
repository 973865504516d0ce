package layers

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/sewing"
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
	say.Under = s.sameCopies()
	say.Message = func() string {
		return fmt.Sprintf("%s has the edges of %s %s as often as %s, when all that is cut is counted. "+
			"Look at cut, mirrored and fold of the pieces.", layerOf(s.inner), s.share.Address(),
			model.Decimal(inner/outer, 2), layerOf(s.outer))
	}
	s.Fault(say)
}

// timesAlong is how often a walk's edges are there when the pieces are cut, on
// average along it.
func timesAlong(w *sewing.Walk) float64 {
	sum := 0.0
	for _, r := range w.Runs {
		sum += r.Length * r.Edge.Piece.Times()
	}
	return sum / w.Length
}

// sameCopies names the findings of earlier shares about the same two pieces, which
// are not cut as often.
func (s *sharing) sameCopies() []rules.Under {
	var out []rules.Under
	a, b, found := cutApart(s.outer, s.inner)
	for _, other := range s.Garment.Shares {
		if other == s.share {
			break
		}
		outer, inner, _, err := sewing.ShareWalks(s.Garment, other)
		if err != nil {
			continue
		}
		if p, q, also := cutApart(outer, inner); found && also && p == a && q == b {
			out = append(out, rules.Under{Rule: "shared-edge", Subject: other.Address(), Key: "copies"})
		}
	}
	return out
}

// cutApart are the first two pieces that lie on each other and are not there as
// often when all is cut.
func cutApart(outer, inner *sewing.Walk) (a, b *model.Piece, found bool) {
	for _, r := range outer.Runs {
		e, _ := inner.Place((r.Start + r.Length/2) * inner.Length / outer.Length)
		if r.Edge.Piece.Times() != e.Piece.Times() {
			return r.Edge.Piece, e.Piece, true
		}
	}
	return nil, nil, false
}
