package model_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
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
			g := build(t, src)
			girth, err := g.Girth(g.Layers[0], level(g, c.level))
			if c.reason != "" {
				require.EqualError(t, err, c.reason)
				return
			}
			require.NoError(t, err)
			require.InDelta(t, c.want, girth, 1e-6)
		})
	}
}
