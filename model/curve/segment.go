package curve

import "math"

// Kind says what a Segment is.
type Kind uint8

// The kinds of segment.
const (
	Straight Kind = iota // a line
	Bezier               // a cubic Bézier curve
	Elliptic             // an arc of an ellipse or circle
)

// Segment is one line, cubic Bézier or elliptic arc. The parameter t runs
// from 0 at the start to 1 at the end.
//
//	Straight  a to d
//	Bezier    a, b, c, d are the control points
//	Elliptic  b + c·cos θ + v·sin θ with θ = from + t·turn; b is the centre,
//	          c and v are the half axes (square to each other), a and d the
//	          two ends as they were given
//
// A rigid motion moves the points and turns the half axes; θ stays as it is.
type Segment struct {
	kind       Kind
	a, b, c, d Point
	v          Point
	from, turn float64
}

// Line returns the straight segment from a to b.
func Line(a, b Point) Segment { return Segment{kind: Straight, a: a, d: b} }

// Cubic returns the cubic Bézier segment with control points a, b, c, d.
func Cubic(a, b, c, d Point) Segment {
	return Segment{kind: Bezier, a: a, b: b, c: c, d: d}
}

// Kind returns what the segment is.
func (g Segment) Kind() Kind { return g.kind }

// Start returns the first point.
func (g Segment) Start() Point { return g.a }

// End returns the last point.
func (g Segment) End() Point { return g.d }

// Controls returns the two inner control points of a cubic. For a line and
// an arc it returns the two ends.
func (g Segment) Controls() (b, c Point) {
	if g.kind == Bezier {
		return g.b, g.c
	}
	return g.a, g.d
}

// at returns the point at parameter t in [0, 1]; the ends are met exactly.
func (g *Segment) at(t float64) Point {
	switch g.kind {
	case Bezier:
		m := 1 - t
		w0, w1, w2, w3 := m*m*m, 3*m*m*t, 3*m*t*t, t*t*t
		return Point{
			w0*g.a.X + w1*g.b.X + w2*g.c.X + w3*g.d.X,
			w0*g.a.Y + w1*g.b.Y + w2*g.c.Y + w3*g.d.Y,
		}
	case Elliptic:
		if t <= 0 {
			return g.a
		}
		if t >= 1 {
			return g.d
		}
		s, c := math.Sincos(g.from + t*g.turn)
		return Point{g.b.X + g.c.X*c + g.v.X*s, g.b.Y + g.c.Y*c + g.v.Y*s}
	}
	return g.a.Lerp(g.d, t)
}

// derivative returns the first derivative by t.
func (g *Segment) derivative(t float64) Point {
	switch g.kind {
	case Bezier:
		m := 1 - t
		w0, w1, w2 := 3*m*m, 6*m*t, 3*t*t
		return Point{
			w0*(g.b.X-g.a.X) + w1*(g.c.X-g.b.X) + w2*(g.d.X-g.c.X),
			w0*(g.b.Y-g.a.Y) + w1*(g.c.Y-g.b.Y) + w2*(g.d.Y-g.c.Y),
		}
	case Elliptic:
		s, c := math.Sincos(g.from + t*g.turn)
		return Point{(g.v.X*c - g.c.X*s) * g.turn, (g.v.Y*c - g.c.Y*s) * g.turn}
	}
	return g.d.Sub(g.a)
}

// second returns the second derivative by t.
func (g *Segment) second(t float64) Point {
	switch g.kind {
	case Bezier:
		p := g.a.Sub(g.b).Add(g.c.Sub(g.b))
		q := g.b.Sub(g.c).Add(g.d.Sub(g.c))
		return p.Scale(6 * (1 - t)).Add(q.Scale(6 * t))
	case Elliptic:
		s, c := math.Sincos(g.from + t*g.turn)
		return g.c.Scale(c).Add(g.v.Scale(s)).Scale(-g.turn * g.turn)
	}
	return Point{}
}

// tangent returns the running direction of the part just after t (or just
// before it). Where the first derivative vanishes the next one that does not
// gives the direction: r'(t+h) = h r” + h²/2 r”' + …
func (g *Segment) tangent(t float64, before bool) Point {
	size := g.reach()
	if size == 0 {
		return Point{}
	}
	d := g.derivative(t)
	if d.Len() > 1e-9*size {
		return d.Unit()
	}
	sign := 1.0
	if before {
		sign = -1
	}
	if d = g.second(t); d.Len() > 1e-6*size {
		return d.Scale(sign).Unit()
	}
	if g.kind == Bezier {
		d = g.d.Sub(g.a).Add(g.b.Sub(g.c).Scale(3))
		if d.Len() > 0 {
			return d.Unit()
		}
	}
	return g.d.Sub(g.a).Unit()
}

// reach returns a length that the segment cannot exceed by much: the control
// polygon of a curve, the arc's angle times its larger half axis.
func (g *Segment) reach() float64 {
	switch g.kind {
	case Bezier:
		return g.a.Dist(g.b) + g.b.Dist(g.c) + g.c.Dist(g.d)
	case Elliptic:
		return math.Abs(g.turn) * max(g.c.Len(), g.v.Len())
	}
	return g.a.Dist(g.d)
}

// part returns the stretch from parameter t0 to t1; t0 > t1 turns it round.
func (g *Segment) part(t0, t1 float64) Segment {
	if t0 == 0 && t1 == 1 {
		return *g
	}
	h := *g
	h.a, h.d = g.at(t0), g.at(t1)
	switch g.kind {
	case Bezier:
		// The inner control points by blossoming: f(t0,t0,t1), f(t0,t1,t1).
		h.b, h.c = g.blossom(t0, t0, t1), g.blossom(t0, t1, t1)
	case Elliptic:
		h.from, h.turn = g.from+t0*g.turn, (t1-t0)*g.turn
	}
	return h
}

func (g *Segment) blossom(r, s, t float64) Point {
	ab, bc, cd := g.a.Lerp(g.b, r), g.b.Lerp(g.c, r), g.c.Lerp(g.d, r)
	return ab.Lerp(bc, s).Lerp(bc.Lerp(cd, s), t)
}

func (g *Segment) reverse() Segment {
	h := *g
	h.a, h.d = g.d, g.a
	switch g.kind {
	case Bezier:
		h.b, h.c = g.c, g.b
	case Elliptic:
		h.from, h.turn = g.from+g.turn, -g.turn
	}
	return h
}

func (g *Segment) move(m Motion) Segment {
	h := *g
	h.a, h.d = m.Apply(g.a), m.Apply(g.d)
	switch g.kind {
	case Bezier:
		h.b, h.c = m.Apply(g.b), m.Apply(g.c)
	case Elliptic:
		h.b, h.c, h.v = m.Apply(g.b), m.Direction(g.c), m.Direction(g.v)
	}
	return h
}

// box returns the exact bounds: the ends and the places where a coordinate
// turns round.
func (g *Segment) box() Box {
	b := emptyBox().with(g.a).with(g.d)
	if g.kind == Straight {
		return b
	}
	var t [2]float64
	for axis := range 2 {
		for _, t := range t[:g.extrema(axis == 1, &t)] {
			b = b.with(g.at(t))
		}
	}
	return b
}

// extrema finds the parameters strictly inside (0, 1) where X (or Y) turns
// round, in rising order; an arc has at most two a full turn.
func (g *Segment) extrema(vertical bool, out *[2]float64) int {
	n := 0
	put := func(t float64) {
		if t > 0 && t < 1 && n < 2 {
			out[n] = t
			n++
		}
	}
	pick := func(p Point) float64 {
		if vertical {
			return p.Y
		}
		return p.X
	}
	switch g.kind {
	case Bezier:
		p, q, r := pick(g.b)-pick(g.a), pick(g.c)-pick(g.b), pick(g.d)-pick(g.c)
		t0, t1, k := quadraticRoots(p-2*q+r, 2*(q-p), p)
		if k > 0 {
			put(t0)
		}
		if k > 1 {
			put(t1)
		}
	case Elliptic:
		// c·cos θ + v·sin θ is extreme at θ = atan2(v, c) + k·π.
		first := math.Atan2(pick(g.v), pick(g.c))
		lo, hi := min(g.from, g.from+g.turn), max(g.from, g.from+g.turn)
		for k := math.Floor((lo - first) / math.Pi); first+k*math.Pi <= hi; k++ {
			put((first + k*math.Pi - g.from) / g.turn)
		}
	}
	if n == 2 && out[0] > out[1] {
		out[0], out[1] = out[1], out[0]
	}
	return n
}

// quadraticRoots solves a t² + b t + c = 0 without cancellation; the roots
// come in rising order, a double root once.
func quadraticRoots(a, b, c float64) (r0, r1 float64, n int) {
	scale := max(math.Abs(a), math.Abs(b), math.Abs(c))
	if scale == 0 {
		return 0, 0, 0
	}
	a, b, c = a/scale, b/scale, c/scale
	disc := b*b - 4*a*c
	if disc < 0 {
		return 0, 0, 0
	}
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
	if q == 0 { // b = 0 and a·c = 0
		if a != 0 {
			return 0, 0, 1
		}
		return 0, 0, 0
	}
	r0 = c / q
	if a == 0 {
		return r0, 0, 1
	}
	r1 = q / a
	if math.IsInf(r1, 0) || r0 == r1 {
		return r0, 0, 1
	}
	return min(r0, r1), max(r0, r1), 2
}

// area returns the part of ½∮(x dy − y dx) that the segment adds, about the
// point o (Green's theorem; the cubic's sum is its integral
// worked out in control points).
func (g *Segment) area(o Point) float64 {
	a, d := g.a.Sub(o), g.d.Sub(o)
	switch g.kind {
	case Bezier:
		b, c := g.b.Sub(o), g.c.Sub(o)
		return (6*a.Cross(b) + 3*a.Cross(c) + a.Cross(d) +
			3*b.Cross(c) + 3*b.Cross(d) + 6*c.Cross(d)) / 20
	case Elliptic:
		return (g.b.Sub(o).Cross(d.Sub(a)) + g.c.Cross(g.v)*g.turn) / 2
	}
	return a.Cross(d) / 2
}
