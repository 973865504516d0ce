package draft_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/draft"
	"understitch/rules/ruletest"
)

// The turn of 10 in 100 is atan(0.1), 5.711°.
func TestGrainMatch(t *testing.T) {
	panel := func(name, more, x0, x1, rest string) string {
		return "piece \"" + name + "\" {" + rest + "\n  " + more + `
  edge "left"  { line = [[` + x0 + `, 100], [` + x0 + `, 0]] }
  edge "top"   { line = [[` + x0 + `, 0], [` + x1 + `, 0]] }
  edge "right" { line = [[` + x1 + `, 0], [` + x1 + `, 100]] }
  edge "low"   { line = [[` + x1 + `, 100], [` + x0 + `, 100]] }
}
`
	}
	const upright, leaning = "grain = [[5, 0], [5, 100]]", "grain = [[5, 0], [15, 100]]"
	const want = " # fault grain-match warning 5.71deg"
	const side = `seam "side" { join = [shell.front.right, shell.back.left] }`
	shell := func(pieces, rest string) string {
		return "garment \"trial\" { unit = \"cm\" }\nlevel \"waist\" { y = 20 }\nlayer \"shell\" {\n  side = \"outer\"\n" + pieces + "}\n" + rest
	}
	for _, c := range []struct {
		name, pieces, rest string
		passed             int
	}{
		{"both upright", panel("front", upright, "0", "20", "") + panel("back", upright, "20", "40", ""), side, 1},
		{"both leaning alike, side by side", panel("front", leaning, "0", "20", "") + panel("back", leaning, "20", "40", ""), side, 1},
		{"one of them drawn turned over", panel("front", leaning, "0", "20", "") + panel("back", "grain = [[25, 0], [15, 100]]", "40", "20", ""), side, 1},
		{"one leaning", panel("front", upright, "0", "20", "") + panel("back", leaning, "20", "40", want), side, 0},
		{"drawn upward is the same", panel("front", upright, "0", "20", "") + panel("back", "grain = [[5, 100], [5, 0]]", "20", "40", ""), side, 1},
		{"one on the bias, and said so", panel("front", upright, "0", "20", "") + panel("back", leaning+"\n  cut_on = \"bias\"", "20", "40", ""), side, 0},
		{"no grain line", panel("front", upright, "0", "20", "") + panel("back", "", "20", "40", ""), side, 0},
		{"the halves of a pair", panel("front", leaning, "0", "20", ""), `seam "centre" { join = [shell.front.left, shell.front.left] }`, 0},
		{"the odd one among three is told once", panel("front", upright, "0", "20", "") + panel("side", leaning, "20", "40", want) + panel("back", upright, "40", "60", ""),
			`seam "front" { join = [shell.front.right, shell.side.left] }
seam "back" { join = [shell.side.right, shell.back.left] }
seam "round" { join = [shell.back.right, shell.front.left] }`, 1},
		{"without levels, by the seam", panel("front", upright+"\n  levels = {}", "0", "20", "") + panel("back", leaning+"\n  levels = {}", "20", "40", want), side, 0},
		{"without levels, across the grain", panel("front", upright+"\n  levels = {}", "0", "20", "") + panel("back", leaning+"\n  levels = {}", "20", "40", ""),
			`seam "yoke" { join = [shell.front.low, shell.back.top] }`, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &draft.GrainMatch, shell(c.pieces, c.rest))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
		})
	}
}
