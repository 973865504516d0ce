package report

import "errors"

var errFull = errors.New("no room left")

// full is a disk without room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }
