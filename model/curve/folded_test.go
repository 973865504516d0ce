package curve

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A curve whose first two points are as good as one bends back there with no radius
// at all, and the line beside it runs on itself for less than can be told apart.
// The search for crossings comes to an end, and tells that it did not see all.
func TestALineFoldedOnItself(t *testing.T) {
	side := Smooth(Point{264, 1e-300}, Point{264, 0}, Point{262.5, 40}, Point{259, 130}, Point{252, 195}, Point{256.5, 240}, Point{259, 270})
	for _, d := range []float64{-12, 12} {
		beside := side.Parallel(d, 1e-3)
		found, whole := SelfCrossings([]*Path{beside, Polyline(beside.End(), Point{0, 270}, Point{0, -40}, beside.Start())})
		require.False(t, whole)
		require.Empty(t, found)
	}
}
