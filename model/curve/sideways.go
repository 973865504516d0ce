package curve

import (
	"math"
	"slices"
	"sort"
)

// Sideways returns the path with every point (x, y) moved to
// (x + shift.At(y), y). A shift of nothing returns the path itself.
//
// Where the shift is constant along a segment the segment keeps its kind, arcs
// included. A straight line under a shift that varies is exactly a cubic
// between two knots. Cubics and arcs are followed by cubics that lie within
// the tolerance, in millimetres, of where the points at equal parameter belong:
// not sampled but bounded, see trace.off in shifter.
func (p *Path) Sideways(shift Shift, tolerance float64) *Path {
	return p.CarrySideways(shift, tolerance).Path
}

// Carried is a path that was moved, with the way from places on the path it
// came from to places on it.
type Carried struct {
	Path    *Path
	from    *Path
	first   []int // index of the first stretch of each segment; nil if nothing moved
	stretch []stretch
	place   []int32 // index on Path of each stretch's segment, or of the next if it came out without length
}

// CarrySideways does what Sideways does, and keeps account of places.
func (p *Path) CarrySideways(shift Shift, tolerance float64) *Carried {
	cuts, cubics := shift.pieces()
	if len(cubics) == 1 && cubics[0].k[0] == 0 || len(p.segs) == 0 {
		return &Carried{Path: p, from: p}
	}
	m := &Carried{from: p}
	moved := false
	for i := range p.segs {
		f := shifter{g: &p.segs[i], cuts: cuts, cubics: cubics, tolerance: max(tolerance, 1e-9)}
		m.first = append(m.first, len(m.stretch))
		m.stretch = append(m.stretch, f.run()...)
		moved = moved || f.moved
	}
	if !moved {
		return &Carried{Path: p, from: p}
	}
	var segs []Segment
	for i := range m.stretch {
		m.place = append(m.place, int32(len(segs)))
		if m.stretch[i].seg.reach() > 0 {
			segs = append(segs, m.stretch[i].seg)
		}
	}
	if len(segs) == 0 {
		segs = []Segment{m.stretch[0].seg}
	}
	m.Path = New(joined(segs)...)
	return m
}

// At returns the arc length on the moved path of the point that lay at arc
// length s, clamped, on the path it came from.
func (m *Carried) At(s float64) float64 {
	s = clamp(s, 0, m.from.Length())
	if m.first == nil {
		return s
	}
	lf := m.from.find(s, false)
	t := lf.param(&m.from.segs[lf.seg], s)
	i, end := m.first[lf.seg], len(m.stretch)
	if int(lf.seg)+1 < len(m.first) {
		end = m.first[lf.seg+1]
	}
	for i+1 < end && m.stretch[i].t1 <= t {
		i++
	}
	k := &m.stretch[i]
	if k.seg.reach() == 0 {
		return m.Path.knot(m.place[i])
	}
	return m.Path.lengthAt(int(m.place[i]), clamp((t-k.t0)/(k.t1-k.t0), 0, 1))
}

// shifter moves one segment.
type shifter struct {
	g         *Segment
	cuts      []float64
	cubics    []cubicIn
	tolerance float64
	moved     bool
}

// run cuts the segment at the knots and moves each part.
func (f *shifter) run() []stretch {
	var out []stretch
	t0 := 0.0
	for _, t1 := range append(f.knots(), 1) {
		out = f.part(out, t0, t1)
		t0 = t1
	}
	return out
}

// knots returns the parameters, in rising order, at which the segment passes
// from one piece of the shift to another. A knot at the height of an end, to
// rounding, cuts nothing off.
func (f *shifter) knots() []float64 {
	var turns [2]float64
	bounds := append([]float64{0}, turns[:f.g.extrema(true, &turns)]...)
	bounds = append(bounds, 1)
	var out []float64
	for i := 1; i < len(bounds); i++ {
		m := monotone{t0: bounds[i-1], t1: bounds[i], p0: f.g.at(bounds[i-1]), p1: f.g.at(bounds[i])}
		lo, hi := min(m.p0.Y, m.p1.Y), max(m.p0.Y, m.p1.Y)
		for k := sort.SearchFloat64s(f.cuts, lo); k < len(f.cuts) && f.cuts[k] <= hi; k++ {
			y := f.cuts[k]
			first := i == 1 && math.Abs(y-m.p0.Y) <= joinNear
			last := i == len(bounds)-1 && math.Abs(y-m.p1.Y) <= joinNear
			if first || last || lo == hi {
				continue
			}
			if t := m.levelParam(f.g, y); t > 0 && t < 1 {
				out = append(out, t)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// part moves the stretch of the segment from t0 to t1, which lies within one
// piece of the shift.
func (f *shifter) part(out []stretch, t0, t1 float64) []stretch {
	g := f.g.part(t0, t1)
	mid := g.at(0.5).Y
	c := &f.cubics[sort.SearchFloat64s(f.cuts, mid)]
	flat := g.kind == Straight && g.a.Y == g.d.Y
	if flat || c.constant() {
		by, _ := c.eval(mid)
		f.moved = f.moved || by != 0
		return append(out, stretch{t0, t1, g.move(Translate(Point{X: by}))})
	}
	f.moved = true
	curve := trace{at: func(t float64, _ bool) (Point, Point) {
		p, d := f.g.at(t), f.g.derivative(t)
		by, slope := c.eval(p.Y)
		return Point{p.X + by, p.Y}, Point{d.X + slope*d.Y, d.Y}
	}}
	switch g.kind {
	case Straight:
		curve.off = func(t0, t1 float64) float64 { return 0 }
	case Bezier:
		curve.off = func(t0, t1 float64) float64 {
			h := f.g.part(t0, t1)
			return c.missOnCubic(&h)
		}
	case Elliptic:
		curve.off = func(t0, t1 float64) float64 {
			h := f.g.part(t0, t1)
			return c.missOnArc(&h)
		}
	}
	return curve.follow(out, t0, t1, f.tolerance, 20)
}

// missOnCubic bounds the error of Hermite's cubic for a shifted cubic. The
// amount at the curve's heights is a polynomial of degree nine; what remains
// after Hermite's cubic is taken off lies within its Bernstein coefficients.
// Heights are met exactly.
func (c *cubicIn) missOnCubic(g *Segment) float64 {
	u := []float64{g.a.Y - c.from, g.b.Y - c.from, g.c.Y - c.from, g.d.Y - c.from}
	u2 := times(u, u)
	u3 := times(u2, u)
	one := []float64{1, 1, 1, 1}
	u1, u2 := times(times(u, one), one), times(u2, one)
	v0, m0 := c.eval(g.a.Y)
	v1, m1 := c.eval(g.d.Y)
	fit := times(times([]float64{v0, v0 + m0*(g.b.Y-g.a.Y), v1 - m1*(g.d.Y-g.c.Y), v1}, one), one)
	miss := 0.0
	for i := range fit {
		miss = max(miss, math.Abs(c.k[0]+c.k[1]*u1[i]+c.k[2]*u2[i]+c.k[3]*u3[i]-fit[i]))
	}
	return miss
}

// missOnArc bounds the error of Hermite's cubic for a shifted arc by the
// fourth derivative: for the amount σ of the height y it is, by the chain rule,
// σ'y⁗ + σ”(4y'y”' + 3y”²) + 6σ”'y'²y”. With the angle as parameter no
// derivative of y is greater than its amplitude.
func (c *cubicIn) missOnArc(g *Segment) float64 {
	box := g.box()
	u0, u1, k := box.Min.Y-c.from, box.Max.Y-c.from, &c.k
	second := max(math.Abs(2*k[2]+6*k[3]*u0), math.Abs(2*k[2]+6*k[3]*u1))
	slope := func(u float64) float64 { return math.Abs(k[1] + u*(2*k[2]+u*3*k[3])) }
	first := max(slope(u0), slope(u1))
	if k[3] != 0 {
		first = max(first, slope(clamp(-k[2]/(3*k[3]), u0, u1)))
	}
	w, h := math.Hypot(g.c.X, g.v.X), math.Hypot(g.c.Y, g.v.Y)
	x := w + h*(first+h*(7*second+h*36*math.Abs(k[3])))
	return hermiteError(g.turn, math.Hypot(x, h))
}
