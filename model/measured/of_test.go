package measured_test

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/measured"
	"understitch/model/spec"
)

// A bodice with a half-round hem, two darts, a notch, a lining in it, a closure and a run over the pattern: all its figures are closed forms.
const bodice = `
garment "bodice" { unit = "cm" }
level "bust"  { y = 0 }
level "waist" { y = 10 }
body { trunk = 30 }
tape "hooks" {
  kind         = "hook-and-eye"
  pitch        = mm(19)
  head         = mm(8)
  clear        = mm(2)
  width_closed = [mm(32)]
}
layer "shell" {
  side = "outer"
  piece "front" {
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [20, 10]] }
    edge "hem"    { path = "M 20 10 A 10 10 0 0 1 0 10" }
    edge "centre" { line = [[0, 10], [0, 0]] }
    dart "waist" {
      centre = [10, 10]
      intake = 2
      up     = 5
      down   = 5
    }
    dart "top" {
      on     = top
      at     = 10
      intake = 3
      tip    = [10, 4]
    }
    notch "side" {
      on = side
      at = 4
    }
  }
  piece "back" {
    fold = centre
    edge "top" { line = [[0, 0], [20, 0]] }
    edge "side" {
      line      = [[20, 0], [20, 10]]
      allowance = 1.5
    }
    edge "hem"    { line = [[20, 10], [0, 10]] }
    edge "centre" { line = [[0, 10], [0, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    edge "side" { line = [[19, 0], [19, 10]] }
    edge "hem"  { line = [[19, 10], [0, 10]] }
    edge "in"   { line = [[0, 10], [0, 0]] }
    edge "top"  { line = [[0, 0], [19, 0]] }
  }
  piece "paper" {
    edge "side" { length = 10.5 }
    edge "hem"  { length = 8 }
  }
}
seam "side"   { join = [shell.front.side, shell.back.side] }
seam "lining" { join = [lining.front.side, lining.paper.side] }
inside "front" {
  outer = shell.front
  inner = lining.front
}
closure "front" {
  kind  = "tape"
  tape  = tape.hooks
  edges = [lining.front.in, lining.front.in]
}
measure "trunk" {
  along   = [shell.front.side, closure.front, shell.back.side]
  against = body.trunk
  ease    = [-3, 0]
}
`

func sizeOf(t *testing.T, src string) measured.Size {
	t.Helper()
	doc, diags := spec.Read("bodice.garment.hcl", []byte(src), nil)
	require.Empty(t, diags)
	g, diags := doc.Garment("")
	require.Empty(t, diags)
	return measured.Of(g)
}

// Every expected figure is a closed form of the spec above: rectangles, a half
// circle of radius 10 cm, right triangles.
func TestOf(t *testing.T) {
	s := sizeOf(t, bodice)
	front, back := s.Layers["shell"].Pieces["front"], s.Layers["shell"].Pieces["back"]
	at := func(name string, want float64, got *float64) {
		t.Helper()
		require.NotNil(t, got, name)
		require.InDelta(t, want, *got, 1e-6, name)
	}
	at("area", 200*100+math.Pi*100*100/2, front.Area)
	at("perimeter", 200+100+math.Pi*100+100, front.Perimeter)
	at("hem", math.Pi*100, front.Edges["hem"].Length)
	at("top as drawn", 200, front.Edges["top"].Length)
	at("top, dart closed", 170, front.Edges["top"].SewnLength)
	require.Nil(t, front.Edges["side"].Allowance, "none is stated")
	at("allowance", 15, back.Edges["side"].Allowance)
	require.InDelta(t, 180, front.Width["waist"], 1e-6, "the dart is closed")

	at("intake", 30, front.Darts["top"].Intake)
	leg := math.Hypot(15, 40)
	require.InDeltaSlice(t, []float64{leg, leg}, front.Darts["top"].Legs[:], 1e-6)
	leg = math.Hypot(10, 50)
	require.InDeltaSlice(t, []float64{leg, leg}, front.Darts["waist"].Legs[:], 1e-6)

	require.Equal(t, "side", front.Notches["side"].On)
	at("notch", 40, front.Notches["side"].At)
	at("notch, across", 200, front.Notches["side"].X)
	at("notch, down", 40, front.Notches["side"].Y)

	at("seam", 0, s.Seams["side"].Difference)
	require.Equal(t, "along", s.Seams["side"].Way)
	require.Equal(t, "levels", s.Seams["side"].FoundBy)
	at("a seam known by tape on one side", -5, s.Seams["lining"].Difference)

	require.InDelta(t, 200-30-190, s.Insides["front"].Clearance["bust"], 1e-6)
	require.InDelta(t, 200-20-190, s.Insides["front"].Clearance["waist"], 1e-6)
	at("closed tape", 32, s.Closures["front"].Across)
	at("run", 100+32+100, s.Runs["trunk"].Total)
	at("body", 300, s.Runs["trunk"].Body)
	require.Equal(t, "closure.front", s.Runs["trunk"].Parts[1].Item)
}

// What cannot be had is left out, and nothing stands in its place.
func TestLeftOut(t *testing.T) {
	s := sizeOf(t, bodice)
	paper := s.Layers["lining"].Pieces["paper"]
	require.Nil(t, paper.Area)
	require.Empty(t, paper.Width)
	require.NotNil(t, paper.Perimeter, "the tape's lengths add up")
	text, err := json.Marshal(s)
	require.NoError(t, err, "no figure is endless")
	require.NotContains(t, string(text), "null")
	again, err := json.Marshal(sizeOf(t, bodice))
	require.NoError(t, err)
	require.Equal(t, string(text), string(again))
}
