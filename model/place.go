package model

import (
	"cmp"
	"errors"
	"fmt"
	"strings"
)

// Missing is the reason why a figure cannot be had, in words that stand in the
// report as they are: "shell.back.side has no drawing".
type Missing struct{ Reason string }

func (m *Missing) Error() string { return m.Reason }

// Open is the reason why a layer has no girth at a level: it does not close round
// the body there. Nothing that could be measured would give it one.
type Open struct {
	Missing
	Edge *Edge // past which the cloth does not go on; nil where it goes on into a piece
}

// Unwrap makes an open layer one of the ways in which a figure can be missing.
func (o *Open) Unwrap() error { return &o.Missing }

// NotMeasured reports whether a reason is that a figure was not measured or stated,
// rather than that there is nothing there to be measured.
func NotMeasured(reason error) bool {
	var open *Open
	return reason != nil && !errors.As(reason, &open)
}

func NotRound(format string, args ...any) error {
	return &Open{Missing: Missing{fmt.Sprintf(format, args...)}}
}

func Missingf(format string, args ...any) error {
	return &Missing{fmt.Sprintf(format, args...)}
}

// Pos is a position in a source file. Line and Column count from 1, columns in
// characters as an editor shows them; Byte counts from 0.
type Pos struct {
	Line   int `json:"line"`
	Column int `json:"column"`
	Byte   int `json:"-"`
}

// Place is a stretch of a source file, from Start up to but not including End.
type Place struct {
	File  string `json:"file"`
	Start Pos    `json:"start"`
	End   Pos    `json:"end"`
}

// IsZero reports whether the place is unknown.
func (p Place) IsZero() bool { return p.File == "" && p.Start.Line == 0 }

// String writes the place as file:line:column, the form that editors open.
func (p Place) String() string {
	return fmt.Sprintf("%s:%d:%d", p.File, p.Start.Line, p.Start.Column)
}

// Attributes are where a block states what: the places of its attributes' values, by
// name.
type Attributes map[string]Place

// Or is the place of an attribute, or where the block does not state it another one.
func (a Attributes) Or(name string, block Place) Place {
	if p, ok := a[name]; ok {
		return p
	}
	return block
}

// Compare orders places by file, then by position.
func (p Place) Compare(q Place) int {
	return cmp.Or(
		strings.Compare(p.File, q.File),
		cmp.Compare(p.Start.Byte, q.Start.Byte),
		cmp.Compare(p.End.Byte, q.End.Byte),
	)
}

// Diagnostic says that something in a file could not be read, with its place.
type Diagnostic struct {
	Severity string `json:"severity"` // "error" or "warning"
	Summary  string `json:"summary"`  // what is wrong, one line
	Detail   string `json:"detail"`   // what to do about it; may be empty
	Place    Place  `json:"range"`

	// Measure is the body measure that is not stated, where that is what is wrong.
	Measure string `json:"-"`
}

// Error makes a diagnostic usable as an error where only one can be passed on.
func (d Diagnostic) Error() string {
	text := d.Summary
	if !d.Place.IsZero() {
		text = d.Place.String() + ": " + text
	}
	if d.Detail != "" {
		text += "; " + d.Detail
	}
	return text
}

// Errors reports whether any of the diagnostics is an error.
func Errors(diags []Diagnostic) bool {
	for _, d := range diags {
		if d.Severity == "error" {
			return true
		}
	}
	return false
}
