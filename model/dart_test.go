package model_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/model/modeltest"
)

// dartPiece has a dart on its top edge, its mouth from x = 9 to x = 11 and its
// tip deep below the middle; beside the mouth the edge falls by slope.
func dartPiece(t testing.TB, depth, slope float64) *model.Dart {
	fall := 9 * slope
	g := modeltest.Build(t, fmt.Sprintf(`
garment "trial" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "top"  { line = [[0, %[1]f], [9, 0], [11, 0], [20, %[1]f]] }
    edge "rest" { line = [[20, %[1]f], [20, 99], [0, 99], [0, %[1]f]] }
    dart "neck" {
      on     = top
      at     = %[2]f
      intake = 2
      tip    = [10, %[3]f]
    }
  }
}
`, fall, math.Hypot(9, fall)+1, depth))
	return g.Darts()[0]
}

// Closed form: the closed dart turns the edge by its own angle, 2·atan(1/depth)
// in centimetres, and the slopes on both sides turn it back.
func TestCapAngle(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		depth := rapid.Float64Range(5, 30).Draw(r, "depth")
		slope := rapid.Float64Range(0, 0.3).Draw(r, "slope")
		angle, err := dartPiece(t, depth, slope).CapAngle()
		require.NoError(r, err)
		want := math.Abs(2*math.Atan(1/depth)-2*math.Atan(slope)) * 180 / math.Pi
		require.InDelta(r, want, angle, 1e-3)
	})
}
