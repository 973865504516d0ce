package spec

import (
	"fmt"
	"unicode/utf8"
)

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
	root  *shape
	found *fault
	odd   bool // whether brackets or quotes do not pair
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

// code takes tokens of code until text begins.
func (s *scanner) code() {
	for s.found == nil && s.pos < len(s.src) {
		c := s.src[s.pos]
		switch classes[c] {
		case space:
			s.pos++
		case letter:
			i := s.pos + 1
			for i < len(s.src) && (classes[s.src[i]]&inWord != 0 || s.src[i] == '-') {
				i++
			}
			s.pos = i
		case digit:
			s.number()
		case opener:
			s.push(c, 1)
			if c == '"' {
				return
			}
			if s.root != houseShape {
				s.loop()
			}
		case closer:
			s.close(c)
			if t := s.top(); t == '"' || t == '<' {
				return
			}
		case operator:
			if c == '/' && s.comment() {
				continue
			}
			if c == '<' && s.heredoc() {
				return
			}
			s.sign()
			s.pos++
		case divider:
			if t := s.top(); c == ',' || t == 0 || t == '{' {
				s.resetSigns()
			}
			s.pos++
		case hash:
			s.endOfLine()
		default:
			s.pos++
		}
	}
}

// The classes of bytes in code. What is beyond ASCII is part of a word, as
// none of it is a sign or a bracket.
const (
	other    = 0
	letter   = 1 | inWord
	digit    = 2 | inWord
	space    = 3
	opener   = 4
	closer   = 5
	operator = 6
	divider  = 7 // a comma or a line end
	hash     = 8
	inWord   = 128
)

var classes = classTable()

func classTable() (t [256]byte) {
	for c := range t {
		if 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || c == '_' || c >= utf8.RuneSelf {
			t[c] = letter
		}
	}
	for class, chars := range map[byte]string{
		digit: "0123456789", space: " \t\r", opener: "{[(\"", closer: "}])", operator: "+-*/%!?<>=&|.:",
		divider: ",\n", hash: "#",
	} {
		for i := range len(chars) {
			t[chars[i]] = class
		}
	}
	return t
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
	want := byte('}')
	switch f.kind {
	case '[':
		want = ']'
	case '(':
		want = ')'
	}
	switch {
	case c == want:
	case f.kind == '{' || f.kind == '$':
		s.odd = true
		s.refuse(s.pos-1, s.pos, "Take it out.", "this bracket %c closes nothing", c)
		return
	default:
		s.wrongBracket(f, c, want)
		return
	}
	s.open = s.open[:n-1]
}
