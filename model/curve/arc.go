package curve

import "math"

// Arc returns the elliptic arc from a to b as SVG 2 describes it (W3C SVG 2,
// 9.5 and appendix B.2, endpoint form): half axes rx and ry, the x axis of
// the ellipse turned by rotationDeg, the large or the small arc, running with
// the sweep of rising angle (clockwise on paper) or against it. Negative
// radii lose their sign, radii too small to reach are scaled up evenly, a zero
// radius gives a line and equal ends give a segment of no length.
func Arc(a Point, rx, ry, rotationDeg float64, large, sweep bool, b Point) Segment {
	rx, ry = math.Abs(rx), math.Abs(ry)
	if a == b || rx == 0 || ry == 0 {
		return Line(a, b)
	}
	sinPhi, cosPhi := math.Sincos(math.Mod(rotationDeg, 360) * math.Pi / 180)
	// Half the chord in the frame of the ellipse, in units of the half axes.
	half := a.Sub(b).Scale(0.5)
	ux := (cosPhi*half.X + sinPhi*half.Y) / rx
	uy := (cosPhi*half.Y - sinPhi*half.X) / ry
	q := math.Hypot(ux, uy)
	if q == 0 || math.IsInf(q, 0) || math.IsNaN(q) {
		return Line(a, b)
	}
	if q > 1 {
		rx, ry, ux, uy, q = rx*q, ry*q, ux/q, uy/q, 1
	}
	k := math.Sqrt(max(0, (1-q)*(1+q))) / q
	if large == sweep {
		k = -k
	}
	// The centre relative to the chord's middle, on the unit circle's scale.
	cx, cy := k*uy, -k*ux
	from := math.Atan2(uy-cy, ux-cx)
	to := math.Atan2(-uy-cy, -ux-cx)
	turn := to - from
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	} else if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	axisU := Point{rx * cosPhi, rx * sinPhi}
	axisV := Point{-ry * sinPhi, ry * cosPhi}
	centre := a.Lerp(b, 0.5).Add(axisU.Scale(cx)).Add(axisV.Scale(cy))
	const flat = 1e-9 // an ellipse flatter than this is a line, to any pencil
	if turn == 0 || !centre.finite() || min(rx, ry) < flat*max(rx, ry) {
		return Line(a, b)
	}
	return Segment{kind: Elliptic, a: a, d: b, b: centre, c: axisU, v: axisV, from: from, turn: turn}
}

// Ellipse returns what Arc would need to draw the same arc between the same
// ends. For other kinds of segment rx and ry are zero.
func (g Segment) Ellipse() (rx, ry, rotationDeg float64, large, sweep bool) {
	if g.kind != Elliptic {
		return 0, 0, 0, false, false
	}
	handed := g.c.Cross(g.v) > 0 // false once the arc has been turned over
	return g.c.Len(), g.v.Len(), math.Atan2(g.c.Y, g.c.X) * 180 / math.Pi,
		math.Abs(g.turn) > math.Pi, (g.turn > 0) == handed
}

// Cubics returns the segment as cubic Béziers for writers that know nothing
// else. Lines and cubics are given exactly; an arc is cut into pieces of at
// most 30 degrees, each off by less than 1e-6 of its larger half axis.
func (g Segment) Cubics() []Segment {
	switch g.kind {
	case Straight:
		return []Segment{Cubic(g.a, g.a.Lerp(g.d, 1.0/3), g.a.Lerp(g.d, 2.0/3), g.d)}
	case Bezier:
		return []Segment{g}
	}
	n := max(1, int(math.Ceil(math.Abs(g.turn)/(math.Pi/6)-1e-9)))
	step := 1 / float64(n)
	k := 4.0 / 3 * math.Tan(g.turn*step/4) / (g.turn * step)
	out := make([]Segment, n)
	for i := range out {
		h := g.part(float64(i)*step, float64(i+1)*step)
		if i == n-1 {
			h.d = g.d
		}
		out[i] = Cubic(h.a, h.a.Add(h.derivative(0).Scale(k)), h.d.Sub(h.derivative(1).Scale(k)), h.d)
	}
	return out
}

// circular tells whether the arc is one of a circle, to rounding.
func (g *Segment) circular() bool {
	u, v := g.c.Len(), g.v.Len()
	return math.Abs(u-v) <= 4e-16*(u+v)
}
