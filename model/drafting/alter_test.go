package drafting_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/curve"
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
	require.Equal(t, "alter.wrong moves edges sideways, and shell.front.hem runs across: move it by down or up", diags[0].Summary)
}

// A straight neckline lowered at its start by 1 cm, by the name of its end or of the
// edge it meets there; what one alteration lowers another lifts again,
// exactly, in any order.
func TestDown(t *testing.T) {
	const neck = `garment "bib" { unit = "cm" }
level "waist" { y = 20 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "neck"     { line = [[0, 10], [8, 0]] }
    edge "shoulder" { line = [[8, 0], [20, 4]] }
    edge "side"     { line = [[20, 4], [20, 60]] }
    edge "hem"      { line = [[20, 60], [0, 60]] }
    edge "centre"   { line = [[0, 60], [0, 10]] }
  }
}
`
	lower := func(name, way, amounts string) string {
		return "alter \"" + name + "\" {\n  edges = shell.front.neck\n  " + way + " = { " + amounts + " }\n}\n"
	}
	line := func(src string) *model.Edge {
		return modeltest.Edge(t, modeltest.Build(t, src), "shell.front.neck")
	}
	for _, alter := range []string{
		lower("a", "down", "start = 1, end = 0"), lower("a", "down", "centre = 1, shoulder = 0"), lower("a", "up", "start = -1, end = 0"),
	} {
		p := line(neck + alter).Path
		for _, want := range []curve.Point{{X: 0, Y: 110}, {X: 40, Y: 55}, {X: 80, Y: 0}} { // half of the amount half way across
			_, off := p.Nearest(want)
			require.InDelta(t, 0, off, 1e-4)
		}
	}
	a, b := lower("a", "down", "start = 1.3, end = 0.4"), lower("b", "up", "end = 0.4, centre = 1.3")
	for _, both := range []string{a + b, b + a} {
		altered := line(neck + both)
		require.Equal(t, line(neck).Path.Segments(), altered.Path.Segments())
	}
	outward := "alter \"c\" {\n  edges = shell.front.side\n  outward = { waist = 1 }\n}\n"
	side := modeltest.Edge(t, modeltest.Build(t, neck+outward), "shell.front.side")
	require.InDelta(t, 210, side.Path.At(side.Length()/2).X, 1e-6)
}
