package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// recordedRegions are figures recorded by testdata/independent/regions.py from
// shapely 1.8.5 (licence BSD-3-Clause) over GEOS 3.11.1 (licence
// LGPL-2.1-or-later): four drawn pieces and 200 random outlines, and outlines
// at a distance from them.
type recordedRegions struct {
	Regions []struct {
		Name            string
		Edges           []string
		Area, Perimeter float64
		Clockwise       bool
		Inside, Without [][2]float64
		Paths           []struct {
			Path    string
			Outside float64
		}
	}
	Offsets []struct {
		Name    string
		Edges   []string
		D, Area float64
		Points  [][2]float64
	}
}

func parseEdges(t *testing.T, data ...string) []*Path {
	t.Helper()
	edges := make([]*Path, len(data))
	for i, d := range data {
		var err error
		edges[i], err = ParsePath(d, 1)
		require.NoError(t, err)
	}
	return edges
}

// TestRegionsAgainstAnotherLibrary: GEOS knows only straight lines. Of 6000
// chords a curve its areas were off by up to 2e-8 of the area, its perimeters
// by 4e-6 mm; of 1200 chords a curve, sampled, its distances fell short by up to
// 0.0011 mm.
func TestRegionsAgainstAnotherLibrary(t *testing.T) {
	var recorded recordedRegions
	readRecorded(t, "regions.json", &recorded)
	require.Len(t, recorded.Regions, 204)
	probes, standOut := 0, 0
	for _, c := range recorded.Regions {
		t.Run(c.Name, func(t *testing.T) {
			r := NewRegion(parseEdges(t, c.Edges...))
			require.InEpsilon(t, c.Area, r.Area(), 3e-8)
			require.InDelta(t, c.Perimeter, r.Perimeter(), 1e-5)
			require.Equal(t, c.Clockwise, r.Clockwise())
			for _, q := range c.Inside {
				require.True(t, r.Contains(Point{q[0], q[1]}), "%v", q)
			}
			for _, q := range c.Without {
				require.False(t, r.Contains(Point{q[0], q[1]}), "%v", q)
			}
			probes += len(c.Inside) + len(c.Without)
			for _, p := range c.Paths {
				got := r.Outside(parseEdges(t, p.Path)[0], 1e-4)
				require.GreaterOrEqual(t, got.High, p.Outside-2e-5, p.Path)
				require.LessOrEqual(t, got.Low, p.Outside+0.002, p.Path)
				if p.Outside > 0.01 {
					standOut++
				}
			}
		})
	}
	require.Equal(t, 2080, probes)
	require.Equal(t, 362, standOut)
}

// TestParallelAgainstAnotherLibrary closes the parallels of an outline's edges
// into a new outline and compares it with GEOS's buffer, mitred, or round where
// there are no corners.
//
// GEOS first takes out of a line what lies within a hundredth of the distance
// (its documented simplification), which moved a mitre by 0.07 mm at worst: two
// cases were off by more than the strict limits, and have the wide ones.
func TestParallelAgainstAnotherLibrary(t *testing.T) {
	var recorded recordedRegions
	readRecorded(t, "regions.json", &recorded)
	require.Len(t, recorded.Offsets, 109)
	simplified := 0
	for _, c := range recorded.Offsets {
		t.Run(c.Name, func(t *testing.T) {
			edges := parseEdges(t, c.Edges...)
			d := c.D // outward
			if NewRegion(edges).Clockwise() {
				d = -d
			}
			for i := range edges {
				edges[i] = edges[i].Parallel(d, 1e-4)
			}
			beside, open := CloseCorners(edges, 4*math.Abs(d))
			require.Equal(t, -1, open)
			r := NewRegion(beside)
			far := 0.0
			for _, q := range c.Points {
				far = max(far, r.nearest(Point{q[0], q[1]}).distance)
			}
			width := math.Abs(r.Area()-c.Area) / r.Perimeter()
			if far > 0.01 || width > 0.0003 {
				simplified++
				require.LessOrEqual(t, far, 0.01*math.Abs(d))
				require.LessOrEqual(t, width, 0.01)
			}
		})
	}
	require.LessOrEqual(t, simplified, 2)
}
