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
