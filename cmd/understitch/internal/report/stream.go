package report

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
)

// stream writes a long JSON document piece by piece, so that no more than one
// piece is ever built up. Commas and line ends are its own business: every
// element of a list stands on a line.
type stream struct {
	w     *bufio.Writer
	buf   bytes.Buffer
	enc   *json.Encoder
	err   error // the first that was met
	first bool  // nothing stands in the innermost object or list yet
}

func newStream(w io.Writer) *stream {
	s := &stream{w: bufio.NewWriter(w), first: true}
	s.enc = json.NewEncoder(&s.buf)
	return s
}

// raw writes what is JSON already.
func (s *stream) raw(text string) {
	if s.err == nil {
		_, s.err = s.w.WriteString(text)
	}
}

func (s *stream) comma() {
	if !s.first {
		s.raw(",")
	}
	s.first = false
}

// open begins an object or a list, under a name where it stands in an object.
func (s *stream) open(name, bracket string) {
	s.comma()
	if name != "" {
		s.raw("\n\"" + name + "\":")
	}
	s.raw(bracket)
	s.first = true
}

func (s *stream) close(bracket string) {
	s.raw("\n" + bracket)
	s.first = false
}

// member writes a value under a name.
func (s *stream) member(name string, value any) {
	s.comma()
	s.raw("\n\"" + name + "\":")
	s.value(value)
}

// element writes a value of a list.
func (s *stream) element(value any) {
	s.comma()
	s.raw("\n")
	s.value(value)
}

func (s *stream) value(value any) {
	if s.err != nil {
		return
	}
	s.buf.Reset()
	if s.err = s.enc.Encode(value); s.err == nil {
		_, s.err = s.w.Write(harmless(bytes.TrimSuffix(s.buf.Bytes(), []byte("\n"))))
	}
}

// end writes what is still held back, and tells the first error.
func (s *stream) end() error {
	s.raw("\n")
	if s.err != nil {
		return s.err
	}
	return s.w.Flush()
}
