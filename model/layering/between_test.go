package layering_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/modeltest"
)

// nested writes two pieces on the fold, each with a curved side through three
// points and an upright dart of its own, in one frame.
func nested(outer, inner [3]float64, dartOuter, dartInner float64) string {
	piece := func(layer, side string, x [3]float64, dart float64) string {
		return fmt.Sprintf(`
layer %q {
  side = %q
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [%[3]f, 0]] }
    edge "side"   { smooth = [[%[3]f, 0], [%[4]f, 150], [%[5]f, 300]] }
    edge "hem"    { line = [[%[5]f, 300], [0, 300]] }
    edge "centre" { line = [[0, 300], [0, 0]] }
    dart "waist" {
      centre = [60, 150]
      intake = %[6]f
      up     = 80
      down   = 90
    }
  }
}`, layer, side, x[0], x[1], x[2], dart)
	}
	return `
garment "nested" { unit = "mm" }
level "top" { y = 0 }
level "hem" { y = 300 }
` + piece("shell", "outer", outer, dartOuter) + piece("lining", "inner", inner, dartInner) + `
inside "front" {
  outer = shell.front
  inner = lining.front
}
`
}

// The enclosed least clearance is held against plain dense sampling.
func TestLeastBetweenAgainstSampling(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		x := func(name string) [3]float64 {
			var out [3]float64
			for i := range out {
				out[i] = rapid.Float64Range(120, 260).Draw(rt, name)
			}
			return out
		}
		darts := rapid.Float64Range(1, 40)
		src := nested(x("outer"), x("inner"), darts.Draw(rt, "dart"), darts.Draw(rt, "dart"))
		inside := modeltest.Build(t, src).Insides[0]
		least, err := layering.LeastBetween(inside, 0, 300)
		require.NoError(rt, err)

		sampled := math.Inf(1)
		for i := range 2000 {
			// Levels of the test's own, placed by the height in millimetres.
			level := &model.Level{Name: "sample", Y: 0.001 + 299.998*float64(i)/1999}
			c, err := layering.ClearanceAt(inside, level)
			require.NoError(rt, err)
			sampled = math.Min(sampled, c)
		}
		require.LessOrEqual(rt, least.Low, sampled+1e-9, "the bound must not pass what sampling sees")
		require.GreaterOrEqual(rt, least.High, least.Low)
		require.InDelta(rt, sampled, least.High, 0.05, "sampling is coarser than the bound")
	})
}

func TestLeastBetweenOfTheSamePiece(t *testing.T) {
	x := [3]float64{220, 180, 240}
	least, err := layering.LeastBetween(modeltest.Build(t, nested(x, x, 20, 20)).Insides[0], 0, 300)
	require.NoError(t, err)
	require.InDelta(t, 0, least.Low, 0.011)
	require.InDelta(t, 0, least.High, 1e-9)
}

func BenchmarkLeastBetween(b *testing.B) {
	x := [3]float64{220, 180, 240}
	inside := modeltest.Build(b, nested(x, x, 20, 20)).Insides[0]
	for b.Loop() {
		fresh := *inside // an inside keeps what it has reckoned
		if _, err := layering.LeastBetween(&fresh, 0, 300); err != nil {
			b.Fatal(err)
		}
	}
}
