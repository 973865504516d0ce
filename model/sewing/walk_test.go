package sewing_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/modeltest"
	"understitch/model/sewing"
)

// Front and back of a bodice: the back is drawn turned over, its side seam
// runs upward in the drawing, and both meet at the underarm.
const bodice = `
garment "bodice" { unit = "cm" }
level "bust"  { y = 0 }
level "waist" { y = 20 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "neck"   { line = [[0, -10], [10, -14]] }
    edge "arm"    { line = [[10, -14], [22, 0]] }
    edge "side"   { line = [[22, 0], [18, 20]] }
    edge "hem"    { line = [[18, 20], [0, 20]] }
    edge "centre" { line = [[0, 20], [0, -10]] }
    notch "waist" {
      on = side
      at = 15
    }
  }
  piece "back" {
    fold = centre
    edge "neck"   { line = [[60, -12], [50, -14]] }
    edge "arm"    { line = [[50, -14], [38, 0]] }
    edge "side"   { line = [[38, 0], [42, 20]] }
    edge "hem"    { line = [[42, 20], [60, 20]] }
    edge "centre" { line = [[60, 20], [60, -12]] }
    notch "waist" {
      on = side
      at = 15
    }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`

func TestWalkFindsTheWayRoundACorner(t *testing.T) {
	g := modeltest.Build(t, bodice)
	front, back := modeltest.Edge(t, g, "shell.front.hem"), modeltest.Edge(t, g, "shell.back.hem")
	for _, c := range []struct {
		name      string
		edges     []*model.Edge
		backwards []bool
	}{
		{"front to back", []*model.Edge{front, back}, []bool{true, false}},
		{"back to front", []*model.Edge{back, front}, []bool{true, false}},
		{"two edges of one piece", []*model.Edge{modeltest.Edge(t, g, "shell.front.arm"), modeltest.Edge(t, g, "shell.front.neck")}, []bool{true, true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var stretches []model.Stretch
			for _, e := range c.edges {
				stretches = append(stretches, model.Stretch{Edge: e})
			}
			w, err := sewing.LayOut(g, stretches)
			require.NoError(t, err)
			var ways []bool
			for _, r := range w.Runs {
				ways = append(ways, r.Backward())
			}
			require.Equal(t, c.backwards, ways)
		})
	}
}

func TestSeamSidesRunAlongsideEachOther(t *testing.T) {
	g := modeltest.Build(t, bodice)
	join := g.JoinOf(g.Seams[0])
	a, b, err := sewing.Walks(g, join)
	require.NoError(t, err)
	require.Equal(t, sewing.ByLevels, sewing.Way(join))
	require.InDelta(t, a.Length, b.Length, 1e-9)
	require.InDelta(t, 150, a.Notches[0].At, 1e-9)
	require.InDelta(t, 150, b.Notches[0].At, 1e-9)

	e, s := b.Place(150)
	require.Equal(t, "shell.back.side", e.Address())
	require.InDelta(t, 150, s, 1e-9)
}

// Laid together at the underarm, the two armholes are one line: the back,
// drawn the other way round, is turned over on to its place. The seam's two
// angles with the armholes add up here to what the line turns by.
func TestLaidTurnsThePieceOver(t *testing.T) {
	g := modeltest.Build(t, bodice)
	w, err := sewing.LayOut(g, []model.Stretch{{Edge: modeltest.Edge(t, g, "shell.front.arm")}, {Edge: modeltest.Edge(t, g, "shell.back.arm")}})
	require.NoError(t, err)
	path, err := w.Laid(0, 1)
	require.NoError(t, err)
	require.InDelta(t, w.Length, path.Length(), 1e-9)
	// Front and back are mirror images here, so the laid line is symmetrical
	// about the seam: its ends are as far apart as the seam's direction says.
	seam := modeltest.Edge(t, g, "shell.front.side").Path.Direction(0)
	across := path.End().Sub(path.Start())
	require.InDelta(t, 0, across.Dot(seam), 1e-6)
}

func TestCornerAngle(t *testing.T) {
	g := modeltest.Build(t, bodice)
	hem := modeltest.Edge(t, g, "shell.front.hem")
	run := sewing.Run{Edge: hem, From: 0, To: hem.Length()}
	require.InDelta(t, 90, run.CornerAngle(true), 1e-9, "hem and centre front")
	require.InDelta(t, 90+11.3099, run.CornerAngle(false), 1e-3, "hem and side: atan(4/20) over square")
	back := modeltest.Edge(t, g, "shell.back.hem")
	require.InDelta(t, 90+11.3099, sewing.Run{Edge: back, From: 0, To: back.Length()}.CornerAngle(false), 1e-3, "the same on the piece drawn the other way round")
}
