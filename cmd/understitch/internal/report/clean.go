package report

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// orders are the escape sequences of terminals: those with parameters, those
// that carry a text (titles, links, clipboards), and the short ones.
var orders = regexp.MustCompile("(?:\x1b\\[|\u009b)[0-?]*[ -/]*[@-~]?|(?:\x1b[\\]PX^_]|[\u009d\u0090\u0098\u009e\u009f])[^\a\x1b\u009c]*(?:\a|\x1b\\\\|\u009c)?|\x1b[ -/]*[0-~]?")

// Clean makes a text from a spec or a file name safe to show: terminal orders
// are taken out whole, control characters and those that turn the direction of
// writing are dropped, a tab and a line end are a space.
func Clean(text string) string {
	text = orders.ReplaceAllString(strings.ToValidUTF8(text, string(utf8.RuneError)), "")
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			return ' '
		case steers(r):
			return -1
		}
		return r
	}, text)
}

// command is an order to a CI system that takes them from the log of a job:
// GitHub's and Azure's agents run what follows "##[", "##vso[" and the like
// wherever it stands.
var command = regexp.MustCompile(`##([A-Za-z]*\[)`)

// Inert makes a line of text safe to stand in the log of a CI job: a name from
// a spec must not be taken for an order, as "::" at the start of a line or "##["
// would be. People read the same.
func Inert(line string) string {
	rest := strings.TrimLeft(line, " \t")
	if strings.HasPrefix(rest, "::") {
		line = line[:len(line)-len(rest)] + ": " + rest[1:]
	}
	return command.ReplaceAllString(line, "# #$1")
}

// tame makes a text fit for a line that machines read.
func tame(text string) string { return Inert(Clean(text)) }
