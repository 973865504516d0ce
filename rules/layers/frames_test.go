package layers

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The lining is as wide as its shell and is drawn 8 mm to the right of it: only the
// outlines, laid on each other as they are drawn, show that.
const moved = `
garment "bodice" { unit = "cm" }
level "waist" { y = 20 }
level "hip"   { y = 40 }
layer "shell" {
  side = "outer"
  piece "front" {
    SHELL
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [18, 20], [20, 40], [20, 45]] }
    edge "hem"    { line = [[20, 45], [0, 45]] }
    edge "centre" { line = [[0, 45], [0, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    LINING
    edge "top"    { line = [[0.8, 0], [20.8, 0]] }
    edge "side"   { line = [[20.8, 0], [18.8, 20], [20.8, 40], [20.8, 45]] }
    edge "hem"    { line = [[20.8, 45], [0.8, 45]] }
    edge "centre" { line = [[0.8, 45], [0.8, 0]] }
  }
}
inside "front" {
  outer = shell.front
  inner = lining.front
  ALIGN
}
`

func TestPiecesWithTheSameLevelsAreInOneFrame(t *testing.T) {
	const parted = "shell.front and lining.front are not drawn in one frame: they have the waist level at different heights, and the inside names no share to lay them together by"
	for _, c := range []struct {
		name, shell, lining, align string
		reason                     string // "" where 8 mm are found
	}{
		{"the garment's levels", "", "", "", ""},
		{"the same levels of their own", "levels = { waist = 20, hip = 40 }", "levels = { waist = 20, hip = 40 }", "", ""},
		{"by the draft", "levels = { waist = 20, hip = 40 }", "levels = { hip = 40, waist = 20 }", `align = "draft"`, ""},
		{"one level in common", "levels = { waist = 20, hip = 40 }", "levels = { hip = 40 }", "", ""},
		{"one with its own at the garment's heights", "", "levels = { waist = 20, hip = 40 }", "", ""},
		{"other units", "levels = { waist = mm(200) }", "levels = { waist = inch(7.874) }", "", ""},
		{"lower by 3 mm", "levels = { waist = 20, hip = 40 }", "levels = { waist = 20.3, hip = 40.3 }", "", parted},
		{"one level lower", "levels = { waist = 20.4, hip = 40 }", "levels = { waist = 20, hip = 40 }", "", parted},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := strings.NewReplacer("SHELL", c.shell, "LINING", c.lining, "ALIGN", c.align).Replace(moved)
			result := look(t, InnerWithinOuter, src)
			if c.reason != "" {
				require.Contains(t, reasons(result.NotPossible), "outline")
				require.Equal(t, c.reason, reasons(result.NotPossible)["outline"])
				return
			}
			require.NotEmpty(t, result.Findings)
			for _, f := range result.Findings {
				require.True(t, strings.HasPrefix(f.Key, "outline "), f.Key)
				require.InDelta(t, 8, f.Measured, 0.1)
			}
		})
	}
}

// Two sleeves, drafted on one sheet without levels: the lining is 8 mm wider along its
// underarm seam, and its cap 15 mm higher, as a lining's is.
func TestPiecesAtNoLevelAreComparedByTheirOutlines(t *testing.T) {
	sleeve := func(layer, side, wide, high string) string {
		return `layer "` + layer + `" {
  side = "` + side + `"
  piece "front" {
    edge "side" { line = [[0, 0], [20, 0], [20, 30]] }
    edge "rest" { line = [[20, 30], [0, 30], [0, 0]] }
  }
  piece "sleeve" {
    levels = {}
    edge "cap"   { line = [[100, 0], [115, ` + high + `], [130` + wide + `, 0]] }
    edge "front" { line = [[130` + wide + `, 0], [127` + wide + `, 40]] }
    edge "hem" {
      line   = [[127` + wide + `, 40], [103, 40]]
      finish = "hem"
    }
    edge "back"  { line = [[103, 40], [100, 0]] }
  }
}
seam "` + layer + `-cap"   { join = [` + layer + `.front.side, ` + layer + `.sleeve.cap] }
seam "` + layer + `-under" { join = [` + layer + `.sleeve.front, ` + layer + `.sleeve.back] }
`
	}
	for _, c := range []struct {
		name, wide, high, align string
		out                     float64
		reason                  string
	}{
		{"by the draft", "+0.8", "-14", "draft", 8, ""},
		{"alike", "", "-14", "draft", 0, ""},
		{"a higher cap alone", "", "-15.5", "draft", 0, "lining.sleeve stands 1.5 cm out over shell.sleeve.cap, which no share lays on it: whether it is meant to lie so is not known"},
		{"not said to be in one frame", "+0.8", "-14", "", 0, "shell.sleeve and lining.sleeve are not drawn in one frame, and the inside names no share to lay them together by"},
	} {
		t.Run(c.name, func(t *testing.T) {
			align := ""
			if c.align != "" {
				align = "  align = \"" + c.align + "\"\n"
			}
			src := "garment \"coat\" { unit = \"cm\" }\nlevel \"waist\" { y = 20 }\n" + sleeve("shell", "outer", "", "-14") + sleeve("lining", "inner", c.wide, c.high) +
				"inside \"sleeve\" {\n  outer = shell.sleeve\n  inner = lining.sleeve\n" + align + "}\n"
			result := look(t, InnerWithinOuter, src)
			if c.out == 0 {
				require.Empty(t, result.Findings)
			} else {
				require.Len(t, result.Findings, 1)
				require.InDelta(t, c.out, result.Findings[0].Measured, 0.1)
			}
			if c.reason == "" {
				require.Empty(t, result.NotPossible)
			} else {
				require.Equal(t, c.reason, reasons(result.NotPossible)["outline"])
			}
		})
	}
}
