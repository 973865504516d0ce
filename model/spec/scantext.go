package spec

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

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
	if s.next(1) != '<' {
		return false
	}
	i := s.pos + 2
	if i < len(s.src) && s.src[i] == '-' {
		i++
	}
	from := i
	for i < len(s.src) && (classes[s.src[i]]&inWord != 0 || s.src[i] == '-') {
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

// comment steps over a comment that begins with a stroke, if one does.
func (s *scanner) comment() bool {
	switch s.next(1) {
	case '/':
		s.endOfLine()
		return true
	case '*':
		i := bytes.Index(s.src[s.pos+2:], []byte("*/"))
		if i < 0 {
			s.refuse(s.pos, s.pos+2, "Close it with */.", "the comment that begins here is not closed")
			return true
		}
		s.pos += i + 4
		return true
	}
	return false
}

// endOfLine goes to the end of the line.
func (s *scanner) endOfLine() {
	if i := bytes.IndexByte(s.src[s.pos:], '\n'); i >= 0 {
		s.pos += i
	} else {
		s.pos = len(s.src)
	}
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

// loop refuses [for … ], {for … } and [*], which specs do not have.
func (s *scanner) loop() {
	i := s.pos
	for i < len(s.src) && (classes[s.src[i]] == space || s.src[i] == '\n') {
		i++
	}
	if i >= len(s.src) || s.src[i] != 'f' && s.src[i] != '*' {
		return
	}
	const detail = "Specs have no loops; name each value."
	if s.src[i] == '*' {
		s.refuse(i, i+1, detail, "* is not used like this in specs")
		return
	}
	rest, found := bytes.CutPrefix(s.src[i:], []byte("for"))
	if found && len(rest) > 0 && classes[rest[0]] == space && !bytes.HasPrefix(bytes.TrimLeft(rest, " \t"), []byte("=")) {
		s.refuse(i, i+3, detail, "for is not used in specs")
	}
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
			s.refuse(from, s.pos, "", "this number is out of all measure")
		}
	}
}
