package spec

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"
)

// text takes a stretch of quoted text or of a heredoc.
func (s *scanner) text() {
	top := &s.open[len(s.open)-1]
	quoted := top.kind == '"'
	for s.pos < len(s.src) {
		switch c := s.src[s.pos]; {
		case quoted && (c == '\n' || c == '\r' || c == '\\' && (s.next(1) == '\n' || s.next(1) == '\r')):
			s.openQuote(top.at, s.pos)
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

// unclosed reports what is still open at the end of the file.
func (s *scanner) unclosed() {
	s.odd = true
	f := s.open[len(s.open)-1]
	switch f.kind {
	case '"':
		s.openQuote(f.at, len(s.src))
	case '<':
		s.refuse(f.at, f.at+2, fmt.Sprintf("It ends with %s on a line of its own.", f.marker),
			"the text that begins here is not closed")
	case '{':
		if s.found = unpaired(s.name, s.src, s.root, true); s.found == nil {
			s.refuse(f.at, f.at+1, "", "the brace { is not closed")
		}
	default:
		s.refuse(f.at, f.at+1, "", "the bracket %c is not closed", s.src[f.at])
	}
}

// wrongBracket reports a bracket that is closed by one of another kind.
func (s *scanner) wrongBracket(f frame, c, want byte) {
	s.odd = true
	start := lineStart(s.src, f.at)
	head := string(bytes.TrimSpace(s.src[start:f.at]))
	if word, rest, _ := strings.Cut(head, " "); c == '}' && isName(word) && !strings.Contains(rest, "=") {
		if block, _ := s.root.words(word); block {
			s.refuse(f.at, f.at+1, fmt.Sprintf("Write %s {.", head), "a block opens with a brace {, not with %c", f.kind)
			return
		}
	}
	at := lineAt(s.src, s.pos-1)
	where := fmt.Sprintf("on line %d", at)
	if at == lineAt(s.src, f.at) {
		where = fmt.Sprintf("in column %d of this line", posAt(s.src, s.pos-1).Column)
	}
	s.refuse(f.at, f.at+1, fmt.Sprintf("A %c stands where %c is due, %s.", c, want, where), "the bracket %c is not closed", f.kind)
}

// openQuote reports quoted text that does not end on its line, or a double
// quote that was not meant to begin any.
func (s *scanner) openQuote(at, end int) {
	s.odd = true
	start := lineStart(s.src, at)
	before, after := s.src[start:at], bytes.TrimSpace(s.src[at+1:end])
	word := before[bytes.LastIndexAny(before, " \t=[({,\"")+1:]
	// A sign of inches goes with the figure before it, in text too.
	if m := inches.FindIndex(before); m != nil && bytes.Count(before, []byte{'"'})%2 == 0 {
		figure := bytes.TrimSpace(before[m[0]:])
		sum := string(bytes.Join(bytes.Fields(figure), []byte(" + ")))
		s.refuse(start+m[0], at+1, fmt.Sprintf("Write inch(%s).", sum), "%s\" cannot be read as a figure", figure)
		return
	}
	switch quotes := bytes.Count(before, []byte{'"'}); {
	case quotes > 0:
		s.refuse(at, at+1, "Quoted text cannot hold a double quote, unless as \\\".", "this double quote has no partner on its line")
	case len(word) > 0:
		from := at - len(word)
		if eq := bytes.IndexByte(before, '='); eq >= 0 { // all behind the equals sign is meant
			word = bytes.TrimSpace(before[eq+1:])
			from = start + eq + 1 + bytes.Index(before[eq+1:], word)
		}
		s.refuse(from, at+1, fmt.Sprintf("Write \"%s\".", word), "the opening quote is missing")
	default:
		text, tail := after, ""
		i := bytes.IndexByte(text, '{')
		if i < 0 && bytes.HasSuffix(text, []byte{'}'}) {
			i = len(text) - 1
		}
		if i >= 0 {
			text, tail = bytes.TrimSpace(text[:i]), " "+string(text[i:])
		}
		detail := "Quoted text ends on its line."
		if len(text) > 0 && len(text) <= 60 {
			detail = fmt.Sprintf("Write \"%s\"%s.", text, tail)
		}
		s.refuse(at, at+1, detail, "the quoted text that begins here is not closed")
	}
}

// inches is a figure at the end of what stands before a double quote.
var inches = regexp.MustCompile(`(\d+\s+)?\d+(\.\d+|/\d+)?$`)

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
