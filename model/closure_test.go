package model_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/modeltest"
)

// A gusset drawn by its half beside the fold is twice as long when cut; an edge
// that does not reach the fold is as long as drawn.
func TestFullLengthCountsBothHalves(t *testing.T) {
	g := modeltest.Build(t, `
garment "brief" { unit = "cm" }
layer "brief" {
  side = "inner"
  piece "front" {
    fold = centre
    edge "gusset" { line = [[0, 0], [2.5, 0]] }
    edge "leg"    { line = [[2.5, 0], [16, -17]] }
    edge "waist"  { line = [[16, -17], [0, -17]] }
    edge "centre" { line = [[0, -17], [0, 0]] }
  }
}
elastic "all" {
  edges  = [brief.front.gusset, brief.front.leg, brief.front.waist]
  length = 50
}`)
	for i, want := range []struct {
		length float64
		halves bool
	}{{50, true}, {217.083, false}, {320, true}} {
		length, halves, err := g.Elastics[0].Edges[i].FullLength()
		require.NoError(t, err)
		require.InDelta(t, want.length, length, 1e-3)
		require.Equal(t, want.halves, halves)
	}
}
