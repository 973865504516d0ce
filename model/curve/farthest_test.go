package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// everyPair looks at every two points.
func everyPair(points []Point) (d float64, first, second int) {
	for i, p := range points {
		for j, q := range points[:i] {
			if apart := p.Dist(q); apart > d {
				d, first, second = apart, j, i
			}
		}
	}
	return d, first, second
}

func TestFarthestApartIsThatOfEveryPair(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Whole numbers make points that repeat, lie on one line, and tie.
		side := rapid.IntRange(0, 8).Draw(t, "side")
		coordinate := rapid.Map(rapid.IntRange(0, side), func(i int) float64 { return float64(i) })
		if rapid.Bool().Draw(t, "fine") {
			coordinate = rapid.Float64Range(-1000, 1000)
		}
		point := rapid.Custom(func(t *rapid.T) Point { return Point{coordinate.Draw(t, "x"), coordinate.Draw(t, "y")} })
		points := rapid.SliceOfN(point, 0, 40).Draw(t, "points")
		d, first, second := everyPair(points)
		gotD, gotFirst, gotSecond := FarthestApart(points)
		require.Equal(t, []any{d, first, second}, []any{gotD, gotFirst, gotSecond})
	})
}

func TestFarthestApartRoundACircle(t *testing.T) {
	points := make([]Point, 100_000)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(points)))
		points[i] = Point{100 * cos, 100 * sin}
	}
	d, first, second := FarthestApart(points)
	require.InDelta(t, 200, d, 1e-9) // closed form: the diameter
	require.Equal(t, len(points)/2, second-first)
}
