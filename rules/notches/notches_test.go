package notches_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/notches"
	"understitch/rules/ruletest"
)

func TestExamples(t *testing.T) {
	for _, r := range []*rules.Rule{&notches.Match, &notches.OnLine, &notches.Depth, &notches.Spacing, &notches.Unique} {
		ruletest.Rule(t, r)
	}
}

func TestOnLine(t *testing.T) {
	for _, c := range []struct{ name, notch, edit string }{
		{"on it", notch("a", "point = [20, 18]"), ""},
		{"within a pencil line", notch("a", "point = [20.04, 18]"), ""},
		{"off it", notch("a", "point = [20.3, 18.1] # fault notch-on-line error 3.0mm"), "[20, 18.1]"},
		{"past the end", notch("a", "at = 40.5 # fault notch-on-line error 5mm"), "38.7"},
		{"beside a corner", notch("a", "point = [20.3, 0.4] # fault notch-on-line error 3.0mm"), "[20, 1.3]"},
		{"beside another notch", notch("b", "at = 30") + notch("a", "point = [20.3, 30.2] # fault notch-on-line error 3.0mm"), "[20, 31.3]"},
		{"at the end", notch("a", "at = 40"), ""},
		{"at the start", notch("a", "at = 0"), ""},
		{"on a level", notch("a", "level = waist"), ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &notches.OnLine, shell(drawn(c.notch, ""), ""))
			require.Empty(t, r.Result.NotPossible)
			if c.edit == "" {
				require.Equal(t, 1, r.Result.Passed)
				return
			}
			mended := ruletest.Mended(string(r.Source), r.Result.Findings[0].Mend)
			require.Empty(t, ruletest.Spec(t, &notches.Spacing, strings.ReplaceAll(mended, "# fault notch-on-line", "#")).Result.Findings)
			require.Equal(t, c.edit, r.Result.Findings[0].Mend.Edits[0].Text)
			mendedIsSilent(t, r)
		})
	}
	t.Run("a level that its edge does not reach", func(t *testing.T) {
		r := ruletest.Spec(t, &notches.OnLine, shell(drawn(`  notch "a" {
    on    = hem
    level = waist # fault notch-on-line error
  }
`, ""), ""))
		require.Equal(t, "shell.front.notch.a lies nowhere: the waist level does not cross shell.front.hem. Give it a place along the edge, or put it on the edge that the level crosses.",
			r.Result.Findings[0].Message)
	})
	for _, c := range []struct{ name, how, reason string }{
		{"a point beside a paper edge", "point = [1, 2]", "shell.front.notch.a is given by a point, but shell.front.side has no drawing"},
		{"a level on a paper edge", "level = waist", "shell.front.side has no drawing"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &notches.OnLine, shell(`piece "front" {
  edge "side" { length = 40 }
`+notch("a", c.how)+"}\n", ""))
			require.Len(t, r.Result.NotPossible, 1)
			require.Contains(t, r.Result.NotPossible[0].Reason, c.reason)
		})
	}
	t.Run("past the end of a paper edge", func(t *testing.T) {
		ruletest.Spec(t, &notches.OnLine, shell(paper("front", "40", "41 # fault notch-on-line error 10mm"), ""))
	})
}

func TestDepth(t *testing.T) {
	for _, c := range []struct {
		name, allowance, depth, want string
		passed                       int
	}{
		{"half the allowance", "allowance = 1", "depth = mm(5)", "", 1},
		{"more than half", "allowance = 1", "depth = mm(7)", " # fault notch-depth warning 0.7", 0},
		{"all of it", "allowance = 0.4", "depth = mm(4)", " # fault notch-depth error 1", 0},
		{"more than all of it", "allowance = 0.4", "depth = mm(6)", " # fault notch-depth error 1.5", 0},
		{"no allowance to cut it in", "allowance = 0", "depth = mm(3)", " # fault notch-depth error", 0},
		{"marked, not cut", "allowance = 0", "depth = 0", "", 1},
		{"no depth stated", "allowance = 1", "", "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &notches.Depth, shell(`piece "front" {
  `+c.allowance+`
  edge "side" { length = 40 }
  notch "a" {`+c.want+`
    on = side
    at = 10
    `+c.depth+`
  }
}
`, ""))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
		})
	}
	t.Run("an allowance that nobody states", func(t *testing.T) {
		r := ruletest.Spec(t, &notches.Depth, shell(`piece "front" {
  edge "side" { length = 40 }
`+notch("a", "at = 10\n    depth = mm(3)")+"}\n", ""))
		require.Len(t, r.Result.NotPossible, 1)
		require.Equal(t, "shell.front.side states no allowance, nor does its piece or the house", r.Result.NotPossible[0].Reason)
	})
}
