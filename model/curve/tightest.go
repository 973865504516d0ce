package curve

import "math"

// TightestInside returns the place on the path where it bends most tightly to
// the side on which Parallel(d, …) lies, and the radius of curvature there. An
// allowance of |d| on that side can be turned smoothly where the radius is not
// below |d|. If the path nowhere bends to that side, or d is 0, the radius is
// infinite. At a cusp inside a cubic it is 0. Corners, which Parallel trims,
// do not count.
//
// All places where the curvature can be greatest are found: for a cubic the
// ends and the roots of (r'×r”')(r'·r') − 3(r'×r”)(r'·r”), a polynomial of
// degree five; for an arc the ends and the tips of its axes.
func (p *Path) TightestInside(d float64) (s, radius float64) {
	radius = math.Inf(1)
	side := 0.0
	if d != 0 {
		side = math.Copysign(1, d)
	}
	for i := range p.segs {
		g := &p.segs[i]
		var at rootList
		g.bends(&at)
		at.put(0)
		at.put(1)
		for _, t := range at.t[:at.n] {
			if r := g.radius(t, side); r < radius {
				s, radius = p.lengthAt(i, t), r
			}
		}
	}
	return s, radius
}

// radius returns the radius of curvature at t if the segment bends to the
// given side there (1 for the right), and an infinite one if not.
func (g *Segment) radius(t, side float64) float64 {
	if g.kind == Straight || side == 0 {
		return math.Inf(1)
	}
	if g.kind == Elliptic && g.circular() {
		if side*g.turn*g.c.Cross(g.v) > 0 {
			return g.c.Len()
		}
		return math.Inf(1)
	}
	d, dd := g.derivative(t), g.second(t)
	v := d.Len()
	if v <= 1e-9*g.reach() && g.kind == Bezier { // stands still: a cusp, or an end that bends without limit
		if bend := g.bendBeside(t) * side; bend > 0 {
			return 0
		}
		return math.Inf(1)
	}
	cross := d.Cross(dd) * side
	if !(cross > 1e-12*v*dd.Len()) { // as good as straight
		return math.Inf(1)
	}
	return v * v * v / cross
}

// bendBeside returns the sense of the bend beside a place where the cubic
// stands still: r'×r” grows there like τ²/2·(r”×r”').
func (g *Segment) bendBeside(t float64) float64 {
	dd := g.second(t)
	ddd := g.d.Sub(g.a).Add(g.b.Sub(g.c).Scale(3)).Scale(6)
	cross := dd.Cross(ddd)
	if math.Abs(cross) <= 1e-12*dd.Len()*ddd.Len() {
		return 0
	}
	return cross
}

// bends finds the parameters inside the segment where its curvature can be
// extreme.
func (g *Segment) bends(out *rootList) {
	switch {
	case g.kind == Elliptic && !g.circular():
		lo, hi := min(g.from, g.from+g.turn), max(g.from, g.from+g.turn)
		for k := math.Ceil(lo / (math.Pi / 2)); k*math.Pi/2 <= hi; k++ {
			out.put(clamp((k*math.Pi/2-g.from)/g.turn, 0, 1))
		}
	case g.kind == Bezier:
		e0, e1, e2 := g.b.Sub(g.a), g.c.Sub(g.b), g.d.Sub(g.c)
		u, v := e1.Sub(e0), e2.Sub(e1)
		w := v.Sub(u)
		// Each up to the same power of three and two: r' by 3, r” by 6, r”' by 6.
		jerk := []float64{e0.Cross(w), e2.Cross(w)}
		speed := []float64{e0.Dot(e0), e0.Dot(e1), (e0.Dot(e2) + 2*e1.Dot(e1)) / 3, e1.Dot(e2), e2.Dot(e2)}
		bend := []float64{e0.Cross(e1), e0.Cross(e2) / 2, e1.Cross(e2)}
		slow := []float64{e0.Dot(u), (e0.Dot(v) + 2*e1.Dot(u)) / 3, (2*e1.Dot(v) + e2.Dot(u)) / 3, e2.Dot(v)}
		left, right := times(jerk, speed), times(bend, slow)
		b := bernstein{n: 5}
		for i := range b.c {
			b.c[i] = left[i] - 6*right[i]
		}
		b.roots(0, 1, 48, out)
	}
}
