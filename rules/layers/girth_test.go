package layers

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A tube of one piece on the fold, 40 cm round, over another and a third.
const tubes = `
garment "tubes" { unit = "cm" }
level "waist" { y = 10 }
layer "shell" {
  side = "outer"
  piece "tube" {
    cut = 2
    edge "top"   { line = [[0, 0], [20, 0]] }
    edge "right" { line = [[20, 0], [20, 20]] }
    edge "hem"   { line = [[20, 20], [0, 20]] }
    edge "left"  { line = [[0, 20], [0, 0]] }
  }
}
layer "lining" {
  side  = "inner"
  order = 2
  piece "tube" {
    cut = 4
    edge "top"   { line = [[0, 0], [10, 0]] }
    edge "right" { line = [[10, 0], [10, 20]] }
    edge "hem"   { line = [[10, 20], [0, 20]] }
    edge "left"  { line = [[0, 20], [0, 0]] }
  }
}
layer "canvas" {
  side  = "between"
  order = 1
  piece "tube" {
    edge "top"   { line = [[0, 0], [39, 0]] }
    edge "right" { line = [[39, 0], [39, 20]] }
    edge "hem"   { line = [[39, 20], [0, 20]] }
    edge "left"  { line = [[0, 20], [0, 0]] }
  }
}
seam "shell"  { join = [shell.tube.right, shell.tube.left] }
seam "lining" { join = [lining.tube.right, lining.tube.left] }
seam "canvas" { join = [canvas.tube.right, canvas.tube.left] }
`

func TestGirth(t *testing.T) {
	const lining = "inside \"tube\" {\n  outer = shell.tube\n  inner = lining.tube\n  clearance = { waist = "
	for _, c := range []struct {
		name    string
		change  []string
		more    string
		want    map[string]float64
		reasons map[string]string
		passed  int
	}{
		{"the lining larger than the canvas over it", nil, "", map[string]float64{"lining in canvas": 10}, nil, 1},
		{"an open canvas is passed over", []string{"seam \"canvas\" { join = [canvas.tube.right, canvas.tube.left] }\n", ""}, "", nil, nil, 1},
		{"an open canvas that states an ease", []string{"seam \"canvas\" { join = [canvas.tube.right, canvas.tube.left] }\n", "", "order = 1\n", "order = 1\n  ease = { waist = [0, 9] }\n"}, "", nil,
			map[string]string{"canvas": "canvas is open at the waist level: canvas.tube.left is not sewn, folded or closed there"}, 1},
		{"a millimetre more", []string{"[39, 0]", "[39.95, 0]", "[39, 0]", "[39.95, 0]", "[39, 20]", "[39.95, 20]", "[39, 20]", "[39.95, 20]"}, "", nil, nil, 2},
		{"the lining judged piece by piece", nil, lining + "0 }\n}\n", nil, nil, 1},
		{"canvas outside all", []string{"order = 1", "order = 0", `layer "shell" {`, "layer \"shell\" {\n  order = 1"}, "",
			map[string]float64{"shell in canvas": 10}, nil, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, Girth, change(t, tubes, c.change...)+c.more)
			requireKeyed(t, c.want, result.Findings)
			if c.reasons == nil {
				require.Empty(t, result.NotPossible)
			} else {
				require.Equal(t, c.reasons, reasons(result.NotPossible))
			}
			require.Equal(t, c.passed, result.Passed)
		})
	}
}

// Panels that no inside pairs may still belong to a lining that is meant larger,
// as its other pieces say.
func TestGirthMeantLarger(t *testing.T) {
	src := change(t, tubes, "seam \"canvas\" { join = [canvas.tube.right, canvas.tube.left] }\n", "",
		"cut = 4", "cut = 2", "[10, 0]", "[11, 0]", "[10, 0]", "[11, 0]", "[10, 20]", "[11, 20]", "[10, 20]", "[11, 20]",
		`  piece "tube" {
    cut = 2
    edge "top"   { line = [[0, 0], [11`, `  piece "gore" {
    cut = 2
    edge "top"   { line = [[30, 0], [41, 0]] }
    edge "right" { line = [[41, 0], [41, 20]] }
    edge "hem"   { line = [[41, 20], [30, 20]] }
    edge "left"  { line = [[30, 20], [30, 0]] }
  }
  piece "tube" {
    cut = 2
    edge "top"   { line = [[0, 0], [11`)
	src += "seam \"gore\" { join = [lining.gore.right, lining.gore.left] }\n"
	result := look(t, Girth, src)
	requireKeyed(t, map[string]float64{"lining in shell": 40}, result.Findings)
	require.Equal(t, "lining measures 4 cm more round at the waist level than shell, which lies over it (44 cm against 40 cm); no more than 1 mm "+
		"is allowed. Take lining in or let shell out, or state in an inside how much larger it is meant to be.", result.Findings[0].Message)
	inside := func(low string) string {
		return "inside \"tube\" {\n  outer = shell.tube\n  inner = lining.tube\n  clearance = { waist = [" + low + ", null] }\n}\n"
	}
	requireKeyed(t, nil, look(t, Girth, src+inside("-2")).Findings)
	requireKeyed(t, map[string]float64{"lining in shell": 40}, look(t, Girth, src+inside("-1.9")).Findings)
	requireKeyed(t, nil, look(t, Girth, src+inside("null")).Findings)
}
