package sewing

import "understitch/model/curve"

// LaidBy tells what of two lines was laid together.
type LaidBy uint8

// The ways in which a cutter lays two lines on each other.
const (
	ByBothEnds LaidBy = iota
	ByStart           // and as much as goes with it
	ByEnd
)

// Parting is the place where two lines stand furthest apart when they are laid
// on each other as a cutter lays them, by their ends. It names the place of a
// fault and is no bound of it: that is Apart's, of the closest fit there is.
type Parting struct {
	By    LaidBy
	At    float64 // along the first walk
	Apart float64 // there, in millimetres
}

const (
	// firstStretch is the share of a line that is laid down with its end (from
	// memory: a hand's breadth of a side seam).
	firstStretch = 0.25
	// allButAnEnd is the share of two lines that must lie together by one end for
	// the other end to be what differs (common practice, no source). It only
	// chooses what is said of the place.
	allButAnEnd = 0.7
	partingLook = 64 // places at which two lines are held against each other
)

// Parting lays the two lines of the part by both ends; where most of them
// comes to lie within near millimetres by one end and the stretch that goes with
// it, by that: then it is the other end that differs.
func (s SharedPart) Parting(near float64) (Parting, error) {
	a, b, over, err := s.laid()
	if err != nil {
		return Parting{}, err
	}
	chord := func(p *curve.Path) curve.Point { return p.End().Sub(p.Start()) }
	ends := b.Move(curve.Lay(b.Start(), chord(b), a.Start(), chord(a), over))
	// Where one is longer across, half of that is left at either end.
	ends = ends.Move(curve.Translate(chord(a).Unit().Scale((chord(a).Len() - chord(b).Len()) / 2)))
	best, moved, together := ByBothEnds, ends, max(liesTogether(a, ends, near), allButAnEnd)
	for _, by := range []LaidBy{ByStart, ByEnd} {
		from := 0.0
		if by == ByEnd {
			from = 1 - firstStretch
		}
		first := func(p *curve.Path) *curve.Path { return p.Part(from*p.Length(), (from+firstStretch)*p.Length()) }
		laid := b.Move(curve.Fit(first(a), first(b), over))
		if n := liesTogether(a, laid, near); n > together {
			best, moved, together = by, laid, n
		}
	}
	bound := curve.Deviation(a, moved, apartTolerance)
	return Parting{best, s.A.Runs[s.FirstA].Start + bound.At, bound.Low}, nil
}

// liesTogether is the share of two lines at which they lie within near of each
// other, looked at in so many places.
func liesTogether(a, b *curve.Path, near float64) float64 {
	n := 0
	for i := range partingLook + 1 {
		share := float64(i) / partingLook
		if a.At(share*a.Length()).Dist(b.At(share*b.Length())) <= near {
			n++
		}
	}
	return float64(n) / (partingLook + 1)
}
