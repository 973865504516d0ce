package model

import (
	"errors"
	"fmt"
)

// Missing is the reason why a figure cannot be had, in words that stand in the
// report as they are: "shell.back.side has no drawing".
type Missing struct{ Reason string }

func (m *Missing) Error() string { return m.Reason }

// Open is the reason why a layer has no girth at a level: it does not close round
// the body there. Nothing that could be measured would give it one.
type Open struct{ Missing }

// Unwrap makes an open layer one of the ways in which a figure can be missing.
func (o *Open) Unwrap() error { return &o.Missing }

// NotMeasured reports whether a reason is that a figure was not measured or stated,
// rather than that there is nothing there to be measured.
func NotMeasured(reason error) bool {
	var open *Open
	return reason != nil && !errors.As(reason, &open)
}

func notRound(format string, args ...any) error {
	return &Open{Missing{fmt.Sprintf(format, args...)}}
}

func missing(format string, args ...any) error {
	return &Missing{fmt.Sprintf(format, args...)}
}
