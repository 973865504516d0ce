package sewing

import (
	"math"

	"understitch/model/curve"
)

// Crossing is a place along a walk where one piece ends and the next begins: a
// seam crosses there. Run is the run that begins at it.
type Crossing struct {
	Run int
	At  float64
}

// Crossings are the places along the walk where two pieces meet. Where one edge
// of a piece follows another of the same piece nothing crosses.
func (w *Walk) Crossings() []Crossing {
	var out []Crossing
	for i := 1; i < len(w.Runs); i++ {
		if w.Runs[i-1].Edge.Piece != w.Runs[i].Edge.Piece {
			out = append(out, Crossing{i, w.Runs[i].Start})
		}
	}
	return out
}

// CrossingPair is a crossing of one walk and the crossing of the other that it
// is laid on.
type CrossingPair struct{ A, B Crossing }

// Off is how much further along its own walk the first crossing lies.
func (p CrossingPair) Off() float64 { return p.A.At - p.B.At }

// PairCrossings pairs the crossings of two walks in order: all of them where
// both have as many, else those that lie within near of each other but for what
// the walks differ in length. A crossing without a partner is no fault: what one
// layer takes out by a seam the other may take out by a dart.
func PairCrossings(a, b *Walk, near float64) []CrossingPair {
	as, bs := a.Crossings(), b.Crossings()
	var out []CrossingPair
	if len(as) == len(bs) {
		for i := range as {
			out = append(out, CrossingPair{as[i], bs[i]})
		}
		return out
	}
	for len(as) > 0 && len(bs) > 0 {
		p := CrossingPair{as[0], bs[0]}
		switch {
		case math.Abs(Misplaced(p.Off(), a.Length-b.Length)) <= near:
			out = append(out, p)
			as, bs = as[1:], bs[1:]
		case p.A.At < p.B.At:
			as = as[1:]
		default:
			bs = bs[1:]
		}
	}
	return out
}

// SharedPart is what lies on two walks between two crossings that both have, or
// between one and an end.
type SharedPart struct {
	A, B           *Walk
	FirstA, LastA  int // the runs of the first walk, both inclusive
	FirstB, LastB  int
	Before, Behind *CrossingPair // nil at the walks' ends
}

// SharedParts cuts two walks at the crossings they both have, leaving out those
// that are too far apart to be laid on each other.
func SharedParts(a, b *Walk, pairs []CrossingPair, near float64) []SharedPart {
	part := SharedPart{A: a, B: b}
	var out []SharedPart
	for i := range pairs {
		p := &pairs[i]
		if math.Abs(Misplaced(p.Off(), a.Length-b.Length)) > near {
			continue
		}
		part.LastA, part.LastB, part.Behind = p.A.Run-1, p.B.Run-1, p
		out = append(out, part)
		part = SharedPart{A: a, B: b, FirstA: p.A.Run, FirstB: p.B.Run, Before: p}
	}
	part.LastA, part.LastB = len(a.Runs)-1, len(b.Runs)-1
	return append(out, part)
}

// Lengths of the part on both walks, darts closed.
func (s SharedPart) Lengths() (a, b float64) {
	firstA, lastA := s.A.Runs[s.FirstA], s.A.Runs[s.LastA]
	firstB, lastB := s.B.Runs[s.FirstB], s.B.Runs[s.LastB]
	return lastA.Start + lastA.Length - firstA.Start, lastB.Start + lastB.Length - firstB.Start
}

// apartTolerance is how closely the distance between two laid lines is enclosed.
const apartTolerance = 0.01

// Apart bounds how far the two lines of the part stand off each other when they
// are laid together as closely as can be: the largest distance between points
// at equal share of the length along. At is along the first walk.
func (s SharedPart) Apart() (curve.Bound, error) {
	a, b, over, err := s.laid()
	if err != nil {
		return curve.Bound{}, err
	}
	bound := curve.Deviation(a, b.Move(curve.Fit(a, b, over)), apartTolerance)
	bound.At += s.A.Runs[s.FirstA].Start
	return bound, nil
}

// laid are the two lines, each as its pieces are sewn, and whether the second
// must be turned over to lie on the first.
func (s SharedPart) laid() (a, b *curve.Path, over bool, err error) {
	if a, err = s.A.Laid(s.FirstA, s.LastA); err != nil {
		return nil, nil, false, err
	}
	if b, err = s.B.Laid(s.FirstB, s.LastB); err != nil {
		return nil, nil, false, err
	}
	return a, b, TurnedOver(s.A.Runs[s.FirstA], s.B.Runs[s.FirstB]), nil
}

// EndAngle is the angle of cloth, in degrees, at the walk's start or its end;
// NaN where there is no corner or something is not drawn.
func (w *Walk) EndAngle(atEnd bool) float64 {
	if atEnd {
		return w.Runs[len(w.Runs)-1].CornerAngle(true)
	}
	return w.Runs[0].CornerAngle(false)
}

// CrossingAngle is the angle of cloth, in degrees, that the two pieces meeting
// at a crossing make together; NaN where something is not drawn.
func (w *Walk) CrossingAngle(c Crossing) float64 {
	return w.Runs[c.Run-1].CornerAngle(true) + w.Runs[c.Run].CornerAngle(false)
}
