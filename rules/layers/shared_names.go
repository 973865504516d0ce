package layers

import (
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

// misnamed tells of a share that names other edges than are meant; all that would
// be found of those would only say the same.
func misnamed(p *rules.Pass, share *model.Share, outer, inner *sewing.Walk) bool {
	for _, st := range share.Inner {
		if slices.ContainsFunc(share.Outer, func(o model.Stretch) bool { return o.Edge == st.Edge }) {
			p.Fault(rules.Say{Key: "names " + st.Edge.Address(), Place: st.Place, Message: func() string {
				return fmt.Sprintf("%s names %s on both its sides. Name the edge of the other layer that is laid on it.", share.Address(), st.Edge.Address())
			}})
			return true
		}
	}
	order, ok := reordered(outer, inner, p.Limit("length"))
	if ok {
		p.Fault(rules.Say{Key: "order", Place: share.Inner[0].Place, Message: func() string {
			return fmt.Sprintf("%s names its inner edges in another order than its outer ones: laid on each other as listed they do not agree, and in the order %s they do. "+
				"List both sides in one order.", share.Address(), sewing.Listed(order))
		}})
	}
	return ok
}

// reordered are the inner edges in the order in which they are as long as the
// outer ones of the same names; ok where they are listed in another one, in which
// they are not.
func reordered(outer, inner *sewing.Walk, within float64) (names []string, ok bool) {
	if len(outer.Runs) != len(inner.Runs) {
		return nil, false
	}
	asListed := true
	for i, a := range outer.Runs {
		asListed = asListed && math.Abs(a.Length-inner.Runs[i].Length) <= within
		k := slices.IndexFunc(inner.Runs, func(b sewing.Run) bool {
			return b.Edge.Name == a.Edge.Name && b.Edge.Piece.Name == a.Edge.Piece.Name && math.Abs(a.Length-b.Length) <= within
		})
		if k < 0 {
			return nil, false
		}
		names = append(names, inner.Runs[k].Edge.Address())
	}
	return names, !asListed
}
