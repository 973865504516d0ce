package curve

import "math"

// trace is a curve that is not one of the kinds a Path is made of, and is to
// be followed by cubics. It runs over a parameter.
type trace struct {
	// at returns the point and the derivative. before asks for those just
	// before t where they jump.
	at func(t float64, before bool) (p, d Point)
	// off returns a proven upper bound of how far Hermite's cubic over the
	// stretch lies from the curve at equal parameter; infinite if it knows none.
	off func(t0, t1 float64) float64
}

// stretch is a segment that stands for a stretch of a trace; the segment's
// parameter runs evenly with the trace's.
type stretch struct {
	t0, t1 float64
	seg    Segment
}

// follow appends the cubics that follow the trace from t0 to t1 within the
// tolerance. Each has the curve's end points and derivatives (Hermite's
// interpolation), and stretches are halved until the bound is small enough;
// depth halvings and mostStretches stretches are the most, and what then
// still has no good bound, such as a place where the curve spins, is straight.
func (c *trace) follow(out []stretch, t0, t1, tolerance float64, depth int) []stretch {
	near := c.off(t0, t1) <= tolerance
	if !near && depth > 0 && len(out) < mostStretches {
		mid := (t0 + t1) / 2
		out = c.follow(out, t0, mid, tolerance, depth-1)
		return c.follow(out, mid, t1, tolerance, depth-1)
	}
	a, da := c.at(t0, false)
	d, dd := c.at(t1, true)
	if !near {
		return append(out, stretch{t0, t1, Line(a, d)})
	}
	h := (t1 - t0) / 3
	return append(out, stretch{t0, t1, Cubic(a, a.Add(da.Scale(h)), d.Sub(dd.Scale(h)), d)})
}

// mostStretches keeps a trace of which no bound can be had from filling the
// memory. Drawn lines need some dozens.
const mostStretches = 4096

// hermiteError bounds the error of Hermite's cubic by the largest fourth
// derivative and the length h of the stretch: h⁴/384 · max|f⁗| (Conte and
// de Boor 1980, Elementary Numerical Analysis, 2.6 with double knots).
func hermiteError(h, fourth float64) float64 { return h * h * h * h / 384 * fourth }

// times returns the product of two polynomials on [0, 1] in Bernstein form.
func times(a, b []float64) []float64 {
	m, n := len(a)-1, len(b)-1
	out := make([]float64, m+n+1)
	for i, x := range a {
		for j, y := range b {
			out[i+j] += binomial(m, i) * binomial(n, j) / binomial(m+n, i+j) * x * y
		}
	}
	return out
}

// binomial returns n over k, exactly for the small n used here.
func binomial(n, k int) float64 {
	out := 1.0
	for i := 1; i <= k; i++ {
		out = out * float64(n-k+i) / float64(i)
	}
	return math.Round(out)
}

// joined returns the segments with each start put on the end before it where
// the two differ by no more than rounding. No segment loses its length by it.
func joined(segs []Segment) []Segment {
	for i := 1; i < len(segs); i++ {
		if to := segs[i-1].d; segs[i].a != to && segs[i].a.Dist(to) <= joinNear {
			g := segs[i]
			if g.startAt(to); g.reach() > 0 {
				segs[i] = g
			}
		}
	}
	return segs
}

// joinNear is how far apart two ends may lie and still be the same point, in
// millimetres. It takes up rounding and nothing else.
const joinNear = 1e-9

// startAt puts the start of the segment on a point that differs from it by
// rounding, endAt the end. A cubic's handle goes along.
func (g *Segment) startAt(p Point) {
	if g.kind == Bezier {
		g.b = g.b.Add(p.Sub(g.a))
	}
	g.a = p
}

func (g *Segment) endAt(p Point) {
	if g.kind == Bezier {
		g.c = g.c.Add(p.Sub(g.d))
	}
	g.d = p
}
