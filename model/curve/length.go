package curve

import (
	"math"
	"slices"
)

// Sixteen-point Gauss–Legendre rule on [−1, 1], positive half (Abramowitz and
// Stegun 1964, table 25.4).
var gaussNodes = [8]float64{
	0.0950125098376374402, 0.2816035507792589132, 0.4580167776572273863, 0.6178762444026437484,
	0.7554044083550030339, 0.8656312023878317439, 0.9445750230732325761, 0.9894009349916499326,
}

var gaussWeights = [8]float64{
	0.1894506104550684963, 0.1826034150449235889, 0.1691565193950025382, 0.1495959888165767321,
	0.1246289712555338720, 0.0951585116824927848, 0.0622535239386478929, 0.0271524594117540949,
}

// lengthDepth caps the bisection at a cusp: 2^-40 of a segment holds less
// than 1e-12 of its length there.
const lengthDepth = 40

// leaf is a stretch of one segment over which a single Gauss–Legendre rule
// gives the arc length to about 1e-13 of the segment's length.
type leaf struct {
	seg    int32   // index of the segment
	even   bool    // arc length runs evenly with t: lines and circular arcs
	calm   bool    // the speed varies so little that one Halley step is enough
	t0, t1 float64 // parameters of the stretch
	s0, s1 float64 // arc lengths on the path
	k      [5]float64
	// k: t ≈ t0 + x(k0 + x(k1 + …)), x the share of the stretch's length: the
	// quintic that meets t and its first two derivatives by arc length at
	// both ends. It only seeds the inversion.
}

// speedAt returns |r'(t)|.
func (g *Segment) speedAt(t float64) float64 { return g.derivative(t).Len() }

// gauss returns the arc length from t0 to t1 by one sixteen-point rule.
func (g *Segment) gauss(t0, t1 float64) float64 {
	mid, half := (t0+t1)/2, (t1-t0)/2
	sum := 0.0
	if g.kind == Bezier {
		// r' in powers of (t − mid)
		q0 := g.derivative(mid)
		q1 := g.second(mid)
		q2 := g.d.Sub(g.a).Add(g.b.Sub(g.c).Scale(3)).Scale(3)
		q1, q2 = q1.Scale(half), q2.Scale(half*half)
		for i, u := range gaussNodes {
			ex, ey := q0.X+u*u*q2.X, q0.Y+u*u*q2.Y
			ox, oy := u*q1.X, u*q1.Y
			px, py, mx, my := ex+ox, ey+oy, ex-ox, ey-oy
			sum += gaussWeights[i] * (math.Sqrt(px*px+py*py) + math.Sqrt(mx*mx+my*my))
		}
		return sum * half
	}
	for i, u := range gaussNodes {
		sum += gaussWeights[i] * (g.speedAt(mid+u*half) + g.speedAt(mid-u*half))
	}
	return sum * half
}

// appendLeaves measures the segment: it appends its stretches to leaves, the
// first starting at arc length s.
func (g *Segment) appendLeaves(leaves []leaf, index int32, s float64) []leaf {
	switch {
	case g.kind == Straight:
		return append(leaves, leaf{seg: index, even: true, t1: 1, s0: s, s1: s + g.a.Dist(g.d)})
	case g.kind == Elliptic && g.circular():
		return append(leaves, leaf{seg: index, even: true, t1: 1, s0: s, s1: s + math.Abs(g.turn)*g.c.Len()})
	}
	var slow rootList
	g.slowest(&slow)
	slow.put(1)
	t := 0.0
	for _, next := range slow.t[:slow.n] {
		if next > t {
			leaves = g.bisect(leaves, index, s, t, next, g.gauss(t, next), 1e-13*g.reach(), 0)
			s, t = leaves[len(leaves)-1].s1, next
		}
	}
	return leaves
}

// slowest finds, in rising order, the parameters at which the speed is least
// and so low that the curve has or nearly has a cusp. The measuring starts
// from there: a cusp between the last node of the rule and the end of the
// stretch would be seen by neither the whole nor its halves, and they would
// agree on a wrong length.
func (g *Segment) slowest(out *rootList) {
	low := 0.2 * g.reach()
	if g.kind == Elliptic {
		if short := min(g.c.Len(), g.v.Len()); short*math.Abs(g.turn) > low {
			return
		}
		lo, hi := min(g.from, g.from+g.turn), max(g.from, g.from+g.turn)
		for k := math.Ceil(lo / (math.Pi / 2)); k*math.Pi/2 <= hi; k++ {
			out.put(clamp((k*math.Pi/2-g.from)/g.turn, 0, 1))
		}
	} else {
		p, q, r := g.b.Sub(g.a), g.c.Sub(g.b), g.d.Sub(g.c)
		u, v := q.Sub(p), r.Sub(q) // r'·r'' up to a factor
		var all rootList
		bernstein{n: 3, c: [6]float64{
			p.Dot(u), (p.Dot(v) + 2*q.Dot(u)) / 3, (2*q.Dot(v) + r.Dot(u)) / 3, r.Dot(v),
		}}.roots(0, 1, 48, &all)
		for _, t := range all.t[:all.n] {
			if g.speedAt(t) < low {
				out.put(t)
			}
		}
	}
	slices.Sort(out.t[:out.n])
}

func (g *Segment) bisect(leaves []leaf, index int32, s, t0, t1, whole, tolerance float64, depth int) []leaf {
	mid := (t0 + t1) / 2
	left, right := g.gauss(t0, mid), g.gauss(mid, t1)
	if !(math.Abs(left+right-whole) > tolerance) || depth >= lengthDepth { // not a number stops too
		lf := leaf{seg: index, t0: t0, t1: t1, s0: s, s1: s + left + right}
		lf.seed(g)
		return append(leaves, lf)
	}
	leaves = g.bisect(leaves, index, s, t0, mid, left, tolerance, depth+1)
	return g.bisect(leaves, index, leaves[len(leaves)-1].s1, mid, t1, right, tolerance, depth+1)
}

// seed works out the quintic of the stretch, or the straight guess where the
// speed vanishes at an end.
func (lf *leaf) seed(g *Segment) {
	h, l := lf.t1-lf.t0, lf.s1-lf.s0
	lf.k = [5]float64{h}
	v0, v1 := g.speedAt(lf.t0), g.speedAt(lf.t1)
	vm := g.speedAt((lf.t0 + lf.t1) / 2)
	low, high := min(v0, v1, vm), max(v0, v1, vm)
	if l == 0 || low*8 <= high {
		return
	}
	lf.calm = low*2.5 > high
	// Derivatives of t by x = s/l: t' = l/v, t'' = −(l/v)² v'/v.
	d0, d1 := l/v0, l/v1
	e0, e1 := -d0*d0*g.quickening(lf.t0), -d1*d1*g.quickening(lf.t1)
	r := h - d0 - e0/2 // what the last three powers must add up to at x = 1
	p := d1 - d0 - e0
	q := e1 - e0
	lf.k = [5]float64{d0, e0 / 2, 10*r - 4*p + q/2, -15*r + 7*p - q, 6*r - 3*p + q/2}
}

// quickening returns v'/v = (r'·r”)/v², written so that it cannot underflow.
func (g *Segment) quickening(t float64) float64 {
	d := g.derivative(t)
	return d.Unit().Dot(g.second(t)) / d.Len()
}

// param returns the parameter at arc length s on the stretch: a good seed,
// then Halley's step on the exact length, kept inside a shrinking bracket.
func (lf *leaf) param(g *Segment, s float64) float64 {
	l := lf.s1 - lf.s0
	x := (s - lf.s0) / l
	if !(x > 0) { // also when the stretch has no length
		return lf.t0
	}
	if x >= 1 {
		return lf.t1
	}
	h := lf.t1 - lf.t0
	if lf.even {
		return lf.t0 + x*h
	}
	k := &lf.k
	t := lf.t0 + x*(k[0]+x*(k[1]+x*(k[2]+x*(k[3]+x*k[4]))))
	lo, hi := lf.t0, lf.t1
	for range 80 {
		if !(t > lo && t < hi) {
			t = (lo + hi) / 2
		}
		var miss float64 // length at t beyond s
		if x < 0.5 {
			miss = g.gauss(lf.t0, t) - (s - lf.s0)
		} else {
			miss = (lf.s1 - s) - g.gauss(t, lf.t1)
		}
		if miss == 0 || hi-lo <= 1e-16 {
			return t
		}
		if miss > 0 {
			hi = t
		} else {
			lo = t
		}
		d := g.derivative(t)
		v := d.Len()
		step := miss / v
		if lf.calm && math.Abs(step) < 1e-4*h {
			// Halley: cubic convergence, so the rest is below 1e-12 of h.
			bend := d.Unit().Dot(g.second(t)) / v
			return min(max(t-step*(1+step*bend/2), lf.t0), lf.t1)
		}
		if math.Abs(miss) <= 2e-16*lf.s1 || math.Abs(step) <= 1e-15 {
			return t
		}
		t -= step
	}
	return t
}

// lengthTo returns the arc length on the path at parameter t of the stretch.
func (lf *leaf) lengthTo(g *Segment, t float64) float64 {
	h := lf.t1 - lf.t0
	if t <= lf.t0 {
		return lf.s0
	}
	if t >= lf.t1 {
		return lf.s1
	}
	if lf.even {
		return lf.s0 + (lf.s1-lf.s0)*(t-lf.t0)/h
	}
	if t-lf.t0 < h/2 {
		return lf.s0 + g.gauss(lf.t0, t)
	}
	return lf.s1 - g.gauss(t, lf.t1)
}
