package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// plainDeviation is the reference: dense samples, which can only fall short.
func plainDeviation(a, b *Path, n int) float64 {
	worst := 0.0
	for i := range n + 1 {
		x := float64(i) / float64(n)
		worst = max(worst, a.At(x*a.Length()).Dist(b.At(x*b.Length())))
	}
	return worst
}

func checkDeviation(t *rapid.T, a, b *Path) {
	const n = 1500
	ref := plainDeviation(a, b, n)
	got := Deviation(a, b, 0.01)
	require.False(t, math.IsNaN(got.Low+got.High+got.At))
	require.LessOrEqual(t, got.High-got.Low, 0.01+1e-12)
	require.GreaterOrEqual(t, got.High, ref-1e-7, "High below a distance that was met")
	require.LessOrEqual(t, got.Low, ref+(a.Length()+b.Length())/(2*n)+1e-9, "Low above what can be")
	at := 0.0
	if a.Length() > 0 {
		at = got.At / a.Length()
	}
	if a.Length() > 0 { // else At cannot say where on b
		require.InDelta(t, got.Low, a.At(got.At).Dist(b.At(at*b.Length())), 1e-6, "Low was not met there")
	}
}

func TestDeviationAgainstSamples(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		checkDeviation(t, genPath(t, 4), genPath(t, 4))
	})
}

func TestDeviationOfLikePaths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := genPath(t, 3)
		l := a.Length()
		cut := genNumber(t, 0, l, "cut")
		split := Join(a.Part(0, cut), a.Part(cut, l))
		require.Less(t, Deviation(a, split, 1e-4).Low, 1e-6)
		m := genMotion(t)
		checkDeviation(t, a, split.Move(m))
		require.Less(t, Deviation(a, a.Move(m).Move(m.Inverse()), 1e-6).High, 1e-6)
		checkDeviation(t, a, a.Reverse())
	})
}

func TestDeviationCases(t *testing.T) {
	quarter := New(Arc(pt(100, 0), 100, 100, 0, false, true, pt(0, 100)))
	tests := []struct {
		name string
		a, b *Path
		want float64 // closed form
	}{
		{"shifted", quarter, quarter.Move(Translate(pt(3, 4))), 5},
		{"arc and chord", quarter, Polyline(pt(100, 0), pt(0, 100)), 100 - 100/math.Sqrt2},
		{"reversed", Polyline(pt(0, 0), pt(10, 0)), Polyline(pt(10, 0), pt(0, 0)), 10},
		{"stretched", Polyline(pt(0, 0), pt(10, 0)), Polyline(pt(0, 0), pt(13, 0)), 3},
		{"jump", Join(Polyline(pt(0, 0), pt(5, 0)), Polyline(pt(5, 7), pt(10, 7))), Polyline(pt(0, 0), pt(10, 0)), 7},
		{"point", Polyline(pt(0, 0), pt(0, 0)), Polyline(pt(0, 3), pt(0, 4)), 4},
		{"two points", Polyline(pt(0, 0)), Polyline(pt(0, 3)), 3},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := Deviation(tt.a, tt.b, 1e-4)
			require.InDelta(t, tt.want, got.High, 1e-4)
			require.LessOrEqual(t, got.Low, tt.want+1e-9)
			require.GreaterOrEqual(t, got.High, tt.want-1e-9)
		})
	}
}

func TestEnclosureHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genPath(t, 2)
		a, d := p.Start(), p.End()
		e := enclosure(p.Length(), a.Dist(d), 1e-12*p.Length())
		for i, q := range samples(p, 200) {
			require.LessOrEqual(t, q.Dist(a.Lerp(d, float64(i)/200)), e+1e-7)
		}
	})
}

func TestDeviationAllocatesNothing(t *testing.T) {
	a, b := benchEdges()
	require.Zero(t, testing.AllocsPerRun(20, func() { Deviation(a, b, 0.01) }))
	require.Zero(t, testing.AllocsPerRun(20, func() { a.At(123) }))
	require.Zero(t, testing.AllocsPerRun(20, func() { a.Nearest(pt(50, 50)) }))
}
