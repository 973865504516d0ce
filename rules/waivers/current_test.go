package waivers

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/draft"
	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

// The examples need a rule whose finding is waived beside the rule itself.
func TestExamples(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&seams.Walk, &Current})
	require.NoError(t, err)
	t.Run("bad", func(t *testing.T) {
		report := ruletest.Check(t, engine, "bad.garment.hcl", Current.Doc.Bad)
		require.Len(t, report.Result.Findings, 3)
		require.Empty(t, report.Result.Waived)
	})
	t.Run("good", func(t *testing.T) {
		report := ruletest.Check(t, engine, "good.garment.hcl", Current.Doc.Good)
		require.Len(t, report.Result.Waived, 1)
	})
}

// A waiver of a rule that does not exist is told with the nearest that does.
func TestNamesAnUnknownRule(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&seams.Walk, &Current})
	require.NoError(t, err)
	report := ruletest.Check(t, engine, "unknown.garment.hcl", `
garment "apron" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { length = 30 }
  }
}
waive "seam-wlak" { # fault waiver-current warning
  at     = shell.front
  reason = "a slip of the pen"
}
`)
	require.Contains(t, report.Result.Findings[0].Message, `did you mean "seam-walk"?`)
}

// What later figures rest on cannot be waived: the finding stays in force, and
// the waiver is one itself, whether or not it would cover anything.
func TestCannotBeWaived(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&draft.OutlineClosed, &draft.OutlineCrossing, &Current})
	require.NoError(t, err)
	report := ruletest.Check(t, engine, "open.garment.hcl", `
garment "apron" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "top"  { line = [[0, 0], [20, 0]] }
    edge "rest" { line = [[20, 0.5], [20, 20], [0, 0]] } # fault outline-closed error 5mm
  }
}
waive "outline-closed" { # fault waiver-current warning
  at     = shell.front
  reason = "the gap is small"
}
waive "outline-crossing" { # fault waiver-current warning
  at     = shell.front
  reason = "in case"
}
waive "waiver-current" { # fault waiver-current warning
  at     = shell.front
  reason = "no more of these"
}
`)
	require.Empty(t, report.Result.Waived)
	var said []string
	for _, f := range report.Result.Findings {
		if f.Rule == &Current {
			said = append(said, f.Message)
		}
	}
	require.Equal(t, []string{
		"outline-closed cannot be waived: every width, girth and area of the piece rests on its outline; take the waiver out",
		"outline-crossing cannot be waived: every width, girth and area of the piece rests on its outline; take the waiver out",
		"waiver-current cannot be waived: what is wrong with a waiver is put right in that waiver; take the waiver out",
	}, said)
}

// Two pieces whose hem and neck both dip at the side seam.
const dips = `
garment "tabard" {
  unit  = "cm"
  sizes = ["S", "M"]
}
size "S" {}
size "M" {}
layer "shell" {
  side = "outer"
  piece "front" {
    edge "neck" {
      line   = [[0, 0], [20, -2]]
      finish = "faced"
    }
    edge "side" { line = [[20, -2], [20, 42]] }
    edge "hem" {
      line   = [[20, 42], [0, 40]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 40], [0, 0]] }
  }
  piece "back" {
    edge "neck" {
      line   = [[40, 0], [60, 0]]
      finish = "faced"
    }
    edge "centre" { line = [[60, 0], [60, 44]] }
    edge "hem" {
      line   = [[60, 44], [40, 44]]
      finish = "hem"
    }
    edge "side" { line = [[40, 44], [40, 0]] }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`

// A waiver accepts the figure that it names and no other: one end of a seam, or one
// size; without a name, where a rule takes several figures, it accepts nothing.
func TestNamesAFigure(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&seams.True, &Current})
	require.NoError(t, err)
	for _, c := range []struct {
		name, waiver, house string
		want                []string // end and sizes of what is in force; what is wrong with the waiver
	}{
		{"no waiver", "", "", []string{"start S M", "end S M"}},
		{"one end", `end = "start"`, "", []string{"end S M"}},
		{"the other end", `end = "end"`, "", []string{"start S M"}},
		{"one end in one size", "end = \"start\"\n  size = \"M\"", "", []string{"start S", "end S M"}},
		{"by its figure", `figure = "shell.front.hem and shell.back.hem"`, "", []string{"start S M"}},
		{"none named", "", "", nil},
		{"a figure that is not taken", `figure = "shell.front.hen and shell.back.hem"`, "", []string{"start S M", "end S M", "did you mean"}},
		{"the rule is off", "", `rule "seam-true" { severity = "off" }`, []string{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := dips
			if c.waiver != "" || c.want == nil || c.house != "" {
				src += "waive \"seam-true\" {\n  at     = seam.side\n  " + c.waiver + "\n  reason = \"meant\"\n}\n"
			}
			var got []string
			for _, f := range ruletest.Found(t, engine, "house \"h\" { unit = \"cm\" }\n"+c.house+"\n", src) {
				switch {
				case f.Rule == &Current && strings.Contains(f.Message, "did you mean"):
					got = append(got, "did you mean")
				case f.Rule == &Current:
					require.Equal(t, rules.Error, f.Severity)
					require.Contains(t, f.Message, `Say which one it accepts: end = "start", end = "end"`)
				default:
					got = append(got, strings.Join(append([]string{f.End}, f.Sizes...), " "))
				}
			}
			if c.want == nil {
				c.want = []string{"start S M", "end S M"}
			}
			require.ElementsMatch(t, c.want, got)
		})
	}
}

// A waiver whose check has become impossible is not told to be taken out.
func TestNotPossible(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&seams.True, &Current})
	require.NoError(t, err)
	undrawn := strings.Replace(dips, "line   = [[0, 0], [20, -2]]", "length = 20", 1)
	undrawn = strings.Replace(undrawn, "line   = [[20, 42], [0, 40]]", "length = 20", 1)
	report := ruletest.Report(t, engine, undrawn+"waive \"seam-true\" {\n  at     = seam.side\n  end = \"start\"\n  reason = \"meant\"\n}\n")
	require.Empty(t, report.Result.Findings)
	var reasons []string
	for _, f := range report.Result.NotPossible {
		reasons = append(reasons, f.Reason)
	}
	require.Contains(t, strings.Join(reasons, "\n"), "the waiver of seam-true cannot be checked, because shell.front.neck has no drawing")
}
