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
	for _, r := range []*rules.Rule{&seams.Walk, &seams.DartLegs, &seams.PleatFold, &seams.FoldStraight, &seams.EdgeUnused, &seams.True, &seams.EaseSide} {
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
  dart "neck" { # fault dart-legs warning 1.7mm
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
  dart "neck" { # fault dart-legs warning 1.7mm
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
  dart "neck" { # fault dart-legs warning 9.53deg
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
		{"a peak of two degrees", "[[20, 40], [0, 40.7]]", " # fault fold-straight warning 2.0deg"},
		{"a dip of two degrees", "[[20, 40], [0, 39.3]]", " # fault fold-straight warning 2.0deg"},
		{"a peak of nine degrees", "[[20, 40], [0, 43.2]]", " # fault fold-straight warning 9.1deg"},
		{"a point may be meant", "[[20, 40], [0, 44]]", " # fault fold-straight note 11.3deg"},
		{"a point that can be seen to be one", "[[20, 40], [0, 50]]", ""},
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
	t.Run("a point in a hem may be meant", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.FoldStraight, pointed("50", `finish = "hem"`, " # fault fold-straight note 26.6deg", ""))
		require.Equal(t, "shell.front.lower meets the fold of shell.front at 63.4°; opened out it makes a peak at the centre. More than 10° off square it is taken as meant, but nothing else on the pattern shows that it is. "+
			"Look whether one of its points lies in the wrong place; if the peak is meant, accept it with the reason (waive).", r.Result.Findings[0].Message)
	})
	t.Run("a pointed waist that the skirt answers is meant", func(t *testing.T) {
		ruletest.Spec(t, &seams.FoldStraight, pointed("50", "", "", skirtTo("50")))
		ruletest.Spec(t, &seams.FoldStraight, pointed("44", "", "", skirtTo("44")))
	})
	t.Run("a pointed waist that the skirt does not answer", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.FoldStraight, pointed("50", "", " # fault fold-straight note 26.6deg", skirtTo("40")))
		require.Len(t, r.Result.Findings, 1)
	})
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

// pointed is a bodice on the fold whose lower edge runs down to the centre so far, in
// centimetres from its top, from 40 at the side 20 cm away. atan(4/20) is 11.310° and
// atan(10/20) 26.565° (closed forms).
func pointed(low, finish, want, skirt string) string {
	front := `piece "front" {
  fold = centre
  edge "top"    { line = [[0, 0], [20, 0]] }
  edge "side"   { line = [[20, 0], [20, 40]] }
  edge "lower" {` + want + `
    line = [[20, 40], [0, ` + low + `]]
    ` + finish + `
  }
  edge "centre" { line = [[0, ` + low + `], [0, 0]] }
}
`
	if skirt == "" {
		return shell(front, "")
	}
	return shell(front+skirt, `seam "waist" { join = [shell.front.lower, shell.skirt.waist] }`)
}

// skirtTo is a skirt on the fold that comes up to it.
func skirtTo(low string) string {
	return `piece "skirt" {
  fold = centre
  edge "waist"  { line = [[0, ` + low + `], [20, 40]] }
  edge "rest"   { line = [[20, 40], [20, 90], [0, 90]] }
  edge "centre" { line = [[0, 90], [0, ` + low + `]] }
}
`
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
	const want = " # fault fold-straight warning 2.9deg"
	ruletest.Spec(t, &seams.FoldStraight, head+layer("shell", "outer", "40", "")+layer("lining", "inner", "41", want)+share)
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
		{"forgotten", " # fault edge-unused error 400mm", " # fault edge-unused error 400mm", ""},
		{"held in by elastic, which finishes it", "", " # fault edge-unused error 400mm", `elastic "leg" {
  edges  = [shell.front.side]
  length = 30
}`},
		{"sewn twice", " # fault edge-unused warning 400mm", " # fault edge-unused warning 400mm", `seam "side" { join = [shell.front.side, shell.back.side] }
seam "other" { join = [shell.back.side, shell.front.side] }`},
		{"a mirrored pair is one use", "", " # fault edge-unused error 400mm", `seam "side" { join = [shell.front.side, shell.front.side] }`},
		{"two seams for one mirrored pair", " # fault edge-unused warning 400mm", "", `seam "side" { join = [shell.back.side, shell.back.side] }
seam "front" { join = [shell.front.side, shell.front.side] }
seam "again" { join = [shell.front.side, shell.front.side] }`},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &seams.EdgeUnused, shell(fmt.Sprintf(paper, c.front, c.back), c.rest))
			require.Empty(t, r.Result.NotPossible)
		})
	}
	// By whose unused edge a layer is open where its girth is asked for cannot be
	// checked, and may not be cut.
	const open = `garment "trial" { unit = "cm" }
body { waist_girth = 72 }
level "waist" {
  y    = 10
  body = body.waist_girth
}
layer "shell" {
  side = "outer"
  %s
  piece "front" {
    edge "top" {
      line   = [[0, 0], [18, 0]]
      finish = "bound"
    }
    edge "side" { line = [[18, 0], [18, 40]] } # fault edge-unused %s 400mm
    edge "hem"    { line = [[18, 40], [0, 40]] } # fault edge-unused warning 180mm
    edge "centre" {
      line   = [[0, 40], [0, 0]]
      %s
    }
  }
}
`
	for _, c := range []struct{ name, ease, severity, centre string }{
		{"an edge down the body, and no girth asked for", "", "warning", `finish = "faced"`},
		{"an edge down the body, by which a girth is open", "ease = { waist = [0, 2] }", "error", `finish = "faced"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			ruletest.Spec(t, &seams.EdgeUnused, fmt.Sprintf(open, c.ease, c.severity, c.centre))
		})
	}
	t.Run("folded and sewn", func(t *testing.T) {
		ruletest.Spec(t, &seams.EdgeUnused, shell(`piece "front" {
  fold = centre
  edge "centre" { length = 40 } # fault edge-unused warning 400mm
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
