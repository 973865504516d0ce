package plugin

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// failure is how a plugin failed: in one line, and what may help beside it.
type failure struct{ what, beside string }

func (f failure) Error() string { return f.what }

// plain makes text of a plugin fit to be told: valid, without control
// characters but for new lines.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		if r == '\t' {
			return ' '
		}
		if r != '\n' && unicode.IsControl(r) {
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, string(utf8.RuneError)))
}

// short cuts text that is quoted from a plugin.
func short(text string) string {
	const most = 60
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:most]) + "…"
}
