package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestNearestAgainstSamples(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genPath(t, 4)
		q := genPoint(t)
		if rapid.Bool().Draw(t, "on the path") {
			q = p.At(genNumber(t, 0, 1, "s") * p.Length())
		}
		s, d := p.Nearest(q)
		require.InDelta(t, d, p.At(s).Dist(q), 1e-7)
		ref := math.Inf(1)
		for _, r := range samples(p, 1500) {
			ref = min(ref, r.Dist(q))
		}
		require.LessOrEqual(t, d, ref+1e-9)
		require.GreaterOrEqual(t, d, ref-p.Length()/3000-1e-9)
	})
}

func TestNearestCases(t *testing.T) {
	outer := fullEllipse(170.05, 110.05).segs[0]
	circle := fullEllipse(50, 50)
	tests := []struct {
		name string
		p    *Path
		q    Point
		want float64 // closed form
	}{
		{"centre of a circle", circle, pt(0, 0), 50},
		{"centre of an ellipse", fullEllipse(170, 110), pt(0, 0), 110},
		{"focus of an ellipse", fullEllipse(50, 30), pt(40, 0), 10},
		{"straight above an ellipse", fullEllipse(170, 110), pt(0, -115), 5},
		{"straight below an ellipse", fullEllipse(170, 110), outer.at(0.5), 0.05},
		{"a little below an ellipse", fullEllipse(170.05, 110.05), pt(0, 110), 0.05},
		{"straight beside an ellipse", fullEllipse(170, 110), pt(171, 0), 1},
		{"beyond an end", Polyline(pt(0, 0), pt(10, 0)), pt(13, 4), 5},
		{"focus of a parabola", New(quadratic(pt(-100, 100), pt(0, -100), pt(100, 100))), pt(0, 25), 25},
		{"almost a circle", fullEllipse(100, 100.0000001), pt(0, 0), 100},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, d := tt.p.Nearest(tt.q)
			require.InDelta(t, tt.want, d, 1e-9)
		})
	}
}

func TestStraightness(t *testing.T) {
	tests := []struct {
		name string
		p    *Path
		want float64 // closed form
	}{
		{"line", Polyline(pt(0, 0), pt(30, 40)), 0},
		{"bow", New(quadratic(pt(0, 0), pt(50, 80), pt(100, 0))), 40},
		{"quarter circle", New(Arc(pt(100, 0), 100, 100, 0, false, true, pt(0, 100))), 100 - 100/math.Sqrt2},
		{"corner", Polyline(pt(0, 0), pt(50, 3), pt(100, 0)), 3},
		{"past its end and back", Polyline(pt(0, 0), pt(105, 0), pt(100, 0)), 5},
		{"straight cubic, uneven", New(Cubic(pt(0, 0), pt(10, 0), pt(20, 0), pt(100, 0))), 0},
		{"closed", fullEllipse(50, 50), 100},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := tt.p.Straightness()
			require.GreaterOrEqual(t, got, tt.want-1e-9)
			require.LessOrEqual(t, got, tt.want+1e-6)
		})
	}
	rapid.Check(t, func(t *rapid.T) {
		p := genPath(t, 3)
		ref := 0.0
		for _, q := range samples(p, 1000) {
			ref = max(ref, toChord(q, p.Start(), p.End()))
		}
		got := p.Straightness()
		require.GreaterOrEqual(t, got, ref-1e-8)
		require.LessOrEqual(t, got, ref+p.Length()/2000+1e-6)
	})
}
