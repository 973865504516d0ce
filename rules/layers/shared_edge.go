package layers

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/shared-edge.bad.garment.hcl
var sharedEdgeBad string

//go:embed testdata/shared-edge.good.garment.hcl
var sharedEdgeGood string

// SharedEdge checks that the edges which layers have in common are alike.
var SharedEdge = &rules.Rule{
	Name:     "shared-edge",
	Family:   "layers",
	Severity: rules.Error,
	Under:    []string{"dart-legs", "notch-on-line"},
	Doc: rules.Doc{
		Title: "Edges that layers share are identical: in length, shape, corners, notches and where pieces meet",
		Why: "Layers that are turned, bagged out or bound together along an edge are sewn notch on notch. An edge altered on one layer only " +
			"puckers or rolls, pulls the seams off each other, or shows the lining; by then both are cut.",
		How: "Lay the pieces of either layer end to end as sewn, darts closed, and walk both lines. Then lay the one line on the other so that " +
			"they cover each other as closely as they can, turned over where one was drawn the other way round. This is done part by part, " +
			"between the places where pieces meet on both layers. Which end lies on which is told by the edges there, a fold lying on a fold, before the lines are asked. The figure is the largest distance between two places that are equally far " +
			"along, and never less than it; its place is named as found with the ends laid together. " +
			"Notches and meeting pieces are paired in order; what a difference in length explains is not found " +
			"again in them. Both layers must have the edges as often once all pieces are cut. With match = \"length\" lengths and notches are compared. " +
			"With match = \"eased\" the outer side must be longer by the stated ease. Where over says where the ease lies, each stretch outside it, from " +
			"notch to notch, must be as long on both layers; else the ease may lie between any notches. Too much ease for its stretch is a note: " +
			"for the stretch that over names, else for each stretch from notch to notch.",
		Fix: "Draft both layers from one line again, and carry its notches over. Where the layers are meant to differ, say so by match, or leave " +
			"that stretch out of the share.",
		Bad: sharedEdgeBad, Good: sharedEdgeGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "length", Value: 1, Unit: rules.Millimetres, Source: "common practice, no source",
			Text: "how far shared edges may differ in length, and their notches and meeting pieces in place"},
		{Name: "shape", Value: 1, Unit: rules.Millimetres, Source: "common practice, no source",
			Text: "how far shared edges may stand off each other when laid together"},
		{Name: "ease", Value: 1, Unit: rules.Millimetres, Source: "common practice, no source",
			Text: "how far past the stated ease an eased edge may be"},
		{Name: "eased", Value: 8, Unit: rules.Percent, Source: "common practice, no source",
			Text: "how much longer a stretch that is eased on may be than what it is eased on to, before it is a note"},
		{Name: "corner", Value: 2, Unit: rules.Degrees, Source: "common practice, no source",
			Text: "how far the corners at the ends of shared edges, and where pieces meet along them, may differ"},
	},
	Each: rules.Shares(sharedEdge),
}

// meetNear is how close two layers' meeting pieces must lie to be laid on each
// other, in millimetres: well over any limit, and well under the width of a
// panel (common practice, no source).
const meetNear = 5

// sharing is one share while it is judged.
type sharing struct {
	*rules.Pass
	share        *model.Share
	outer, inner *sewing.Walk
	longer       float64 // the outer side than the inner
	lengthFault  bool
	joinFault    map[sewing.CrossingPair]bool
	held         map[*model.Notch]bool // eased: notches that stretches outside the ease hold in their places
}

func sharedEdge(p *rules.Pass, share *model.Share) {
	outer, inner, by, err := sewing.ShareWalks(p.Garment, share)
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	if misnamed(p, share, outer, inner) || turned(p, share, outer, inner, by) {
		return
	}
	s := &sharing{Pass: p, share: share, outer: outer, inner: inner, longer: outer.Length - inner.Length,
		joinFault: map[sewing.CrossingPair]bool{}}
	pairs := sewing.PairCrossings(outer, inner, meetNear)
	if share.Match != model.Eased {
		s.length(sewing.SharedParts(outer, inner, pairs, meetNear))
	}
	if share.Match == model.Identical {
		if len(outer.Crossings()) == len(inner.Crossings()) {
			for _, pair := range pairs {
				s.meeting(pair)
			}
		}
		s.drawn(sewing.SharedParts(outer, inner, pairs, meetNear))
	}
	if share.Match != model.Eased {
		s.copies()
	}
	if share.Match == model.Eased {
		s.eased()
	}
	s.notches()
}

// length judges the two sides in all; where both have their pieces meet at the
// same places it tells which part of them it is that differs.
func (s *sharing) length(parts []sewing.SharedPart) {
	off := math.Abs(s.longer)
	s.lengthFault = off > s.Limit("length")
	say := rules.Say{Key: "length", Place: s.share.Inner[0].Place, Account: s.lengthAccount(), Related: s.edges()}
	odd := slices.DeleteFunc(parts, func(part sewing.SharedPart) bool {
		a, b := part.Lengths()
		return math.Abs(a-b) <= s.Limit("length")
	})
	oneOdd := len(odd) == 1 && len(s.outer.Runs)+len(s.inner.Runs) > 2
	if oneOdd {
		say.Place = s.innerPlace(s.inner.Runs[odd[0].FirstB].Edge)
		say.Related = s.edgesOf(odd[0])
	}
	say.Message = func() string {
		long, short := s.outer, s.inner
		longSide, shortSide := s.share.Outer, s.share.Inner
		if s.longer < 0 {
			long, short, longSide, shortSide = short, long, shortSide, longSide
		}
		text := fmt.Sprintf("%s is %s longer on %s (%s, %s) than on %s (%s, %s); no more than %s is allowed. ",
			s.share.Address(), s.Show(off), layerOf(long), sewing.SideText(longSide), s.Show(long.Length),
			layerOf(short), sewing.SideText(shortSide), s.Show(short.Length), s.Show(s.Limit("length")))
		if oneOdd {
			a, b := odd[0].Lengths()
			text += fmt.Sprintf("It lies in one part, %s of %s against %s of %s. ", s.partText(s.outer, odd[0].FirstA, odd[0].LastA), s.Show(a),
				s.partText(s.inner, odd[0].FirstB, odd[0].LastB), s.Show(b))
		}
		return text + "Draft both from one line, or say by match how they are meant to differ."
	}
	s.AtMost(off, "length", say)
}

// edges are the places of all edges of the share.
func (s *sharing) edges() []rules.Related {
	return s.edgesOf(sewing.SharedPart{LastA: len(s.outer.Runs) - 1, LastB: len(s.inner.Runs) - 1})
}

// edgesOf are the places of the edges of one part.
func (s *sharing) edgesOf(part sewing.SharedPart) []rules.Related {
	var out []rules.Related
	for _, runs := range [][]sewing.Run{s.outer.Runs[part.FirstA : part.LastA+1], s.inner.Runs[part.FirstB : part.LastB+1]} {
		for _, r := range runs {
			out = append(out, rules.Related{
				Message: fmt.Sprintf("%s is %s long here", r.Edge.Address(), s.Show(r.Length)), Place: r.Edge.Place,
			})
		}
	}
	return out
}

// meeting judges where along the share pieces meet on both layers.
func (s *sharing) meeting(pair sewing.CrossingPair) {
	off := math.Abs(sewing.Misplaced(pair.Off(), s.longer))
	s.joinFault[pair] = off > s.Limit("length")
	outer, inner := s.outer.Runs[pair.A.Run], s.inner.Runs[pair.B.Run]
	say := rules.Say{Key: "join " + outer.Edge.Address(), Place: s.innerPlace(inner.Edge),
		Account: s.placeAccount(outer.Edge.Address(), pair.A.At, inner.Edge.Address(), pair.B.At)}
	say.Related = []rules.Related{{Message: outer.Edge.Address() + " begins here", Place: outer.Edge.Place}}
	say.Message = func() string {
		return fmt.Sprintf("the pieces do not meet at one place along %s: %s begins %s along, %s %s along, %s off; no more than %s is allowed. "+
			"Move the seam on one of the layers.", s.share.Address(), outer.Edge.Address(), s.Show(pair.A.At),
			inner.Edge.Address(), s.Show(pair.B.At), s.Show(off), s.Show(s.Limit("length")))
	}
	s.AtMost(off, "length", say)
}

// innerPlace is the line of the share that names an inner edge.
func (s *sharing) innerPlace(e *model.Edge) model.Place {
	for _, st := range s.share.Inner {
		if st.Edge == e {
			return st.Place
		}
	}
	return s.share.Place
}

func layerOf(w *sewing.Walk) string { return w.Runs[0].Edge.Piece.Layer.Address() }
