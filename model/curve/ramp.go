package curve

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"
)

// Ramp is an amount that goes smoothly from height to height: a piecewise
// cubic through given values that rises only where they rise and falls only
// where they fall, so it never exceeds what was given. Beyond the outermost
// heights it stays as it is there. Value and slope are continuous everywhere.
//
// The method is that of Fritsch and Carlson, "Monotone Piecewise Cubic
// Interpolation", SIAM J. Numer. Anal. 17 (1980): slopes from the three-point
// difference formula, brought back, where they would let the curve overshoot,
// to the circle of radius 3 in units of the secant's slope, which lies inside
// their region of monotone cubics. Two things are settled here. The constant
// stretches beyond the ends are data like any other, so the slope is 0 at the
// outermost heights. And the slopes are brought back by the stricter of the
// two neighbouring stretches at once rather than from one end to the other,
// so that data turned upside down give the same curve turned upside down.
type Ramp struct {
	ys, values, slopes []float64
}

// NewRamp returns the ramp through the values at the heights ys, which must
// rise strictly. One height gives the same amount everywhere. It is an error
// if the two lists are empty or of different length, if a height is not above
// the one before by at least 1e-6 mm, or if any number is not finite or too
// large to reckon with.
func NewRamp(ys, values []float64) (*Ramp, error) {
	if len(ys) == 0 {
		return nil, errors.New("a ramp needs at least one height")
	}
	if len(ys) != len(values) {
		return nil, fmt.Errorf("a ramp needs one value for each height: %d heights, %d values", len(ys), len(values))
	}
	const most = 1e100 // squares and cubes of the quotients must stay finite
	for i := range ys {
		if !(math.Abs(ys[i]) <= most) || !(math.Abs(values[i]) <= most) {
			return nil, fmt.Errorf("height %v with value %v is not a finite pair", ys[i], values[i])
		}
		if i > 0 && !(ys[i]-ys[i-1] >= knotNear) {
			if math.Abs(ys[i]-ys[i-1]) < knotNear {
				return nil, fmt.Errorf("height %v is given twice", ys[i])
			}
			return nil, fmt.Errorf("heights must rise: %v comes after %v", ys[i], ys[i-1])
		}
	}
	r := &Ramp{ys: slices.Clone(ys), values: slices.Clone(values), slopes: make([]float64, len(ys))}
	secant := func(i int) float64 { return (values[i+1] - values[i]) / (ys[i+1] - ys[i]) }
	for i := 1; i+1 < len(ys); i++ {
		before, after := secant(i-1), secant(i)
		if before*after > 0 {
			h0, h1 := ys[i]-ys[i-1], ys[i+1]-ys[i]
			r.slopes[i] = (h1*before + h0*after) / (h0 + h1)
		}
	}
	ease := make([]float64, len(ys))
	for i := range ease {
		ease[i] = 1
	}
	for i := 0; i+1 < len(ys); i++ {
		if d := secant(i); d != 0 {
			if out := math.Hypot(r.slopes[i]/d, r.slopes[i+1]/d); out > 3 {
				ease[i], ease[i+1] = min(ease[i], 3/out), min(ease[i+1], 3/out)
			}
		}
	}
	for i := range ease {
		r.slopes[i] *= ease[i]
	}
	return r, nil
}

// knotNear is how far apart two heights must lie to count as two, in
// millimetres.
const knotNear = 1e-6

// At returns the amount at height y.
func (r *Ramp) At(y float64) float64 {
	v, _ := r.eval(y)
	return v
}

// Slope returns how fast the amount grows with y.
func (r *Ramp) Slope(y float64) float64 {
	_, d := r.eval(y)
	return d
}

func (r *Ramp) eval(y float64) (value, slope float64) {
	n := len(r.ys)
	if !(y > r.ys[0]) {
		return r.values[0], 0
	}
	if y >= r.ys[n-1] {
		return r.values[n-1], 0
	}
	i := sort.SearchFloat64s(r.ys, y) // the first height not below y; at least 1
	if r.ys[i] == y {
		return r.values[i], r.slopes[i]
	}
	i--
	c := hermiteCubic(r.ys[i], r.ys[i+1], r.values[i], r.values[i+1], r.slopes[i], r.slopes[i+1])
	return c.eval(y)
}

// cubicIn is a cubic polynomial of the height: k0 + k1 u + k2 u² + k3 u³ with
// u = y − from.
type cubicIn struct {
	from float64
	k    [4]float64
}

// hermiteCubic returns the cubic with these values and slopes at y0 and y1.
func hermiteCubic(y0, y1, v0, v1, m0, m1 float64) cubicIn {
	h := y1 - y0
	d := (v1 - v0) / h
	return cubicIn{y0, [4]float64{v0, m0, (3*d - 2*m0 - m1) / h, (m0 + m1 - 2*d) / (h * h)}}
}

func (c *cubicIn) eval(y float64) (value, slope float64) {
	u, k := y-c.from, &c.k
	return k[0] + u*(k[1]+u*(k[2]+u*k[3])), k[1] + u*(2*k[2]+u*3*k[3])
}

// constant tells whether the amount is the same everywhere.
func (c *cubicIn) constant() bool { return c.k[1] == 0 && c.k[2] == 0 && c.k[3] == 0 }

// Term is a ramp taken so many times.
type Term struct {
	Ramp   *Ramp
	Factor float64
}

// Shift is a sum of ramps; none at all is no shift.
type Shift []Term

// At returns the amount at height y.
func (s Shift) At(y float64) float64 {
	v, _ := s.eval(y)
	return v
}

// Slope returns how fast the amount grows with y.
func (s Shift) Slope(y float64) float64 {
	_, d := s.eval(y)
	return d
}

func (s Shift) eval(y float64) (value, slope float64) {
	for _, t := range s {
		v, d := t.Ramp.eval(y)
		value += t.Factor * v
		slope += t.Factor * d
	}
	return value, slope
}

// Knots returns the heights at which any of the ramps has a value given, each
// once, in rising order. Between two of them, above all and below all of them
// the shift is one cubic polynomial of the height.
func (s Shift) Knots() []float64 {
	var ys []float64
	for _, t := range s {
		if t.Factor != 0 {
			ys = append(ys, t.Ramp.ys...)
		}
	}
	slices.Sort(ys)
	return slices.Compact(ys)
}

// pieces returns the cubics the shift is made of and the heights between
// them, one fewer. Neighbours that are the same constant are one piece. Knots
// of different ramps that differ by rounding count as one.
func (s Shift) pieces() (cuts []float64, cubics []cubicIn) {
	ys := s.Knots()
	for i := 1; i < len(ys); i++ {
		if ys[i]-ys[i-1] < joinNear {
			ys = slices.Delete(ys, i, i+1)
			i--
		}
	}
	if len(ys) == 0 {
		return nil, []cubicIn{{}}
	}
	put := func(at float64, c cubicIn) {
		if n := len(cubics); n > 0 {
			last := &cubics[n-1]
			if last.constant() && c.constant() && last.k[0] == c.k[0] {
				return
			}
			cuts = append(cuts, at)
		}
		cubics = append(cubics, c)
	}
	v0, m0 := s.eval(ys[0])
	put(0, cubicIn{ys[0], [4]float64{v0}})
	for i := 1; i < len(ys); i++ {
		v1, m1 := s.eval(ys[i])
		put(ys[i-1], hermiteCubic(ys[i-1], ys[i], v0, v1, m0, m1))
		v0, m0 = v1, m1
	}
	put(ys[len(ys)-1], cubicIn{ys[len(ys)-1], [4]float64{v0}})
	return cuts, cubics
}
