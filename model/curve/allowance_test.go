package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// genBowed draws a clockwise outline of three to six bowed edges all of whose
// corners turn right.
func genBowed(t *rapid.T) []*Path {
	n := rapid.IntRange(3, 6).Draw(t, "corners")
	pts := make([]Point, n)
	for i := range pts {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + genNumber(t, -0.1, 0.1, "about")) / float64(n))
		pts[i] = pt(200*cos, 200*sin)
	}
	var edges []*Path
	for i := range pts {
		a, b := pts[i], pts[(i+1)%n]
		bow := func(name string) Point {
			return b.Sub(a).Perp().Scale(genNumber(t, -0.06, 0.06, name))
		}
		switch rapid.IntRange(0, 2).Draw(t, "side") {
		case 0:
			edges = append(edges, New(Line(a, b)))
		case 1:
			edges = append(edges, New(Cubic(a, a.Lerp(b, 0.3).Add(bow("b")), a.Lerp(b, 0.7).Add(bow("c")), b)))
		case 2:
			r := a.Dist(b) * genNumber(t, 2, 4, "radius")
			edges = append(edges, New(Arc(a, r, r, 0, false, true, b)))
		}
	}
	return edges
}

// The outline with allowances stands clear of the one without by exactly the
// allowance, as the proven bounds of Room have it, and taking the allowance
// off gives the outline back.
func TestAllowanceRoundBowedEdges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := genBowed(t)
		d := genNumber(t, 2, 15, "d")
		outer, open := CloseCorners(parallels(edges, -d), 200)
		require.Equal(t, -1, open)
		r := NewRegion(outer)
		for i, e := range edges {
			room := r.Room(e, 1e-3)
			require.InDelta(t, d, room.Low, 3e-3, "edge %d", i)
			require.InDelta(t, d, room.High, 3e-3, "edge %d", i)
		}
		back, open := CloseCorners(parallels(outer, d), 200)
		require.Equal(t, -1, open)
		for i, e := range edges {
			require.InDelta(t, e.Length(), back[i].Length(), 0.05)
			require.LessOrEqual(t, Deviation(e, back[i], 1e-3).High, 0.05)
		}
	})
}

// Taken off inside, the outline keeps that distance from the one before, as
// long as no edge bends too tightly and something is left of every edge.
func TestAllowanceInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := genBowed(t)
		d := genNumber(t, 2, 15, "d")
		inner, open := CloseCorners(parallels(edges, d), 200)
		require.Equal(t, -1, open)
		crossings, whole := SelfCrossings(inner)
		require.True(t, whole)
		require.Empty(t, crossings)
		r := NewRegion(edges)
		for i, e := range inner {
			room := r.Room(e, 1e-3)
			require.InDelta(t, d, room.Low, 3e-3, "edge %d", i)
			require.InDelta(t, d, room.High, 3e-3, "edge %d", i)
		}
	})
}

// One path round the whole outline gives the same as its edges one by one: the
// corners are mitred and trimmed in the same places.
func TestParallelOfTheWholeOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := genBowed(t)
		d := genNumber(t, -15, 15, "d")
		closed, open := CloseCorners(parallels(edges, d), 200)
		require.Equal(t, -1, open)
		// From the middle of the first edge round to it again.
		l := edges[0].Length()
		round := Join(append(append([]*Path{edges[0].Part(l/2, l)}, edges[1:]...), edges[0].Part(0, l/2))...)
		sum := 0.0
		for _, e := range closed {
			sum += e.Length()
		}
		require.InDelta(t, sum, round.Parallel(d, 1e-3).Length(), 0.02)
	})
}

// An alteration: one edge is moved sideways and its neighbours run on or are
// trimmed to meet it. By closed form for a trapezium with level edges.
func TestAlteredEdgeMeetsItsNeighbours(t *testing.T) {
	edges := []*Path{
		Polyline(pt(0, 0), pt(100, 0)), Polyline(pt(100, 0), pt(110, 200)),
		Polyline(pt(110, 200), pt(0, 200)), Polyline(pt(0, 200), pt(0, 0)),
	}
	side := Shift{{newRamp(t, []float64{0, 80, 200}, []float64{6, -9, 14}), 1}}
	moved := append([]*Path(nil), edges...)
	moved[1] = edges[1].Sideways(side, 1e-3)
	out, open := CloseCorners(moved, 30)
	require.Equal(t, -1, open)
	require.InDelta(t, 106, out[0].Length(), 1e-9)
	require.InDelta(t, 124, out[2].Length(), 1e-9)
	require.Same(t, moved[1], out[1])
	require.Same(t, edges[3], out[3])
}
