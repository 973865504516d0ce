package sewing_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/modeltest"
	"understitch/model/sewing"
)

// Over a quarter of a circle cos² and sin² have a mean of one half each; along a
// straight edge at an angle to the grain they are what they are; over the
// quarter the product of both has a mean of 1/π (closed form).
func TestShrink(t *testing.T) {
	for _, c := range []struct {
		name, grain, edge string
		want              float64
	}{
		{"with the grain", "grain = [[1, 1], [1, 9]]", "line = [[0, 100], [0, 0]]", 4},
		{"across it", "grain = [[1, 1], [9, 1]]", "line = [[0, 100], [0, 0]]", 2},
		{"on the bias", "grain = [[1, 1], [9, 9]]", "line = [[0, 100], [0, 0]]", 3},
		{"no grain drawn", "", "line = [[0, 100], [0, 0]]", 4},
		{"a quarter of a circle", "grain = [[1, 1], [1, 9]]", `path = "M 0 100 A 100 100 0 0 1 100 0"`, 3},
		{"a quarter, the grain askew", "grain = [[1, 1], [9, 3]]", `path = "M 0 100 A 100 100 0 0 1 100 0"`, 3 - 4/math.Pi*16/68},
	} {
		t.Run(c.name, func(t *testing.T) {
			to := "[0, 0]"
			if c.edge[0] == 'p' {
				to = "[100, 0]"
			}
			g := modeltest.Build(t, fmt.Sprintf(`
garment "test" { unit = "mm" }
fabric "twill" { shrink = { across = 2, along = 4 } }
layer "shell" {
  side   = "outer"
  fabric = fabric.twill
  piece "front" {
    %s
    edge "side" { %s }
    edge "rest" { line = [%s, [100, 100], [0, 100]] }
  }
}
`, c.grain, c.edge, to))
			w, err := sewing.LayOut(g, []model.Stretch{{Edge: modeltest.Edge(t, g, "shell.front.side")}})
			require.NoError(t, err)
			for _, way := range []*sewing.Walk{w, w.Reversed()} {
				shrink, err := way.Shrink()
				require.NoError(t, err)
				require.InDelta(t, c.want, shrink.Low, 1e-3)
				require.Equal(t, shrink.Low, shrink.High)
			}
		})
	}
}
