package allowances_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/allowances"
	"understitch/rules/ruletest"
)

// shell puts pieces into the shell of a garment drafted in centimetres.
func shell(pieces, rest string) string {
	return "garment \"trial\" { unit = \"cm\" }\nlevel \"waist\" { y = 20 }\nlayer \"shell\" {\n  side = \"outer\"\n" + pieces + "}\n" + rest
}

// paper is an edge known by tape, with what else it states.
func paper(edge, length, rest string) string {
	return fmt.Sprintf("edge %q {\n    length = %s\n    %s\n  }\n", edge, length, rest)
}

func piece(name, body string) string {
	return fmt.Sprintf("piece %q {\n  %s}\n", name, body)
}

const sideSeam = `seam "side" { join = [shell.front.side, shell.back.side] }`

// Nothing tells which way a single edge known by tape runs past a list of them,
// but the cutter.
const listed = `seam "side" {
  join = [shell.front.side, [shell.yoke.side, shell.skirt.side]]
  flip = true
}`

func TestMatch(t *testing.T) {
	for _, c := range []struct {
		name, pieces, rest string
		passed             int
	}{
		{"alike", piece("front", paper("side", "40", "allowance = 1")) + piece("back", paper("side", "40", "allowance = mm(10)")), sideSeam, 1},
		{"the one that states its own is doubted", piece("front", paper("side", "40", "allowance = 1.2 # fault allowance-match error 2mm")) +
			piece("back", "allowance = 1\n"+paper("side", "40", "")), sideSeam, 0},
		{"no allowance against one, as in a lapped seam", piece("front", paper("side", "40", "allowance = 0")) +
			piece("back", paper("side", "40", "allowance = 1 # fault allowance-match error 10mm")), sideSeam, 0},
		{"the halves of a mirrored pair", piece("back", paper("side", "40", "allowance = 3")), `closure "zip" {
  kind  = "zip"
  edges = [shell.back.side, shell.back.side]
}`, 1},
		{"two joins of the same two edges are one fault", piece("front", paper("side", "40", "allowance = 1\n  }\n  notch \"waist\" {\n    on = side\n    at = 20")) +
			piece("back", paper("side", "40", "allowance = 2 # fault allowance-match error 10mm\n  }\n  notch \"waist\" {\n    on = side\n    at = 20")),
			`seam "upper" { join = [part(shell.front.side, start, waist), part(shell.back.side, start, waist)] }
seam "lower" { join = [part(shell.front.side, waist, end), part(shell.back.side, waist, end)] }`, 0},
		{"a side of two edges, one of which differs", piece("front", paper("side", "40", "allowance = 1")) +
			piece("yoke", paper("side", "15", "allowance = 1")) + piece("skirt", paper("side", "25", "allowance = 2 # fault allowance-match error 10mm")),
			listed, 1},
		{"two edges that both differ are one fault, by the worse", piece("front", paper("side", "40", "allowance = 1")) +
			piece("yoke", paper("side", "15", "allowance = 1.5")) + piece("skirt", paper("side", "25", "allowance = 2 # fault allowance-match error 10mm")),
			listed, 0},
		{"joins that are one place leave no sliver between them",
			piece("bodice", paper("front", "14.9", "allowance = 1")) + piece("peplum", paper("front", "25.1", "allowance = 2")) +
				piece("yoke", paper("back", "15", "allowance = 1")) + piece("skirt", paper("back", "25", "allowance = 2")),
			`seam "side" { join = [[shell.bodice.front, shell.peplum.front], [shell.yoke.back, shell.skirt.back]] }`, 1},
		{"ease shifts the join as well",
			piece("bodice", paper("front", "16", "allowance = 1")) + piece("peplum", paper("front", "25", "allowance = 2")) +
				piece("yoke", paper("back", "15", "allowance = 1")) + piece("skirt", paper("back", "25", "allowance = 2")),
			`seam "side" { join = [[shell.bodice.front, shell.peplum.front], [shell.yoke.back, shell.skirt.back]] }`, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &allowances.Match, shell(c.pieces, c.rest))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
		})
	}
}

func TestMatchSaysWhere(t *testing.T) {
	r := ruletest.Spec(t, &allowances.Match, shell(piece("front", paper("side", "40", "allowance = 1"))+
		piece("yoke", paper("side", "15", "allowance = 1"))+piece("skirt", paper("side", "25", "allowance = 2 # fault allowance-match error 10mm")),
		listed))
	f := r.Result.Findings[0]
	require.Equal(t, "shell.skirt.side carries an allowance of 2 cm and shell.front.side, which it is laid on, 1 cm: they differ by 1 cm from 15 cm to its end along the seam. "+
		"Give shell.skirt.side 1 cm too, as shell.front.side has: shell.yoke.side, which is laid on one of them too, carries 1 cm.", f.Message)
	require.Equal(t, "1", f.Mend.Edits[0].Text)
}

// A side seam with a zip part: two edges of each piece, the upper with room for
// the zip.
func TestMatchStepsOnlyAtANotch(t *testing.T) {
	const notched = `notch "zip" {
    on = upper
    at = 20
  }
`
	sides := func(upper, extra, want string) string {
		return fmt.Sprintf("  edge \"upper\" {\n    length    = 20\n    allowance = %s\n  }\n  edge \"lower\" {%s\n    length    = 20\n    allowance = 1\n  }\n  %s", upper, want, extra)
	}
	const seam = `seam "side" { join = [[shell.front.upper, shell.front.lower], [shell.back.upper, shell.back.lower]] }`
	for _, c := range []struct{ name, front, back string }{
		{"marked on both", sides("2", notched, ""), sides("2", notched, "")},
		{"marked on one", sides("2", notched, ""), sides("2", "", " # fault allowance-match error")},
		{"no step, no notch needed", sides("1", "", ""), sides("1", "", "")},
		{"where the sides differ the step is in question itself", sides("1", "", ""), sides("2 # fault allowance-match error 10mm", "", "")},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &allowances.Match, shell(piece("front", c.front)+piece("back", c.back), seam))
			require.Empty(t, r.Result.NotPossible)
		})
	}
}

func TestMatchNotPossible(t *testing.T) {
	for _, c := range []struct{ name, front, seam, reason string }{
		{"nobody states one", "", sideSeam, "shell.front.side states no allowance, nor does its piece or the house"},
		{"a part without a drawing", "allowance = 1", `seam "side" { join = [part(shell.front.side, waist, end), shell.back.side] }`, "shell.front.side has no drawing"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &allowances.Match, shell(piece("front", paper("side", "40", c.front))+piece("back", paper("side", "40", "allowance = 1")), c.seam))
			require.Len(t, r.Result.NotPossible, 1)
			require.Contains(t, r.Result.NotPossible[0].Reason, c.reason)
		})
	}
}
