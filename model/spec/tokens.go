package spec

import (
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// token is one word or sign of a file. Quoted text is a single one.
type token struct {
	kind   hclsyntax.TokenType
	text   string
	at     hcl.Range
	first  bool // the first of its line
	indent int  // how far that line is set in
}

// lex takes a file apart, without comments. It is for faults only: what is
// sound is taken apart by the parser alone.
func lex(name string, src []byte) (list []token) {
	// A panic inside the parser must not end the checking of other garments.
	defer func() {
		if recover() != nil {
			list = nil
		}
	}()
	raw, _ := hclsyntax.LexConfig(src, name, hcl.InitialPos)
	line, indent, text := 0, 0, 0
	for _, r := range raw {
		switch {
		case r.Type == hclsyntax.TokenOQuote:
			text++
			if text > 1 {
				continue
			}
		case text > 0:
			if r.Type == hclsyntax.TokenCQuote {
				text--
			}
			last := &list[len(list)-1]
			last.at.End = r.Range.End
			last.text = string(src[last.at.Start.Byte:last.at.End.Byte])
			continue
		case r.Type == hclsyntax.TokenComment:
			if !strings.HasSuffix(string(r.Bytes), "\n") {
				continue
			}
			r.Type, r.Range.End = hclsyntax.TokenNewline, r.Range.Start
			if n := len(list); n > 0 && list[n-1].at.End.Line == r.Range.Start.Line {
				r.Range.Start, r.Range.End = list[n-1].at.End, list[n-1].at.End
			}
		}
		t := token{kind: r.Type, text: string(r.Bytes), at: r.Range}
		switch t.kind {
		case hclsyntax.TokenOQuote:
			t.kind = hclsyntax.TokenQuotedLit
		case hclsyntax.TokenNewline, hclsyntax.TokenEOF:
			t.text = ""
		}
		if t.at.Start.Line != line {
			line, t.first = t.at.Start.Line, true
			indent = t.at.Start.Byte - lineStart(src, t.at.Start.Byte)
		}
		t.indent = indent
		list = append(list, t)
	}
	return list
}

// faultLine is the line of a file on which the parser stopped.
type faultLine struct {
	src  []byte
	root *shape
	toks []token
	stop int                 // the offset at which it stopped
	next []token             // the line below
	said string              // the parser's own summary
	last hclsyntax.TokenType // what ended the line above, the line's end apart
}

// lineOfFault takes the line of a range; it has no tokens where there is
// nothing on it.
func lineOfFault(name string, src []byte, root *shape, at hcl.Range, said string) *faultLine {
	l := &faultLine{src: src, root: root, stop: at.Start.Byte, said: said}
	for _, t := range lex(name, src) {
		switch end := t.kind == hclsyntax.TokenNewline || t.kind == hclsyntax.TokenEOF; {
		case t.at.Start.Line == at.Start.Line && !end:
			l.toks = append(l.toks, t)
		case t.at.Start.Line < at.Start.Line && !end:
			l.last = t.kind
		case t.at.Start.Line > at.Start.Line && !end && (len(l.next) == 0 || l.next[0].at.Start.Line == t.at.Start.Line):
			l.next = append(l.next, t)
		case len(l.next) > 0:
			return l
		}
	}
	return l
}

// like reports whether the tokens from i on are those of a pattern, in which id
// is a word, num a figure, txt quoted text, end the end of the line, and
// anything else stands for itself.
func (l *faultLine) like(i int, pattern string) bool {
	for _, p := range strings.Fields(pattern) {
		if i < 0 || i > len(l.toks) {
			return false
		}
		if i == len(l.toks) {
			if p != "end" {
				return false
			}
			i++
			continue
		}
		t, ok := l.toks[i], false
		switch p {
		case "id":
			ok = t.kind == hclsyntax.TokenIdent
		case "num":
			ok = t.kind == hclsyntax.TokenNumberLit
		case "txt":
			ok = t.kind == hclsyntax.TokenQuotedLit
		case "end":
		default:
			ok = t.text == p
		}
		if !ok {
			return false
		}
		i++
	}
	return true
}

// tight reports whether nothing stands between a token and the next.
func (l *faultLine) tight(i int) bool {
	return i >= 0 && i+1 < len(l.toks) && l.toks[i].at.End.Byte == l.toks[i+1].at.Start.Byte
}

// text is what stands from one token to another, as the file has it, cut short
// where it is long.
func (l *faultLine) text(from, to int) string {
	if from > to || from < 0 || to >= len(l.toks) {
		return ""
	}
	s := []rune(string(l.src[l.toks[from].at.Start.Byte:l.toks[to].at.End.Byte]))
	if len(s) > 60 {
		return string(s[:57]) + " …"
	}
	return string(s)
}

// find is the first token from i on that is this sign, or -1.
func (l *faultLine) find(i int, sign string) int {
	for ; i < len(l.toks); i++ {
		if l.toks[i].text == sign {
			return i
		}
	}
	return -1
}
