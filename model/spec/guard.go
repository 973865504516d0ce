package spec

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
)

// What no spec needs. The parser follows nesting by recursion and has no bound
// of its own, so these are held before it sees the file.
const (
	maxBytes    = 4 << 20 // a garment of a hundred pieces is under 200 KB
	maxNesting  = 64      // brackets, braces, quoted text and ${ } inside one another
	maxSigns    = 256     // operators between two commas or line ends
	maxDigits   = 40      // of one number
	maxExponent = 3       // digits of a number's exponent
)

// guard looks over the bytes of a file before it is parsed and gives the first
// reason not to parse it, or nil. It follows just enough of the syntax to know
// what is text, comment and code: quoted text, heredocs, ${ } inside them. Where
// it and the parser could see a line end differently (quoted text that runs on,
// template directives) it refuses, so that nothing nests deeper for the parser
// than it does here.
func guard(name string, src []byte) *fault {
	if len(src) > maxBytes {
		return &fault{at: hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos},
			summary: fmt.Sprintf("the file is larger than %d MB", maxBytes>>20), detail: "A spec of one garment is a few kilobytes."}
	}
	if i := badByte(src); i >= 0 {
		f := &fault{at: rangeAt(name, src, i, i+1), summary: "the file is not plain text in UTF-8",
			detail: "Save it as UTF-8 in the editor."}
		if src[i] == 0 {
			f.summary = "the file holds a zero byte, so it is not plain text"
		}
		return f
	}
	s := scanner{src: src, name: name}
	s.run()
	return s.found
}

// fault is a diagnostic in the making.
type fault struct {
	at              hcl.Range
	summary, detail string
}

// frame is one bracket, brace or text that is open.
type frame struct {
	kind   byte // '{', '[', '(', '$' for ${, '"' for quoted text, '<' for a heredoc
	at     int
	signs  int    // operators since the last comma or line end
	marker []byte // what ends a heredoc
}

type scanner struct {
	name  string
	src   []byte
	pos   int
	open  []frame
	signs int // those outside any bracket
	found *fault
	slip  int // where the first brace closes that is set out otherwise than its opener, else 0
	slipO int // that opener
}

func (s *scanner) run() {
	for s.pos < len(s.src) && s.found == nil {
		switch s.top() {
		case '"', '<':
			s.text()
		default:
			s.code()
		}
	}
	if s.found == nil && len(s.open) > 0 {
		s.unclosed()
	}
}

// top is the kind of what is open innermost, or 0.
func (s *scanner) top() byte {
	if n := len(s.open); n > 0 {
		return s.open[n-1].kind
	}
	return 0
}

func (s *scanner) refuse(from, to int, detail, format string, args ...any) {
	if s.found == nil {
		s.found = &fault{at: rangeAt(s.name, s.src, from, to), summary: fmt.Sprintf(format, args...), detail: detail}
	}
}

func (s *scanner) push(kind byte, width int) {
	if len(s.open) >= maxNesting {
		s.refuse(s.pos, s.pos+width, "", "brackets are nested more than %d deep", maxNesting)
		return
	}
	s.open = append(s.open, frame{kind: kind, at: s.pos})
	s.pos += width
}

// code takes one token of code.
func (s *scanner) code() {
	c := s.src[s.pos]
	switch {
	case c == '{' || c == '[' || c == '(':
		s.push(c, 1)
	case c == '"':
		s.push('"', 1)
	case c == '}' || c == ']' || c == ')':
		s.close(c)
	case c == '\n':
		if t := s.top(); t == 0 || t == '{' {
			s.resetSigns()
		}
		s.pos++
	case c == ',':
		s.resetSigns()
		s.pos++
	case c == '#' || c == '/' && s.next(1) == '/':
		if i := bytes.IndexByte(s.src[s.pos:], '\n'); i >= 0 {
			s.pos += i
		} else {
			s.pos = len(s.src)
		}
	case c == '/' && s.next(1) == '*':
		i := bytes.Index(s.src[s.pos+2:], []byte("*/"))
		if i < 0 {
			s.refuse(s.pos, s.pos+2, "Close it with */.", "the comment that begins here is not closed")
			return
		}
		s.pos += i + 4
	case c == '<' && s.next(1) == '<' && s.heredoc():
	case '0' <= c && c <= '9':
		s.number()
	case c == '_' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || c >= utf8.RuneSelf:
		s.word()
	default:
		switch c {
		case '+', '-', '*', '/', '%', '!', '?', '<', '>', '=', '&', '|', '.', ':':
			s.sign()
		}
		s.pos++
	}
}

func (s *scanner) next(n int) byte {
	if s.pos+n < len(s.src) {
		return s.src[s.pos+n]
	}
	return 0
}

func (s *scanner) sign() {
	n := &s.signs
	if len(s.open) > 0 {
		n = &s.open[len(s.open)-1].signs
	}
	if *n++; *n > maxSigns {
		s.refuse(s.pos, s.pos+1, "", "more than %d operators in one expression", maxSigns)
	}
}

func (s *scanner) resetSigns() {
	if n := len(s.open); n > 0 {
		s.open[n-1].signs = 0
	} else {
		s.signs = 0
	}
}

// close ends a bracket. One too many is left to the parser, which knows better
// what is wrong there.
func (s *scanner) close(c byte) {
	s.pos++
	n := len(s.open)
	if n == 0 {
		return
	}
	f := s.open[n-1]
	if want := map[byte]byte{'{': '}', '$': '}', '[': ']', '(': ')'}[f.kind]; c != want {
		s.refuse(f.at, f.at+1, fmt.Sprintf("A %c stands where %c is due, on line %d.", c, want, lineAt(s.src, s.pos-1)),
			"the bracket %c is not closed", f.kind)
		return
	}
	if c == '}' && f.kind == '{' && s.slip == 0 {
		if at, alone := indent(s.src, s.pos-1); alone {
			if was, _ := indent(s.src, f.at); was != at {
				s.slip, s.slipO = s.pos-1, f.at
			}
		}
	}
	s.open = s.open[:n-1]
}

// unclosed reports what is still open at the end of the file. A missing brace
// makes every later one close the wrong block; where the lines are indented
// the first brace that is set out otherwise than its opener tells which.
func (s *scanner) unclosed() {
	f := s.open[len(s.open)-1]
	switch f.kind {
	case '"':
		s.refuse(f.at, f.at+1, "", "the quoted text that begins here is not closed")
		return
	case '<':
		s.refuse(f.at, f.at+2, fmt.Sprintf("It ends with %s on a line of its own.", f.marker),
			"the text that begins here is not closed")
		return
	case '{':
	default:
		s.refuse(f.at, f.at+1, "", "the bracket %c is not closed", s.src[f.at])
		return
	}
	at := f.at
	if s.slip > 0 {
		at = s.slipO
	}
	start := lineStart(s.src, at)
	head := bytes.TrimSpace(s.src[start:at])
	if len(head) == 0 || len(head) > 80 {
		s.refuse(at, at+1, "", "the brace { is not closed")
		return
	}
	from := start + bytes.Index(s.src[start:at], head)
	s.refuse(from, from+len(head), "Its closing brace } is missing.", "the block %s is left open", head)
}

// text takes a stretch of quoted text or of a heredoc.
func (s *scanner) text() {
	top := &s.open[len(s.open)-1]
	quoted := top.kind == '"'
	for s.pos < len(s.src) {
		switch c := s.src[s.pos]; {
		case quoted && (c == '\n' || c == '\r' || c == '\\' && (s.next(1) == '\n' || s.next(1) == '\r')):
			s.refuse(top.at, top.at+1, "Quoted text ends on its line.", "the quoted text that begins here is not closed")
			return
		case c == '\n':
			s.pos++
			if s.endsHeredoc(top.marker) {
				s.open = s.open[:len(s.open)-1]
				return
			}
		case c == '\\' && quoted:
			s.pos += 2
		case (c == '$' || c == '%') && s.next(1) == c && s.next(2) == '{':
			s.pos += 3
		case c == '$' && s.next(1) == '{':
			s.push('$', 2)
			return
		case c == '%' && s.next(1) == '{':
			s.refuse(s.pos, s.pos+2, "Write %%{ for the characters themselves.", "directives in text are not used in specs")
			return
		case c == '"' && quoted:
			s.pos++
			s.open = s.open[:len(s.open)-1]
			return
		default:
			s.pos++
		}
	}
	s.pos = min(s.pos, len(s.src))
}

// heredoc opens one where << and a word end the line.
func (s *scanner) heredoc() bool {
	i := s.pos + 2
	if i < len(s.src) && s.src[i] == '-' {
		i++
	}
	from := i
	for i < len(s.src) && isWordByte(s.src[i]) {
		i++
	}
	marker := s.src[from:i]
	if i < len(s.src) && s.src[i] == '\r' {
		i++
	}
	if len(marker) == 0 || marker[0] < 'A' || i >= len(s.src) || s.src[i] != '\n' {
		return false
	}
	if bytes.ContainsFunc(marker, func(r rune) bool { return r >= utf8.RuneSelf }) {
		s.refuse(s.pos, i, "", "the word that ends this text must be of plain letters")
		return true
	}
	s.push('<', i-s.pos)
	if s.found == nil {
		s.open[len(s.open)-1].marker = marker
	}
	return true
}

// endsHeredoc reports whether the line that begins here is the marker alone,
// and steps over it.
func (s *scanner) endsHeredoc(marker []byte) bool {
	end := len(s.src)
	if i := bytes.IndexByte(s.src[s.pos:], '\n'); i >= 0 {
		end = s.pos + i
	}
	if !bytes.Equal(bytes.TrimSpace(s.src[s.pos:end]), marker) {
		return false
	}
	s.pos = end
	return true
}

func (s *scanner) word() {
	for s.pos < len(s.src) && isWordByte(s.src[s.pos]) {
		s.pos++
	}
}

// isWordByte takes every byte beyond ASCII for part of a word, as nothing
// beyond ASCII is a sign or a bracket.
func isWordByte(c byte) bool {
	return c == '_' || c == '-' || '0' <= c && c <= '9' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || c >= utf8.RuneSelf
}

func (s *scanner) number() {
	from, digits := s.pos, func() int {
		n := 0
		for s.pos < len(s.src) && '0' <= s.src[s.pos] && s.src[s.pos] <= '9' {
			s.pos++
			n++
		}
		return n
	}
	n := digits()
	if s.next(0) == '.' {
		s.pos++
		n += digits()
	}
	if n > maxDigits {
		s.refuse(from, s.pos, "", "a number of more than %d digits", maxDigits)
		return
	}
	if c := s.next(0); c == 'e' || c == 'E' {
		s.pos++
		if c := s.next(0); c == '+' || c == '-' {
			s.pos++
		}
		if digits() > maxExponent {
			s.refuse(from, s.pos, "", "the number %.12s… is out of all measure", s.src[from:s.pos])
		}
	}
}
