package spec

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"

	"understitch/model"
)

// maxFaults is how many diagnostics of one file are passed on. Past it they
// tell the reader nothing new.
const maxFaults = 20

// faults gathers the diagnostics of one reading.
type faults struct {
	list   []model.Diagnostic
	failed bool // whether any of them is an error
}

// full reports whether there are more faults than anyone will see, so that
// looking for further ones is in vain.
func (f *faults) full() bool { return len(f.list) >= 10*maxFaults }

// fault reports an error. The detail says what to do about it and may be
// empty.
func (f *faults) fault(r hcl.Range, detail, format string, args ...any) {
	f.failed = true
	f.put("error", r, detail, fmt.Sprintf(format, args...))
}

// warn reports something that does not keep the garment from being checked.
func (f *faults) warn(r hcl.Range, detail, format string, args ...any) {
	f.put("warning", r, detail, fmt.Sprintf(format, args...))
}

// lacks reports a body measure that is not stated, of whom where that is said.
func (f *faults) lacks(severity string, r hcl.Range, measure, detail, of string) {
	f.failed = f.failed || severity == "error"
	f.keep(model.Diagnostic{
		Severity: severity, Summary: "body." + measure + " is not stated" + of, Detail: detail, Place: place(r), Measure: measure,
	})
}

func (f *faults) put(severity string, r hcl.Range, detail, summary string) {
	f.keep(model.Diagnostic{Severity: severity, Summary: summary, Detail: detail, Place: place(r)})
}

func (f *faults) keep(d model.Diagnostic) {
	if f.full() || slices.Contains(f.list, d) {
		return
	}
	f.list = append(f.list, d)
}

// sorted gives the diagnostics in the order of the file, the first twenty of
// them. An error is never dropped for a warning's sake.
func (f *faults) sorted() []model.Diagnostic {
	list := f.list
	if len(list) > maxFaults && f.failed {
		list = slices.DeleteFunc(slices.Clone(list), func(d model.Diagnostic) bool { return d.Severity != "error" })
	}
	slices.SortStableFunc(list, func(a, b model.Diagnostic) int {
		if c := a.Place.Compare(b.Place); c != 0 {
			return c
		}
		return strings.Compare(a.Summary, b.Summary)
	})
	list = once(list)
	if len(list) > maxFaults {
		list = list[:maxFaults]
	}
	return list
}

// place turns the parser's range into a place of the model.
func place(r hcl.Range) model.Place {
	return model.Place{
		File:  r.Filename,
		Start: model.Pos{Line: r.Start.Line, Column: r.Start.Column, Byte: r.Start.Byte},
		End:   model.Pos{Line: r.End.Line, Column: r.End.Column, Byte: r.End.Byte},
	}
}

// lineOf says where something else stands, for a detail: "line 12".
func lineOf(r hcl.Range) string { return fmt.Sprintf("line %d", r.Start.Line) }

// join is a + b with a space between when both are there.
func join(a, b string) string {
	return strings.TrimSpace(a + " " + b)
}
