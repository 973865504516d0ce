package spec

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// programmersWords are those of the parser's own messages. None of them says
// anything to a cutter.
var programmersWords = regexp.MustCompile(`(?i)\b(attribute|argument|expression|template|interpolation|object|tuple|literal|token|identifier|string|newline|delimit\w*|syntax|index|boolean|constructor|sequence|configuration|parenthes[ie]s)\b`)

// limits are what is said of a file that no cutter writes.
var limits = regexp.MustCompile(`^(more than \d+ operators in one expression|this expression is too deep)$`)

// slipOfTheKey is a small change of a sound spec, as it comes about in typing
// and pasting: something put in, left out, or put in the place of something.
func slipOfTheKey(t *rapid.T, src string) string {
	tokens := regexp.MustCompile(`\w+|"[^"\n]*"|\s|.`).FindAllStringIndex(src, -1)
	at := rapid.SampledFrom(tokens).Draw(t, "at")
	put := rapid.SampledFrom([]string{
		"", "", "", "=", "==", ",", ".", "..", ";", ":", "{", "}", "[", "]", "(", ")", `"`, "'", "“", "”", "x", "k ", " 7/8", ",5", "cm", "½", "″", "°", "%", "+", "-", "–",
		"*", "×", "&", "|", "!", "?", "^", "\\", "/", "//", "/*", "#", "<<", "<", ">", "=>", "\n", "\r", "\t", "\u00a0", "\u200b", "\ufeff", "ä", "$", "${", "%{", "@", "~", "`",
		"::", "...", "null", "true", "for", "if", "and", "to", "0x1", "1e5", "1e", "_", "-1", " - 1", "[*]", ".*", "[0]", "a.b.c",
	}).Draw(t, "put")
	if rapid.Bool().Draw(t, "in place") {
		return src[:at[0]] + put + src[at[1]:]
	}
	return src[:at[0]] + put + src[at[0]:]
}

// Whatever one slip does to a sound spec, what is said of it stands in the file,
// in words for cutters; and a file that cannot be read has one fault.
func TestOneSlip(t *testing.T) {
	rink, err := os.ReadFile("testdata/rink-dress.garment.hcl")
	require.NoError(t, err)
	rapid.Check(t, func(t *rapid.T) {
		src := slipOfTheKey(t, rapid.SampledFrom([]string{sound, string(rink)}).Draw(t, "spec"))
		lines := strings.Split(src, "\n")
		f := &faults{}
		if root := parse("x", []byte(src), garmentShape, f); root == nil && len(f.list) != 1 {
			t.Fatalf("%d faults: %s", len(f.list), told(f.list))
		}
		for _, d := range everything(src, nil) {
			for _, text := range []string{d.Summary, d.Detail} {
				if m := programmersWords.FindString(text); m != "" && !limits.MatchString(text) && !strings.Contains(src, m) {
					t.Fatalf("%q is a programmer's word: %s", m, told(everything(src, nil)))
				}
			}
			if d.Summary == "" || d.Place.Start.Line < 1 || d.Place.Start.Line > len(lines) || d.Place.End.Byte > len(src) || d.Place.Start.Byte > d.Place.End.Byte {
				t.Fatalf("%v is no place in the file: %s", d.Place, told(everything(src, nil)))
			}
		}
	})
}

// A slip behind twenty thousand points on one line, as a digitiser writes them, is
// found by going along the line once: by trying all of it at each of its words it
// would take minutes.
func TestSlipOnALongLine(t *testing.T) {
	var line strings.Builder
	for i := range 20000 {
		fmt.Fprintf(&line, "[%d, %d], ", i, i%7)
	}
	found := everything("garment \"x\" { unit = \"cm\" }\nlayer \"a\" {\n  side = \"outer\"\n  piece \"p\" {\n    edge \"e\" { line = ["+line.String()+"[1 2]] }\n  }\n}\n", nil)
	require.Len(t, found, 1)
	require.Equal(t, "a comma is missing before 2", found[0].Summary)
}

// A brace that is taken out of a spec that is set in is told at its block, and
// so is one that is put in twice: never at the end of the file, far from it.
func TestBraces(t *testing.T) {
	src, err := os.ReadFile("testdata/rink-dress.garment.hcl")
	require.NoError(t, err)
	tried := 0
	for at, c := range src {
		if c != '}' || src[at-1] == '}' {
			continue
		}
		_, alone := indent(src, at)
		if !alone {
			continue
		}
		tried++
		openers := []string{}
		line := 0
		for i, l := range strings.Split(string(src[:at+1]), "\n") {
			l, _, _ = strings.Cut(l, "#")
			for range strings.Count(l, "{") {
				openers = append(openers, strings.TrimSpace(l))
			}
			if n := strings.Count(l, "}"); n > 0 && i < lineAt(src, at)-1 {
				openers = openers[:len(openers)-n]
			}
			line = i + 1
		}
		head := strings.TrimSpace(strings.TrimSuffix(openers[len(openers)-1], "{"))
		without := everything(string(src[:at])+string(src[at+1:]), nil)
		require.Len(t, without, 1)
		require.Contains(t, without[0].Summary, head+" opened on line ", "the brace of line %d", line)
		twice := everything(string(src[:at+1])+"\n"+string(src[lineStart(src, at):at+1])+string(src[at+1:]), nil)
		require.NotEmpty(t, twice)
		require.InDelta(t, line, twice[0].Place.Start.Line, 1, "the second brace of line %d: %s", line, twice[0].Summary)
	}
	require.Greater(t, tried, 10)
}
