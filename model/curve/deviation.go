package curve

import "math"

// Bound is a figure that is not known exactly but proven to lie in
// [Low, High]. Low was met at arc length At on the first path asked about.
type Bound struct {
	Low, High float64
	At        float64
}

// enclosure returns how far a curve of arc length h can stand away from its
// chord of length c when both are run through evenly. Proof: at share t the
// curve's point P has |P−A| ≤ t·h and |P−B| ≤ (1−t)·h, and with L the chord's
// point at share t, |P−L|² = (1−t)|P−A|² + t|P−B|² − t(1−t)c² ≤ t(1−t)(h²−c²).
// It needs no derivatives, so it holds at cusps and loops alike. slack is how
// wrong h may be.
func enclosure(h, c, slack float64) float64 {
	return math.Sqrt(max(0, (h-c+slack)*(h+c+slack))) / 2
}

// devStretch is a stretch of share under inspection by Deviation.
type devStretch struct {
	stretchPair
	a0, a1, b0, b1 Point
	bound          float64
}

// deviator holds what stays the same while Deviation searches.
type deviator struct {
	a, b           *Path
	la, lb         float64
	slackA, slackB float64
	low, lowAt     float64
}

// Deviation returns the largest distance between points of a and b that lie
// at equal share of their lengths along. The bound is proven, by branch and
// bound over the share with the enclosure of a curve by its arc length and
// chord, and High−Low is at most tolerance unless that lies below what double
// precision can tell apart. Gaps inside a path are jumped over: both sides of
// the gap count.
func Deviation(a, b *Path, tolerance float64) Bound {
	la, lb := a.Length(), b.Length()
	v := deviator{a: a, b: b, la: la, lb: lb, slackA: 1e-12 * la, slackB: 1e-12 * lb}
	v.saw(a.Start().Dist(b.Start()), 0)
	v.saw(a.End().Dist(b.End()), 1)
	if near := a.sameShape(b); near <= v.low+tolerance {
		return Bound{v.low, max(near, v.low), v.lowAt * la}
	}
	var room [48]devStretch // most searches never need more
	heap := room[:0]
	walk := walkSegments(a, b)
	for pair, more := walk.next(); more; pair, more = walk.next() {
		s := devStretch{
			stretchPair: pair,
			a0:          a.onSegment(pair.i, pair.x0*la), a1: a.onSegment(pair.i, pair.x1*la),
			b0: b.onSegment(pair.j, pair.x0*lb), b1: b.onSegment(pair.j, pair.x1*lb),
		}
		v.weigh(&s)
		heap = pushStretch(heap, s)
	}
	high := v.low
	for len(heap) > 0 {
		s := heap[0]
		if s.bound <= max(v.low+tolerance, high) {
			high = max(high, s.bound)
			break
		}
		heap = popStretch(heap)
		if s.x1-s.x0 <= 1e-13 {
			high = max(high, s.bound)
			continue
		}
		mid := (s.x0 + s.x1) / 2
		am, bm := a.onSegment(s.i, mid*la), b.onSegment(s.j, mid*lb)
		left, right := s, s
		left.x1, left.a1, left.b1 = mid, am, bm
		right.x0, right.a0, right.b0 = mid, am, bm
		v.weigh(&left)
		v.weigh(&right)
		left.bound, right.bound = min(left.bound, s.bound), min(right.bound, s.bound)
		heap = pushStretch(pushStretch(heap, left), right)
	}
	return Bound{v.low, max(high, v.low), v.lowAt * la}
}

func (v *deviator) saw(d, x float64) {
	if d > v.low {
		v.low, v.lowAt = d, x
	}
}

// weigh works out the bound of a stretch from its ends.
func (v *deviator) weigh(s *devStretch) {
	d0, d1 := s.a0.Dist(s.b0), s.a1.Dist(s.b1)
	v.saw(d0, s.x0)
	v.saw(d1, s.x1)
	ha, hb := (s.x1-s.x0)*v.la, (s.x1-s.x0)*v.lb
	s.bound = max(d0, d1)
	if v.a.segs[s.i].kind != Straight {
		s.bound += enclosure(ha, s.a0.Dist(s.a1), v.slackA)
	}
	if v.b.segs[s.j].kind != Straight {
		s.bound += enclosure(hb, s.b0.Dist(s.b1), v.slackB)
	}
	// Distance is a Lipschitz function of the share.
	s.bound = min(s.bound, (d0+d1+ha+hb)/2+v.slackA+v.slackB)
}

// pushStretch adds to a heap that keeps the stretch with the largest bound on
// top. The heap is handed over and back, which lets it live on the stack.
func pushStretch(h []devStretch, s devStretch) []devStretch {
	h = append(h, s)
	for i := len(h) - 1; i > 0; {
		up := (i - 1) / 2
		if h[up].bound >= h[i].bound {
			break
		}
		h[up], h[i] = h[i], h[up]
		i = up
	}
	return h
}

// popStretch drops the top of the heap.
func popStretch(h []devStretch) []devStretch {
	n := len(h) - 1
	h[0] = h[n]
	h = h[:n]
	for i := 0; ; {
		down := 2*i + 1
		if down >= n {
			return h
		}
		if down+1 < n && h[down+1].bound > h[down].bound {
			down++
		}
		if h[i].bound >= h[down].bound {
			return h
		}
		h[i], h[down] = h[down], h[i]
		i = down
	}
}

// sameShape returns a proven upper bound of the deviation of two paths that
// are made of the same kinds of segments, +Inf for others. At equal parameter
// the points differ by no more than the control points do; and the arc
// lengths there differ by no more than the length of the curve of
// differences, for ||a'|−|b'|| ≤ |a'−b'|.
func (p *Path) sameShape(q *Path) float64 {
	if len(p.segs) != len(q.segs) {
		return math.Inf(1)
	}
	apart, slip := 0.0, math.Abs(p.Length()-q.Length())
	for i := range p.segs {
		g, h := &p.segs[i], &q.segs[i]
		if g.kind != h.kind || g.from != h.from || g.turn != h.turn {
			return math.Inf(1)
		}
		da, db, dc, dd := g.a.Sub(h.a), g.b.Sub(h.b), g.c.Sub(h.c), g.d.Sub(h.d)
		switch g.kind {
		case Straight:
			apart = max(apart, da.Len(), dd.Len())
			slip += dd.Dist(da)
		case Bezier:
			apart = max(apart, da.Len(), db.Len(), dc.Len(), dd.Len())
			slip += da.Dist(db) + db.Dist(dc) + dc.Dist(dd)
		case Elliptic:
			axes := dc.Len() + g.v.Dist(h.v)
			apart = max(apart, db.Len()+axes)
			slip += axes * math.Abs(g.turn)
		}
	}
	return apart + slip
}
