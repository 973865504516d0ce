package guess

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
)

// AlteredBy are the alterations that re-draw an edge, in the order they were
// made; none where they left its line as it was drafted.
func AlteredBy(g *model.Garment, e *model.Edge) []*model.Alteration {
	if e.Drafted == nil {
		return nil
	}
	var out []*model.Alteration
	for _, a := range g.Alterations {
		if a.Alters(e) {
			out = append(out, a)
		}
	}
	return out
}

// LaidEdge is an edge and another that is laid on it: by a seam, a closure or a
// share, whose sides are A and B as laid out.
type LaidEdge struct {
	Edge, Other *model.Edge
	Join        *model.Join  // the seam or closure; nil for a share
	Share       *model.Share // nil for a seam or closure
	A, B        *sewing.Walk
}

// By is the seam, closure or share.
func (l LaidEdge) By() model.Thing {
	if l.Share != nil {
		return l.Share
	}
	return l.Join.Thing
}

// LaidOn are the edges that are laid on an edge along any part of it, but for
// itself where the two halves of a mirrored pair are joined. What cannot be laid
// out is left out.
func LaidOn(g *model.Garment, e *model.Edge) []LaidEdge {
	var out []LaidEdge
	add := func(j *model.Join, s *model.Share, a, b *sewing.Walk) {
		for _, span := range sewing.AllowancesAlong(a, b) {
			l := LaidEdge{Edge: e, Other: span.B, Join: j, Share: s, A: a, B: b}
			if span.A != e {
				l.Other = span.A
			}
			if (span.A == e || span.B == e) && l.Other != e && !slices.Contains(out, l) {
				out = append(out, l)
			}
		}
	}
	for _, j := range g.Joins() {
		if a, b, err := sewing.Walks(g, j); err == nil {
			add(j, nil, a, b)
		}
	}
	for _, s := range g.Shares {
		if a, b, _, err := sewing.ShareWalks(g, s); err == nil {
			add(nil, s, a, b)
		}
	}
	return out
}

// Longer is how much longer the first side is than the second, now and as both
// were drafted; the latter is not known where an altered edge is walked in part.
func (l LaidEdge) Longer() (now, drafted float64) {
	return l.A.Length - l.B.Length, draftedLength(l.A) - draftedLength(l.B)
}

// draftedLength is the length of the walk before the garment's alterations, its
// darts closed.
func draftedLength(w *sewing.Walk) float64 {
	sum := 0.0
	for _, r := range w.Runs {
		e := r.Edge
		switch {
		case e.Drafted == nil:
			sum += r.Length
		case math.Abs(r.To-r.From) < e.Length()-model.NearEnd:
			return model.Unknown()
		default:
			sum += r.Length + e.Drafted.Length() - e.Length()
		}
	}
	return sum
}

// ShareApart is how far the two sides of a share are from being alike in what
// its match asks for, in millimetres: in length, and where they must be
// identical in where pieces meet along it and in shape.
func ShareApart(g *model.Garment, s *model.Share) (float64, error) {
	outer, inner, _, err := sewing.ShareWalks(g, s)
	if err != nil || s.Match == model.Eased {
		return 0, err
	}
	longer := outer.Length - inner.Length
	apart := math.Abs(longer)
	if s.Match != model.Identical {
		return apart, nil
	}
	pairs := sewing.PairCrossings(outer, inner, sewing.SameJoin)
	for _, p := range pairs {
		apart = max(apart, math.Abs(sewing.Misplaced(p.Off(), longer)))
	}
	for _, part := range sewing.SharedParts(outer, inner, pairs, sewing.SameJoin) {
		bound, err := part.Apart()
		if err != nil {
			return apart, err
		}
		apart = max(apart, bound.High)
	}
	return apart, nil
}
