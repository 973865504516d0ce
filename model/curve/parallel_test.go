package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestParallelClosedForms(t *testing.T) {
	arc := func(r float64, sweep bool) *Path { // half a circle, clockwise on paper with sweep
		return New(Arc(pt(-r, 0), r, r, 0, false, sweep, pt(r, 0)))
	}
	l := Polyline(pt(0, 0), pt(100, 0), pt(100, 80)) // turns right
	thirds := Polyline(pt(100, 0), pt(0, 0), pt(100*math.Cos(math.Pi/3), 100*math.Sin(math.Pi/3)))
	tests := []struct {
		name string
		path *Path
		d    float64
		want float64
	}{
		{"line", Polyline(pt(3, 4), pt(30, 40)), 7, 45},
		{"half circle, inside", arc(50, true), 10, 40 * math.Pi},
		{"half circle, outside", arc(50, true), -10, 60 * math.Pi},
		{"half circle run the other way, inside", arc(50, false), -10, 40 * math.Pi},
		{"half circle run the other way, outside", arc(50, false), 10, 60 * math.Pi},
		{"half circle, past its centre", arc(50, true), 80, 30 * math.Pi},
		{"corner, inside", l, 10, 90 + 70},
		{"corner, outside", l, -10, 110 + 90},
		{"corner of 60 degrees, inside", thirds, -10, 2 * (100 - 10*math.Sqrt(3))},
		{"corner of 60 degrees, outside", thirds, 10, 2 * (100 + 10*math.Sqrt(3))},
		// Half the turn is 90°: both lines run on by 4d, the tip is 2d wide.
		{"there and back, right", Polyline(pt(0, 0), pt(50, 0), pt(0, 0)), 5, 2*(50+20) + 10},
		{"there and back, left", Polyline(pt(0, 0), pt(50, 0), pt(0, 0)), -5, 2*(50+20) + 10},
		{"semicircle with straight ends, outside", New(Line(pt(-50, 60), pt(-50, 0)), Arc(pt(-50, 0), 50, 50, 0, false, true, pt(50, 0)), Line(pt(50, 0), pt(50, 60))), -10, 120 + 60*math.Pi},
		{"line along a line", Polyline(pt(0, 0), pt(50, 0), pt(80, 0)), 5, 80},
		{"straight cubic", New(Cubic(pt(0, 0), pt(70, 0), pt(80, 0), pt(100, 0))), 5, 100},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			q := tt.path.Parallel(tt.d, 1e-3)
			require.InDelta(t, tt.want, q.Length(), 1e-9, "closed form")
			for i := 1; i < len(q.segs); i++ {
				require.Equal(t, q.segs[i-1].d, q.segs[i].a, "no gap")
			}
		})
	}
	require.Same(t, l, l.Parallel(0, 1e-3))
	require.Equal(t, Elliptic, arc(50, true).Parallel(10, 1e-3).segs[0].kind, "arcs stay arcs")
}

// An allowance of 10 mm round a half circle changes its length by exactly 10π,
// whatever the radius (closed form).
func TestParallelOfAHalfCircle(t *testing.T) {
	for _, r := range []float64{20, 700 / math.Pi, 1234.5} {
		p := New(Arc(pt(0, 0), r, r, 0, false, true, pt(2*r, 0)))
		require.InDelta(t, 10*math.Pi, p.Parallel(-10, 1e-3).Length()-p.Length(), 1e-9)
		require.InDelta(t, 10*math.Pi, p.Length()-p.Parallel(10, 1e-3).Length(), 1e-9)
	}
}

// A convex closed polygon run clockwise: the parallel inside at distance d is
// shorter by 2d·Σtan(half the turn), outside longer by as much. The outline
// starts in the middle of a side, so that all corners are inside the path.
func TestParallelOfAPolygon(t *testing.T) {
	for n := 3; n <= 12; n++ {
		var pts []Point
		for i := range n {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			pts = append(pts, pt(100*cos, 100*sin))
		}
		mid := pts[0].Lerp(pts[n-1], 0.5)
		p := Polyline(append(append([]Point{mid}, pts...), mid)...)
		change := 2 * 10 * float64(n) * math.Tan(math.Pi/float64(n))
		require.InDelta(t, p.Length()-change, p.Parallel(10, 1e-3).Length(), 1e-9)
		require.InDelta(t, p.Length()+change, p.Parallel(-10, 1e-3).Length(), 1e-9)
	}
}

// A corner between a line and an arc: the parallels cross inside at
// x² + 35² = 90² and y = −35, closed form.
func TestParallelTrimsAtACurvedCorner(t *testing.T) {
	h := math.Sqrt(100*100 - 45*45)
	p := New(Arc(pt(-100, 0), 100, 100, 0, false, true, pt(h, -45)), Line(pt(h, -45), pt(-h, -45)))
	// The arc runs over the top to the right end of a chord at y = −45, then back
	// along it: a right turn, the cap above the chord.
	q := p.Parallel(10, 1e-3)
	x := math.Sqrt(90*90 - 55*55)
	require.Len(t, q.segs, 2)
	require.InDelta(t, 0, q.segs[0].d.Dist(pt(x, -55)), 1e-9)
	require.InDelta(t, x+h, q.segs[1].a.Dist(q.segs[1].d), 1e-9)
	require.InDelta(t, 90*(math.Pi-math.Asin(55.0/90)), q.segs[0].length(), 1e-9)
}

func (g *Segment) length() float64 { return New(*g).Length() }

func TestParallelMitreLimit(t *testing.T) {
	// A turn of 170°: the mitre would reach 1/cos 85° = 11.5 d from the corner.
	sin, cos := math.Sincos(170 * math.Pi / 180)
	p := Polyline(pt(-100, 0), pt(0, 0), pt(100*cos, 100*sin))
	q := p.Parallel(-10, 1e-3)
	require.Len(t, q.segs, 3)
	far := 0.0
	bisector := pt(1, 0).Sub(pt(cos, sin)).Unit()
	for _, g := range q.segs[:2] {
		far = max(far, g.d.Dot(bisector))
		require.InDelta(t, 40, g.d.Dot(bisector), 1e-9, "cut square at 4 d")
	}
	require.InDelta(t, 0, q.segs[1].d.Sub(q.segs[1].a).Dot(bisector), 1e-9)
}

// A parallel to an inner corner whose lines are too short, and to curves that
// bend too tightly, stays one unbroken line.
func TestParallelIsUnbroken(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genPath(t, 4)
		d := genNumber(t, -40, 40, "d")
		q := p.Parallel(d, 1e-3)
		require.NotEmpty(t, q.segs)
		for i := range q.segs {
			require.True(t, q.segs[i].a.finite() && q.segs[i].b.finite() && q.segs[i].c.finite() && q.segs[i].d.finite())
			if i > 0 {
				require.LessOrEqual(t, q.segs[i-1].d.Dist(q.segs[i].a), 1e-8)
			}
		}
		require.Less(t, len(q.segs), 5000)
	})
}

// genSmooth draws one segment that bends gently, as drawn edges do.
func genSmooth(t *rapid.T) Segment {
	r := rapid.Float64Range(-1, 1)
	to := pt(genNumber(t, 60, 300, "x"), r.Draw(t, "y")*150)
	l := to.Len()
	bow := func(name string) Point { return to.Perp().Scale(r.Draw(t, name) * 0.35) }
	switch rapid.IntRange(0, 2).Draw(t, "kind") {
	case 0:
		return Cubic(pt(0, 0), to.Scale(0.3).Add(bow("b")), to.Scale(0.7).Add(bow("c")), to)
	case 1:
		return Arc(pt(0, 0), l, l*(1+r.Draw(t, "ry")*0.4), r.Draw(t, "turn")*90, false, rapid.Bool().Draw(t, "sweep"), to)
	}
	k := l * (0.51 + 0.5*math.Abs(r.Draw(t, "radius")))
	return Arc(pt(0, 0), k, k, 0, rapid.Bool().Draw(t, "large"), rapid.Bool().Draw(t, "sweep"), to)
}

// Points of the parallel lie at distance d from the path, to the tolerance,
// where the radius of curvature allows it. Beyond the ends of a short curve
// that bends back, other parts of it may lie nearer.
func TestParallelDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := genSmooth(t)
		p := New(g)
		d := genNumber(t, -30, 30, "d")
		tolerance := []float64{1e-2, 1e-3, 1e-5}[rapid.IntRange(0, 2).Draw(t, "tolerance")]
		q := p.Parallel(d, tolerance)
		_, radius := p.TightestInside(d)
		if radius <= math.Abs(d)*1.001 || d == 0 {
			return
		}
		for _, at := range samples(q, 60) {
			s, distance := p.Nearest(at)
			require.LessOrEqual(t, distance, math.Abs(d)+tolerance+1e-9)
			if s > 0 && s < p.Length() {
				side := p.Direction(s).Cross(at.Sub(p.At(s)))
				if distance > tolerance && side*d > 0 && noNearer(p, at, s) {
					require.InDelta(t, math.Abs(d), distance, tolerance+1e-9)
				}
			}
		}
		require.InDelta(t, 0, q.Start().Dist(p.Start().Add(p.Direction(0).Perp().Scale(d))), 1e-12)
		require.InDelta(t, 0, q.End().Dist(p.End().Add(p.Direction(p.Length()).Perp().Scale(d))), 1e-9)
		// The length of a parallel is that of the path less d times the turn
		// (Steiner), where its curvature allows it.
		turn := totalTurn(&g)
		require.InDelta(t, p.Length()-d*turn, q.Length(), 0.02+40*tolerance)
	})
}

// noNearer tells whether the foot at s is the only one of the point on p.
func noNearer(p *Path, at Point, s float64) bool {
	foot := p.At(s).Dist(at)
	for _, end := range []Point{p.Start(), p.End()} {
		if end.Dist(at) < foot+1 {
			return false
		}
	}
	n := 0
	last := math.Inf(1)
	falling := false
	for _, q := range samples(p, 400) {
		now := q.Dist(at)
		if now > last && falling {
			n++
		}
		falling = now < last
		last = now
	}
	return n == 1
}

// totalTurn sums the angles between tangents, densely.
func totalTurn(g *Segment) float64 {
	sum := 0.0
	last := g.tangent(0, false)
	for k := 1.0; k <= 2000; k++ {
		now := g.tangent(k/2000, true)
		sum += math.Atan2(last.Cross(now), last.Dot(now))
		last = now
	}
	return sum
}

// The bound of the parallel's error is a bound, met with by many samples.
func TestParallelBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := genSegment(t, genPoint(t))
		if g.kind == Straight || len(g.cusps()) > 0 || g.kind == Elliptic && g.round() {
			return
		}
		from := genNumber(t, 0, 0.9, "from")
		to := from + (1-from)*genNumber(t, 0.01, 1, "share")
		c := parallelTrace(&g, 25)
		bound := c.off(from, to)
		if math.IsInf(bound, 1) {
			return
		}
		fit := c.follow(nil, from, to, math.Inf(1), 0)[0].seg
		for k := 1.0; k < 100; k++ {
			want, _ := c.at(from+(to-from)*k/100, false)
			require.LessOrEqual(t, want.Dist(fit.at(k/100)), bound*(1+1e-6)+1e-6)
		}
	})
}

// There and back again: free curves to 0.05 mm, lines and arcs to 0.01 mm.
func TestParallelThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := genSmooth(t)
		p := New(g)
		d := genNumber(t, -30, 30, "d")
		if _, radius := p.TightestInside(d); radius <= math.Abs(d)*1.05 {
			return
		}
		back := p.Parallel(d, 1e-3).Parallel(-d, 1e-3)
		within := 0.05
		if g.kind == Elliptic && g.round() {
			within = 1e-9
		}
		require.InDelta(t, p.Length(), back.Length(), within)
		require.LessOrEqual(t, Deviation(p, back, 1e-3).High, 0.05)
	})
}

func BenchmarkParallel(b *testing.B) {
	p, _ := benchEdges()
	for b.Loop() {
		p.Parallel(10, 1e-3)
	}
	b.ReportMetric(float64(len(p.Parallel(10, 1e-3).segs)), "segments")
}

func BenchmarkParallelPolyline(b *testing.B) {
	p, _ := benchEdges()
	q := Polyline(samples(p, 200)...)
	for b.Loop() {
		q.Parallel(10, 1e-3)
	}
}
