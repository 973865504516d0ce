package layers

import (
	"fmt"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

// turned tells of a line that agrees with the other layer's only when it is turned
// end for end, which would lay a fold on an armhole. All else that would be found of
// it follows from that.
func turned(p *rules.Pass, share *model.Share, outer, inner *sewing.Walk, by string) bool {
	if share.Match != model.Identical || share.Flip != nil && *share.Flip || by != sewing.ByEnds && by != sewing.ByDrawing {
		return false
	}
	asLaid, most := alikeAs(p, outer, inner)
	if asLaid || most == 0 {
		return false
	}
	if other, _ := alikeAs(p, outer, inner.Reversed()); !other {
		return false
	}
	a, b := outer.Runs[0].Edge, inner.Runs[0].Edge
	p.AtMost(most, "shape", rules.Say{
		Key: "turned", Place: share.Inner[0].Place, Account: turnedAccount(share, most),
		Related: []rules.Related{
			{Message: a.Address() + " is drawn here", Place: a.Place},
			{Message: b.Address() + " is drawn here", Place: b.Place},
		},
		Message: func() string {
			return fmt.Sprintf("%s is the line of %s turned end for end: they agree only if %s. Laid on each other as they will be sewn they stand %s apart; "+
				"no more than %s is allowed. Draw it the other way along, or, if it is to be sewn so, say flip = true.",
				sewing.SideText(share.Inner), sewing.SideText(share.Outer), endsMeeting(outer, inner), p.Show(most), p.Show(p.Limit("shape")))
		},
	})
	return true
}

// alikeAs reports whether two walks agree in length and shape as they are laid out,
// and how far their lines stand apart at most; 0 where they are not all drawn.
func alikeAs(p *rules.Pass, outer, inner *sewing.Walk) (alike bool, most float64) {
	parts := sewing.SharedParts(outer, inner, sewing.PairCrossings(outer, inner, meetNear), meetNear)
	off := outer.Length - inner.Length
	alike = max(off, -off) <= p.Limit("length")
	for _, part := range parts {
		bound, err := part.Apart()
		if err != nil {
			return false, 0
		}
		most = max(most, bound.High)
		alike = alike && bound.High <= p.Limit("shape")
	}
	return alike, most
}

// endsMeeting says which edges would meet if the inner walk were turned.
func endsMeeting(outer, inner *sewing.Walk) string {
	said := []string{}
	for _, atEnd := range []bool{false, true} {
		a, b := outer.Corner(atEnd), inner.Corner(!atEnd)
		if a != nil && b != nil {
			said = append(said, fmt.Sprintf("%s meets %s", b.Address(), a.Address()))
		}
	}
	if len(said) == 0 {
		said = append(said, "the one is turned on the table")
	}
	return sewing.Listed(slices.Compact(said))
}
