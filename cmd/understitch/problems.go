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
	fmt.Fprintf(w.stderr, "%s: %s%s\n", report.Clean(d.Place.String()), what, report.Clean(d.Summary))
	for line := range strings.Lines(d.Detail) {
		fmt.Fprintf(w.stderr, "    %s\n", report.Clean(strings.TrimRight(line, "\n")))
	}
}
