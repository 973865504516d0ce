// Package tally runs the rules over a corpus and counts what they found of what
// was planted.
package tally

import (
	"context"
	"runtime"
	"slices"

	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

// Expect is what must be found in one file: one fault, or none.
type Expect struct {
	File    string `json:"file"`
	Kind    string `json:"kind"`
	Sizes   int    `json:"sizes"`
	Fault   string `json:"fault,omitempty"` // empty for a garment that is in order
	Rule    string `json:"rule,omitempty"`
	Subject string `json:"subject,omitempty"`
}

// Finding is one finding, as far as it is counted.
type Finding struct{ Rule, Subject, Key, Severity, Message string }

// Case is one file with what was found in it.
type Case struct {
	Expect
	Findings    []Finding
	Passed      int // looks that passed
	NotPossible int // looks that were not possible
	Unread      []string
}

// Found reports whether the expected rule found the fault.
func (c Case) Found() bool {
	return slices.ContainsFunc(c.Findings, func(f Finding) bool { return f.Rule == c.Rule && f.Subject == c.Subject })
}

// Further are the findings beside the one expected: those of other rules, and
// those of the same rule over again. Notes do not count, but for those of the
// rule that was asked for.
func (c Case) Further() (other, same []Finding) {
	seen := false
	for _, f := range c.Findings {
		switch {
		case f.Rule == c.Rule && f.Subject == c.Subject && !seen:
			seen = true
		case f.Rule == c.Rule:
			same = append(same, f)
		case f.Severity != rules.Note.String():
			other = append(other, f)
		}
	}
	return other, same
}

// Run checks the files of a folder and returns a case for each expectation.
func Run(dir string, expected []Expect) ([]Case, error) {
	engine, err := rules.New(builtin.Rules())
	if err != nil {
		return nil, err
	}
	in := &inspect.Inspector{Engine: engine}
	var files []string
	for _, e := range expected {
		files = append(files, dir+"/"+e.File)
	}
	reports, err := in.Files(context.Background(), files, inspect.Options{Today: Today, Jobs: runtime.GOMAXPROCS(0), Lean: true})
	if err != nil {
		return nil, err
	}
	cases := make([]Case, len(expected))
	for i, r := range reports {
		cases[i] = Case{Expect: expected[i]}
		for _, d := range r.Diagnostics {
			cases[i].Unread = append(cases[i].Unread, d.Summary+" "+d.Detail)
		}
		cases[i].Passed, cases[i].NotPossible = r.Result.Passed, len(r.Result.NotPossible)
		for _, f := range r.Result.Findings {
			cases[i].Findings = append(cases[i].Findings, Finding{f.Rule.Name, f.Subject, f.Key, f.Severity.String(), f.Message})
		}
	}
	return cases, nil
}
