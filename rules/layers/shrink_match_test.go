package layers

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestShrinkMatch(t *testing.T) {
	const key = "lining in shell"
	const viscose, twill = "shrink = { across = 2, along = 4 }", "shrink = { across = 0.5, along = 1 }"
	front := []string{"outer = shell.collar.outer", "outer = shell.collar.front", "inner = lining.collar.outer", "inner = lining.collar.front"}
	paper := []string{`edge "outer"  { line = [[20, 0], [0, 0]] }`, `edge "outer" { length = 20 }`, `edge "outer"  { line = [[20, 0], [0, 0]] }`, `edge "outer" { length = 20 }`,
		"grain = [[6, 1], [6, 7]]", "", "grain = [[6, 1], [6, 7]]", ""}
	for _, c := range []struct {
		name   string
		change []string
		more   string
		want   map[string]float64
		reason string
		passed int
	}{
		{"along an edge across the grain", nil, "", map[string]float64{key: 1.5}, "", 0},
		{"along an edge with the grain", front, "", map[string]float64{key: 3}, "", 0},
		{"sewn along both: the larger", nil, "seam \"front\" { join = [shell.collar.front, lining.collar.front] }\n", map[string]float64{key: 3}, "", 0},
		{"sewn, the lining named first", []string{"share \"outer\" {\n  outer = shell.collar.outer\n  inner = lining.collar.outer\n}", ""},
			"seam \"outer\" { join = [lining.collar.outer, shell.collar.outer] }\n", map[string]float64{key: 1.5}, "", 0},
		{"the lining on the bias: half and half", []string{"grain = [[6, 1], [6, 7]]", "grain = [[1, 1], [6, 6]]", "grain = [[6, 1], [6, 7]]", "grain = [[1, 1], [6, 6]]"}, "",
			map[string]float64{key: 2.25}, "", 0},
		{"no grain drawn means down the paper", []string{"grain = [[6, 1], [6, 7]]", "", "grain = [[6, 1], [6, 7]]", ""}, "", map[string]float64{key: 1.5}, "", 0},
		{"one percent", []string{viscose, "shrink = { across = 1.5, along = 4 }"}, "", nil, "", 1},
		{"both washed", []string{twill, twill + "\n washed = true", viscose, viscose + "\n washed = true"}, "", nil, "", 1},
		{"the wrong one washed", []string{twill, "shrink = { across = 0.5, along = 1 }\n washed = true"}, "", map[string]float64{key: 2}, "", 0},
		{"a cloth that grows", []string{twill, "shrink = { across = -1, along = 1 }"}, "", map[string]float64{key: 3}, "", 0},
		{"nothing stated", []string{twill, "", viscose, ""}, "", nil, "", 0},
		{"one side stated", []string{twill, ""}, "", nil, "fabric.twill does not state how much it shrinks along and across", 0},
		{"not sewn together", []string{"share \"outer\" {\n  outer = shell.collar.outer\n  inner = lining.collar.outer\n}", ""}, "", nil, "", 0},
		{"on paper, surely too far", paper, "", nil, "share.outer is known by tape alone, and does not show how it lies to the grain", 0},
		{"on paper, alike either way", append(paper, viscose, "shrink = { across = 1, along = 1.2 }"), "", nil, "", 1},
		{"on paper, apart either way", append(paper, viscose, "shrink = { across = 3, along = 4 }"), "", map[string]float64{key: 3.5}, "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := shrinkMatchBad
			if len(c.change) > 0 {
				src = change(t, src, c.change...)
			}
			result := look(t, ShrinkMatch, src+c.more)
			requireKeyed(t, c.want, result.Findings)
			require.Equal(t, c.passed, result.Passed)
			if c.reason == "" {
				require.Empty(t, result.NotPossible)
				return
			}
			require.Equal(t, map[string]string{key: c.reason}, reasons(result.NotPossible))
		})
	}
	require.Equal(t, "along share.outer lining shrinks by 2 % and shell by 0.5 %: 1.5 % apart, where no more than 1 % is allowed. "+
		"Wash fabric.viscose before it is cut, or choose cloths that agree.", look(t, ShrinkMatch, shrinkMatchBad).Findings[0].Message)
}
