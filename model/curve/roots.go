package curve

import "math"

// bernstein is a polynomial on [0, 1] of degree up to five, in Bernstein
// form.
type bernstein struct {
	c [6]float64
	n int
}

// rootList holds the roots found, without allocation. A polynomial of degree
// five has no more than five; a few spare places take doubled hits.
type rootList struct {
	t [16]float64
	n int
}

func (r *rootList) put(t float64) {
	if r.n < len(r.t) {
		r.t[r.n] = t
		r.n++
	}
}

// roots finds the roots in (0, 1): by Descartes' rule of signs a polynomial
// whose coefficients change sign once has one root there, and one without a
// change has none; others are halved (de Casteljau), which never adds changes.
// A stretch that cannot be told apart any further counts as one root.
func (b bernstein) roots(lo, hi float64, depth int, out *rootList) {
	changes, last := 0, 0.0
	for _, v := range b.c[:b.n+1] {
		if v != 0 {
			if last*v < 0 {
				changes++
			}
			last = math.Copysign(1, v)
		}
	}
	switch {
	case last == 0 || depth == 0:
		out.put((lo + hi) / 2)
		return
	case changes == 0:
		return
	case changes == 1:
		out.put(lo + (hi-lo)*b.onlyRoot())
		return
	}
	var left, right bernstein
	left.n, right.n = b.n, b.n
	for k := 0; k <= b.n; k++ {
		left.c[k], right.c[b.n-k] = b.c[0], b.c[b.n-k]
		for i := 0; i < b.n-k; i++ {
			b.c[i] = (b.c[i] + b.c[i+1]) / 2
		}
	}
	mid := (lo + hi) / 2
	if right.c[0] == 0 {
		out.put(mid)
	}
	left.roots(lo, mid, depth-1, out)
	right.roots(mid, hi, depth-1, out)
}

// eval returns the value and the derivative at t.
func (b *bernstein) eval(t float64) (v, d float64) {
	c, m := b.c, 1-t
	for k := b.n; k > 1; k-- {
		for i := range k {
			c[i] = c[i]*m + c[i+1]*t
		}
	}
	return c[0]*m + c[1]*t, (c[1] - c[0]) * float64(b.n)
}

// onlyRoot finds the root of a polynomial whose coefficients change sign
// once: Newton's step inside a bracket that shrinks by bisection.
func (b *bernstein) onlyRoot() float64 {
	sign := 0.0 // of the value just after 0
	for _, v := range b.c[:b.n+1] {
		if v != 0 {
			sign = math.Copysign(1, v)
			break
		}
	}
	lo, hi, t := 0.0, 1.0, 0.5
	if first, last := b.c[0], b.c[b.n]; first != last {
		t = clamp(first/(first-last), 0.01, 0.99)
	}
	for range 60 {
		v, d := b.eval(t)
		v, d = v*sign, d*sign
		if v > 0 {
			lo = t
		} else {
			hi = t
		}
		next := t - v/d
		if !(next > lo && next < hi) {
			if v == 0 {
				return t
			}
			next = (lo + hi) / 2
		}
		if math.Abs(next-t) <= 1e-15 || hi-lo <= 1e-16 {
			return next
		}
		t = next
	}
	return t
}
