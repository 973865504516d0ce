package seams_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

func TestExamples(t *testing.T) {
	for _, r := range []*rules.Rule{&seams.Walk, &seams.DartLegs, &seams.FoldStraight, &seams.EdgeUnused, &seams.True, &seams.EaseSide} {
		ruletest.Rule(t, r)
	}
}

func TestDartLegs(t *testing.T) {
	for _, c := range []struct{ name, spec string }{
		{"a dart inside the piece has equal legs", `piece "front" {
  edge "outline" { line = [[0, 0], [20, 0], [20, 40], [0, 40], [0, 0]] }
  dart "waist" {
    centre = [10, 20]
    intake = 2.6
    up     = 12
    down   = 10
  }
}
`},
		{"a mouth that reaches the corner has legs but no edge to run on", `piece "front" {
  edge "side" { line = [[0, 40], [0, 0]] }
  edge "top"  { line = [[0, 0], [20, 0]] }
  edge "rest" { line = [[20, 0], [20, 40], [0, 40]] }
  dart "neck" { # want dart-legs warning 1.7mm
    on     = top
    at     = 1
    intake = 2
    tip    = [2, 12]
  }
}
`},
		{"an edge that is drawn with the bend the closed dart takes out", `piece "front" {
  edge "top" { line = [[0, 0.5], [9, 0], [11, 0], [20, 0.5]] }
  edge "rest" { line = [[20, 0.5], [20, 40], [0, 40], [0, 0.5]] }
  dart "neck" {
    on     = top
    at     = 10.014
    intake = 2
    tip    = [10, 18]
  }
}
`},
		{"how the edge runs on is not said while the legs differ", `piece "front" {
  edge "top"  { line = [[0, 0], [20, 0]] }
  edge "rest" { line = [[20, 0], [20, 40], [0, 40], [0, 0]] }
  dart "neck" { # want dart-legs warning 1.7mm
    on     = top
    at     = 10
    intake = 2
    tip    = [11, 12]
  }
}
`},
		{"an edge ruled straight over the dart", `piece "front" {
  edge "top"  { line = [[0, 0], [20, 0]] }
  edge "rest" { line = [[20, 0], [20, 40], [0, 40], [0, 0]] }
  dart "neck" { # want dart-legs warning 9.53deg
    on     = top
    at     = 10
    intake = 2
    tip    = [10, 12]
  }
}
`},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &seams.DartLegs, shell(c.spec, ""))
			require.Empty(t, r.Result.NotPossible)
		})
	}
	t.Run("a paper dart has no legs to measure", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.DartLegs, shell(`piece "front" {
  edge "side" { length = 40 }
  dart "bust" {
    on     = side
    at     = 6
    intake = 2
  }
}
`, ""))
		require.Len(t, r.Result.NotPossible, 1)
		require.Equal(t, "shell.front has no drawing", r.Result.NotPossible[0].Reason)
		require.Zero(t, r.Result.Passed)
	})
}

func TestFoldStraight(t *testing.T) {
	for _, c := range []struct {
		name, hem, want string
	}{
		{"square", "[[20, 40], [0, 40]]", ""},
		{"a peak of two degrees", "[[20, 40], [0, 40.7]]", " # want fold-straight warning 2.0deg"},
		{"a dip of two degrees", "[[20, 40], [0, 39.3]]", " # want fold-straight warning 2.0deg"},
		{"a point is meant", "[[20, 40], [0, 50]]", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			end := strings.TrimSuffix(c.hem[strings.Index(c.hem, "], ")+3:], "]")
			r := ruletest.Spec(t, &seams.FoldStraight, shell(`piece "front" {
  fold = centre
  edge "top"    { line = [[0, 0], [20, 0]] }
  edge "side"   { line = [[20, 0], [20, 40]] }
  edge "hem"    { line = `+c.hem+` }`+c.want+`
  edge "centre" { line = [`+end+`, [0, 0]] }
}
`, ""))
			require.Empty(t, r.Result.NotPossible)
			require.Positive(t, r.Result.Passed)
		})
	}
	t.Run("the fold is drawn, its neighbour is not", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.FoldStraight, shell(`piece "front" {
  fold = centre
  edge "hem"    { length = 20 }
  edge "centre" { line = [[0, 40], [0, 0]] }
  edge "top"    { length = 20 }
}
`, ""))
		require.Len(t, r.Result.NotPossible, 2)
	})
	t.Run("paper", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.FoldStraight, shell(`piece "front" {
  fold = centre
  edge "centre" { length = 40 }
}
`, ""))
		require.Len(t, r.Result.NotPossible, 1)
		require.Equal(t, "shell.front has no drawing", r.Result.NotPossible[0].Reason)
	})
}

// Of an edge that layers share, the corner at the fold is judged where both have
// it: where one is square the layers differ, and shared-edge reports that. A rise
// of 1 in 20 is 2.86 degrees (closed form).
func TestFoldStraightOfSharedEdges(t *testing.T) {
	layer := func(name, side, low, want string) string {
		return "layer \"" + name + "\" {\n  side = \"" + side + "\"\n" + `piece "front" {
  fold = centre
  edge "top"    { line = [[0, 0], [20, 0]] }
  edge "side"   { line = [[20, 0], [20, 40]] }
  edge "hem"    { line = [[20, 40], [0, ` + low + `]] }` + want + `
  edge "centre" { line = [[0, ` + low + `], [0, 0]] }
}
}
`
	}
	const head, share = "garment \"trial\" { unit = \"cm\" }\n", `share "hem" {
  outer = shell.front.hem
  inner = lining.front.hem
}
`
	const want = " # want fold-straight warning 2.9deg"
	ruletest.Spec(t, &seams.FoldStraight, head+layer("shell", "outer", "40", "")+layer("lining", "inner", "41", "")+share)
	ruletest.Spec(t, &seams.FoldStraight, head+layer("shell", "outer", "41", want)+layer("lining", "inner", "41", want)+share)
	ruletest.Spec(t, &seams.FoldStraight, head+layer("shell", "outer", "40", "")+layer("lining", "inner", "41", want))
}

func TestEdgeUnused(t *testing.T) {
	const paper = `piece "front" {
  fold = centre
  edge "side"   { length = 40 }%s
  edge "centre" { length = 40 }
}
piece "back" {
  edge "side" { length = 40 }%s
}
`
	for _, c := range []struct{ name, front, back, rest string }{
		{"sewn", "", "", `seam "side" { join = [shell.front.side, shell.back.side] }`},
		{"forgotten", " # want edge-unused warning 400mm", " # want edge-unused warning 400mm", ""},
		{"held in by elastic, which finishes it", "", " # want edge-unused warning 400mm", `elastic "leg" {
  edges  = [shell.front.side]
  length = 30
}`},
		{"sewn twice", " # want edge-unused warning 400mm", " # want edge-unused warning 400mm", `seam "side" { join = [shell.front.side, shell.back.side] }
seam "other" { join = [shell.back.side, shell.front.side] }`},
		{"a mirrored pair is one use", "", " # want edge-unused warning 400mm", `seam "side" { join = [shell.front.side, shell.front.side] }`},
		{"two seams for one mirrored pair", " # want edge-unused warning 400mm", "", `seam "side" { join = [shell.back.side, shell.back.side] }
seam "front" { join = [shell.front.side, shell.front.side] }
seam "again" { join = [shell.front.side, shell.front.side] }`},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &seams.EdgeUnused, shell(fmt.Sprintf(paper, c.front, c.back), c.rest))
			require.Empty(t, r.Result.NotPossible)
		})
	}
	t.Run("folded and sewn", func(t *testing.T) {
		ruletest.Spec(t, &seams.EdgeUnused, shell(`piece "front" {
  fold = centre
  edge "centre" { length = 40 } # want edge-unused warning 400mm
}
`, `seam "centre" { join = [shell.front.centre, shell.front.centre] }`))
	})
	t.Run("a part that ends at a level the paper does not know", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.EdgeUnused, shell(`piece "front" {
  edge "side" { length = 40 }
}
`, `seam "side" { join = [part(shell.front.side, waist, end), part(shell.front.side, waist, end)] }`))
		require.Len(t, r.Result.NotPossible, 1)
		require.Contains(t, r.Result.NotPossible[0].Reason, "no drawing")
	})
}
