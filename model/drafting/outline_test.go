package drafting_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/drafting"
	"understitch/model/modeltest"
)

func TestCornersAndCrossings(t *testing.T) {
	g := modeltest.Build(t, `
garment "trial" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "eight" {
    edge "down"  { line = [[0, 0], [20, 20]] }
    edge "right" { line = [[20, 20], [20, 0]] }
    edge "back"  { line = [[20, 0.3], [0, 20]] }
    edge "left"  { line = [[0, 20], [0, 0]] }
  }
  piece "half" {
    edge "drawn" { line = [[0, 0], [20, 20]] }
    edge "taped" { length = 30 }
  }
  piece "paper" {
    edge "taped" { length = 30 }
  }
}
`)
	eight, half, paper := g.Pieces()[0], g.Pieces()[1], g.Pieces()[2]
	corners, err := eight.Corners()
	require.NoError(t, err)
	require.Len(t, corners, 4)
	for i, want := range []float64{0, 3, 0, 0} {
		require.InDelta(t, want, corners[i].Gap, 1e-9)
	}
	require.Equal(t, "left", corners[3].Before.Name)
	require.Equal(t, "down", corners[3].After.Name)

	// x = y on one line and x = 20·(20-y)/19.7 on the other.
	crossings, err := drafting.OutlineCrossings(eight)
	require.NoError(t, err)
	require.Len(t, crossings, 1)
	require.Equal(t, "down", crossings[0].A.Name)
	require.Equal(t, "back", crossings[0].B.Name)
	require.InDelta(t, 4000/39.7, crossings[0].At.X, 1e-6)

	_, err = half.Corners()
	require.EqualError(t, err, "shell.half.taped has no drawing")
	_, err = drafting.OutlineCrossings(half)
	require.Error(t, err)
	require.False(t, half.Paper())
	require.True(t, paper.Paper())
}
