// Package ruletest runs a rule over specs whose comments state what must be
// found, on the line where it must be found, with the figure:
//
//	join = [shell.front.side, shell.back.side]  # fault seam-walk error 4.1mm
//
// A fault comment names the rule, the severity and, where the finding has a figure, the
// measured value in mm, deg, % or ratio (written without a unit), to the digits
// given. Several faults may stand on one line, after one another. A spec without
// faults must stay silent.
//
// It also drafts garments elsewhere on the paper, mirrored, on their head or turned,
// and asks that the rules say the same of them there (SameInEveryFrame).
package ruletest

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/inspect"
	"understitch/rules/planted"
)

// Rule checks a rule's own bad and good examples with that rule alone. The bad
// one must state at least one fault.
func Rule(t *testing.T, rule *rules.Rule) {
	t.Helper()
	engine, err := rules.New([]*rules.Rule{rule})
	require.NoError(t, err)
	t.Run(rule.Name+"/bad", func(t *testing.T) {
		require.NotEmpty(t, planted.Faults(rule.Doc.Bad), "the bad example states no fault")
		CheckIn(t, engine, folder(t, rule), "bad.garment.hcl", rule.Doc.Bad)
	})
	t.Run(rule.Name+"/good", func(t *testing.T) {
		require.Empty(t, planted.Faults(rule.Doc.Good), "the good example states a fault")
		report := CheckIn(t, engine, folder(t, rule), "good.garment.hcl", rule.Doc.Good)
		require.Empty(t, report.Result.NotPossible, "the good example is not checked in full")
		require.Positive(t, report.Result.Passed, "the rule looked at nothing in the good example")
	})
}

// Spec checks a spec given as text with one rule against the faults in it.
func Spec(t *testing.T, rule *rules.Rule, src string) *inspect.Report {
	t.Helper()
	engine, err := rules.New([]*rules.Rule{rule})
	require.NoError(t, err)
	return CheckIn(t, engine, folder(t, rule), "test.garment.hcl", src)
}

// noHouse is a folder that does not exist, so that no house file holds in it.
const noHouse = "no-house-here"

// folder is where a rule's examples are taken to stand: one with the house file
// that its documentation has, or one without any.
func folder(t *testing.T, rule *rules.Rule) string {
	t.Helper()
	if rule.Doc.House == "" {
		return noHouse
	}
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "house.hcl"), []byte(rule.Doc.House), 0o600))
	return dir
}

// Check inspects a spec that no house file holds for and compares its findings
// with the faults in it.
func Check(t *testing.T, engine *rules.Engine, name, src string) *inspect.Report {
	t.Helper()
	return CheckIn(t, engine, noHouse, name, src)
}

// CheckIn inspects a spec as if it stood in a folder.
func CheckIn(t *testing.T, engine *rules.Engine, dir, name, src string) *inspect.Report {
	t.Helper()
	report := inspected(t, engine, dir, name, src)
	Compare(t, report, src)
	return report
}

// Found are the findings in a spec, under the house that is given as text; ""
// for none.
func Found(t *testing.T, engine *rules.Engine, house, src string) []rules.Finding {
	t.Helper()
	dir := noHouse
	if house != "" {
		dir = t.TempDir()
		require.NoError(t, os.WriteFile(filepath.Join(dir, "house.hcl"), []byte(house), 0o600))
	}
	report := inspected(t, engine, dir, "test.garment.hcl", src)
	require.Empty(t, report.Diagnostics, "the spec cannot be read")
	return report.Result.Findings
}

// Report checks a spec given as text, without a house.
func Report(t *testing.T, engine *rules.Engine, src string) *inspect.Report {
	t.Helper()
	return inspected(t, engine, noHouse, "test.garment.hcl", src)
}

func inspected(t *testing.T, engine *rules.Engine, dir, name, src string) *inspect.Report {
	in := &inspect.Inspector{Engine: engine}
	return in.Source(t.Context(), filepath.Join(dir, name), []byte(src), inspect.Options{Today: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)})
}

// Compare holds a report against the faults in its spec.
func Compare(t *testing.T, report *inspect.Report, src string) {
	t.Helper()
	require.Empty(t, report.Diagnostics, "the spec cannot be read")
	differences := planted.Differences(report.Result.Findings, src)
	require.Empty(t, differences, strings.Join(differences, "\n"))
}

// Mended is a spec with a correction made in it, byte for byte.
func Mended(src string, m *rules.Mend) string {
	edits := slices.Clone(m.Edits)
	slices.SortFunc(edits, func(a, b rules.Edit) int { return b.Place.Compare(a.Place) }) // from the end, so that the places before hold
	for _, e := range edits {
		src = src[:e.Place.Start.Byte] + e.Text + src[e.Place.End.Byte:]
	}
	return src
}
