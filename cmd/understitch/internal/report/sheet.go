package report

import (
	"io"
	"strings"

	"github.com/fatih/color"

	"understitch/rules"
)

// sheet is what a report for people is written on: a column of short tags, and
// beside it text that is wrapped to the width.
type sheet struct {
	w     io.Writer
	err   error // the first that writing met
	width int   // of running text
	room  int   // of what is not wrapped
	color bool
}

const (
	indent    = 4
	tagColumn = 10
	narrowest = 30  // below it wrapping makes things worse
	widest    = 100 // beyond it the eye does not find the next line
)

func newSheet(w io.Writer, look Look) *sheet {
	room := max(look.Width, narrowest)
	return &sheet{w: w, width: min(room, widest), room: room, color: look.Color}
}

func (s *sheet) line(text string) {
	if s.err == nil {
		_, s.err = io.WriteString(s.w, Inert(strings.TrimRight(text, " "))+"\n")
	}
}

// seam is the line between garments: a row of running stitches.
func (s *sheet) seam() {
	s.line(strings.Repeat("- ", s.width/2))
}

// plain writes a wrapped text from the left edge.
func (s *sheet) plain(text string, paint ...color.Attribute) {
	s.flat(words(text), paint...)
}

func (s *sheet) flat(text []word, paint ...color.Attribute) {
	for _, l := range wrap(text, s.width) {
		s.line(s.paint(l, paint...))
	}
}

// indented writes a wrapped text beneath a number or a heading.
func (s *sheet) indented(text string) {
	for _, l := range Wrap(text, s.width-indent) {
		s.line(strings.Repeat(" ", indent) + l)
	}
}

// entry writes a tag and its text.
func (s *sheet) entry(tag, text string, paint ...color.Attribute) {
	s.entryOf(tag, words(text), paint...)
}

// entryOf writes a tag and a text that may have a path in it.
func (s *sheet) entryOf(tag string, text []word, paint ...color.Attribute) {
	s.hang(strings.Repeat(" ", indent), tag, text, paint...)
}

// hang writes lead and tag, and the text wrapped in the column after them.
func (s *sheet) hang(lead, tag string, text []word, paint ...color.Attribute) {
	tag = Clean(tag)
	left := Columns(lead) + tagColumn
	lines := wrap(text, s.width-left)
	gap := tagColumn - Columns(tag)
	if gap < 1 { // the tag is longer than its column
		lines = wrap(append(words(tag), text...), s.width-Columns(lead))
		for _, l := range lines {
			s.line(lead + l)
			lead = strings.Repeat(" ", left)
		}
		return
	}
	head := lead + s.paint(tag, paint...) + strings.Repeat(" ", gap)
	for _, l := range lines {
		s.line(head + l)
		head = strings.Repeat(" ", left)
	}
}

// exactly writes lines as they are, in the text column.
func (s *sheet) exactly(lines ...string) {
	for _, l := range lines {
		s.line(strings.Repeat(" ", indent+tagColumn) + l)
	}
}

func (s *sheet) paint(text string, attributes ...color.Attribute) string {
	if !s.color || len(attributes) == 0 || text == "" {
		return text
	}
	c := color.New(attributes...)
	c.EnableColor() // what is decided for this writer counts, not what stands in the environment
	return c.Sprint(text)
}

// inkOf is the colour of a severity.
func inkOf(severity string) []color.Attribute {
	switch severity {
	case rules.Error.String():
		return []color.Attribute{color.Bold, color.FgRed}
	case rules.Warning.String():
		return []color.Attribute{color.Bold, color.FgYellow}
	}
	return []color.Attribute{color.Bold, color.FgCyan}
}

// ink is the colour of a ruling.
func (r Ruling) ink() []color.Attribute {
	return [][]color.Attribute{
		{color.Bold, color.FgGreen}, {color.Bold, color.FgYellow}, {color.Bold, color.FgRed},
	}[r]
}
