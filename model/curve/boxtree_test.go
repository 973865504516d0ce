package curve

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// wander draws a line of many points, on whole numbers so that boxes tie and touch.
var wander = rapid.Custom(func(t *rapid.T) []Point {
	side := rapid.IntRange(1, 30).Draw(t, "side")
	whole := rapid.Map(rapid.IntRange(0, side), func(i int) float64 { return float64(i) })
	point := rapid.Custom(func(t *rapid.T) Point { return Point{whole.Draw(t, "x"), whole.Draw(t, "y")} })
	return rapid.SliceOfN(point, 3, 400).Draw(t, "points")
})

func TestBundlesPassOverNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var boxes []Box
		points := wander.Draw(t, "points")
		for i := range points[1:] {
			boxes = append(boxes, emptyBox().with(points[i]).with(points[i+1]))
		}
		tree := newBoxTree(boxes)
		q := Point{rapid.Float64Range(-10, 40).Draw(t, "x"), rapid.Float64Range(-10, 40).Draw(t, "y")}

		least := slices.MinFunc(boxes, func(a, b Box) int { return int(math.Copysign(1, a.distance(q)-b.distance(q))) })
		require.Equal(t, slices.IndexFunc(boxes, func(b Box) bool { return b.distance(q) == least.distance(q) }), tree.nearest(q))

		reach := rapid.Float64Range(0, 20).Draw(t, "reach")
		far := func(b *Box, _, _ int) bool { return b.distance(q) > reach }
		var want, got []int
		for i := range boxes {
			if !far(&boxes[i], i, i+1) {
				want = append(want, i)
			}
		}
		for i := tree.next(0, far); i < len(boxes); i = tree.next(i+1, far) {
			got = append(got, i)
		}
		require.Equal(t, want, got)
	})
}

// windsByPiece counts every piece of the outline by itself.
func windsByPiece(r *Region, q Point) bool {
	winding := 0
	for i := range r.pieces {
		m := &r.pieces[i]
		step := 1
		if m.p0.Y > m.p1.Y {
			step = -1
		}
		g := &r.sides[m.owner].Segment
		if min(m.p0.Y, m.p1.Y) <= q.Y && q.Y < max(m.p0.Y, m.p1.Y) && g.at(m.levelParam(g, q.Y)).X > q.X {
			winding += step
		}
	}
	return winding != 0
}

func TestWindingOfManySides(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := wander.Draw(t, "points")
		line := Polyline(points...)
		if rapid.Bool().Draw(t, "smooth") {
			line = Smooth(points...)
		}
		r := NewRegion([]*Path{line})
		for range 20 {
			q := Point{rapid.Float64Range(-1, 31).Draw(t, "x"), rapid.Float64Range(-1, 31).Draw(t, "y")}
			if rapid.Bool().Draw(t, "at a height of points") {
				q.Y = math.Round(q.Y)
			}
			require.Equal(t, windsByPiece(r, q), r.winds(q))
		}
	})
}

func TestALineDrawnOverItselfVeryOften(t *testing.T) {
	var points []Point
	for range 400 { // up and down one line, then round a triangle
		points = append(points, Point{0, 0}, Point{0, 100})
	}
	points = append(points, Point{0, 0}, Point{100, -50}, Point{-100, -50})
	found, whole := SelfCrossings([]*Path{Polyline(points...)})
	require.Empty(t, found)
	require.False(t, whole)
}
