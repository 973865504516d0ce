package waivers

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
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
waive "seam-wlak" { # want waiver-current warning
  at     = shell.front
  reason = "a slip of the pen"
}
`)
	require.Contains(t, report.Result.Findings[0].Message, `did you mean "seam-walk"?`)
}
