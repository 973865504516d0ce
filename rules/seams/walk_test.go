package seams_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/rules"
	"understitch/rules/inspect"
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
`, `seam "side" { join = [shell.front.side, [shell.yoke.side, shell.skirt.side]] } # fault seam-walk error -5mm`},
		{"the halves of a mirrored pair", front, `seam "cf" { join = [shell.front.centre, shell.front.centre] }`},
		{"known by tape alone", `piece "front" {
  edge "side" { length = 41.2 }
}
piece "back" {
  edge "side" { length = 40.9 }
}
`, `seam "side" { join = [shell.front.side, shell.back.side] } # fault seam-walk warning 3mm`},
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
  join = [shell.back.shoulder, shell.front.shoulder] # fault seam-walk error -5mm
  ease = [0.6, 1]
}`},
		{"no ease is not any ease", `piece "sleeve" {
  edge "cap" { length = 45 }
}
piece "body" {
  edge "armhole" { length = 42 }
}
`, `seam "armhole" {
  join = [shell.sleeve.cap, shell.body.armhole] # fault seam-walk error 20mm
  ease = [null, 1]
}`},
		{"a part of an edge, to a level", front + `piece "back" {
  edge "side" { line = [[40, 20], [40, 40.2]] }
  edge "rest" { line = [[40, 40.2], [60, 40.2], [60, 20], [40, 20]] }
}
`, `seam "side" { join = [part(shell.front.side, waist, end), shell.back.side] } # fault seam-walk warning -2mm`},
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
				`seam "side" { join = [shell.front.side, shell.back.side] } # fault seam-walk error 4mm`))
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

// Whatever a side seam looks like: the same line turned over, drawn from its
// other end and run on by some length is longer by that length, to the figure.
func TestWalkOfTheSameLineTurnedOver(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&seams.Walk})
	require.NoError(t, err)
	in := &inspect.Inspector{Engine: engine}
	rapid.Check(t, func(r *rapid.T) {
		sway := rapid.SliceOfN(rapid.IntRange(-30, 30), 3, 6).Draw(r, "sway")
		longer := (float64(rapid.IntRange(0, 60).Draw(r, "longer")) + 0.5) / 10 // millimetres, clear of the limit
		var down, up []string
		for i, x := range sway {
			down = append(down, fmt.Sprintf("[%.1f, %d]", 20+float64(x)/10, i*10))
			up = append([]string{fmt.Sprintf("[%.1f, %d]", 60-float64(x)/10, i*10)}, up...)
		}
		low := (len(sway) - 1) * 10
		src := shell(fmt.Sprintf(`piece "front" {
  edge "side"  { smooth = [%s] }
  edge "below" { line = [[%.1f, %d], [0, %[3]d]] }
  edge "rest"  { line = [[0, %[3]d], [0, 0], [%.1f, 0]] }
}
piece "back" {
  edge "run-on" { line = [[%.1f, %.4f], [%[5]f, %[3]d]] }
  edge "side"   { smooth = [%[7]s] }
  edge "rest"   { line = [[%.1f, 0], [90, 0], [%[5]f, %.4[6]f]] }
}
`, strings.Join(down, ", "), 20+float64(sway[len(sway)-1])/10, low, 20+float64(sway[0])/10,
			60-float64(sway[len(sway)-1])/10, float64(low)+longer/10, strings.Join(up, ", "), 60-float64(sway[0])/10),
			`seam "side" { join = [[shell.back.run-on, shell.back.side], shell.front.side] }`)
		report := in.Source(t.Context(), "trial.garment.hcl", []byte(src), inspect.Options{})
		require.Empty(r, report.Diagnostics)
		for _, list := range [][]rules.Finding{report.Result.Findings, report.Result.Closest} {
			for _, f := range list {
				require.InDelta(r, longer, f.Measured, 1e-6)
				require.Equal(r, longer > 1.6, f.Status == rules.Found)
			}
		}
		require.Equal(r, 1, len(report.Result.Findings)+report.Result.Passed)
	})
}
