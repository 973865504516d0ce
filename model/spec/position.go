package spec

import (
	"bytes"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
)

// badByte is the offset of the first byte that is not UTF-8 text, or -1.
func badByte(src []byte) int {
	zero := bytes.IndexByte(src, 0)
	if utf8.Valid(src) {
		return zero
	}
	for i := 0; i < len(src); {
		r, n := utf8.DecodeRune(src[i:])
		if r == utf8.RuneError && n == 1 || i == zero {
			return i
		}
		i += n
	}
	return zero
}

// rangeAt is the range between two offsets of a file. It counts the lines from
// the top, so it is for faults only.
func rangeAt(name string, src []byte, from, to int) hcl.Range {
	return hcl.Range{Filename: name, Start: posAt(src, from), End: posAt(src, min(to, len(src)))}
}

func posAt(src []byte, at int) hcl.Pos {
	return hcl.Pos{Line: lineAt(src, at), Column: 1 + utf8.RuneCount(src[lineStart(src, at):at]), Byte: at}
}

func lineAt(src []byte, at int) int { return 1 + bytes.Count(src[:at], []byte{'\n'}) }

func lineStart(src []byte, at int) int { return 1 + bytes.LastIndexByte(src[:at], '\n') }

// indent is how far the line that holds the offset is set in, and whether
// nothing but space stands before the offset.
func indent(src []byte, at int) (width int, alone bool) {
	i := lineStart(src, at)
	from := i
	for i < at && (src[i] == ' ' || src[i] == '\t') {
		i++
	}
	return i - from, i == at
}
