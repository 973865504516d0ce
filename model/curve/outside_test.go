package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// plainOutside is the reference: the signed distance of dense samples.
func plainOutside(edges []*Path, p *Path, n int) float64 {
	worst := math.Inf(-1)
	for _, q := range samples(p, n) {
		inside, d := plainWinding(edges, q)
		if inside {
			d = -d
		}
		worst = max(worst, d)
	}
	return worst
}

func TestOutsideAgainstSamples(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := genOutline(t)
		p := genPath(t, 3).Move(Lay(Point{}, pt(1, 0), genPoint(t).Scale(0.3), pt(1, 0), false))
		const n = 40
		ref := plainOutside(edges, p, n) // flattened: off by up to 0.02 mm
		r := NewRegion(edges)
		got := r.Outside(p, 0.01)
		require.False(t, math.IsNaN(got.Low+got.High+got.At))
		require.LessOrEqual(t, got.High-got.Low, 0.01+1e-9)
		require.GreaterOrEqual(t, got.High, max(0, ref)-0.02)
		require.LessOrEqual(t, got.Low, max(0, ref+p.Length()/(2*n))+0.02)
		if got.Low > 1e-9 { // less is rounding, on the outline itself
			require.InDelta(t, got.Low, r.nearest(p.At(got.At)).distance, 1e-6)
			require.False(t, r.Contains(p.At(got.At)))
		}
		room := r.Room(p, 0.01)
		require.LessOrEqual(t, room.High-room.Low, 0.01+1e-9)
		require.LessOrEqual(t, room.Low, -ref+0.02)
		require.GreaterOrEqual(t, room.High, -ref-p.Length()/(2*n)-0.02)
	})
}

func TestOutsideOfSharedEdges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := genOutline(t)
		r := NewRegion(edges)
		p := Join(edges...)
		l := p.Length()
		from, to := genNumber(t, 0, l, "from"), genNumber(t, 0, l, "to")
		m := genMotion(t)
		for _, inner := range []*Path{p.Part(from, to), p.Part(from, to).Move(m).Move(m.Inverse())} {
			got := r.Outside(inner, 0.01)
			require.Less(t, got.Low, 1e-9)
			require.LessOrEqual(t, got.High, 0.01+1e-9)
			room := r.Room(inner, 0.01)
			require.InDelta(t, 0, room.Low, 0.0101)
			require.InDelta(t, 0, room.High, 0.0101)
		}
	})
}

func TestOutsideCases(t *testing.T) {
	box := NewRegion(rectangle(0, 0, 100, 60))
	disc := NewRegion([]*Path{fullEllipse(50, 50)})
	circle := func(r float64) *Path { return fullEllipse(r, r) }
	tests := []struct {
		name    string
		r       *Region
		p       *Path
		outside float64 // closed forms
		room    float64
	}{
		{"parallel inside", box, Polyline(pt(10, 5), pt(90, 5)), 0, 5},
		{"along the edge", box, Polyline(pt(0, 0), pt(100, 0), pt(100, 60)), 0, 0},
		{"half out", box, Polyline(pt(10, 30), pt(10, -7)), 7, -7},
		{"past a corner", box, Polyline(pt(50, 30), pt(103, 64)), 5, -5},
		{"bulge between ends inside", box, New(quadratic(pt(10, 10), pt(50, -30), pt(90, 10))), 10, -10},
		{"slight bulge between ends inside", box, New(quadratic(pt(10, 0.5), pt(50, -1.5), pt(90, 0.5))), 0.5, -0.5},
		{"wholly outside", box, Polyline(pt(10, -3), pt(90, -3)), 3, -3},
		{"concentric inside", disc, circle(49.5), 0, 0.5},
		{"concentric outside", disc, circle(52), 2, -2},
		{"the same circle", disc, circle(50), 0, 0},
		{"a point", box, Polyline(pt(50, 20)), 0, 20},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := tt.r.Outside(tt.p, 0.01)
			require.LessOrEqual(t, got.Low, tt.outside+1e-9)
			require.GreaterOrEqual(t, got.High, tt.outside-1e-9)
			require.LessOrEqual(t, got.High-got.Low, 0.01+1e-9)
			room := tt.r.Room(tt.p, 0.01)
			require.LessOrEqual(t, room.Low, tt.room+1e-9)
			require.GreaterOrEqual(t, room.High, tt.room-1e-9)
			require.LessOrEqual(t, room.High-room.Low, 0.01+1e-9)
		})
	}
}
