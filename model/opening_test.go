package model_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/modeltest"
)

// A bodice and a skirt, 20 and 50 cm long at the centre, drawn one down and one up.
const overWaist = `
garment "dress" { unit = "cm" }
level "top"   { y = 0 }
level "waist" { y = 20 }
level "hip"   { y = 40 }
layer "shell" {
  side = "outer"
  piece "bodice" {
    cut = 2
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [18, 20]] }
    edge "waist"  { line = [[18, 20], [0, 20]] }
    edge "centre" { line = [[0, 20], [0, 0]] }
  }
  piece "skirt" {
    cut = 2
    edge "centre" { line = [[0, 20], [0, 70]] }
    edge "hem"    { line = [[0, 70], [24, 70]] }
    edge "side"   { line = [[24, 70], [24, 40], [18, 20]] }
    edge "waist"  { line = [[18, 20], [0, 20]] }
  }
  piece "half" {
    fold = centre
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [18, 20]] }
    edge "waist"  { line = [[18, 20], [0, 20]] }
    edge "centre" { line = [[0, 20], [0, 0]] }
  }
}
seam "waist" { join = [shell.bodice.waist, shell.skirt.waist] }
`

// All figures are closed form: the edges at the centre are upright.
func TestAnOpeningRunsOverSeveralPieces(t *testing.T) {
	const both = "[shell.bodice.centre, shell.skirt.centre]"
	for _, c := range []struct {
		name, edges, marks string
		want               []float64
	}{
		{"all along", both, "", []float64{200, 500}},
		{"from the top to the hip", both, "from = top\nto = hip", []float64{200, 200}},
		{"from the hip to the top", both, "from = hip\nto = top", []float64{200, 200}},
		{"from the waist, where both end", both, "from = waist\nto = hip", []float64{200}},
		{"listed from below", "[shell.skirt.centre, shell.bodice.centre]", "from = hip\nto = top", []float64{200, 200}},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := modeltest.Build(t, overWaist+"closure \"zip\" {\nkind = \"zip\"\nedges = ["+c.edges+", "+c.edges+"]\n"+c.marks+"\n}")
			for _, side := range g.JoinOf(g.Closures[0]).Sides {
				var got []float64
				for _, s := range side {
					l, err := s.SewnLength()
					require.NoError(t, err)
					got = append(got, l)
				}
				require.InDeltaSlice(t, c.want, got, 1e-9)
			}
		})
	}
}

// A zip in the left side seam leaves that seam to the right half, which must have it.
func TestAnOpeningInOneHalf(t *testing.T) {
	const zip = "closure \"zip\" {\nkind = \"zip\"\nedges = [shell.half.side, shell.bodice.side]\nhalf = \"left\"\n}\n"
	g := modeltest.Build(t, overWaist+zip+`seam "side" { join = [shell.half.side, shell.bodice.side] }`)
	e := modeltest.Edge(t, g, "shell.half.side")
	unused, err := g.Unused(e)
	require.NoError(t, err)
	require.Empty(t, unused)
	twice, err := g.UsedTwice(e)
	require.NoError(t, err)
	require.Empty(t, twice)

	g = modeltest.Build(t, overWaist+zip)
	e = modeltest.Edge(t, g, "shell.half.side")
	unused, err = g.Unused(e)
	require.NoError(t, err)
	require.Equal(t, []model.Part{{To: e.Length(), Half: model.Right}}, unused)
}
