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
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/inspect"
)

// Rule checks a rule's own bad and good examples with that rule alone. The bad
// one must state at least one fault.
func Rule(t *testing.T, rule *rules.Rule) {
	t.Helper()
	engine, err := rules.New([]*rules.Rule{rule})
	require.NoError(t, err)
	t.Run(rule.Name+"/bad", func(t *testing.T) {
		require.NotEmpty(t, Faults(rule.Doc.Bad), "the bad example states no fault")
		CheckIn(t, engine, folder(t, rule), "bad.garment.hcl", rule.Doc.Bad)
	})
	t.Run(rule.Name+"/good", func(t *testing.T) {
		require.Empty(t, Faults(rule.Doc.Good), "the good example states a fault")
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

func inspected(t *testing.T, engine *rules.Engine, dir, name, src string) *inspect.Report {
	in := &inspect.Inspector{Engine: engine}
	return in.Source(t.Context(), filepath.Join(dir, name), []byte(src), inspect.Options{Today: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)})
}

// Compare holds a report against the faults in its spec.
func Compare(t *testing.T, report *inspect.Report, src string) {
	t.Helper()
	require.Empty(t, report.Diagnostics, "the spec cannot be read")
	faults := Faults(src)
	var differences []string
	for _, f := range report.Result.Findings {
		if i := match(f, faults); i >= 0 {
			faults = append(faults[:i], faults[i+1:]...)
			continue
		}
		differences = append(differences, fmt.Sprintf("line %d: found but not wanted: %s %s %s (%s): %s", f.Place.Start.Line, f.Rule.Name, f.Severity, figure(f), f.Subject, f.Message))
	}
	for _, w := range faults {
		differences = append(differences, fmt.Sprintf("line %d: wanted but not found: %s %s %s", w.Line, w.Rule, w.Severity, w.Figure))
	}
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

// Fault is one expectation.
type Fault struct {
	Line           int
	Rule, Severity string
	Figure         string // "4.1mm", "12deg", "1.5%", "0.85"; "" when none is stated
}

var faultForm = regexp.MustCompile(`fault ([a-z-]+) (error|warning|note)(?: (-?[0-9.]+(?:mm|deg|%)?)(?:\s|$))?`)

// Faults reads the expectations in a spec's comments.
func Faults(src string) []Fault {
	var out []Fault
	for i, line := range strings.Split(src, "\n") {
		_, comment, ok := strings.Cut(line, "#")
		if !ok {
			continue
		}
		for _, m := range faultForm.FindAllStringSubmatch(comment, -1) {
			out = append(out, Fault{i + 1, m[1], m[2], m[3]})
		}
	}
	return out
}

func match(f rules.Finding, faults []Fault) int {
	for i, w := range faults {
		if w.Line == f.Place.Start.Line && w.Rule == f.Rule.Name && w.Severity == f.Severity.String() && agrees(w.Figure, f) {
			return i
		}
	}
	return -1
}

// agrees compares to the digits that the comment gives.
func agrees(figure string, f rules.Finding) bool {
	if figure == "" {
		return !f.Numeric
	}
	unit := map[rules.Unit]string{rules.Millimetres: "mm", rules.Degrees: "deg", rules.Ratio: "", rules.Percent: "%"}[f.Unit]
	number, ok := strings.CutSuffix(figure, unit)
	value, err := strconv.ParseFloat(number, 64)
	if !ok || err != nil || !f.Numeric {
		return false
	}
	digits := 0
	if dot := strings.IndexByte(number, '.'); dot >= 0 {
		digits = len(number) - dot - 1
	}
	return math.Abs(f.Measured-value) <= 0.5*math.Pow10(-digits)+1e-9
}

func figure(f rules.Finding) string {
	if !f.Numeric {
		return ""
	}
	return model.Decimal(f.Measured, 3) + string(f.Unit)
}
