package curve

import "math"

// parallelTrace returns the parallel of a cubic or elliptic arc as a curve to
// be followed: r + d·n, with n the unit normal to the right. With φ the angle
// of the running direction, n' = −φ'·T, and since the curve itself is a cubic
// only the normal adds to the error of Hermite's cubic. For a cubic that is
// d/384·h⁴·max|n⁗|; for an arc the arc's own part is added.
//
// |n⁗| = |T⁗| is bounded by interval arithmetic: T⁗/T = (φ'⁴ − 4φ'φ”' − 3φ”²) +
// i(φ⁗ − 6φ'²φ”), and φ' = (w×w')/(w·w) for any w along the running direction
// is a quotient of polynomials or of trigonometric polynomials whose Taylor
// coefficients are enclosed over the whole stretch.
func parallelTrace(g *Segment, d float64) *trace {
	var hand func(t0, t1 float64) turning
	heading := g.tangent
	own := 0.0
	if g.kind == Bezier {
		w := hodograph(g)
		hand, heading = w.turning, w.heading
	} else {
		hand = func(t0, t1 float64) turning { return arcTurning(g, t0, t1) }
		own = math.Hypot(math.Hypot(g.c.X, g.v.X), math.Hypot(g.c.Y, g.v.Y)) * math.Pow(g.turn, 4)
	}
	return &trace{
		at: func(t float64, before bool) (Point, Point) {
			dir := heading(t, before)
			turn := 0.0 // φ' by t
			if k := hand(t, t); k.square[0].lo > 0 {
				turn = k.cross[0].lo / k.square[0].lo
			}
			return g.at(t).Add(dir.Perp().Scale(d)), g.derivative(t).Sub(dir.Scale(d * turn))
		},
		off: func(t0, t1 float64) float64 {
			k := hand(t0, t1)
			return hermiteError(t1-t0, own) + math.Abs(d)*hermiteError(2, k.fourth())
		},
	}
}

// turning holds the Taylor coefficients of w×w' and of w·w, enclosed over a
// stretch. The variable runs from −1 to 1 over the stretch, or is t itself if
// the stretch is a point.
type turning struct {
	cross, square [4]interval
}

// fourth returns an upper bound of |T⁗| over the stretch, infinite if w may
// vanish there.
func (k *turning) fourth() float64 {
	if !(k.square[0].lo > 0) {
		return math.Inf(1)
	}
	var q [4]interval // Taylor coefficients of φ'
	for n := range q {
		rest := k.cross[n]
		for j := 1; j <= n; j++ {
			rest = rest.minus(k.square[j].times(q[n-j]))
		}
		q[n] = rest.over(k.square[0])
	}
	p1, p2, p3, p4 := q[0], q[1], q[2].scale(2), q[3].scale(6) // derivatives of φ
	s := p1.square()
	along := s.square().minus(p1.times(p3).scale(4)).minus(p2.square().scale(3))
	across := p4.minus(s.times(p2).scale(6))
	return math.Hypot(along.size(), across.size())
}

// direction is a polynomial w in Bernstein form that runs along the derivative
// of a cubic. Where the derivative vanishes at an end, the factor t or 1−t is
// taken out, so that w does not.
type direction []Point

// hodograph returns the direction polynomial of a cubic.
func hodograph(g *Segment) direction {
	e := [3]Point{g.b.Sub(g.a), g.c.Sub(g.b), g.d.Sub(g.c)}
	still := 1e-9 * g.reach() / 3 // as tangent has it
	begins, ends := e[0].Len() <= still, e[2].Len() <= still
	switch {
	case e[1].Len() <= still && begins:
		return direction{e[2]}
	case e[1].Len() <= still && ends:
		return direction{e[0]}
	case begins && ends:
		return direction{e[1]}
	case begins:
		return direction{e[1].Scale(2), e[2]}
	case ends:
		return direction{e[0], e[1].Scale(2)}
	}
	return e[:]
}

// heading returns the unit vector along the direction. Beside a place where
// the derivative vanishes it is better told so than from the derivative.
func (w direction) heading(t float64, _ bool) Point { return w.at(t).Unit() }

func (w direction) at(t float64) Point {
	switch m := 1 - t; len(w) {
	case 3:
		return w[0].Scale(m * m).Add(w[1].Scale(2 * m * t)).Add(w[2].Scale(t * t))
	case 2:
		return w[0].Lerp(w[1], t)
	}
	return w[0]
}

// turning encloses the turning of the direction from t0 to t1.
func (w direction) turning(t0, t1 float64) turning {
	mid, half := (t0+t1)/2, (t1-t0)/2
	if half == 0 {
		half = 1
	}
	p := [3]Point{w.at(mid)} // powers of the stretch's variable
	switch len(w) {
	case 3:
		a, b := w[1].Sub(w[0]), w[2].Sub(w[1])
		p[1] = a.Lerp(b, mid).Scale(2 * half)
		p[2] = b.Sub(a).Scale(half * half)
	case 2:
		p[1] = w[1].Sub(w[0]).Scale(half)
	}
	cross := []float64{p[0].Cross(p[1]), 2 * p[0].Cross(p[2]), p[1].Cross(p[2])}
	square := []float64{p[0].Dot(p[0]), 2 * p[0].Dot(p[1]), p[1].Dot(p[1]) + 2*p[0].Dot(p[2]), 2 * p[1].Dot(p[2]), p[2].Dot(p[2])}
	reach := 1.0
	if t0 == t1 {
		reach = 0
	}
	return turning{taylor(cross, reach), taylor(square, reach)}
}

// taylor encloses the first four Taylor coefficients of a polynomial at all
// places within reach of 0.
func taylor(c []float64, reach float64) (out [4]interval) {
	for k := range out {
		if k >= len(c) {
			break
		}
		wide := 0.0
		for j := k + 1; j < len(c); j++ {
			wide += binomial(j, k) * math.Abs(c[j]) * math.Pow(reach, float64(j-k))
		}
		out[k] = around(c[k], wide)
	}
	return out
}

// arcTurning encloses the turning of an arc, with w = v cos θ − c sin θ: w×w' is
// constant and w·w swings about its mean with twice the angle.
func arcTurning(g *Segment, t0, t1 float64) turning {
	mid, half := g.from+(t0+t1)/2*g.turn, (t1-t0)/2*g.turn
	step, reach := half, 1.0
	if t0 == t1 {
		step, reach = g.turn, 0
	}
	cc, vv, cv := g.c.Dot(g.c), g.v.Dot(g.v), g.c.Dot(g.v)
	mean, x, y := (cc+vv)/2, (vv-cc)/2, -cv
	swing := math.Hypot(x, y)
	sin, cos := math.Sincos(2 * mid)
	var k turning
	k.cross[0] = around(g.c.Cross(g.v)*step, 0)
	factor := 1.0 // (2·step)^n / n!
	for n := range k.square {
		// The nth derivative of x cos 2θ + y sin 2θ by 2θ; it cannot change by
		// more than the swing times the angle.
		value := x*cos + y*sin
		x, y = y, -x
		k.square[n] = around(value*factor, swing*math.Abs(factor)*min(2, 2*math.Abs(half)*reach))
		factor *= 2 * step / float64(n+1)
	}
	k.square[0] = k.square[0].plus(mean)
	return k
}

// interval is a set of numbers from lo to hi.
type interval struct{ lo, hi float64 }

func around(mid, wide float64) interval { return interval{mid - wide, mid + wide} }

func (a interval) plus(x float64) interval { return interval{a.lo + x, a.hi + x} }

func (a interval) minus(b interval) interval { return interval{a.lo - b.hi, a.hi - b.lo} }

func (a interval) scale(k float64) interval { return interval{a.lo * k, a.hi * k} } // k ≥ 0

func (a interval) times(b interval) interval {
	p, q, r, s := a.lo*b.lo, a.lo*b.hi, a.hi*b.lo, a.hi*b.hi
	return interval{min(p, q, r, s), max(p, q, r, s)}
}

// over divides by an interval of positive numbers.
func (a interval) over(b interval) interval {
	return a.times(interval{1 / b.hi, 1 / b.lo})
}

func (a interval) square() interval {
	lo, hi := a.lo*a.lo, a.hi*a.hi
	if a.lo < 0 && a.hi > 0 {
		return interval{0, max(lo, hi)}
	}
	return interval{min(lo, hi), max(lo, hi)}
}

// size returns the greatest absolute value.
func (a interval) size() float64 { return max(math.Abs(a.lo), math.Abs(a.hi)) }
