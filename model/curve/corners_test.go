package curve

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// Where two edges run on smoothly, their directions differ by rounding and the
// lines beside them have no crossing; the corner closes all the same.
func TestCloseCornersWhereEdgesRunOnSmoothly(t *testing.T) {
	draw := rand.New(rand.NewPCG(1, 2))
	between := func(low, high float64) float64 { return low + (high-low)*draw.Float64() }
	for _, turn := range []float64{0, 1e-10, 1e-9, 1e-8, 4e-8, 1e-7, 1e-6, 1e-4, 1e-2} {
		for i := range 40 {
			along := Point{X: math.Cos(turn), Y: math.Sin(turn)}
			if i%2 == 0 {
				along.Y = -along.Y
			}
			corner, end := Point{X: 100}, Point{X: 200, Y: between(-30, 30)}
			a := New(Cubic(Point{Y: 20}, Point{X: between(0, 50), Y: between(-30, 30)}, Point{X: between(60, 90)}, corner))
			b := New(Cubic(corner, corner.Add(along.Scale(between(10, 40))), Point{X: between(160, 180), Y: between(-30, 30)}, end))
			rest := Polyline(end, Point{X: 200, Y: 300}, Point{Y: 300}, a.Start())
			for _, width := range []float64{10, -10} {
				lines := []*Path{a.Parallel(width, 1e-3), b.Parallel(width, 1e-3), rest.Parallel(width, 1e-3)}
				closed, open := CloseCorners(lines, 100)
				require.NotZero(t, open, "directions %g apart, drawing %d, %g mm", turn, i, width)
				require.InDelta(t, 0, closed[0].End().Dist(closed[1].Start()), 1e-9)
			}
		}
	}
}
