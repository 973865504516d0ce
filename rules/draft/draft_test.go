package draft_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/draft"
	"understitch/rules/ruletest"
)

func TestExamples(t *testing.T) {
	for _, r := range []*rules.Rule{&draft.OutlineClosed, &draft.OutlineCrossing, &draft.AlterationPartner, &draft.TemplatePoints, &draft.MirrorPair, &draft.GrainMatch, &draft.SizeStep, &draft.UnitSlip} {
		ruletest.Rule(t, r)
	}
}

func front(edges string) string {
	return "garment \"trial\" { unit = \"cm\" }\nlayer \"shell\" {\n  side = \"outer\"\n  piece \"front\" {\n" + edges + "  }\n}\n"
}

// An alteration makes the corners meet, of the edges it leaves alone as well; a
// gap between them in the draft is a gap still.
func TestOutlineClosedAsDrafted(t *testing.T) {
	ruletest.Spec(t, &draft.OutlineClosed, `garment "trial" { unit = "cm" }
level "waist" { y = 10 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [20, 20]] }
    edge "hem"    { line = [[20, 20], [0.2, 20]] }
    edge "centre" { line = [[0, 20], [0, 0]] } # fault outline-closed error 2mm
  }
}
alter "fitting" {
  edges  = shell.front.side
  inward = { waist = 1 }
}
`)
}

func TestOutlineClosed(t *testing.T) {
	for _, c := range []struct {
		name, edges string
		passed      int
	}{
		{"one edge all round", `edge "all" { line = [[0, 0], [20, 0], [20, 20], [0, 0]] }
`, 1},
		{"one edge that does not come back", `edge "all" { line = [[0, 0], [20, 0], [20, 20], [0, 1]] } # fault outline-closed error 10mm
`, 0},
		{"less than a pencil can draw", `edge "top" { line = [[0, 0], [20, 0]] }
edge "rest" { line = [[20.005, 0], [20, 20], [0, 0.005]] }
`, 2},
		{"open at two corners", `edge "top" { line = [[0, 0], [20, 0]] } # fault outline-closed error 5mm
edge "rest" { line = [[20, 0.2], [20, 20], [0, 0.5]] } # fault outline-closed error 2mm
`, 0},
		{"the last edge does not come back to the first", `edge "top" { line = [[0, 0], [20, 0]] } # fault outline-closed error 5mm
edge "rest" { line = [[20, 0], [20, 20], [0, 0.5]] }
`, 1},
		{"drawn against its direction", `edge "top" { line = [[0, 0], [20, 0]] }
edge "rest" { line = [[0, 0], [20, 20], [20, 0]] } # fault outline-closed error 200mm
`, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &draft.OutlineClosed, front(c.edges))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
		})
	}
	t.Run("paper", func(t *testing.T) {
		r := ruletest.Spec(t, &draft.OutlineClosed, front("edge \"side\" { length = 40 }\n"))
		require.Len(t, r.Result.NotPossible, 1)
		require.Equal(t, "shell.front has no drawing", r.Result.NotPossible[0].Reason)
	})
}

// The loop is a closed form: its height over the ends is 90·t(1−t) cm, and it
// meets itself where t(1−t) = 1/7, at 12.857 cm.
func TestOutlineCrossing(t *testing.T) {
	for _, c := range []struct{ name, edges, message string }{
		{"round a corner", `edge "top" { line = [[0, 0], [20, 0]] }
edge "rest" { line = [[20, 0], [20, 20], [0, 20], [0, 0]] }
`, ""},
		{"a figure of eight in two edges", `edge "down" { line = [[0, 0], [20, 20]] }
edge "right" { line = [[20, 20], [20, 0]] }
edge "back" { line = [[20, 0], [0, 20]] } # fault outline-crossing error
edge "left" { line = [[0, 20], [0, 0]] }
`, "shell.front.back crosses shell.front.down at [10, 10]. A point of one of them lies on the wrong side of the other."},
		{"one edge that loops", `edge "loop" { curve = [[0, 0], [30, 30], [-10, 30], [20, 0]] } # fault outline-crossing error
edge "top" { line = [[20, 0], [20, -10], [0, -10], [0, 0]] }
`, "shell.front.loop crosses itself at [10, 12.86]. Look for a point of it in the wrong place."},
		{"two edges that cross twice are one fault", `edge "wave" { line = [[0, 0], [10, 20], [20, 0]] }
edge "side" { line = [[20, 0], [30, 10]] }
edge "level" { line = [[30, 10], [-5, 10]] } # fault outline-crossing error
edge "left" { line = [[-5, 10], [0, 0]] }
`, "shell.front.level crosses shell.front.wave at [5, 10] and [15, 10]. A point of one of them lies on the wrong side of the other."},
		{"two edges that touch and part again", `edge "wave" { line = [[0, 0], [10, 10], [20, 0]] }
edge "side" { line = [[20, 0], [30, 10]] }
edge "level" { line = [[30, 10], [-5, 10]] }
edge "left" { line = [[-5, 10], [0, 0]] }
`, ""},
		{"a crossing of the gap between two edges is the gap's fault", `edge "body" { line = [[0, 0], [20, 0], [20, 20], [0, 20]] }
edge "rest" { line = [[30, 10], [30, -10], [0, -10], [0, 0]] }
`, ""},
		{"a crossing beside a gap is reported", `edge "down" { line = [[0, 0], [20, 20]] }
edge "back" { line = [[20, 0], [0, 20]] } # fault outline-crossing error
edge "left" { line = [[0, 20], [0, 10]] }
`, "shell.front.back crosses shell.front.down at [10, 10]. A point of one of them lies on the wrong side of the other."},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &draft.OutlineCrossing, front(c.edges))
			require.Empty(t, r.Result.NotPossible)
			if c.message != "" {
				require.Equal(t, c.message, r.Result.Findings[0].Message)
			}
		})
	}
	t.Run("partly drawn", func(t *testing.T) {
		for _, rule := range []*rules.Rule{&draft.OutlineClosed, &draft.OutlineCrossing} {
			r := ruletest.Spec(t, rule, front(`edge "top" { line = [[0, 0], [20, 0]] }
edge "side" { length = 40 }
`))
			require.Len(t, r.Result.NotPossible, 1)
			require.Equal(t, "shell.front.side has no drawing", r.Result.NotPossible[0].Reason)
		}
	})
}
