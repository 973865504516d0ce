package notches_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/inspect"
	"understitch/rules/notches"
	"understitch/rules/ruletest"
)

// shell puts pieces into the shell of a garment drafted in centimetres.
func shell(pieces, rest string) string {
	return "garment \"trial\" { unit = \"cm\" }\nlevel \"waist\" { y = 20 }\nlayer \"shell\" {\n  side = \"outer\"\n" + pieces + "}\n" + rest
}

// paper is a piece with one edge known by tape, and notches on it by distance in
// centimetres; each may carry a want after its figure.
func paper(name, length string, at ...string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "piece %q {\n  edge \"side\" {\n    length = %s\n  }\n", name, length)
	for i, a := range at {
		fmt.Fprintf(&b, "  notch \"n%d\" {\n    on = side\n    at = %s\n  }\n", i+1, a)
	}
	b.WriteString("}\n")
	return b.String()
}

const sideSeam = `seam "side" { join = [shell.front.side, shell.back.side] }`

func TestMatch(t *testing.T) {
	for _, c := range []struct {
		name, pieces, rest string
		passed             int // figures and kinds
	}{
		{"alike", paper("front", "40", "18", "30") + paper("back", "40", "18", "30"), sideSeam, 4},
		{"no notches, nothing to judge", paper("front", "40") + paper("back", "40"), sideSeam, 0},
		{"a pencil's breadth off", paper("front", "40", "18") + paper("back", "40", "18.1"), sideSeam, 2},
		{"past the first limit", paper("front", "40", "18") + paper("back", "40", "18.2 # fault notch-match warning 2mm"), sideSeam, 1},
		{"past the second, nearer to the start", paper("front", "40", "18") + paper("back", "40", "17 # fault notch-match error -10mm"), sideSeam, 1},
		{"ease comes in below the notch", paper("front", "42", "18") + paper("back", "40", "18"), sideSeam, 2},
		{"ease comes in above the notch", paper("front", "42", "20") + paper("back", "40", "18"), sideSeam, 2},
		{"off by more than the ease", paper("front", "42", "20") + paper("back", "40", "17.6 # fault notch-match error -4mm"), sideSeam, 1},
		{"off against the ease", paper("front", "42", "18") + paper("back", "40", "18.4 # fault notch-match error 4mm"), sideSeam, 1},
		{"a notch at the very end needs no partner", paper("front", "40", "18", "40") + paper("back", "40", "18"), sideSeam, 2},
		{"without a partner, and one beyond its edge",
			`piece "front" {
  edge "side" { length = 40 } # fault notch-match error fault notch-match error
  notch "vent" {
    on = side
    at = 41
  }
}
` + paper("back", "40", "18", "30"), sideSeam, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &notches.Match, shell(c.pieces, c.rest))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
		})
	}
}

// A side seam of 40 cm drawn downward, and one drawn upward on the other piece.
func drawn(front, back string) string {
	return `piece "front" {
  edge "side" { line = [[20, 0], [20, 40]] }
  edge "hem"  { line = [[20, 40], [0, 40]] }
  edge "rest" { line = [[0, 40], [0, 0], [20, 0]] }
` + front + `}
piece "back" {
  edge "hem"  { line = [[60, 40], [40, 40]] }
  edge "side" { line = [[40, 40], [40, 0]] }
  edge "rest" { line = [[40, 0], [60, 0], [60, 40]] }
` + back + `}
`
}

func notch(name, rest string) string {
	return "  notch \"" + name + "\" {\n    on = side\n    " + rest + "\n  }\n"
}

func TestMatchOnDrawnEdges(t *testing.T) {
	for _, c := range []struct{ name, front, back, title, edit string }{
		{
			"against the drawing, measured from the other end", notch("waist", "at = 18"), notch("waist", "at = 21 # fault notch-match error 10mm"),
			"move shell.back.notch.waist to 22 cm along shell.back.side", "22",
		},
		{
			"the one that follows the level is right", notch("waist", "at = 18 # fault notch-match error -20mm"), notch("waist", "level = waist"),
			"move shell.front.notch.waist to 20 cm along shell.front.side", "20",
		},
		{
			"one by point gets a point", notch("waist", "at = 18"), notch("waist", "point = [40, 17] # fault notch-match error -10mm"),
			"move shell.back.notch.waist to 22 cm along shell.back.side", "[40, 18]",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &notches.Match, shell(drawn(c.front, c.back), sideSeam))
			mend := r.Result.Findings[0].Mend
			require.Equal(t, c.title, mend.Title)
			require.False(t, mend.Safe)
			require.Len(t, mend.Edits, 1)
			require.Equal(t, c.edit, mend.Edits[0].Text)
			mendedIsSilent(t, r)
		})
	}
}

// mendedIsSilent makes the correction in the source, byte for byte, and looks
// again.
func mendedIsSilent(t *testing.T, r *inspect.Report) {
	t.Helper()
	src := ruletest.Mended(string(r.Source), r.Result.Findings[0].Mend)
	before, after, _ := strings.Cut(src, "# fault")
	_, after, _ = strings.Cut(after, "\n")
	again := ruletest.Spec(t, r.Result.Findings[0].Rule, before+"\n"+after)
	require.Empty(t, again.Result.Findings)
}

func TestMatchMissing(t *testing.T) {
	r := ruletest.Spec(t, &notches.Match, shell(`piece "front" {
  edge "side" { line = [[20, 0], [20, 40]] }
  edge "rest" { line = [[20, 40], [0, 40], [0, 0], [20, 0]] }
  notch "hip" {
    on = side
    at = 18.2
  }
}
piece "back" {
  edge "side" { line = [[40, 40], [40, 0]] } # fault notch-match error
  edge "rest" { line = [[40, 0], [60, 0], [60, 40], [40, 40]] }
}
`, sideSeam))
	require.Equal(t, "shell.back.side has no notch to meet shell.front.notch.hip; put one at 21.8 cm along it, or take the other away.", r.Result.Findings[0].Message)
	require.Equal(t, "shell.front.notch.hip", r.Result.Findings[0].Key)
}

func TestMatchMeetsTheShoulderSeam(t *testing.T) {
	for _, c := range []struct{ name, at string }{
		{"on the join", "21"},
		{"beside the join", "21.4 # fault notch-match error 4mm"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &notches.Match, shell(`piece "front" {
  edge "armhole" { length = 21 }
  notch "front" {
    on = armhole
    at = 9
  }
}
piece "back" {
  edge "armhole" { length = 23 }
  notch "back" {
    on   = armhole
    at   = 14
    kind = "double"
  }
}
piece "sleeve" {
  edge "cap" { length = 44 }
  notch "front" {
    on = cap
    at = 9
  }
  notch "top" {
    on = cap
    at = `+c.at+`
  }
  notch "back" {
    on   = cap
    at   = 35
    kind = "double"
  }
}
`, `seam "armhole" { join = [shell.sleeve.cap, [shell.front.armhole, shell.back.armhole]] }`))
			require.Empty(t, r.Result.NotPossible)
		})
	}
}

func TestMatchOfAMirroredPairIsNothingToJudge(t *testing.T) {
	r := ruletest.Spec(t, &notches.Match, shell(paper("back", "40", "18"), `seam "cb" { join = [shell.back.side, shell.back.side] }`))
	require.Zero(t, r.Result.Passed)
	require.Empty(t, r.Result.NotPossible)
}

func TestMatchNotPossible(t *testing.T) {
	r := ruletest.Spec(t, &notches.Match, shell(paper("front", "40", "18")+paper("back", "40", "18"),
		`seam "side" { join = [part(shell.front.side, waist, end), shell.back.side] }`))
	require.Len(t, r.Result.NotPossible, 1)
	require.Contains(t, r.Result.NotPossible[0].Reason, "shell.front.side has no drawing")
}
