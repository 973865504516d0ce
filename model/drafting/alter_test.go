package drafting_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/drafting"
	"understitch/model/modeltest"
)

// fitted is a skirt front with a curved side, its side altered as stated.
func fitted(alterations string) string {
	return `
garment "skirt" { unit = "mm" }
level "waist" { y = 0 }
level "hip"   { y = 200 }
level "hem"   { y = 600 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist"  { smooth = [[0, 12], [90, 4], [180, 0]] }
    edge "side"   { smooth = [[180, 0], [225, 120], [240, 200], [265, 600]] }
    edge "hem"    { line = [[265, 600], [0, 600]] }
    edge "centre" { line = [[0, 600], [0, 12]] }
    notch "hip" {
      on    = side
      level = hip
    }
    notch "zip" {
      on = side
      at = 180
    }
    notch "old" {
      on    = side
      point = [240, 200]
    }
    notch "hem" {
      on = hem
      at = 100
    }
    dart "side" {
      on     = side
      at     = 120
      intake = 20
      tip    = [120, 110]
    }
  }
}
` + alterations
}

func TestAlterByTheSameEverywhereMovesByExactlyThat(t *testing.T) {
	for _, d := range []float64{8, -5} {
		g := modeltest.Build(t, fitted(fmt.Sprintf(`
alter "fitting" {
  edges  = [shell.front.side]
  inward = { hip = %g }
}`, d)))
		side := modeltest.Edge(t, g, "shell.front.side")
		require.NotNil(t, side.Drafted)
		// Away from the trimmed waist corner every point has moved sideways by d.
		for s := 20.0; s < side.Drafted.Length(); s += 10 {
			p := side.Drafted.At(s)
			p.X -= d
			_, off := side.Path.Nearest(p)
			require.Less(t, off, 1e-6)
		}
		for _, e := range side.Piece.Edges {
			require.InDelta(t, 0, e.Path.End().Dist(e.Neighbour(true).Path.Start()), 1e-6, "the corners stay closed")
		}
	}
}

func TestAnAlterationAndItsInverseGiveBackTheDrawing(t *testing.T) {
	g := modeltest.Build(t, fitted(`
alter "first-fitting" {
  edges  = [shell.front.side]
  inward = { waist = 14, hip = 6, hem = -3 }
}
alter "undone" {
  edges  = [shell.front.side]
  inward = { hem = 3, waist = -14, hip = -6 }
}`))
	plain := modeltest.Build(t, fitted(""))
	for i, e := range g.Edges() {
		want := plain.Edges()[i].Path
		require.InDelta(t, want.Length(), e.Length(), 1e-6)
		for s := 0.0; s <= want.Length(); s += 5 {
			require.InDelta(t, 0, want.At(s).Dist(e.Path.At(s)), 1e-6, e.Address())
		}
	}
}

func TestAlterCarriesNotchesAndDartsAtTheirHeight(t *testing.T) {
	g := modeltest.Build(t, fitted(`
alter "fitting" {
  edges  = [shell.front.side]
  inward = { waist = 14, hip = 6 }
}`))
	plain := modeltest.Build(t, fitted(""))
	height := func(g *model.Garment, name string) float64 {
		for _, n := range g.Notches() {
			if n.Name == name {
				p, err := n.Mark()
				require.NoError(t, err)
				return p.Y
			}
		}
		return math.NaN()
	}
	require.InDelta(t, height(plain, "zip"), height(g, "zip"), 1e-6)
	require.InDelta(t, 200, height(g, "hip"), 1e-6)
	for _, n := range g.Notches() {
		_, off, err := n.Position()
		require.NoError(t, err)
		switch n.Name {
		case "old":
			require.InDelta(t, 6, off, 0.2, "given by a point it stays on the old line")
		case "hem":
			// The hem's start was trimmed at the side, so the same place is now
			// nearer to it.
			require.InDelta(t, 94, n.At, 1e-6)
		}
	}
	d, was := g.Darts()[0], plain.Darts()[0]
	require.InDelta(t, was.On.Path.At(was.At).Y, d.On.Path.At(d.At).Y, 1e-6)
	require.Equal(t, was.Tip, d.Tip)
}

func TestAlterThatCannotBe(t *testing.T) {
	g := modeltest.Build(t, fitted(""))
	g.Alterations = []*model.Alteration{{
		Name:   "wrong",
		Edges:  []*model.Edge{modeltest.Edge(t, g, "shell.front.hem")},
		Inward: []model.LevelValue{{Level: g.Levels[0], Value: 5}},
	}}
	diags := drafting.Alter(g)
	require.Len(t, diags, 1)
	require.Equal(t, "alter.wrong moves edges sideways, and shell.front.hem runs across: move its points instead", diags[0].Summary)
}
