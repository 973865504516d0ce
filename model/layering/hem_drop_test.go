package layering_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/layering"
	"understitch/model/modeltest"
)

// Two straight skirts, drawn in one frame without levels, whose hems lie 25 mm
// apart (closed form). However the draft is turned, so they lie.
func TestHemsOfADraftWithoutLevelsLieAsFarApartHoweverItIsTurned(t *testing.T) {
	const src = `
garment "skirt" { unit = "mm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "waist" { line = [[0, 0], [180, 0]] }
    edge "side"  { line = [[180, 0], [180, 500]] }
    edge "hem" {
      line   = [[180, 500], [0, 500]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 500], [0, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    edge "top"   { line = [[0, 20], [178, 20]] }
    edge "flank" { line = [[178, 20], [178, 475]] }
    edge "hem" {
      line   = [[178, 475], [0, 475]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 475], [0, 20]] }
  }
}
inside "front" {
  outer = shell.front
  inner = lining.front
}
`
	for degrees := 0.0; degrees < 360; degrees += 15 {
		g := modeltest.Build(t, src)
		for _, e := range g.Edges() {
			e.Path = e.Path.Move(curve.Rotate(curve.Point{X: 40, Y: 90}, degrees*math.Pi/180))
		}
		drops, err := layering.HemDrops(g, g.Insides[0])
		require.NoError(t, err)
		require.Len(t, drops, 2)
		for i, name := range []string{"shell.front.side", "shell.front.centre"} {
			require.Equal(t, name, drops[i].Outer.Address(), "%v degrees", degrees)
			require.InDelta(t, 25, drops[i].Drop, 1e-9, "%v degrees", degrees)
			require.Equal(t, "by where they are drawn", drops[i].From)
		}
	}
}

// In the middle of a range, the computer's arithmetic does not decide which end of
// it a figure is held against.
func TestNearerInTheMiddle(t *testing.T) {
	r := model.Range{Low: -30.5, High: -9.5}
	for _, off := range []float64{0, 1e-12, -1e-12} {
		require.Equal(t, r.High, r.Nearer(-20+off))
	}
	require.Equal(t, r.Low, r.Nearer(-20.001))
	require.Equal(t, r.High, r.Nearer(-19.999))
}
