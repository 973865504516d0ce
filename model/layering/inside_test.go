package layering_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/modeltest"
)

// A shell and a lining of straight lines, 20 and 18 cm across on the fold, the
// lining with a dart of 3 cm at the waist.
const lined = `
garment "bodice" { unit = "cm" }
level "bust"  { y = 0 }
level "waist" { y = 20 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [20, 20]] }
    edge "hem"    { line = [[20, 20], [0, 20]] }
    edge "centre" { line = [[0, 20], [0, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [18, 0]] }
    edge "side"   { line = [[18, 0], [21, 20]] }
    edge "hem"    { line = [[21, 20], [0, 20]] }
    edge "centre" { line = [[0, 20], [0, 0]] }
    dart "waist" {
      centre = [9, 16]
      intake = 3
      up     = 8
      down   = 4
    }
  }
  piece "whole" {
    edge "top"   { line = [[-18, 0], [18, 0]] }
    edge "right" { line = [[18, 0], [18, 20]] }
    edge "hem"   { line = [[18, 20], [-18, 20]] }
    edge "left"  { line = [[-18, 20], [-18, 0]] }
  }
}
inside "front" {
  outer = shell.front
  inner = lining.front
}
inside "whole" {
  outer = shell.front
  inner = lining.whole
}
`

func TestClearance(t *testing.T) {
	g := modeltest.Build(t, lined)
	at := func(n *model.Inside, l *model.Level) float64 {
		c, err := layering.ClearanceAt(n, l)
		require.NoError(t, err)
		return c
	}
	require.InDelta(t, 20, at(g.Insides[0], g.Levels[0]), 1e-9)
	require.InDelta(t, -10, at(g.Insides[0], g.Levels[1]), 1e-9)
	require.InDelta(t, 40, at(g.Insides[1], g.Levels[0]), 1e-9, "half against whole: both whole")
	require.True(t, layering.SameHalves(g.Insides[0]))
	require.False(t, layering.SameHalves(g.Insides[1]))
}

func TestDartsBetween(t *testing.T) {
	for _, c := range []struct {
		name, from, to string
		change         [2]string
		lower          float64 // in the outer frame
		want           float64
	}{
		{"all of it", "bust", "waist", [2]string{}, 0, 30},
		{"above the dart", "bust", "under", [2]string{}, 0, 0},
		{"the upper half", "under", "mid", [2]string{}, 0, 15},
		{"the lower end", "low", "waist", [2]string{}, 0, 15},
		{"the shell has one too", "bust", "waist", [2]string{"[0, 0]] }\n  }\n}\nlayer \"lining\"",
			"[0, 0]] }\n    dart \"waist\" {\n      centre = [9, 16]\n      intake = 2\n      up = 8\n      down = 4\n    }\n  }\n}\nlayer \"lining\""}, 0, 10},
		{"not in one frame", "bust", "waist", [2]string{"piece \"front\" {\n    fold = centre\n    edge \"top\"    { line = [[0, 0], [20",
			"piece \"front\" {\n    fold = centre\n    levels = { bust = 0, waist = 20 }\n    edge \"top\"    { line = [[0, 0], [20"}, math.NaN(), 30},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Contains(t, lined, c.change[0])
			src := strings.Replace(lined, c.change[0], c.change[1], 1)
			src += "level \"under\" { y = 8 }\nlevel \"mid\" { y = 12 }\nlevel \"low\" { y = 18 }\n"
			g := modeltest.Build(t, src)
			named := map[string]*model.Level{}
			for _, l := range g.Levels {
				named[l.Name] = l
			}
			top, _ := g.Insides[0].Inner.LevelY(named[c.from])
			bottom, _ := g.Insides[0].Inner.LevelY(named[c.to])
			most, err := layering.DartsBetween(g.Insides[0], top, bottom, c.lower)
			require.NoError(t, err)
			require.InDelta(t, c.want, most, 1e-4, "what is taken out is asked for just inside the darts' ends")
		})
	}
}

func TestBesideEachOther(t *testing.T) {
	for _, c := range []struct {
		name string
		want bool
	}{{"one over the other", false}, {"to the right of it", true}} {
		t.Run(c.name, func(t *testing.T) {
			src := lined
			if c.want {
				i := strings.Index(src, `layer "lining"`)
				moved := strings.NewReplacer("[0, 0]", "[30, 0]", "[18, 0]", "[48, 0]", "[21, 20]", "[51, 20]", "[0, 20]", "[30, 20]", "[9, 16]", "[39, 16]")
				src = src[:i] + moved.Replace(src[i:])
			}
			g := modeltest.Build(t, src)
			beside, err := layering.BesideEachOther(g.Insides[0], g)
			require.NoError(t, err)
			require.Equal(t, c.want, beside)
		})
	}
}
