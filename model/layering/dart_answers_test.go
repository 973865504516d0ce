package layering_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/modeltest"
)

// answering is a shell 20 cm across and a lining so much narrower at its side,
// drawn the other way round, each with a dart inside and one on its hem; the
// lining's lie so many millimetres to the right and are so much longer.
func answering(t testing.TB, narrower, right, longer float64) *model.Garment {
	side := 20 - narrower/10
	x, up := 9+right/10, 12+longer/10
	return modeltest.Build(t, fmt.Sprintf(`
garment "bodice" { unit = "cm" }
level "bust" { y = 0 }
level "waist" { y = 20 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "top"    { line = [[0, -5], [20, -5]] }
    edge "side"   { line = [[20, -5], [20, 35]] }
    edge "hem"    { line = [[20, 35], [0, 35]] }
    edge "centre" { line = [[0, 35], [0, -5]] }
    dart "waist" {
      centre = [9, 15]
      intake = 2
      up     = 12
      down   = 8
    }
    dart "hem" {
      on     = hem
      at     = 11
      intake = 2
      tip    = [9, 27]
    }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    edge "hem"    { line = [[0, 35], [%[1]f, 35]] }
    edge "side"   { line = [[%[1]f, 35], [%[1]f, -5]] }
    edge "top"    { line = [[%[1]f, -5], [0, -5]] }
    edge "centre" { line = [[0, -5], [0, 35]] }
    dart "waist" {
      centre = [%[2]f, 15]
      intake = 2
      up     = %[3]f
      down   = 8
    }
    dart "hem" {
      on     = hem
      at     = %[2]f
      intake = 2
      tip    = [%[2]f, %[4]f]
    }
  }
}
inside "front" {
  outer = shell.front
  inner = lining.front
}
`, side, x, up, 27-longer/10))
}

// Closed form: as far to the right as drawn, of which what the lining is narrower
// is allowed to the left, along an edge that the shell has from right to left too.
func TestDartAnswers(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		narrower := rapid.Float64Range(0, 20).Draw(r, "narrower")
		right := rapid.Float64Range(-30, 30).Draw(r, "right")
		longer := rapid.Float64Range(-20, 20).Draw(r, "longer")
		g := answering(t, narrower, right, longer)
		answers, err := layering.DartAnswers(g, g.Insides[0], 25)
		require.NoError(r, err)
		require.Len(r, answers, 2)
		hem, waist := answers[0], answers[1]

		require.Equal(r, "hem", hem.Inner.Name)
		require.InDelta(r, -right-narrower, hem.Aside.By, 1e-3, "counted from the side, where the shell's hem begins")
		require.InDelta(r, -narrower, hem.Aside.Meant.Low, 1e-3)
		require.InDelta(r, 0, hem.Aside.Meant.High, 1e-3)
		require.Len(r, hem.Points, 1)
		require.InDelta(r, longer, hem.Points[0].Longer.By, 1e-3)
		require.InDelta(r, 0, hem.Points[0].Lean.By, 1e-3)

		require.InDelta(r, right, waist.Aside.By, 1e-3)
		require.InDelta(r, -narrower, waist.Aside.Meant.Low, 1e-3)
		require.InDelta(r, 0, waist.Aside.Meant.High, 1e-3)
		require.InDelta(r, 0, waist.Lower.By, 1e-3)
		require.InDelta(r, longer, waist.Points[0].Longer.By, 1e-3)
		require.InDelta(r, 0, waist.Points[1].Longer.By, 1e-3)
	})
}

// At the waist, 5 cm under the widest place, the lower points are 3 cm off:
// three eighths of the darts (similar triangles).
func TestDartsAt(t *testing.T) {
	g := answering(t, 0, 0, 0)
	takes := layering.DartsAt(g.Insides[0], g.Levels[1])
	require.Len(t, takes, 1)
	require.Equal(t, "waist", takes[0].Outer.Name)
	require.Equal(t, "waist", takes[0].Inner.Name)
	require.InDelta(t, 7.5, takes[0].ByOuter, 1e-9)
	require.InDelta(t, 7.5, takes[0].ByInner, 1e-9)
	require.Zero(t, takes[0].Round())
	require.Empty(t, layering.DartsAtHeight(g.Insides[0], 25*10), "between the lower point and the hem's dart")
}
