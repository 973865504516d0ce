package curve

import "math"

// Nearest returns the arc length of the point of the path nearest to q, and
// its distance. All places where the distance can be least are found: the
// ends of the segments and the roots of (r − q)·r' = 0, which for a cubic is a
// polynomial of degree five and for an arc, run through by the tangent of half
// its angle, one of degree four. Segments whose box is too far away are passed
// over. Of equally near points any one is given.
func (p *Path) Nearest(q Point) (s, distance float64) {
	if len(p.segs) == 0 {
		return 0, q.Len()
	}
	first := p.boxes.nearest(q)
	best := first
	bestT, distance := p.segs[first].nearest(q)
	tooFar := func(b *Box, _, _ int) bool { return b.distance(q) >= distance }
	for i := p.boxes.next(0, tooFar); i < len(p.segs); i = p.boxes.next(i+1, tooFar) {
		if i == first {
			continue
		}
		if t, d := p.segs[i].nearest(q); d < distance {
			best, bestT, distance = i, t, d
		}
	}
	return p.lengthAt(best, bestT), distance
}

// nearest returns the parameter of the segment's point nearest to q, and its
// distance.
func (g *Segment) nearest(q Point) (t, distance float64) {
	t, distance = 0, g.a.Dist(q)
	try := func(u float64) {
		if d := g.at(u).Dist(q); d < distance {
			t, distance = u, d
		}
	}
	try(1)
	switch {
	case g.kind == Straight:
		d := g.d.Sub(g.a)
		if u := q.Sub(g.a).Dot(d) / d.Dot(d); u > 0 && u < 1 {
			try(u)
		}
	case g.kind == Bezier:
		var found rootList
		g.footsOnCubic(q).roots(0, 1, 48, &found)
		for _, u := range found.t[:found.n] {
			try(u)
		}
	case g.circular():
		w := q.Sub(g.b)
		angle := math.Atan2(w.Dot(g.v), w.Dot(g.c))
		u := (angle - g.from) / g.turn
		period := 2 * math.Pi / math.Abs(g.turn)
		if u -= math.Floor(u/period) * period; u < 1 {
			try(u)
		}
	default:
		pieces := math.Ceil(math.Abs(g.turn) / (math.Pi / 2))
		for k := 0.0; k < pieces; k++ {
			try(k / pieces) // a root on a cut belongs to neither piece
			var found rootList
			b, tan := g.footsOnArc(q, (k+0.5)/pieces, 0.5/pieces)
			b.roots(0, 1, 48, &found)
			for _, w := range found.t[:found.n] {
				angle := 2 * math.Atan(tan*(2*w-1))
				try(clamp((k+0.5)/pieces+angle/g.turn, 0, 1))
			}
		}
	}
	return t, distance
}

// footsOnCubic returns (r(t) − q)·r'(t)/3.
func (g *Segment) footsOnCubic(q Point) bernstein {
	r := [4]Point{g.a.Sub(q), g.b.Sub(q), g.c.Sub(q), g.d.Sub(q)}
	e := [3]Point{g.b.Sub(g.a), g.c.Sub(g.b), g.d.Sub(g.c)}
	return bernstein{n: 5, c: [6]float64{
		r[0].Dot(e[0]),
		(2*r[0].Dot(e[1]) + 3*r[1].Dot(e[0])) / 5,
		(r[0].Dot(e[2]) + 6*r[1].Dot(e[1]) + 3*r[2].Dot(e[0])) / 10,
		(3*r[1].Dot(e[2]) + 6*r[2].Dot(e[1]) + r[3].Dot(e[0])) / 10,
		(3*r[2].Dot(e[2]) + 2*r[3].Dot(e[1])) / 5,
		r[3].Dot(e[2]),
	}}
}

// footsOnArc returns the numerator of (r − q)·dr/dφ on the piece of the arc
// from parameter mid−half to mid+half, where φ is the angle from its middle
// and the variable is τ = tan(φ/2), brought from [−tan, tan] to [0, 1].
func (g *Segment) footsOnArc(q Point, mid, half float64) (b bernstein, tan float64) {
	sin, cos := math.Sincos(g.from + mid*g.turn)
	u := g.c.Scale(cos).Add(g.v.Scale(sin))
	v := g.v.Scale(cos).Sub(g.c.Scale(sin))
	tan = math.Tan(half * g.turn / 2) // signed like the turn: w rises with t
	m, w := 1+tan*tan, 1-tan*tan
	o := g.b.Sub(q)
	n := [3]Point{ // (1+τ²)(r − q)
		o.Scale(m).Add(u.Scale(w)).Sub(v.Scale(2 * tan)),
		o.Scale(w).Add(u.Scale(m)),
		o.Scale(m).Add(u.Scale(w)).Add(v.Scale(2 * tan)),
	}
	d := [3]Point{ // (1+τ²) dr/dφ
		v.Scale(w).Add(u.Scale(2 * tan)),
		v.Scale(m),
		v.Scale(w).Sub(u.Scale(2 * tan)),
	}
	return bernstein{n: 4, c: [6]float64{
		n[0].Dot(d[0]),
		(n[0].Dot(d[1]) + n[1].Dot(d[0])) / 2,
		(n[0].Dot(d[2]) + 4*n[1].Dot(d[1]) + n[2].Dot(d[0])) / 6,
		(n[1].Dot(d[2]) + n[2].Dot(d[1])) / 2,
		n[2].Dot(d[2]),
	}}, tan
}
