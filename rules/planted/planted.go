// Package planted reads the faults that a spec says are planted in it, and
// compares them with what a check found. A comment states a fault on the line
// where it must be found, with its figure where it has one:
//
//	join = [shell.front.side, shell.back.side]  # fault seam-walk error 4.1mm
//
// The comments are for tests and for the demo: a check does not read them.
package planted

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"understitch/model"
	"understitch/rules"
)

// Fault is one fault that a spec states.
type Fault struct {
	Line           int
	Rule, Severity string
	Figure         string // "4.1mm", "12deg", "1.5%", "0.85"; "" if none is stated
}

var form = regexp.MustCompile(`fault ([a-z-]+) (error|warning|note)(?: (-?[0-9.]+(?:mm|deg|%)?)(?:\s|$))?`)

// Faults reads the faults in a spec's comments. Several may be on one line.
func Faults(src string) []Fault {
	var out []Fault
	for i, line := range strings.Split(src, "\n") {
		_, comment, ok := strings.Cut(line, "#")
		if !ok {
			continue
		}
		for _, m := range form.FindAllStringSubmatch(comment, -1) {
			out = append(out, Fault{i + 1, m[1], m[2], m[3]})
		}
	}
	return out
}

// Differences compares findings with the faults in their spec: a line for each
// finding that no comment states, and for each fault that was not found.
func Differences(findings []rules.Finding, src string) []string {
	faults := Faults(src)
	var out []string
	for _, f := range findings {
		if i := match(f, faults); i >= 0 {
			faults = append(faults[:i], faults[i+1:]...)
			continue
		}
		out = append(out, fmt.Sprintf("line %d: found, and not planted: %s %s %s (%s): %s", f.Place.Start.Line, f.Rule.Name, f.Severity, figure(f), f.Subject, f.Message))
	}
	for _, f := range faults {
		out = append(out, fmt.Sprintf("line %d: planted, and not found: %s %s %s", f.Line, f.Rule, f.Severity, f.Figure))
	}
	return out
}

func match(f rules.Finding, faults []Fault) int {
	for i, p := range faults {
		if p.Line == f.Place.Start.Line && p.Rule == f.Rule.Name && p.Severity == f.Severity.String() && agrees(p.Figure, f) {
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
