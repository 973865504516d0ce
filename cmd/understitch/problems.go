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
			if !told[d] {
				told[d] = true
				w.problem(d)
			}
		}
	}
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
