package allowances_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/allowances"
	"understitch/rules/ruletest"
)

// Closed forms: the top is straight, its cut line 10 mm above it.
func TestDrawn(t *testing.T) {
	for _, c := range []struct {
		name, more, cut, rest, message string
		passed                         int
	}{
		{"none is drawn", "", "", "", "", 0},
		{"as stated, run on to the corners", "allowance = 1", "cut_line = { line = [[-1, -1], [21, -1]] }", "", "", 1},
		{"as the piece states", "", "cut_line = { line = [[-1, -1], [21, -1]] }", "allowance = 1", "", 1},
		{"a little narrow", "allowance = 1", "cut_line = { line = [[-1, -0.94], [21, -0.94]] } # fault allowance-drawn warning 0.6mm", "",
			"the cut line of shell.front.top lies 9.4 mm from the stitch line", 0},
		{"another allowance than is drawn", "allowance = 1.5", "cut_line = { line = [[-1, -1], [21, -1]] } # fault allowance-drawn error 5mm", "",
			"where an allowance of 1.5 cm is stated: it is up to 5 mm off. Re-draw it from the stitch line, or state the allowance that is drawn.", 0},
		{"drawn inside the piece", "allowance = 1", "cut_line = { line = [[1, 1], [19, 1]] } # fault allowance-drawn error 20mm", "", "", 0},
		{"too tight for its allowance", "allowance = 1", "cut_line = { line = [[0, -1], [20, -1]] }", "tight", "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			line := "line = [[0, 0], [20, 0]]"
			if c.rest == "tight" {
				line, c.rest = `path = "M 0 0 L 9.5 0 A 0.5 0.5 0 0 0 10.5 0 L 20 0"`, ""
			}
			r := ruletest.Spec(t, &allowances.Drawn, shell(piece("front", c.rest+`
  edge "top" {
    `+line+`
    `+c.more+`
    `+c.cut+`
  }
  edge "rest" { line = [[20, 0], [20, 30], [0, 30], [0, 0]] }
`), ""))
			if c.name == "too tight for its allowance" {
				require.Equal(t, "shell.front.top bends too tightly for its allowance, so its cut line cannot lie that far from it", r.Result.NotPossible[0].Reason)
				return
			}
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
			}
		})
	}
	t.Run("an allowance that nobody states", func(t *testing.T) {
		r := ruletest.Spec(t, &allowances.Drawn, shell(piece("front", `
  edge "top" {
    line     = [[0, 0], [20, 0]]
    cut_line = { line = [[0, -1], [20, -1]] }
  }
  edge "rest" { line = [[20, 0], [20, 30], [0, 30], [0, 0]] }
`), ""))
		require.Len(t, r.Result.NotPossible, 1)
		require.Equal(t, "shell.front.top states no allowance, nor does its piece or the house", r.Result.NotPossible[0].Reason)
	})
	t.Run("an altered edge is judged as it was drafted", func(t *testing.T) {
		r := ruletest.Spec(t, &allowances.Drawn, shell(piece("front", `
  allowance = 1
  edge "side" {
    line     = [[20, 0], [20, 30]]
    cut_line = { line = [[21, -1], [21, 31]] }
  }
  edge "rest" { line = [[20, 30], [0, 30], [0, 0], [20, 0]] }
`), `alter "fitting" {
  edges  = [shell.front.side]
  inward = { waist = 1.5 }
}`))
		require.Empty(t, r.Result.NotPossible)
		require.Equal(t, 1, r.Result.Passed)
	})
}

func TestRoom(t *testing.T) {
	// A bay of 1 cm radius in the top of a piece 20 cm wide.
	const bay = `  edge "top"  { path = "M 0 0 L 9 0 A 1 1 0 0 0 11 0 L 20 0" }
  edge "rest" { line = [[20, 0], [20, 30], [0, 30], [0, 0]] }`
	for _, c := range []struct {
		name, edges, message string
		passed               int
	}{
		{"as wide as it can be turned", "allowance = 1\n" + bay, "", 3},
		{"wider than it can be turned", "allowance = 1.2\n" + strings.Replace(bay, "\" }", "\" } # fault allowance-room warning 10mm", 1),
			"shell.front.top bends with a radius of 1 cm at 9 cm along it, and its allowance of 1.2 cm lies on the inside of the bend: there is no room to turn it. Make it no more than 1 cm, or draw the curve wider.", 2},
		{"the same drawn the other way round", "allowance = 1.2\n" + `  edge "top"  { path = "M 20 0 L 11 0 A 1 1 0 0 1 9 0 L 0 0" } # fault allowance-room warning 10mm
  edge "rest" { line = [[0, 0], [0, 30], [20, 30], [20, 0]] }`, "", 2},
		{"a bump has its allowance outside", "allowance = 3\n" + `  edge "top"  { path = "M 0 0 L 9 0 A 1 1 0 0 1 11 0 L 20 0" }
  edge "rest" { line = [[20, 0], [20, 30], [0, 30], [0, 0]] }`, "", 3},
		{"drawn with its allowances, too tight outside for the stitch line", "drawn = \"cut\"\nallowance = 1.2\n" + `  edge "top"  { curve = [[0, 0], [9, -6], [11, -6], [20, 0]] }
  edge "rest" { line = [[20, 0], [20, 30], [0, 30], [0, 0]] }`, "", 3},
		{"a slit narrower than its allowances", "allowance = 1\n" + `  edge "top"  { line = [[0, 0], [9, 0], [9, 10], [10, 10], [10, 0], [20, 0]] } # fault allowance-room warning
  edge "rest" { line = [[20, 0], [20, 30], [0, 30], [0, 0]] }`,
			"the cut line of shell.front.top crosses itself", 2},
		{"two edges that face each other", "allowance = 1\n" + `  edge "left"  { line = [[0, 0], [9.5, 0], [8, 10]] }
  edge "floor" { line = [[8, 10], [12, 10]] }
  edge "right" { line = [[12, 10], [10.5, 0], [20, 0]] } # fault allowance-room warning
  edge "rest"  { line = [[20, 0], [20, 30], [0, 30], [0, 0]] }`,
			"the cut line of shell.front.right crosses that of shell.front.left at", 4},
		{"no allowance at all", bay, "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &allowances.Room, "garment \"trial\" { unit = \"cm\" }\nlayer \"shell\" {\n  side = \"outer\"\n"+piece("front", c.edges+"\n")+"}\n")
			if c.name == "too tight for its allowance" {
				require.Equal(t, "shell.front.top bends too tightly for its allowance, so its cut line cannot lie that far from it", r.Result.NotPossible[0].Reason)
				return
			}
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
			}
		})
	}
	t.Run("a corner that cannot be built", func(t *testing.T) {
		r := ruletest.Spec(t, &allowances.Room, shell(`piece "front" { # fault allowance-room warning
  allowance = 1
  edge "left"  { line = [[0, 0], [9, 0], [9, 10]] }
  edge "floor" { line = [[9, 10], [10, 10]] }
  edge "right" { line = [[10, 10], [10, 0], [20, 0]] }
  edge "rest"  { line = [[20, 0], [20, 30], [0, 30], [0, 0]] }
}
`, ""))
		require.Contains(t, r.Result.Findings[0].Message, "the cut line of shell.front does not close: with their allowances, shell.front.left and shell.front.floor do not meet.")
	})
	t.Run("one edge states none", func(t *testing.T) {
		r := ruletest.Spec(t, &allowances.Room, shell(piece("front", `
  edge "top" {
    line      = [[0, 0], [20, 0]]
    allowance = 1
  }
  edge "rest" { line = [[20, 0], [20, 30], [0, 30], [0, 0]] }
`), ""))
		require.Len(t, r.Result.NotPossible, 1)
		require.Equal(t, "shell.front.rest states no allowance, nor does its piece or the house", r.Result.NotPossible[0].Reason)
	})
}

// What a cut line does cannot be told of a piece known by tape alone.
func TestRoomOnPaper(t *testing.T) {
	for allowance, want := range map[string][]string{"1": {"shell.front has no drawing"}, "0": nil} {
		r := ruletest.Spec(t, &allowances.Room, "garment \"trial\" { unit = \"cm\" }\nlayer \"shell\" {\n  side = \"outer\"\n"+
			piece("front", "allowance = "+allowance+"\n  edge \"side\" { length = 40 }\n")+"}\n")
		var reasons []string
		for _, n := range r.Result.NotPossible {
			reasons = append(reasons, n.Reason)
		}
		require.Equal(t, want, reasons, "an allowance of %s", allowance)
	}
}
