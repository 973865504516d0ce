package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestSidewaysOfNothing(t *testing.T) {
	p := New(Cubic(pt(0, 0), pt(30, 10), pt(70, 40), pt(90, 90)))
	r := newRamp(t, []float64{10, 50}, []float64{4, 9})
	above := newRamp(t, []float64{-20, -10}, []float64{7, 0})
	for name, s := range map[string]Shift{
		"no ramp": nil, "no times": {{r, 0}}, "taken back": {{r, 1}, {r, -1}}, "over before the path begins": {{above, 1}},
	} {
		m := p.CarrySideways(s, 1e-3)
		require.Same(t, p, m.Path, name)
		require.Equal(t, 12.0, m.At(12), name)
	}
}

func TestSidewaysKeepsKinds(t *testing.T) {
	p := New(Line(pt(0, 0), pt(10, 100)), Arc(pt(10, 100), 40, 40, 0, false, true, pt(90, 100)),
		Cubic(pt(90, 100), pt(95, 150), pt(70, 160), pt(60, 300)))
	q := p.Sideways(Shift{{newRamp(t, []float64{0}, []float64{7.5}), 1}}, 1e-3)
	require.Equal(t, []Segment{p.segs[0].move(Translate(pt(7.5, 0))), p.segs[1].move(Translate(pt(7.5, 0))), p.segs[2].move(Translate(pt(7.5, 0)))}, q.segs)
	require.InDelta(t, p.Length(), q.Length(), 1e-9)

	// Constant below 120: the line and the arc keep their kind, a level line
	// keeps it anywhere.
	r := Shift{{newRamp(t, []float64{120, 200}, []float64{3, 11}), 1}}
	q = p.Sideways(r, 1e-3)
	require.Equal(t, Straight, q.segs[0].kind)
	require.Equal(t, Elliptic, q.segs[1].kind)
	level := Polyline(pt(0, 160), pt(50, 160)).Sideways(r, 1e-3)
	require.Equal(t, Straight, level.segs[0].kind)
	require.InDelta(t, 3+4, level.Start().X, 1e-12, "halfway up the ramp")
}

// A line from (0, 0) to (0, 100) under 10(3x² − 2x³), x = y/100, is the cubic
// with control points (0, 0), (0, 100/3), (10, 200/3), (10, 100): closed form.
func TestSidewaysLineIsACubic(t *testing.T) {
	s := Shift{{newRamp(t, []float64{0, 100}, []float64{0, 10}), 1}}
	q := Polyline(pt(0, -50), pt(0, 150)).Sideways(s, 1e-3)
	require.Len(t, q.segs, 3)
	want := [4]Point{pt(0, 0), pt(0, 100.0/3), pt(10, 200.0/3), pt(10, 100)}
	for i, got := range [4]Point{q.segs[1].a, q.segs[1].b, q.segs[1].c, q.segs[1].d} {
		require.InDelta(t, 0, want[i].Dist(got), 1e-12)
	}
	require.Equal(t, Straight, q.segs[0].kind)
	require.Equal(t, Straight, q.segs[2].kind)
}

func genShift(t *rapid.T) Shift {
	var s Shift
	for range rapid.IntRange(1, 3).Draw(t, "ramps") {
		s = append(s, Term{genRamp(t), float64(rapid.IntRange(-2, 2).Draw(t, "factor")) / 2})
	}
	return s
}

// Every point of the moved path lies within the tolerance of where it belongs,
// at equal parameter, and Carried finds it again.
func TestSidewaysWithinTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, s := genPath(t, 3), genShift(t)
		tolerance := []float64{1e-1, 1e-3, 1e-5}[rapid.IntRange(0, 2).Draw(t, "tolerance")]
		m := p.CarrySideways(s, tolerance)
		l := p.Length()
		for k := 0.0; k <= 40; k++ {
			from := p.At(l * k / 40)
			want := pt(from.X+s.At(from.Y), from.Y)
			got := m.Path.At(m.At(l * k / 40))
			require.LessOrEqual(t, want.Dist(got), tolerance+1e-7*(1+l*1e-3), "at %v of %v", k, l)
		}
		last := 0.0
		for k := 0.0; k <= 40; k++ {
			now := m.At(l * k / 40)
			require.GreaterOrEqual(t, now, last-1e-9)
			last = now
		}
		require.InDelta(t, m.Path.Length(), last, 1e-9*(1+last))
		for i := 1; i < len(m.Path.segs); i++ {
			require.LessOrEqual(t, m.Path.segs[i-1].d.Dist(m.Path.segs[i].a), 1e-9)
		}
	})
}

// The bounds are bounds: of the worst of many samples, and not far above it.
func TestSidewaysBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := cubicIn{from: genNumber(t, -50, 50, "from")}
		for i, size := range []float64{20, 0.5, 1e-2, 1e-4} {
			c.k[i] = genNumber(t, -size, size, "k")
		}
		g := genSegment(t, genPoint(t))
		g = g.part(0, genNumber(t, 0.05, 1, "share"))
		var bound float64
		switch g.kind {
		case Straight:
			return
		case Bezier:
			bound = c.missOnCubic(&g)
		case Elliptic:
			bound = c.missOnArc(&g)
		}
		curve := trace{at: func(t float64, _ bool) (Point, Point) {
			p, d := g.at(t), g.derivative(t)
			by, slope := c.eval(p.Y)
			return pt(p.X+by, p.Y), pt(d.X+slope*d.Y, d.Y)
		}, off: func(_, _ float64) float64 { return bound }}
		fit := curve.follow(nil, 0, 1, math.Inf(1), 0)[0].seg
		for k := 0.0; k <= 200; k++ {
			want, _ := curve.at(k/200, false)
			require.LessOrEqual(t, want.Dist(fit.at(k/200)), bound+1e-9*(1+bound))
		}
	})
}

func TestSidewaysByAConstantMovesEveryPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genPath(t, 4)
		by := genNumber(t, -50, 50, "by")
		q := p.Sideways(Shift{{newRamp(t, []float64{3}, []float64{by}), 1}}, 1e-3)
		for k := 0.0; k <= 20; k++ {
			s := p.Length() * k / 20
			require.InDelta(t, 0, q.At(s).Dist(p.At(s).Add(pt(by, 0))), 1e-6)
		}
		require.InDelta(t, p.Length(), q.Length(), 1e-8*(1+p.Length()))
	})
}

// A notch is carried at its height, and its arc length is what is left of the
// moved line above it.
func TestCarriedNotch(t *testing.T) {
	p := Polyline(pt(0, 0), pt(0, 200))
	m := p.CarrySideways(Shift{{newRamp(t, []float64{0, 100}, []float64{0, 30}), 1}}, 1e-3)
	// Length of x = 30(3u² − 2u³), y = 100u up to u = ½, by the trapezium rule.
	sum, n := 0.0, 200000.0
	for i := 0.0; i < n; i++ {
		u := (i + 0.5) / n / 2
		sum += math.Hypot(30*(6*u-6*u*u), 100) / n / 2
	}
	require.InDelta(t, sum, m.At(50), 1e-7)
	require.InDelta(t, m.Path.Length()-50, m.At(150), 1e-9)
	require.InDelta(t, 0, m.Path.At(m.At(50)).Dist(pt(15, 50)), 1e-9)
}

func BenchmarkSideways(b *testing.B) {
	p, _ := benchEdges()
	r, err := NewRamp([]float64{60, 200, 400}, []float64{8, 14, 6})
	if err != nil {
		b.Fatal(err)
	}
	s := Shift{{r, 1}}
	for b.Loop() {
		p.Sideways(s, 1e-3)
	}
	b.ReportMetric(float64(len(p.Sideways(s, 1e-3).segs)), "segments")
}
