package drafting_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/modeltest"
)

const shortened = `garment "g" { unit = "cm" }
level "waist" { y = 0 }
level "hip" { y = 20 }
level "knee" { y = 50 }
layer "skirt" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist" { line = [[0, 0], [18, 0]] }
    edge "side" { curve = [[18, 0], [18, 7], [24, 13], [24, 20], [24, 35], [27, 45], [27, 58]] }
    edge "hem" { line = [[27, 58], [0, 58]] }
    edge "centre" { line = [[0, 58], [0, 0]] }
    notch "hip" {
      on = side
      level = hip
    }
    notch "low" {
      on = side
      at = 55
    }
  }
}
layer "lining" {
  side = "inner"
  piece "back" { trace = lining.front }
  piece "front" {
    trace = skirt.front
    edge "side" { inward = { waist = 0, hip = 0.2 } }
    ends "hem" { level = knee }
  }
  piece "half" {
    trace = skirt.front
    fold = none
    mirror = true
  }
}
alter "fit" {
  edges = skirt.front.side
  inward = { waist = 0, hip = 0.5 }
}
`

// A piece that is cut off and moved in is traced on, whatever the order in the file;
// an alteration of the first reaches the last, and a line that nothing moves is the
// very same curve.
func TestTraceOfATrace(t *testing.T) {
	g := modeltest.Build(t, shortened)
	edge := func(address string) []float64 {
		e := modeltest.Edge(t, g, address)
		return []float64{e.Path.Start().X, e.Path.Start().Y, e.Path.End().X, e.Path.End().Y}
	}
	require.Same(t, modeltest.Edge(t, g, "skirt.front.waist").Path, modeltest.Edge(t, g, "lining.back.waist").Path)
	require.Same(t, modeltest.Edge(t, g, "lining.front.side").Path, modeltest.Edge(t, g, "lining.back.side").Path)
	for _, piece := range []string{"lining.front", "lining.back"} {
		side, hem := edge(piece+".side"), edge(piece+".hem")
		require.InDelta(t, 500, side[3], 1e-6, piece)
		require.InDeltaSlice(t, []float64{side[2], side[3], 0, 500}, hem, 1e-6, piece)
	}
	front, lining := modeltest.Edge(t, g, "skirt.front.side"), modeltest.Edge(t, g, "lining.front.side")
	at := front.Path.At(front.Path.Crossings(200)[0]).X
	require.InDelta(t, 235, at, 1e-6, "taken in by the fitting")
	require.InDelta(t, at-2, lining.Path.At(lining.Path.Crossings(200)[0]).X, 1e-3, "and the lining by 2 mm more")
	require.Len(t, lining.Piece.Notches, 1, "the lower notch is gone with what was cut off")
	half := modeltest.Edge(t, g, "lining.half.side")
	require.Equal(t, -front.Path.End().X, half.Path.End().X)
	require.Nil(t, half.Piece.Fold)
}
