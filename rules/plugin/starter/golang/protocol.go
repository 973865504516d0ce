package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Version is the version of the protocol that is spoken here.
const Version = "1"

// Line is one figure of a garment: its address, its name and its value.
// Lengths are in millimetres.
type Line struct{ Address, Figure, Value string }

// Number is the value as a number; false where it is a word.
func (l Line) Number() (float64, bool) {
	v, err := strconv.ParseFloat(l.Value, 64)
	return v, err == nil
}

// Table is all that is known of a garment in one size, in a fixed order.
type Table []Line

// Text finds a figure; "" where the garment does not have it.
func (t Table) Text(address, figure string) string {
	for _, l := range t {
		if l.Address == address && l.Figure == figure {
			return l.Value
		}
	}
	return ""
}

// Answer gathers what is said of a garment.
type Answer struct{ lines []string }

// Found says that something is wrong at an address. The key tells apart the
// rules that one plugin has; severity is "error", "warning" or "note"; unit is
// "mm", "degrees", "ratio" or "%". At one address each key is used once.
func (a *Answer) Found(key, severity, address string, measured, limit float64, unit, message string) {
	a.add(key, severity, address, number(measured), number(limit), unit, message)
}

// Passed says that a figure is as it must be. It shows in the report among those
// with least room left.
func (a *Answer) Passed(key, address string, measured, limit float64, unit string) {
	a.add(key, "passed", address, number(measured), number(limit), unit, "")
}

// NotPossible says that something cannot be judged, and why.
func (a *Answer) NotPossible(key, address, why string) {
	a.add(key, "not-possible", address, "", "", "", why)
}

func (a *Answer) add(columns ...string) {
	for i := range columns {
		columns[i] = escape.Replace(columns[i])
	}
	a.lines = append(a.lines, strings.Join(columns, "\t"))
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

var (
	escape   = strings.NewReplacer("\\", `\\`, "\t", `\t`, "\n", `\n`, "\r", `\r`)
	unescape = strings.NewReplacer(`\\`, "\\", `\t`, "\t", `\n`, "\n", `\r`, "\r")
)

// Serve answers every table that comes, until none comes any more.
func Serve(in io.Reader, out io.Writer, judge func(Table, *Answer)) error {
	r, w := bufio.NewReaderSize(in, 64<<10), bufio.NewWriter(out)
	fmt.Fprintf(w, "plugin\t%s\n", Version)
	for {
		if err := w.Flush(); err != nil { // each answer must leave at once
			return err
		}
		number, table, err := read(r)
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		var a Answer
		judge(table, &a)
		fmt.Fprintf(w, "answer\t%s\t%s\n", Version, number)
		for _, l := range a.lines {
			w.WriteString(l + "\n")
		}
		w.WriteString("end\n")
	}
}

// read reads one table: its head, its lines, and the line "end".
func read(r *bufio.Reader) (number string, t Table, err error) {
	var text []byte
	for lines := 0; ; lines++ {
		line, err := r.ReadSlice('\n')
		switch {
		case err == io.EOF && lines == 0 && len(line) == 0:
			return "", nil, io.EOF // there are no more tables
		case err != nil && err != bufio.ErrBufferFull:
			return "", nil, errors.New("the table breaks off")
		}
		if string(line) == "end\n" {
			break
		}
		text = append(text, line...)
	}
	head, rest, _ := strings.Cut(string(text), "\n")
	number, ok := strings.CutPrefix(head, "table\t"+Version+"\t")
	if !ok {
		return "", nil, fmt.Errorf("this is no table of version %s: %q", Version, head)
	}
	t = make(Table, 0, strings.Count(rest, "\n"))
	for line := range strings.SplitSeq(rest, "\n") {
		address, rest, _ := strings.Cut(line, "\t")
		figure, value, ok := strings.Cut(rest, "\t")
		if !ok {
			continue // a line of another form is of a later version
		}
		if strings.Contains(value, `\`) {
			value = unescape.Replace(value)
		}
		t = append(t, Line{address, figure, value})
	}
	return number, t, nil
}
