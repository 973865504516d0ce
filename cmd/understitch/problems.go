package main

import (
	"fmt"
	"strings"

	"understitch/cmd/understitch/internal/report"
	"understitch/model"
	"understitch/rules/inspect"
)

// problems tells on standard error what could not be read, each fault once: a
// fault in a house file stands in the reports of all garments below it.
func (w *world) problems(reports []*inspect.Report) {
	told := map[model.Diagnostic]bool{}
	for _, r := range reports {
		for _, d := range r.Diagnostics {
			if r.Stopped != "" && d == r.Diagnostics[len(r.Diagnostics)-1] {
				continue // in one sentence for all garments, by stopped
			}
			if !told[d] {
				told[d] = true
				w.problem(d)
			}
		}
	}
}

// failures gives on standard error, for those who mend the program, where it fell
// over. The diagnostics tell the user that it did.
func (w *world) failures(reports []*inspect.Report) {
	for _, r := range reports {
		if r.Stack == nil {
			continue
		}
		w.say("understitch: where it failed on " + r.File + ", for the report:")
		for line := range strings.Lines(string(r.Stack)) {
			w.say("    " + strings.TrimRight(line, "\n"))
		}
	}
}

// stopped says in one sentence what was not looked at because the run was
// stopped, and reports whether there was any.
func (w *world) stopped(reports []*inspect.Report) bool {
	var left []*inspect.Report
	for _, r := range reports {
		if r.Stopped != "" {
			left = append(left, r)
		}
	}
	switch {
	case len(left) == 0:
		return false
	case len(left) == 1:
		w.say("understitch: stopped before " + left[0].File + " was checked in full: " + left[0].Stopped)
	default:
		w.say(fmt.Sprintf("understitch: stopped before %d of %d garments were checked in full, from %s to %s",
			len(left), len(reports), left[0].File, left[len(left)-1].File))
	}
	return true
}

func (w *world) problem(d model.Diagnostic) {
	what := ""
	if d.Severity != "error" {
		what = d.Severity + ": "
	}
	w.say(d.Place.String() + ": " + what + d.Summary)
	for line := range strings.Lines(d.Detail) {
		w.say("    " + strings.TrimRight(line, "\n"))
	}
}

// say writes a line to standard error, whatever stands in it.
func (w *world) say(line string) {
	fmt.Fprintln(w.stderr, report.Inert(report.Clean(line)))
}
