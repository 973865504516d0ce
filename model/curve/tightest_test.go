package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestTightestInside(t *testing.T) {
	// y = x²/100 from −50 to 50: radius 50 at the tip (closed form 1/y”), its
	// centre at larger y, which is to the right of a run with rising x.
	parabola := quadratic(pt(-50, 25), pt(0, -25), pt(50, 25))
	ellipse := Arc(pt(-60, 0), 60, 30, 0, false, true, pt(60, 0)) // over the top, clockwise
	round := Arc(pt(-60, 0), 60, 60, 0, false, true, pt(60, 0))
	tests := []struct {
		name      string
		path      *Path
		d         float64
		s, radius float64
	}{
		{"line", Polyline(pt(0, 0), pt(9, 9)), 10, 0, math.Inf(1)},
		{"parabola, inside", New(parabola), 10, New(parabola).Length() / 2, 50},
		{"parabola, outside", New(parabola), -10, 0, math.Inf(1)},
		{"half circle, inside", New(round), 10, 0, 60},
		{"half circle, outside", New(round), -10, 0, math.Inf(1)},
		{"half ellipse, b²/a at the ends of the long axis", New(ellipse), 10, 0, 15},
		{"nothing to turn", New(ellipse), 0, 0, math.Inf(1)},
		{"second of two", New(Line(pt(-60, 50), pt(-60, 0)), round), 5, 50, 60},
		{"cusp", New(cuspidal()), 1, New(cuspidal()).Length() / 2, 0},
		{"S, first half to the right", New(Cubic(pt(0, 0), pt(0, -50), pt(100, 50), pt(100, 0))), 10, -1, -1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s, radius := tt.path.TightestInside(tt.d)
			if tt.s < 0 { // no closed form: against dense samples
				tt.s, tt.radius = s, tightestSampled(tt.path, tt.d)
			}
			if math.IsInf(tt.radius, 1) {
				require.Equal(t, tt.radius, radius)
				return
			}
			require.InDelta(t, tt.radius, radius, 1e-6*(1+tt.radius))
			require.InDelta(t, tt.s, s, 1e-4)
		})
	}
}

func tightestSampled(p *Path, d float64) float64 {
	least := math.Inf(1)
	for i := range p.segs {
		for k := 0.0; k <= 20000; k++ {
			least = min(least, p.segs[i].radius(k/20000, math.Copysign(1, d)))
		}
	}
	return least
}

func TestTightestInsideIsTheLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := genSmooth(t)
		p := New(g)
		_, radius := p.TightestInside(1)
		sampled := tightestSampled(p, 1)
		if sampled < 1e6 { // straighter ones count as straight
			require.LessOrEqual(t, radius, sampled*(1+1e-9))
			require.InDelta(t, sampled, radius, 1e-3*(1+sampled))
		}
	})
}

func BenchmarkTightestInside(b *testing.B) {
	p, _ := benchEdges()
	for b.Loop() {
		p.TightestInside(10)
	}
}
