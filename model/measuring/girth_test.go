package measuring_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/modeltest"
)

// A bodice over a skirt, both on the fold, 20 cm across at the waist seam on
// which the waist level lies; and a sleeve that no level crosses.
const bodiceAndSkirt = `
garment "dress" { unit = "cm" }
level "chest" { y = -20 }
level "bust"  { y = -10 }
level "waist" { y = 0 }
level "hip"   { y = 20 }
layer "shell" {
  side = "outer"
  piece "bodice_front" {
    fold = centre
    edge "waist"   { line = [[0, 0], [20, 0]] }
    edge "side"    { line = [[20, 0], [22, -14]] }
    edge "armhole" { smooth = [[22, -14], [17, -18], [16, -30]] }
    edge "neck"    { line = [[16, -30], [0, -25]] }
    edge "centre"  { line = [[0, -25], [0, 0]] }
  }
  piece "bodice_back" {
    fold = centre
    edge "waist"   { line = [[0, 0], [20, 0]] }
    edge "side"    { line = [[20, 0], [22, -14]] }
    edge "armhole" { smooth = [[22, -14], [17, -18], [16, -30]] }
    edge "neck"    { line = [[16, -30], [0, -28]] }
    edge "centre"  { line = [[0, -28], [0, 0]] }
  }
  piece "sleeve" {
    cut    = 2
    levels = {}
    edge "cap"  { length = 44 }
    edge "rest" { length = 90 }
  }
  piece "skirt_front" {
    fold = centre
    edge "waist"  { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [26, 40]] }
    edge "hem"    { line = [[26, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
  }
  piece "skirt_back" {
    fold = centre
    edge "waist"  { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [26, 40]] }
    edge "hem"    { line = [[26, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
  }
}
seam "side"    { join = [shell.bodice_front.side, shell.bodice_back.side] }
seam "skirt"   { join = [shell.skirt_front.side, shell.skirt_back.side] }
seam "front"   { join = [shell.bodice_front.waist, shell.skirt_front.waist] }
seam "back"    { join = [shell.bodice_back.waist, shell.skirt_back.waist] }
seam "armhole" { join = [[shell.bodice_front.armhole, shell.bodice_back.armhole], shell.sleeve.cap] }
`

func TestGirthWithSeamsAcross(t *testing.T) {
	level := func(g *model.Garment, name string) *model.Level {
		for _, l := range g.Levels {
			if l.Name == name {
				return l
			}
		}
		return nil
	}
	for _, c := range []struct {
		name, level string
		change      [2]string
		want        float64
		reason      string
	}{
		{"on the waist seam, once", "waist", [2]string{}, 4 * 200, ""},
		{"below it", "hip", [2]string{}, 4 * 230, ""},
		{"above it", "bust", [2]string{}, 4 * (200 + 20*10.0/14), ""},
		{"over the armhole into a sleeve", "chest", [2]string{}, 0,
			"shell is not closed at the chest level: it runs over shell.bodice_front.armhole into shell.sleeve, which has no width there"},
		{"a paper piece that may lie there", "hip", [2]string{"    levels = {}\n", ""}, 0,
			"shell.sleeve has no drawing and no width at the hip level (a piece that lies at no level says levels = {})"},
		{"into a piece that ends above", "hip", [2]string{`[[20, 0], [26, 40]] }
    edge "hem"    { line = [[26, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
  }
  piece "skirt_back"`, `[[20, 0], [22, 12]] }
    edge "hem"    { line = [[22, 12], [0, 12]] }
    edge "centre" { line = [[0, 12], [0, 0]] }
  }
  piece "skirt_back"`}, 0,
			"shell is not closed at the hip level: it runs over shell.skirt_back.side into shell.skirt_front, which has no width there"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := bodiceAndSkirt
			if c.change[0] != "" {
				require.Contains(t, src, c.change[0])
				src = strings.Replace(src, c.change[0], c.change[1], 1)
			}
			g := modeltest.Build(t, src)
			girth, err := measuring.Girth(g, g.Layers[0], level(g, c.level))
			if c.reason != "" {
				require.EqualError(t, err, c.reason)
				return
			}
			require.NoError(t, err)
			require.InDelta(t, c.want, girth, 1e-6)
		})
	}
}

// Paper pieces do not show which of them lies above: where both state a width at
// the seam between them, the cloth is still there once.
func TestGirthAtAWaistSeamOnPaper(t *testing.T) {
	const src = `
garment "dress" { unit = "cm" }
level "waist" {}
level "hip"   {}
layer "shell" {
  side = "outer"
  piece "bodice" {
    cut   = 2
    width = { waist = 36 }
    edge "waist" { length = 36 }
    edge "side"  { length = 20 }
  }
  piece "skirt" {
    cut   = 2
    width = { waist = 36.5, hip = 48 }
    edge "waist" { length = 36 }
    edge "side"  { length = 50 }
  }
}
seam "waist" { join = [shell.bodice.waist, shell.skirt.waist] }
seam "side"  { join = [shell.bodice.side, shell.bodice.side] }
seam "skirt" { join = [shell.skirt.side, shell.skirt.side] }
`
	g := modeltest.Build(t, src)
	for name, want := range map[string]float64{"waist": 720, "hip": 960} {
		girth, err := measuring.Girth(g, g.Layers[0], levelNamed(t, g, name))
		require.NoError(t, err)
		require.InDelta(t, want, girth, 1e-6, name)
	}
}

// Where the waist seam dips, part of a level through it runs over the bodice and
// part over the skirt, and they make up one line between them.
func TestGirthAtADippedWaistSeam(t *testing.T) {
	src := bodiceAndSkirt
	src = strings.ReplaceAll(src, "[0, 0], [20, 0]", "[0, 1], [20, 0]")
	src = strings.ReplaceAll(src, "[0, -25], [0, 0]", "[0, -25], [0, 1]")
	src = strings.ReplaceAll(src, "[0, -28], [0, 0]", "[0, -28], [0, 1]")
	src = strings.ReplaceAll(src, "[0, 40], [0, 0]", "[0, 40], [0, 1]")
	// the skirt's side goes out by 6 in 40
	for y, want := range map[string]float64{"0": 800, "0.5": 4 * (200 + 0.15*5), "0.999": 4 * (200 + 0.15*9.99)} {
		g := modeltest.Build(t, strings.Replace(src, `level "waist" { y = 0 }`, `level "waist" { y = `+y+` }`, 1))
		girth, err := measuring.Girth(g, g.Layers[0], levelNamed(t, g, "waist"))
		require.NoError(t, err)
		require.InDelta(t, want, girth, 1e-6, y)
	}
}

// The room between two layers at a waist seam is that between the pieces above it.
func TestRoomAtAWaistSeam(t *testing.T) {
	src := `
garment "dress" { unit = "cm" }
level "waist" { y = 0 }
`
	for _, l := range []struct{ name, side, x string }{{"shell", "outer", "20"}, {"lining", "inner", "19"}} {
		src += `layer "` + l.name + `" {
  side = "` + l.side + `"
  piece "bodice" {
    cut = 2
    edge "waist" { line = [[0, 0], [` + l.x + `, 0]] }
    edge "side"  { line = [[` + l.x + `, 0], [` + l.x + `, -20]] }
    edge "top"   { line = [[` + l.x + `, -20], [0, -20]] }
    edge "front" { line = [[0, -20], [0, 0]] }
  }
  piece "skirt" {
    cut = 2
    edge "waist" { line = [[0, 0], [` + l.x + `, 0]] }
    edge "side"  { line = [[` + l.x + `, 0], [` + l.x + `, 40]] }
    edge "hem"   { line = [[` + l.x + `, 40], [0, 40]] }
    edge "front" { line = [[0, 40], [0, 0]] }
  }
}
seam "` + l.name + `-waist" { join = [` + l.name + `.bodice.waist, ` + l.name + `.skirt.waist] }
`
	}
	src += `inside "bodice" {
  outer = shell.bodice
  inner = lining.bodice
}
inside "skirt" {
  outer = shell.skirt
  inner = lining.skirt
}
`
	g := modeltest.Build(t, src)
	rooms := measuring.Rooms(g, layerNamed(t, g, "shell"), layerNamed(t, g, "lining"))
	require.Len(t, rooms, 1)
	require.InDelta(t, 400, rooms[0].Outer, 1e-6)
	require.InDelta(t, 380, rooms[0].Inner, 1e-6)
}
