package model_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/measuring"
	"understitch/model/modeltest"
)

// A half back on the fold, 20 cm across and a pleat more, with an edge 20 cm down.
func pleated(pleat string) string {
	return `
garment "coat" { unit = "cm" }
level "chest" { y = 10 }
level "waist" { y = 30 }
layer "lining" {
  side = "inner"
  piece "back" {
    fold = centre
    edge "centre" { line = [[0, 40], [0, 0]] }
    edge "neck"   { line = [[0, 0], [26, 0]] }
    edge "side"   { line = [[26, 0], [26, 40]] }
    edge "hem"    { line = [[26, 40], [0, 40]] }
    pleat "p" {
` + pleat + `
    }
  }
}
`
}

// All figures are closed form: twice the depth, four times, and half of it at a fold.
func TestWhatAPleatFoldsAway(t *testing.T) {
	for _, c := range []struct {
		name, pleat        string
		neck, chest, waist float64
	}{
		{"knife", "on = neck\nat = 10\ndepth = 1.5\nto = chest", 230, 230, 260},
		{"box", "on = neck\nat = 10\ndepth = 1.5\nkind = \"box\"\nto = 20", 200, 200, 260},
		{"inverted, through", "on = neck\nat = 10\ndepth = 1.5\nkind = \"inverted\"\nto = end", 200, 200, 200},
		{"at its edge only", "on = neck\nat = 10\ndepth = 1.5", 230, 260, 260},
		{"half of it at the fold", "on = neck\nat = start\ndepth = 1.5\nto = waist", 245, 245, 245},
		{"from the hem up", "on = hem\nat = end\ndepth = 2\nto = waist", 260, 260, 240},
		{"across, it takes out height", "on = side\nat = 20\ndepth = 2\nto = end", 260, 260, 260},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := modeltest.Build(t, pleated(c.pleat))
			require.InDelta(t, c.neck, modeltest.Edge(t, g, "lining.back.neck").SewnLength(), 1e-9)
			for i, want := range []float64{c.chest, c.waist} {
				w, err := measuring.WidthOf(g.Pieces()[0], g.Levels[i])
				require.NoError(t, err)
				require.InDelta(t, want, w.Net, 1e-9)
				require.InDelta(t, 260-want, w.Gross-w.Net, 1e-9)
			}
		})
	}
}
