package draft

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/model/drafting"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/outline-crossing.bad.garment.hcl
var outlineCrossingBad string

//go:embed testdata/outline-crossing.good.garment.hcl
var outlineCrossingGood string

// OutlineCrossing checks that the outline of a piece does not cross itself.
var OutlineCrossing = rules.Rule{
	Name:     "outline-crossing",
	Family:   "draft",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "The outline of a piece does not cross itself",
		Why: "A piece whose outline crosses itself cannot be cut. It comes of a point in the wrong place, of edges out of drawing order, or of an " +
			"alteration that was larger than the piece is wide there.",
		How: "Every place is found at which the stitch line of the piece crosses itself. Edges that only touch, or run together and part again, do " +
			"not cross.",
		Fix: "Look at the two edges named: one of their points lies on the wrong side of the other.",
		Bad: outlineCrossingBad, Good: outlineCrossingGood, Since: "0.1",
	},
	Firm: "every width, girth and area of the piece rests on its outline",
	Each: rules.Pieces(outlineCrossing),
}

func outlineCrossing(p *rules.Pass, piece *model.Piece) {
	crossings, err := drafting.OutlineCrossings(piece)
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	found := false
	for i, c := range crossings {
		if c.A == nil || c.B == nil {
			continue // across a gap, which outline-closed reports
		}
		found = true
		if !first(crossings[:i], c) {
			continue
		}
		say := rules.Say{
			Key:     c.A.Name + " and " + c.B.Name,
			Place:   c.B.Place,
			Account: crossingsAccount(p.Garment, piece, crossings),
			Message: func() string { return message(p, crossings[i:], c) },
		}
		if c.A != c.B {
			say.Related = []rules.Related{{Message: "the edge it crosses", Place: c.A.Place}}
		}
		p.Fault(say)
	}
	if !found {
		p.Good(rules.Say{Account: crossingsAccount(p.Garment, piece, nil)})
	}
}

// first reports whether no earlier crossing is of the same two edges.
func first(earlier []drafting.OutlineCrossing, c drafting.OutlineCrossing) bool {
	for _, e := range earlier {
		if e.A == c.A && e.B == c.B {
			return false
		}
	}
	return true
}

// message names the places where the two edges cross.
func message(p *rules.Pass, crossings []drafting.OutlineCrossing, c drafting.OutlineCrossing) string {
	var places []string
	for _, other := range crossings {
		if other.A == c.A && other.B == c.B {
			places = append(places, fmt.Sprintf("[%s, %s]", p.Garment.Unit.Bare(other.At.X), p.Garment.Unit.Bare(other.At.Y)))
		}
	}
	if c.A == c.B {
		return fmt.Sprintf("%s crosses itself at %s. Look for a point of it in the wrong place.", c.A.Address(), sewing.Listed(places))
	}
	return fmt.Sprintf("%s crosses %s at %s. A point of one of them lies on the wrong side of the other.", c.B.Address(), c.A.Address(), sewing.Listed(places))
}
