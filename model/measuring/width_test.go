package measuring_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/modeltest"
	"understitch/model/sewing"
)

// A skirt front of straight lines, 20 cm wide at the waist and 30 cm at the
// hem 60 cm below, with one upright dart from the waist.
const skirt = `
garment "skirt" { unit = "cm" }
level "waist" { y = 0 }
level "hip"   { y = 20 }
level "hem"   { y = 60 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist"  { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [30, 60]] }
    edge "hem"    { line = [[30, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 0]] }
    dart "waist" {
      on     = waist
      at     = 10
      intake = 3
      tip    = [10, 12]
    }
  }
  piece "back" {
    fold = centre
    edge "waist"  { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [30, 60]] }
    edge "hem"    { line = [[30, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 0]] }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`

func TestWidthAndGirth(t *testing.T) {
	g := modeltest.Build(t, skirt)
	front := g.Layers[0].Pieces[0]
	for _, c := range []struct {
		level      int
		gross, net float64
	}{
		{0, 200, 170}, // the whole mouth of the dart is out
		{1, 200 + 100.0/3, 200 + 100.0/3},
		{2, 300, 300}, // the hem lies on the level
	} {
		w, err := measuring.WidthOf(front, g.Levels[c.level])
		require.NoError(t, err)
		require.InDelta(t, c.gross, w.Gross, 1e-3, g.Levels[c.level].Name)
		require.InDelta(t, c.net, w.Net, 1e-3, g.Levels[c.level].Name)
	}
	girth, err := measuring.Girth(g, g.Layers[0], g.Levels[0])
	require.NoError(t, err)
	require.InDelta(t, 2*170+2*200, girth, 1e-3)
}

func TestGirthIsMissingWhereTheLayerIsOpen(t *testing.T) {
	g := modeltest.Build(t, `
garment "bib" { unit = "cm" }
level "chest" { y = 5 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [8, 0]] }
    edge "arm"    { line = [[8, 0], [14, 10]] }
    edge "hem"    { line = [[14, 10], [0, 10]] }
    edge "centre" { line = [[0, 10], [0, 0]] }
  }
}
`)
	_, err := measuring.Girth(g, g.Layers[0], g.Levels[0])
	require.EqualError(t, err, "shell is open at the chest level: shell.front.arm is not sewn, folded or closed there")
	var missing *model.Missing
	require.ErrorAs(t, err, &missing)
}

// A dart that lies across, from the side seam, takes out length: the width at
// the levels it covers hardly changes, whichever way the piece is drawn.
func TestDartLyingAcrossTakesNoWidth(t *testing.T) {
	src := func(sign string) string {
		return `
garment "bodice" { unit = "cm" }
level "bust" { y = 5 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [` + sign + `20, 0]] }
    edge "side"   { line = [[` + sign + `20, 0], [` + sign + `20, 20]] }
    edge "hem"    { line = [[` + sign + `20, 20], [0, 20]] }
    edge "centre" { line = [[0, 20], [0, 0]] }
    dart "bust" {
      on     = side
      at     = 6
      intake = 3
      tip    = [` + sign + `9, 4]
    }
  }
}`
	}
	var nets []float64
	for _, sign := range []string{"", "-"} {
		g := modeltest.Build(t, src(sign))
		w, err := measuring.WidthOf(g.Layers[0].Pieces[0], g.Levels[0])
		require.NoError(t, err)
		require.InDelta(t, 200, w.Gross, 1e-6)
		require.InDelta(t, 200, w.Net, 5, "at most the tilt of the dart")
		nets = append(nets, w.Net)
	}
	require.InDelta(t, nets[0], nets[1], 1e-9)
}

func TestSewnLengthClosesDarts(t *testing.T) {
	g := modeltest.Build(t, skirt)
	waist := modeltest.Edge(t, g, "shell.front.waist")
	require.InDelta(t, 200, waist.Length(), 1e-9)
	require.InDelta(t, 170, waist.SewnLength(), 1e-9)
	require.InDelta(t, 85, waist.Net(100), 1e-9, "the middle of the mouth falls on the closed dart")
	require.InDelta(t, 150, waist.Raw(waist.Net(150)), 1e-9)

	// Closed, the waist is two straight stretches that meet on the dart line:
	// the second turned about the tip by twice atan(15/120).
	run := sewing.Run{Edge: waist, From: 0, To: 200}
	path, err := run.Closed()
	require.NoError(t, err)
	require.InDelta(t, 170, path.Length(), 1e-9)
	require.InDelta(t, 2*math.Atan2(15, 120), math.Acos(path.Direction(1).Dot(path.Direction(169))), 1e-9)
}

// Just under a curved waist the level must not be followed on to the waist's
// own curve, whichever leg of a dart it meets.
func TestWidthUnderACurvedWaist(t *testing.T) {
	for _, tip := range []float64{9, 9.5, 10, 10.5} {
		g := modeltest.Build(t, fmt.Sprintf(`
garment "skirt" { unit = "cm" }
level "waist" { y = 0 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist"  { smooth = [[0, 0], [10, -0.4], [20.4, -1.6]] }
    edge "side"   { smooth = [[20.4, -1.6], [23, 9], [25, 20]] }
    edge "hem"    { line = [[25, 20], [0, 20]] }
    edge "centre" { line = [[0, 20], [0, 0]] }
    dart "waist" {
      on     = waist
      at     = 10
      intake = 2.2
      tip    = [%g, 9]
    }
  }
}`, tip))
		w, err := measuring.WidthOf(g.Layers[0].Pieces[0], g.Levels[0])
		require.NoError(t, err)
		require.InDelta(t, w.Gross-22, w.Net, 3, "tip at %g", tip)
	}
}
