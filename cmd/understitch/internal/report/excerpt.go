package report

import (
	"bytes"
	"strings"

	"understitch/model"
)

// excerpt is the line of a spec that a place lies on, and beneath it a pin laid
// along what is meant: its head where the place starts. It is cut to the
// columns around the pin; nil where there is no such line.
func excerpt(src []byte, at model.Place, columns int) []string {
	text, ok := lineOf(src, at.Start.Line)
	if !ok || strings.TrimSpace(text) == "" {
		return nil
	}
	runes := []rune(text)
	from := min(max(at.Start.Column-1, 0), len(runes))
	to := len(runes)
	if at.End.Line == at.Start.Line {
		to = min(max(at.End.Column-1, from), len(runes))
	}
	head, meant, tail := Clean(string(runes[:from])), strings.TrimRight(Clean(string(runes[from:to])), " "), Clean(string(runes[to:]))
	head = strings.TrimLeft(head, " ")
	if over := Columns(head) + Columns(meant) - columns; over > 0 && head != "" {
		keep := max(Columns(head)-over-3, 0)
		for Columns(head) > keep {
			_, n, _ := strings.Cut(head, head[:len(fitting(head, 1))])
			head = n
		}
		head = "..." + head
	}
	row := strings.TrimRight(head+meant+tail, " ")
	switch over := Columns(row) > columns; {
	case over && Columns(head)+Columns(meant) <= columns-3:
		row = fitting(row, columns-3) + "..."
	case over: // what is meant takes all the room
		row = fitting(row, columns)
	}
	pin := min(max(Columns(meant), 1), max(columns-Columns(head), 1))
	return []string{row, strings.Repeat(" ", Columns(head)) + "o" + strings.Repeat("-", pin-1)}
}

// lineOf is one line of a text, counted from 1.
func lineOf(src []byte, line int) (string, bool) {
	for n := 1; n < line; n++ {
		_, rest, ok := bytes.Cut(src, []byte("\n"))
		if !ok {
			return "", false
		}
		src = rest
	}
	text, _, _ := bytes.Cut(src, []byte("\n"))
	return strings.TrimRight(string(text), "\r"), line >= 1
}
