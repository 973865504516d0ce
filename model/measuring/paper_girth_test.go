package measuring_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/measuring"
	"understitch/model/modeltest"
)

// A skirt on paper: a front on the fold and two back halves, the hip marked on the
// side of the back alone.
const paperSkirt = `
garment "skirt" { unit = "cm" }
level "waist" {}
level "hip"   {}
layer "shell" {
  side = "outer"
  piece "front" {
    fold  = centre
    width = { waist = 18, hip = 25 }
    edge "waist"  { length = 18 }
    edge "side"   { length = 60 }
    edge "hem"    { length = 30 }
    edge "centre" { length = 60 }
  }
  piece "back" {
    cut   = 2
    width = { waist = 18, hip = 24 }
    edge "waist"  { length = 18 }
    edge "centre" { length = 60 }
    edge "hem"    { length = 30 }
    edge "side"   { length = 60 }
    notch "hip" {
      on = side
      at = 40
    }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
seam "back" { join = [shell.back.centre, shell.back.centre] }
`

// The same skirt hung on a yoke that has a waist only.
const yokedSkirt = `
garment "skirt" { unit = "cm" }
level "waist" {}
level "hip"   {}
layer "shell" {
  side = "outer"
  piece "yoke" {
    cut   = 2
    width = { waist = 36 }
    edge "waist"  { length = 36 }
    edge "side"   { length = 9 }
    edge "bottom" { length = 40 }
    edge "centre" { length = 9 }
  }
  piece "skirt" {
    cut   = 2
    width = { hip = 50 }
    edge "top"    { length = 40 }
    edge "side"   { length = 50 }
    edge "hem"    { length = 60 }
    edge "centre" { length = 50 }
  }
}
seam "yoke"         { join = [shell.yoke.bottom, shell.skirt.top] }
seam "yoke-side"    { join = [shell.yoke.side, shell.yoke.side] }
seam "yoke-centre"  { join = [shell.yoke.centre, shell.yoke.centre] }
seam "skirt-side"   { join = [shell.skirt.side, shell.skirt.side] }
seam "skirt-centre" { join = [shell.skirt.centre, shell.skirt.centre] }
`

// Two fronts side by side, one over the other, beside one back.
const halfYokedSkirt = `
garment "skirt" { unit = "cm" }
level "waist" {}
level "hip"   {}
layer "shell" {
  side = "outer"
  piece "yoke" {
    fold  = centre
    width = { waist = 18 }
    edge "waist"  { length = 18 }
    edge "side"   { length = 9 }
    edge "bottom" { length = 20 }
    edge "centre" { length = 9 }
  }
  piece "front" {
    fold  = centre
    width = { hip = 25 }
    edge "top"    { length = 20 }
    edge "side"   { length = 51 }
    edge "hem"    { length = 30 }
    edge "centre" { length = 51 }
  }
  piece "back" {
    fold  = centre
    width = { waist = 18, hip = 24 }
    edge "waist"  { length = 18 }
    edge "side"   { length = 60 }
    edge "hem"    { length = 30 }
    edge "centre" { length = 60 }
  }
}
seam "yoke" { join = [shell.yoke.bottom, shell.front.top] }
seam "side" { join = [[shell.yoke.side, shell.front.side], shell.back.side] }
`

func TestGirthOfPaperPieces(t *testing.T) {
	const remedy = ": state its width there, or levels = {} if it reaches only those it has a width at"
	for _, c := range []struct {
		name, src, level string
		change           []string
		want             float64
		reason           string
	}{
		{"all widths stated", paperSkirt, "hip", nil, 2*250 + 2*240, ""},
		{"one left out, beside a piece that has it", paperSkirt, "hip", []string{", hip = 25", ""}, 0,
			"shell.front has no drawing and no width at the hip level, which shell.back reaches beside it (seam.side)" + remedy},
		{"the other levels stand", paperSkirt, "waist", []string{", hip = 25", ""}, 4 * 180, ""},
		{"one left out on a piece that carries the level's notch", paperSkirt, "hip", []string{", hip = 24", ""}, 0,
			"shell.back has no drawing and no width at the hip level, which shell.back.notch.hip marks on it" + remedy},
		{"one left out, and not sewn to anything", paperSkirt, "hip", []string{", hip = 25", "", `seam "side" { join = [shell.front.side, shell.back.side] }`, ""}, 0,
			"shell.front has no drawing and no width at the hip level, and is sewn to nothing that would show whether it ends above or below" + remedy},
		{"said to end above", paperSkirt, "hip", []string{"width = { waist = 18, hip = 25 }", "width = { waist = 18 }\nlevels = {}"}, 2 * 240, ""},
		{"said to reach it, without a width", paperSkirt, "hip", []string{"width = { waist = 18, hip = 25 }", "width = { waist = 18 }\nlevels = { hip = 20 }"}, 0,
			"shell.front says that it reaches the hip level, and has no drawing and no width there: state what it measures across"},
		{"below a yoke", yokedSkirt, "hip", nil, 2 * 500, ""},
		{"in a yoke", yokedSkirt, "waist", nil, 2 * 360, ""},
		{"a yoke that nothing shows the ends of", yokedSkirt, "hip", []string{"edge \"waist\"  { length = 36 }\n", "", "    edge \"top\"    { length = 40 }\n", "", "shell.skirt.top", "shell.skirt.hem",
			"yoke.side, shell.yoke.side", "yoke.side, shell.yoke.centre", "skirt.side, shell.skirt.side", "skirt.side, shell.skirt.centre",
			`seam "yoke-centre"  { join = [shell.yoke.centre, shell.yoke.centre] }`, "", `seam "skirt-centre" { join = [shell.skirt.centre, shell.skirt.centre] }`, ""}, 0,
			"shell.yoke has no drawing and no width at the hip level, which shell.skirt reaches beside it (seam.yoke)" + remedy},
		{"where the level runs on below the yoke", halfYokedSkirt, "hip", nil, 2*250 + 2*240, ""},
		{"where it runs on above", halfYokedSkirt, "waist", nil, 4 * 180, ""},
		{"where it runs on into neither", halfYokedSkirt, "hip", []string{"width = { hip = 25 }", "width = { waist = 25 }"}, 0,
			"shell.yoke has no drawing and no width at the hip level, which shell.back reaches beside it (seam.side)" + remedy},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := c.src
			for i := 0; i < len(c.change); i += 2 {
				require.Contains(t, src, c.change[i])
				src = strings.Replace(src, c.change[i], c.change[i+1], 1)
			}
			g := modeltest.Build(t, src)
			girth, err := measuring.Girth(g, g.Layers[0], levelNamed(t, g, c.level))
			if c.reason != "" {
				require.EqualError(t, err, c.reason)
				return
			}
			require.NoError(t, err)
			require.InDelta(t, c.want, girth, 1e-6) // closed form: the widths, added up
		})
	}
}
