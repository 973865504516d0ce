package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

func pt(x, y float64) Point { return Point{x, y} }

func quadratic(a, b, c Point) Segment { return Cubic(a, a.Lerp(b, 2.0/3), c.Lerp(b, 2.0/3), c) }

func fullEllipse(rx, ry float64) *Path {
	a, b := pt(rx, 0), pt(-rx, 0)
	return New(Arc(a, rx, ry, 0, false, true, b), Arc(b, rx, ry, 0, false, true, a))
}

func TestLengthClosedForms(t *testing.T) {
	const kappa = 0.5522847498
	tests := []struct {
		name   string
		source string
		path   *Path
		want   float64
		within float64
	}{
		{"quadratic quarter", "closed form 100(1+asinh(1)/√2)", New(quadratic(pt(0, 0), pt(100, 0), pt(100, 100))), 100 * (1 + math.Asinh(1)/math.Sqrt2), 1e-10},
		{"quadratic quarter, figure", "closed form, integrated by the Simpson rule", New(quadratic(pt(0, 0), pt(100, 0), pt(100, 100))), 162.322524, 1e-6},
		{"quadratic armhole", "closed form, integrated by the Simpson rule", New(quadratic(pt(0, 0), pt(0, 120), pt(90, 180))), 210.435449, 1e-6},
		{"quadratic bow", "closed form, integrated by the Simpson rule", New(quadratic(pt(0, 0), pt(50, 80), pt(100, 0))), 133.370540, 1e-6},
		{"cubic quarter circle", "closed form, integrated by the Simpson rule", New(Cubic(pt(100, 0), pt(100, 100*kappa), pt(100*kappa, 100), pt(0, 100))), 157.101670, 1e-6},
		{"cubic S", "closed form, integrated by the Simpson rule", New(Cubic(pt(0, 0), pt(100, 0), pt(0, 200), pt(100, 200))), 255.064499, 1e-6},
		{"cubic sleeve head", "closed form, integrated by the Simpson rule", New(Cubic(pt(0, 0), pt(0, 60), pt(40, 110), pt(120, 120))), 187.377584, 1e-6},
		{"straight cubic", "closed form", New(Cubic(pt(0, 0), pt(33, 0), pt(67, 0), pt(100, 0))), 100, 1e-11},
		{"circle quarter", "closed form 75π", New(Arc(pt(150, 0), 150, 150, 0, false, true, pt(0, 150))), 75 * math.Pi, 1e-11},
		{"circle quarter, offset", "closed form", New(Arc(pt(160, 0), 160, 160, 0, false, true, pt(0, 160))), 251.3274, 5e-5},
		{"ellipse 170 × 110", "closed form, integrated by the midpoint rule in 200,000 steps", fullEllipse(170, 110), 889.773238, 1e-6},
		{"ellipse 130 × 65", "closed form, integrated by the midpoint rule in 200,000 steps", fullEllipse(130, 65), 629.749134, 1e-6},
		{"ellipse 200 × 50", "closed form, integrated by the midpoint rule in 200,000 steps", fullEllipse(200, 50), 857.842178, 1e-6},
		{"semicubical cusp", "closed form: x=3s²,y=2s³ from −1 to 1", New(cuspidal()), 4 * (2*math.Sqrt2 - 1), 1e-10},
		{"stands still", "closed form: x = 100(3t − 6t² + 4t³) stands still at ½ but never turns back", New(Cubic(pt(0, 0), pt(100, 0), pt(0, 0), pt(100, 0))), 100, 1e-10},
		{"there and back", "closed form: x in powers of t, turns back twice", New(Cubic(pt(0, 0), pt(150, 0), pt(-50, 0), pt(100, 0))), thereAndBack(), 1e-10},
		{"no length", "closed form", Polyline(pt(3, 4), pt(3, 4)), 0, 0},
		{"dart leg 30 × 100", "closed form", Polyline(pt(0, 0), pt(15, 100)), math.Sqrt(15*15 + 100*100), 1e-12},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.InDelta(t, tt.want, tt.path.Length(), tt.within, tt.source)
			require.InDelta(t, tt.want, tt.path.Reverse().Length(), tt.within)
		})
	}
}

// cuspidal is x = 3s², y = 2s³ for s in [−1, 1]: with s = 2t−1 the power basis
// in t gives these control points. Its speed is 6|s|√(1+s²).
func cuspidal() Segment {
	return Cubic(pt(3, -2), pt(-1, 2), pt(-1, -2), pt(3, 2))
}

// thereAndBack is the length of x = 450t − 1050t² + 700t³ on [0, 1], which
// turns back at the roots of 450 − 2100t + 2100t².
func thereAndBack() float64 {
	x := func(t float64) float64 { return 450*t - 1050*t*t + 700*t*t*t }
	r := math.Sqrt(2100*2100 - 4*2100*450)
	t0, t1 := (2100-r)/4200, (2100+r)/4200
	return x(t0) + (x(t0) - x(t1)) + (x(1) - x(t1))
}

func TestGaussRule(t *testing.T) {
	// Independent library: gonum's Gauss–Legendre nodes.
	x, w := make([]float64, 16), make([]float64, 16)
	quad.Legendre{}.FixedLocations(x, w, -1, 1)
	for i := range 8 {
		require.InDelta(t, math.Abs(x[8+i]), gaussNodes[i], 1e-15)
		require.InDelta(t, w[8+i], gaussWeights[i], 1e-15)
	}
}

func TestLengthAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := genSegment(t, genPoint(t))
		p := New(g)
		want := 0.0 // many pieces of another order, so cusps do no harm
		for i := range 400 {
			a, b := float64(i)/400, float64(i+1)/400
			want += quad.Fixed(func(u float64) float64 { return g.derivative(u).Len() }, a, b, 21, quad.Legendre{}, 0)
		}
		require.InDelta(t, want, p.Length(), 2e-5+1e-9*want) // gonum is off by so much at a cusp
	})
}

func TestAtKeepsArcLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genPath(t, 4)
		l := p.Length()
		from, to := genNumber(t, 0, 1, "from")*l, genNumber(t, 0, 1, "to")*l
		part := p.Part(from, to)
		require.InDelta(t, math.Abs(to-from), part.Length(), 1e-8)
		require.Less(t, p.At(from).Dist(part.Start()), 1e-7)
		require.Less(t, p.At(to).Dist(part.End()), 1e-7)
		s := genNumber(t, 0, 1, "s")
		step := part.Length() * s
		if to < from {
			step = -step
		}
		require.Less(t, p.At(from+step).Dist(part.At(math.Abs(step))), 1e-6)
		require.InDelta(t, l, p.Reverse().Length(), 1e-9)
		require.Less(t, p.At(from).Dist(p.Reverse().At(l-from)), 1e-6)
		if l > 0 {
			require.InDelta(t, 1, p.Direction(from).Len(), 1e-12)
			require.InDelta(t, 1, p.DirectionBefore(from).Len(), 1e-12)
		}
		require.True(t, p.At(math.NaN()).finite() && p.At(math.Inf(1)).finite())
	})
}

func TestDirectionIsTheLimitOfChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// On half millimetres no bend is so tight that it hides within a chord.
		p := genPathOf(t, 0.5, 3)
		l := p.Length()
		if l < 1 {
			t.Skip("no length")
		}
		places := append([]float64{0, l}, p.Corners(5)...)
		for i := range p.segs {
			places = append(places, p.knot(int32(i)))
		}
		for _, s := range places {
			const h = 3e-8
			if s+h < l {
				require.Less(t, p.Direction(s+1e-9).Dist(p.At(s+h).Sub(p.At(s+1e-9)).Unit()), 0.1, "after %v", s)
			}
		}
	})
}

func TestDirectionAtVanishingDerivative(t *testing.T) {
	cusp := New(cuspidal())
	mid := cusp.Length() / 2
	tests := []struct {
		name   string
		p      *Path
		s      float64
		before Point
		after  Point
	}{
		{"start handle on the start", New(Cubic(pt(0, 0), pt(0, 0), pt(10, 10), pt(30, 10))), 0, pt(1, 1).Unit(), pt(1, 1).Unit()},
		{"end handle on the end", New(Cubic(pt(0, 0), pt(10, 0), pt(20, 10), pt(20, 10))), 1e9, pt(1, 1).Unit(), pt(1, 1).Unit()},
		{"both handles on the end", New(Cubic(pt(0, 0), pt(9, 0), pt(9, 0), pt(9, 0))), 9, pt(1, 0), pt(1, 0)},
		{"cusp", cusp, mid, pt(-1, 0), pt(1, 0)},
		{"corner", Polyline(pt(0, 0), pt(5, 0), pt(5, 5)), 5, pt(1, 0), pt(0, 1)},
		{"repeated point", Polyline(pt(0, 0), pt(5, 0), pt(5, 0), pt(5, 5)), 5, pt(1, 0), pt(0, 1)},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.Less(t, tt.p.DirectionBefore(tt.s).Dist(tt.before), 1e-4)
			require.Less(t, tt.p.Direction(tt.s).Dist(tt.after), 1e-4)
		})
	}
	require.Len(t, cusp.Corners(10), 1)
	require.InDelta(t, mid, cusp.Corners(10)[0], 1e-9)
	require.Equal(t, []float64{5}, Polyline(pt(0, 0), pt(5, 0), pt(5, 5)).Corners(89))
	require.Empty(t, Polyline(pt(0, 0), pt(5, 0), pt(5, 5)).Corners(91))
}

func TestGapsAreKept(t *testing.T) {
	p := Join(Polyline(pt(0, 0), pt(10, 0)), Polyline(pt(20, 0), pt(20, 10)))
	require.Equal(t, 20.0, p.Length())
	require.Equal(t, pt(20, 0), p.At(10))
	require.Equal(t, pt(9, 0), p.At(9))
}

func TestBoundsAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genPath(t, 3)
		seen := emptyBox()
		for _, q := range samples(p, 2000) {
			seen = seen.with(q)
		}
		b := p.Bounds()
		step := p.Length() / 2000
		for _, d := range []float64{seen.Min.X - b.Min.X, seen.Min.Y - b.Min.Y, b.Max.X - seen.Max.X, b.Max.Y - seen.Max.Y} {
			require.GreaterOrEqual(t, d, -1e-9)
			require.LessOrEqual(t, d, step)
		}
	})
}

func TestEmptyPath(t *testing.T) {
	for _, p := range []*Path{New(), Polyline(), Smooth(), Polyline(pt(1, 1)), Smooth(pt(2, 2), pt(2, 2))} {
		require.Zero(t, p.Length())
		require.Zero(t, p.Direction(0))
		require.Equal(t, p.Start(), p.At(3))
		p.Nearest(pt(1, 2))
		p.Crossings(0)
		require.Zero(t, p.Straightness())
		require.Equal(t, 0.0, p.Part(1, 0).Length())
		Deviation(p, Polyline(pt(0, 0), pt(1, 1)), 0.01)
		Fit(p, Polyline(pt(0, 0), pt(1, 1)), true)
		NewRegion([]*Path{p}).Spans(0)
		NewRegion([]*Path{p}).Outside(p, 0.01)
		NewRegion([]*Path{p}).Contains(pt(0, 0))
		SelfCrossings([]*Path{p, p})
	}
}
