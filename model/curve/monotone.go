package curve

import "math"

// monotone is a stretch of a segment along which neither X nor Y turns back.
// Such a stretch meets an upright or level line in one place or along one
// stretch, and never meets itself.
type monotone struct {
	t0, t1 float64
	p0, p1 Point
	owner  int32 // index of the segment or side it belongs to
}

// appendMonotone cuts the segment where a coordinate turns round. Neighbours
// share their end points to the last bit.
func (g *Segment) appendMonotone(out []monotone, owner int32) []monotone {
	cuts := [6]float64{}
	n := 1
	var t [2]float64
	for axis := range 2 {
		for _, t := range t[:g.extrema(axis == 1, &t)] {
			i := n
			for ; cuts[i-1] > t; i-- {
				cuts[i] = cuts[i-1]
			}
			cuts[i] = t
			n++
		}
	}
	cuts[n] = 1
	p := g.a
	for i := 1; i <= n; i++ {
		if cuts[i] == cuts[i-1] {
			continue
		}
		q := g.d
		if cuts[i] < 1 {
			q = g.at(cuts[i])
		}
		out = append(out, monotone{cuts[i-1], cuts[i], p, q, owner})
		p = q
	}
	return out
}

func (m *monotone) box() Box { return emptyBox().with(m.p0).with(m.p1) }

// levelParam returns the parameter at which the stretch, whose ends lie on
// either side of the level y, meets it: Newton's step inside a bracket.
func (m *monotone) levelParam(g *Segment, y float64) float64 {
	up := m.p1.Y > m.p0.Y
	lo, hi := m.t0, m.t1
	t := lo + (hi-lo)*(y-m.p0.Y)/(m.p1.Y-m.p0.Y)
	if g.kind == Straight {
		return clamp(t, lo, hi)
	}
	for range 100 {
		f := g.at(t).Y - y
		if f == 0 {
			return t
		}
		if f < 0 == up {
			lo = t
		} else {
			hi = t
		}
		next := t - f/g.derivative(t).Y
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-t) <= 1e-16 || hi-lo <= 1e-16 {
			return next
		}
		t = next
	}
	return t
}

// levelSnap is how near to a level an end of a stretch counts as lying on it,
// in millimetres. It takes up the rounding of moved and turned outlines.
const levelSnap = 1e-7

// side tells on which side of the level v lies: −1 above on paper, 0 on it.
func levelSide(v, y float64) int {
	switch {
	case v < y-levelSnap:
		return -1
	case v > y+levelSnap:
		return 1
	}
	return 0
}

// Crossings returns the arc lengths at which the path meets the level y, in
// rising order. A point where it only touches the level comes once; a stretch
// that lies on the level gives its two ends.
func (p *Path) Crossings(y float64) []float64 {
	var pieces []monotone
	for i := range p.segs {
		pieces = p.segs[i].appendMonotone(pieces, int32(i))
	}
	var out []float64
	put := func(s float64) {
		if n := len(out); n == 0 || s-out[n-1] > levelSnap {
			out = append(out, s)
		}
	}
	lies := false // whether the piece before lies on the level
	for i := range pieces {
		m := &pieces[i]
		s0, s1 := levelSide(m.p0.Y, y), levelSide(m.p1.Y, y)
		flat := s0 == 0 && s1 == 0
		at := func(t float64) float64 { return p.lengthAt(int(m.owner), t) }
		follows := i > 0 && pieces[i-1].p1.Dist(m.p0) <= levelSnap
		if s0 == 0 && !(lies && flat && follows) {
			put(at(m.t0))
		}
		switch {
		case s0*s1 < 0:
			put(at(m.levelParam(&p.segs[m.owner], y)))
		case s1 == 0:
			next := i+1 < len(pieces) && pieces[i+1].p0.Dist(m.p1) <= levelSnap
			goesOn := flat && next && levelSide(pieces[i+1].p1.Y, y) == 0
			if !goesOn {
				put(at(m.t1))
			}
		}
		lies = flat
	}
	return out
}
