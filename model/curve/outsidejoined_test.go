package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func anywhere(int, Foot) bool { return true }

func TestOutsideJoinedAgainstSamples(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var regions []*Region
		var outlines [][]*Path
		for range rapid.IntRange(1, 3).Draw(t, "regions") {
			edges := genOutline(t)
			outlines = append(outlines, edges)
			regions = append(regions, NewRegion(edges))
		}
		p := genPath(t, 2).Move(Lay(Point{}, pt(1, 0), genPoint(t).Scale(0.3), pt(1, 0), false))
		const n = 40
		ref := 0.0
		for _, q := range samples(p, n) {
			least := math.Inf(1)
			for _, edges := range outlines {
				inside, d := plainWinding(edges, q)
				if inside {
					d = 0
				}
				least = min(least, d)
			}
			ref = max(ref, least)
		}
		got := OutsideJoined(regions, p, 0.01, anywhere)
		require.LessOrEqual(t, got.High-got.Low, 0.01+1e-9)
		require.GreaterOrEqual(t, got.High, ref-0.02) // the reference is flattened: off by up to 0.02 mm
		require.LessOrEqual(t, got.Low, ref+p.Length()/(2*n)+0.02)
		if len(regions) == 1 {
			one := regions[0].Outside(p, 0.01)
			require.LessOrEqual(t, got.Low, one.High+1e-9)
			require.LessOrEqual(t, one.Low, got.High+1e-9)
		}
	})
}

// Two halves laid together are the whole; a gap between them counts by half.
func TestOutsideJoinedOfHalves(t *testing.T) {
	left, right := box(0, 0, 50, 80), box(50, 0, 100, 80)
	across := Polyline(pt(10, 40), pt(90, 40))
	for _, c := range []struct {
		name    string
		regions []*Region
		path    *Path
		want    float64
	}{
		{"across the seam", []*Region{left, right}, across, 0},
		{"along the seam", []*Region{left, right}, Polyline(pt(50, 0), pt(50, 80)), 0},
		{"a gap of 3", []*Region{left, box(53, 0, 100, 80)}, across, 1.5},
		{"an overlap of 3", []*Region{left, box(47, 0, 100, 80)}, across, 0},
		{"past the right end", []*Region{left, right}, Polyline(pt(40, 40), pt(107, 40)), 7},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := OutsideJoined(c.regions, c.path, 0.01, anywhere)
			require.InDelta(t, c.want, got.Low, 0.01+1e-9)
			require.InDelta(t, c.want, got.High, 0.01+1e-9)
		})
	}
}

// A tongue drawn over the top edge and beyond the right one.
func TestOutsideWhere(t *testing.T) {
	r := NewRegion([]*Path{Polyline(pt(0, 0), pt(100, 0)), Polyline(pt(100, 0), pt(100, 80)), Polyline(pt(100, 80), pt(0, 80)), Polyline(pt(0, 80), pt(0, 0))})
	for _, c := range []struct {
		name       string
		path       *Path
		counts     func(Foot) bool
		want, past float64
		over       int
	}{
		{"all of it counts", Polyline(pt(20, 20), pt(20, -9), pt(30, 20)), func(Foot) bool { return true }, 9, 0, -1},
		{"over the top, which does not", Polyline(pt(20, 20), pt(20, -9), pt(30, 20)), func(f Foot) bool { return f.Edge != 0 }, 0, 9, 0},
		{"over the side, which does", Polyline(pt(80, 20), pt(104, 30), pt(80, 40), pt(80, -6)), func(f Foot) bool { return f.Edge != 0 }, 4, 6, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, past := r.OutsideWhere(c.path, 0.01, c.counts)
			require.InDelta(t, c.want, got.Low, 0.01+1e-9)
			require.InDelta(t, c.want, got.High, 0.02+1e-9)
			require.InDelta(t, c.past, past.Distance, 0.01)
			require.Equal(t, c.over, past.Edge)
		})
	}
}

func box(x0, y0, x1, y1 float64) *Region {
	return NewRegion([]*Path{Polyline(pt(x0, y0), pt(x1, y0), pt(x1, y1), pt(x0, y1), pt(x0, y0))})
}

// The part that counts never stands out farther than all of it, and with what does
// not count it stands out as far.
func TestOutsideWhereIsPartOfOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := genOutline(t)
		r := NewRegion(edges)
		p := genPath(t, 2).Move(Lay(Point{}, pt(1, 0), genPoint(t).Scale(0.1), pt(1, 0), false))
		// Every place of the path is looked at 0.01 mm apart: keep it short.
		p = p.Part(0, min(p.Length(), 60))
		odd := rapid.IntRange(0, 1).Draw(t, "odd")
		whole := r.Outside(p, 0.01)
		part, past := r.OutsideWhere(p, 0.01, func(f Foot) bool { return f.Edge%2 == odd })
		require.LessOrEqual(t, part.Low, whole.High+1e-9)
		require.LessOrEqual(t, past.Distance, whole.High+1e-9)
		require.GreaterOrEqual(t, max(part.High, past.Distance)+0.02, whole.Low)
	})
}
