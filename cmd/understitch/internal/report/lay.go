package report

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// Columns is how many columns a text takes on a terminal.
func Columns(text string) int {
	n := 0
	for _, r := range text {
		n += runeColumns(r)
	}
	return n
}

func runeColumns(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// Wrap breaks a text between words into lines of at most the given columns. A
// word that is longer is broken where the line ends.
func Wrap(text string, columns int) []string {
	columns = max(columns, 1)
	var lines []string
	line, used := "", 0
	flush := func() {
		lines = append(lines, line)
		line, used = "", 0
	}
	for _, word := range strings.Fields(text) {
		n := Columns(word)
		if used > 0 && used+1+n > columns {
			flush()
		}
		for n > columns {
			head := fitting(word, columns)
			lines = append(lines, head)
			word = word[len(head):]
			n = Columns(word)
		}
		if used > 0 {
			line, used = line+" ", used+1
		}
		line, used = line+word, used+n
	}
	if used > 0 || len(lines) == 0 {
		flush()
	}
	return lines
}

// fitting is the longest beginning of a text that fits, at least one character.
func fitting(text string, columns int) string {
	used := 0
	for i, r := range text {
		used += runeColumns(r)
		if used > columns && i > 0 {
			return text[:i]
		}
	}
	return text
}
