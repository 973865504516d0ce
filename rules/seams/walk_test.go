package seams_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

// shell puts pieces into the shell of a garment drafted in centimetres.
func shell(pieces, rest string) string {
	return "garment \"trial\" { unit = \"cm\" }\nlevel \"waist\" { y = 20 }\nlayer \"shell\" {\n  side = \"outer\"\n" + pieces + "}\n" + rest
}

// The front's side seam runs down in the drawing, 40 cm.
const front = `piece "front" {
  edge "top"    { line = [[0, 0], [20, 0]] }
  edge "side"   { line = [[20, 0], [20, 40]] }
  edge "hem"    { line = [[20, 40], [0, 40]] }
  edge "centre" { line = [[0, 40], [0, 0]] }
}
`

// The figures are closed forms: all edges are straight.
func TestWalk(t *testing.T) {
	for _, c := range []struct{ name, pieces, rest string }{
		{"the back is drawn turned over and runs upward", front + `piece "back" {
  edge "hem"  { line = [[60, 40], [40, 40]] }
  edge "side" { line = [[40, 40], [40, 0]] }
  edge "top"  { line = [[40, 0], [60, 0]] }
  edge "cb"   { line = [[60, 0], [60, 40]] }
}
`, `seam "side" { join = [shell.front.side, shell.back.side] }`},
		{"a dart on the side is closed first", front + `piece "back" {
  edge "side" { line = [[40, 0], [40, 43]] }
  edge "hem"  { line = [[40, 43], [60, 43], [60, 0], [40, 0]] }
  dart "bust" {
    on     = side
    at     = 12
    intake = 3
    tip    = [50, 12]
  }
}
`, `seam "side" { join = [shell.front.side, shell.back.side] }`},
		{"a side of two edges", front + `piece "yoke" {
  edge "side" { line = [[40, 0], [40, 15]] }
  edge "rest" { line = [[40, 15], [60, 15], [60, 0], [40, 0]] }
}
piece "skirt" {
  edge "side" { line = [[40, 15], [40, 40.5]] }
  edge "rest" { line = [[40, 40.5], [60, 40.5], [60, 15], [40, 15]] }
}
`, `seam "side" { join = [shell.front.side, [shell.yoke.side, shell.skirt.side]] } # want seam-walk error -5mm`},
		{"the halves of a mirrored pair", front, `seam "cf" { join = [shell.front.centre, shell.front.centre] }`},
		{"known by tape alone", `piece "front" {
  edge "side" { length = 41.2 }
}
piece "back" {
  edge "side" { length = 40.9 }
}
`, `seam "side" { join = [shell.front.side, shell.back.side] } # want seam-walk warning 3mm`},
		{"within the ease that is meant", `piece "front" {
  edge "shoulder" { length = 12 }
}
piece "back" {
  edge "shoulder" { length = 12.8 }
}
`, `seam "shoulder" {
  join = [shell.back.shoulder, shell.front.shoulder]
  ease = [0.6, 1]
}`},
		{"less than the ease that is meant", `piece "front" {
  edge "shoulder" { length = 12 }
}
piece "back" {
  edge "shoulder" { length = 12.1 }
}
`, `seam "shoulder" {
  join = [shell.back.shoulder, shell.front.shoulder] # want seam-walk error -5mm
  ease = [0.6, 1]
}`},
		{"no ease is not any ease", `piece "sleeve" {
  edge "cap" { length = 45 }
}
piece "body" {
  edge "armhole" { length = 42 }
}
`, `seam "armhole" {
  join = [shell.sleeve.cap, shell.body.armhole] # want seam-walk error 20mm
  ease = [null, 1]
}`},
		{"a part of an edge, to a level", front + `piece "back" {
  edge "side" { line = [[40, 20], [40, 40.2]] }
  edge "rest" { line = [[40, 40.2], [60, 40.2], [60, 20], [40, 20]] }
}
`, `seam "side" { join = [part(shell.front.side, waist, end), shell.back.side] } # want seam-walk warning -2mm`},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &seams.Walk, shell(c.pieces, c.rest))
			require.Empty(t, r.Result.NotPossible)
		})
	}
}

func TestWalkSaysWhereItLies(t *testing.T) {
	for _, c := range []struct{ name, front, back, want string }{
		{"below the notch", "18", "18", "All of it lies between shell.front.notch.waist and shell.front.hem."},
		{"above the notch", "18.4", "18", "All of it lies between shell.front.top and shell.front.notch.waist."},
	} {
		t.Run(c.name, func(t *testing.T) {
			piece := func(name, length, at string) string {
				return `piece "` + name + `" {
  edge "side" { line = [[20, 0], [20, ` + length + `]] }
  edge "hem"  { line = [[20, ` + length + `], [0, ` + length + `]] }
  edge "cf"   { line = [[0, ` + length + `], [0, 0]] }
  edge "top"  { line = [[0, 0], [20, 0]] }
  notch "waist" {
    on = side
    at = ` + at + `
  }
}
`
			}
			r := ruletest.Spec(t, &seams.Walk, shell(piece("front", "40.4", c.front)+piece("back", "40", c.back),
				`seam "side" { join = [shell.front.side, shell.back.side] } # want seam-walk error 4mm`))
			f := r.Result.Findings[0]
			require.Contains(t, f.Message, "shell.front.side is 4 mm longer than shell.back.side (40.4 cm against 40 cm); no more than 3.2 mm is allowed. "+c.want)
			require.Len(t, f.Related, 1)
			require.Equal(t, "shorten shell.front.side by 4 mm, or let out shell.back.side by as much", f.Mend.Title)
		})
	}
}

func TestWalkNotPossible(t *testing.T) {
	r := ruletest.Spec(t, &seams.Walk, shell(`piece "front" {
  edge "side" { length = 41 }
}
piece "back" {
  edge "side" { length = 40 }
}
`, `seam "side" { join = [part(shell.front.side, waist, end), shell.back.side] }`))
	require.Len(t, r.Result.NotPossible, 1)
	require.Equal(t, `shell.front.side has no drawing and no notch called "waist" that would mark the level`, r.Result.NotPossible[0].Reason)
}
