package waivers

import (
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
