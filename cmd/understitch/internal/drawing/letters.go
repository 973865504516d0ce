package drawing

import (
	"strings"
	"unicode"
)

// A picture does not know the typeface it will be shown in. Words are therefore
// given the room they take in a wide one, so that they fit in any; the browser
// tests hold the estimate against a typeface that is there.

// letterWide is about how wide a letter of a wide sans-serif typeface is, in
// shares of its height (from memory of such typefaces).
func letterWide(r rune) float64 {
	switch {
	case strings.ContainsRune("ijl|!'", r):
		return 0.29
	case strings.ContainsRune(" .,:;", r):
		return 0.33
	case strings.ContainsRune("ftr()[]-/", r):
		return 0.4
	case strings.ContainsRune("mwMW%", r):
		return 0.93
	case strings.ContainsRune("ceksvxyzJ", r):
		return 0.59
	case unicode.IsUpper(r):
		return 0.74
	case r > 0x2E80: // East Asian scripts
		return 1
	}
	return 0.635
}

// boldWider is by how much bold words are wider than plain ones.
const boldWider = 1.12

// wordsWide is about how wide a line of words is, in the unit of its size.
func wordsWide(text string, size float64, bold bool) float64 {
	wide := 0.0
	for _, r := range plain(text) {
		wide += letterWide(r)
	}
	if bold {
		wide *= boldWider
	}
	return wide * size
}

// folded breaks words into lines that are at most so wide, between words, and
// after a dot where an address alone is too wide.
func folded(text string, size, wide float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(plain(text)) {
		for wordsWide(word, size, false) > wide && strings.Contains(strings.TrimSuffix(word, "."), ".") {
			at := strings.Index(word, ".") + 1
			if line != "" {
				lines = append(lines, line)
			}
			line, word = word[:at], word[at:]
			lines = append(lines, line)
			line = ""
		}
		switch {
		case line == "":
			line = word
		case wordsWide(line+" "+word, size, false) <= wide:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
