package draft

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/layering"
	"understitch/rules"
	"understitch/rules/guess"
)

//go:embed testdata/alteration-partner.bad.garment.hcl
var alterationPartnerBad string

//go:embed testdata/alteration-partner.good.garment.hcl
var alterationPartnerGood string

// AlterationPartner checks that what a fitting altered on one side of a seam, or
// on one layer, is altered on the other.
var AlterationPartner = rules.Rule{
	Name:     "alteration-partner",
	Family:   "draft",
	Severity: rules.Warning,
	Under:    []string{"shared-edge", "seam-walk", "closure-edges"},
	Doc: rules.Doc{
		Title: "An alteration of one edge is answered on the edge it is sewn to, and on the edge that lies along it on another layer",
		Why: "A seam is taken in on the front and forgotten on the back, or on the shell and not on the lining, or on the lining by less. It can still be " +
			"sewn, and the garment hangs to one side, or strains where one layer is smaller than the other was meant to be.",
		How: "For each edge that an alteration re-drew, look which edges are sewn to it, closed to it or shared with it along any part. Each of " +
			"them must have been re-drawn by some alteration as well. The two halves of a mirrored pair are one edge, and paper cannot be " +
			"re-drawn. Then look which edge lies along it on each piece laidInside with its own: the one of the same name, or else the one that follows it as " +
			"both were drafted. At each level that both come to, all alterations together must take both in by as much. Where they do not, and " +
			"the room between the pieces is still what the inside asks for, it is only a note: a lining may be taken in less on purpose. " +
			"All that an alteration leaves unanswered is one finding. The garment is then drafted once more with the other edges altered alike: what " +
			"other rules find no longer then came of the alteration. It is told as notes of this finding, which is as grave as they are. Where seam-walk, " +
			"closure-edges or shared-edge finds the sides to differ all the same, it is left to them.",
		Nothing: "Nothing is laid on the altered edges or lies along them, or another rule finds the sides to differ.",
		Fix: "Name the other edge in the alteration too, or give it the same amounts. Where only the one was meant, waive this finding with the " +
			"reason; what came of it is then told by itself.",
		Bad: alterationPartnerBad, Good: alterationPartnerGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "amount", Value: 0.5, Unit: rules.Millimetres, Text: "how much more one of two laidInside edges may be taken in than the other", Source: "common practice, no source: the width of a pencil line"},
		{Name: "kept", Value: 0.5, Unit: rules.Millimetres, Text: "how far past its clearance an inside may be and still count as keeping its room", Source: "common practice, no source"},
		{Name: "near", Value: 25, Unit: rules.Millimetres, Text: "how far apart laidInside edges lie at most that answer each other without bearing one name", Source: "common practice, no source"},
	},
	Each: rules.Alterations(alterationPartner),
}

func alterationPartner(p *rules.Pass, a *model.Alteration) {
	p.NothingHere()
	u := &unanswered{Pass: p, by: a}
	for _, e := range a.Edges {
		if by := guess.AlteredBy(p.Garment, e); len(by) == 0 || by[0] != a {
			continue // left as it was drafted, or looked at with the first alteration of it
		}
		for _, l := range guess.LaidOn(p.Garment, e) {
			if l.Other.Drawn() {
				u.laidOn(l)
			}
		}
	}
	for _, e := range a.Edges {
		for _, n := range layering.InsideWith(p.Garment, e, p.Limit("near")) {
			u.laidInside(n)
		}
	}
	u.tell()
}

// unanswered is an alteration with the edges that do not answer it.
type unanswered struct {
	*rules.Pass
	by   *model.Alteration
	open []partner
}

// partner is an edge that does not answer an altered one.
type partner struct {
	edge, other *model.Edge
	how         string                // what the other edge is to the first
	difference  string                // what became of the two sides' lengths
	apart       []layering.TakenApart // laidInside edges: where they were not taken in alike
	room        bool                  // of an inside whose room is kept
	under       rules.Under           // the finding that the two sides differ; none for an inside
}

// add takes down a partner, each edge once.
func (u *unanswered) add(o partner) {
	if !slices.ContainsFunc(u.open, func(was partner) bool { return was.other == o.other }) {
		u.open = append(u.open, o)
	}
}

// laidOn judges one edge that is laid on an altered one.
func (u *unanswered) laidOn(l guess.LaidEdge) {
	if len(guess.AlteredBy(u.Garment, l.Other)) > 0 || l.Other.Traces(l.Edge) {
		u.Good(rules.Say{Key: l.Edge.Address() + " on " + l.Other.Address() + " by " + l.By().Address()})
		return
	}
	how := "it is sewn to"
	if l.Share != nil {
		how = "it shares its line with"
	}
	u.add(partner{edge: l.Edge, other: l.Other, how: "which " + how + " by " + l.By().Address(), difference: difference(u.Pass, l),
		under: differ(l)})
}

// laidInside judges an edge that lies along an altered one on another layer. A pair is
// looked at with the first alteration that names one of the two and not the other.
func (u *unanswered) laidInside(n layering.EdgeInside) {
	ofOne := slices.IndexFunc(u.Garment.Alterations, func(a *model.Alteration) bool {
		return a.Alters(n.Edge) != a.Alters(n.Other)
	})
	if ofOne < 0 || u.Garment.Alterations[ofOne] != u.by || !slices.Contains(u.by.Edges, n.Edge) {
		return
	}
	apart := n.TakenApart(u.Garment, u.Limit("amount"))
	if len(apart) == 0 || n.Other.Traces(n.Edge) && n.Other.Drafted == nil {
		u.Good(rules.Say{Key: n.Edge.Address() + " on " + n.Other.Address() + " by " + n.Inside.Address()})
		return
	}
	lies := "which lies under it in "
	if n.Inside.Outer.Has(n.Other.Piece) {
		lies = "which lies over it in "
	}
	u.add(partner{edge: n.Edge, other: n.Other, how: lies + n.Inside.Address(), apart: apart, room: layering.RoomKept(n.Inside, u.Garment, u.Limit("kept"))})
}

// differ names the finding that two sides which are laid on each other differ.
func differ(l guess.LaidEdge) rules.Under {
	rule := "shared-edge"
	if l.Share == nil {
		rule = "seam-walk"
		if _, ok := l.Join.Thing.(*model.Closure); ok {
			rule = "closure-edges"
		}
	}
	return rules.Under{Rule: rule, Subject: l.By().Address()}
}

// difference says what the alterations made of the two sides' lengths.
func difference(p *rules.Pass, l guess.LaidEdge) string {
	now, drafted := l.Longer()
	if !model.Known(drafted) {
		return ""
	}
	return fmt.Sprintf("; the two sides differed by %s and now differ by %s", p.Show(math.Abs(drafted)), p.Show(math.Abs(now)))
}
