package report

import (
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
)

func TestClean(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"plain", "side seam, 4 mm", "side seam, 4 mm"},
		{"letters beyond ASCII", "Ärmel, 袖", "Ärmel, 袖"},
		{"colour", "a \x1b[1;31mred\x1b[0m coat", "a red coat"},
		{"clear the screen", "a\x1b[2Jb", "ab"},
		{"a title for the window", "a\x1b]0;owned\ab", "ab"},
		{"a link", "\x1b]8;;http://x.example\x1b\\here\x1b]8;;\x1b\\", "here"},
		{"one byte that opens an order", "a\u009b31mb", "ab"},
		{"an order that is cut off", "a\x1b[", "a"},
		{"reset", "a\x1bcb", "ab"},
		{"line ends and tabs", "a\r\n\tb", "a   b"},
		{"bell, zero, delete", "a\a\x00\x7fb", "ab"},
		{"turned writing", "a\u202ecba\u2069", "acba"},
		{"broken text", "a\xffb", "a\ufffdb"},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, Clean(c.in)) })
	}
}

func TestCleanLeavesNothingThatSteers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, r := range Clean(rapid.String().Draw(t, "text")) {
			if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
				t.Fatalf("%U is left", r)
			}
		}
	})
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		name, in string
		columns  int
		want     []string
	}{
		{"fits", "one two", 10, []string{"one two"}},
		{"exactly", "one two", 7, []string{"one two"}},
		{"between words", "one two three", 8, []string{"one two", "three"}},
		{"a long word", "an abcdefghij end", 4, []string{"an", "abcd", "efgh", "ij", "end"}},
		{"a figure and its unit", "it is 2.4 cm, or (3 mm) out", 9, []string{"it is", "2.4 cm,", "or (3 mm)", "out"}},
		{"no figure", "part 3b cm", 7, []string{"part 3b", "cm"}},
		{"spaces run together", " a   b ", 10, []string{"a b"}},
		{"nothing", "", 10, []string{""}},
		{"wide letters", "袖袖袖", 4, []string{"袖袖", "袖"}},
		{"accents take no room", "e\u0301e\u0301e\u0301 x", 5, []string{"e\u0301e\u0301e\u0301 x"}},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, Wrap(c.in, c.columns)) })
	}
}

// Wrapping loses no word and keeps every line within the columns.
func TestWrapKeepsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOf(rapid.StringMatching(`[a-zä袖]{1,12}`)).Draw(t, "words"), " ")
		columns := rapid.IntRange(2, 30).Draw(t, "columns")
		lines := Wrap(text, columns)
		for _, l := range lines {
			if Columns(l) > columns {
				t.Fatalf("%q takes more than %d columns", l, columns)
			}
		}
		if a, b := strings.ReplaceAll(text, " ", ""), strings.ReplaceAll(strings.Join(lines, ""), " ", ""); a != b {
			t.Fatalf("%q became %q", a, b)
		}
	})
}

func TestExcerpt(t *testing.T) {
	src := []byte("first\n\tjoin = [shell.front.side, shell.back.side]\r\n\n  last")
	at := func(line, from, toLine, to int) model.Place {
		return model.Place{Start: model.Pos{Line: line, Column: from}, End: model.Pos{Line: toLine, Column: to}}
	}
	for _, c := range []struct {
		name    string
		place   model.Place
		columns int
		want    []string
	}{
		{"marked beneath, the indent taken off", at(2, 2, 2, 6), 60, []string{"join = [shell.front.side, shell.back.side]", "o---"}},
		{"in the middle", at(2, 10, 2, 26), 60, []string{"join = [shell.front.side, shell.back.side]", "        o---------------"}},
		{"over the line's end", at(2, 9, 3, 1), 60, []string{"join = [shell.front.side, shell.back.side]", "       o----------------------------------"}},
		{"one place", at(1, 1, 1, 1), 60, []string{"first", "o"}},
		{"cut on the right", at(2, 2, 2, 6), 20, []string{"join = [shell.fro...", "o---"}},
		{"cut on the left", at(2, 28, 2, 43), 26, []string{"...t.side, shell.back.side", "           o--------------"}},
		{"the last line", at(4, 3, 4, 7), 60, []string{"last", "o---"}},
		{"an empty line", at(3, 1, 3, 1), 60, nil},
		{"a line that is not there", at(9, 1, 9, 2), 60, nil},
		{"no line", at(0, 0, 0, 0), 60, nil},
		{"past the line's end", at(1, 40, 1, 44), 60, []string{"first", "     o"}},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, excerpt(src, c.place, c.columns)) })
	}
	require.Nil(t, excerpt(nil, at(1, 1, 1, 2), 60), "no source")
}

func TestByReason(t *testing.T) {
	groups := byReason([]NotPossible{
		{"seam-walk", "seam.side", "shell.back.side has no drawing"},
		{"shared-edge", "share.top", "lining.back.top has no drawing"},
		{"shared-edge", "share.hem", "shell.back.side has no drawing"},
		{"body-ease", "shell", "the waist level does not cross shell.front.side"},
		{"notch-match", "seam.side", "shell.front.notch.a is given by a point, but shell.front.side has no drawing"},
	})
	require.Equal(t, []undone{
		{"no drawing", []string{"shell.back.side", "lining.back.top"}, []string{"seam-walk", "shared-edge"}},
		{"the waist level does not cross", []string{"shell.front.side"}, []string{"body-ease"}},
		{"shell.front.notch.a is given by a point, but shell.front.side has no drawing", nil, []string{"notch-match"}},
	}, groups)
	require.Equal(t, []string{"seam-walk", "shared-edge", "notch-match"}, drawable(groups))
}
