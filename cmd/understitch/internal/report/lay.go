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

// word is a part of a text that stands on one line. One that is whole, such as a
// path, stays whole even where it is longer than the line: broken it could be
// neither copied nor clicked.
type word struct {
	text  string
	whole bool
}

// words takes a text apart at its spaces, but for that between a figure and its
// unit.
func words(text string) []word {
	var out []word
	for _, w := range strings.Fields(Clean(text)) {
		if n := len(out); n > 0 && isUnit(strings.TrimRight(w, ".,;:)")) && isFigure(out[n-1].text) {
			out[n-1].text += " " + w
			continue
		}
		out = append(out, word{text: w})
	}
	return out
}

func isUnit(word string) bool {
	return word == "mm" || word == "cm" || word == "in" || word == "%"
}

// isFigure reports whether a word ends in a digit and begins as a number does.
func isFigure(word string) bool {
	first := strings.TrimLeft(word, "(-")
	return first != "" && '0' <= first[0] && first[0] <= '9' && '0' <= word[len(word)-1] && word[len(word)-1] <= '9'
}

// unbroken is a file's name, or a place in a file, which is kept in one.
func unbroken(text string) word { return word{Clean(text), true} }

// Wrap breaks a text between words into lines of at most the given columns. A
// word that is longer is broken where the line ends.
func Wrap(text string, columns int) []string { return wrap(words(text), columns) }

func wrap(words []word, columns int) []string {
	columns = max(columns, 1)
	var lines []string
	line, used := "", 0
	flush := func() {
		lines = append(lines, line)
		line, used = "", 0
	}
	for _, word := range words {
		text, n := word.text, Columns(word.text)
		if used > 0 && used+1+n > columns {
			flush()
		}
		for n > columns && !word.whole {
			head := fitting(text, columns)
			lines = append(lines, head)
			text = text[len(head):]
			n = Columns(text)
		}
		if used > 0 {
			line, used = line+" ", used+1
		}
		line, used = line+text, used+n
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
