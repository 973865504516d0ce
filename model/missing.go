package model

import "fmt"

// Missing is the reason why a figure cannot be had, in words that stand in the
// report as they are: "shell.back.side has no drawing".
type Missing struct{ Reason string }

func (m *Missing) Error() string { return m.Reason }

func missing(format string, args ...any) error {
	return &Missing{fmt.Sprintf(format, args...)}
}
