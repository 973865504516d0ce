package curve

import "math"

// Smooth returns the curve that a cutter would draw through the points: a
// centripetal Catmull–Rom spline (Yuksel, Schaefer and Keyser 2011), which
// neither loops nor overshoots between points, as one cubic between each two.
// At the ends the neighbour of the end point is reflected in it. Points that
// repeat the one before are left out; two points give a line.
func Smooth(pts ...Point) *Path {
	var p []Point
	for _, q := range pts {
		if len(p) == 0 || p[len(p)-1] != q {
			p = append(p, q)
		}
	}
	if len(p) < 3 {
		return Polyline(p...)
	}
	n := len(p)
	point := func(i int) Point {
		switch {
		case i < 0:
			return p[0].Scale(2).Sub(p[1])
		case i >= n:
			return p[n-1].Scale(2).Sub(p[n-2])
		}
		return p[i]
	}
	segs := make([]Segment, 0, n-1)
	for i := 0; i+1 < n; i++ {
		p0, p1, p2, p3 := point(i-1), p[i], p[i+1], point(i+2)
		segs = append(segs, Cubic(p1, handle(p0, p1, p2), handle(p3, p2, p1), p2))
	}
	return New(segs...)
}

// handle returns the control point beside p1 on the way to p2, p0 being the
// point on p1's other side. Knots lie the square root of the distance apart.
func handle(p0, p1, p2 Point) Point {
	q1, q2 := p0.Dist(p1), p1.Dist(p2)
	d1, d2 := math.Sqrt(q1), math.Sqrt(q2)
	sum := p2.Scale(q1).Sub(p0.Scale(q2)).Add(p1.Scale(2*q1 + 3*d1*d2 + q2))
	return sum.Scale(1 / (3 * d1 * (d1 + d2)))
}
