package tally

import (
	"regexp"
	"strings"
)

// Says reports whether a text has an address in it that is not a part of another.
func Says(words, address string) bool {
	for from := 0; ; {
		i := strings.Index(words[from:], address)
		if i < 0 {
			return false
		}
		i += from
		from = i + 1
		if !joinedBefore.MatchString(words[:i]) && !joinedAfter.MatchString(words[i+len(address):]) {
			return true
		}
	}
}

var (
	joinedBefore = regexp.MustCompile(`[a-z0-9_.-]$`)
	joinedAfter  = regexp.MustCompile(`^([a-z0-9_-]|\.[a-z0-9])`)
)
