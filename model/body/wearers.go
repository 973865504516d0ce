package body

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"understitch/model"
)

// Wearer is one person: a name and measures in millimetres.
type Wearer struct {
	Name string
	Body map[string]float64
}

// What no table of wearers needs.
const (
	maxWearers = 100_000
	maxMeasure = 4000.0 // mm: no body is longer, nor goes round further
	maxFaults  = 20     // past them more tell nothing new
)

var measureName = regexp.MustCompile(`^[a-z][a-z0-9_-]*$`)

// reading is a table of wearers as it is being read.
type reading struct {
	*Table
	seen  map[string]int // the line of each wearer
	diags []model.Diagnostic
}

// Read reads a table of wearers. The file name is for places; unit is the unit
// of its figures. Where there are diagnostics there is no table.
func Read(file string, src io.Reader, unit model.Unit) (*Table, []model.Diagnostic) {
	t := &reading{Table: &Table{File: file, Unit: unit}, seen: map[string]int{}}
	text, err := io.ReadAll(src)
	if err != nil {
		t.fault(1, 1, "the table cannot be read: %v", err)
		return nil, t.diags
	}
	text = bytes.TrimPrefix(text, []byte("\xef\xbb\xbf")) // written by many spreadsheets
	if !utf8.Valid(text) {
		t.fault(1, 1, "the table is not plain text in UTF-8")
		return nil, t.diags
	}
	t.text, t.comma = text, separator(text)
	rows := reader(t.text, t.comma)
	rows.ReuseRecord = true
	for len(t.diags) < maxFaults && len(t.Wearers) <= maxWearers {
		offset := int(rows.InputOffset())
		cells, err := rows.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		var wrong *csv.ParseError
		if errors.As(err, &wrong) {
			t.fault(wrong.Line, wrong.Column, "a quotation mark is missing here, or stands where none belongs")
			break
		}
		t.row(rows, offset, cells)
	}
	switch {
	case len(t.diags) > 0:
		return nil, t.diags
	case t.columns == nil:
		t.fault(1, 1, "the table of wearers is empty")
	case len(t.Wearers) == 0:
		t.fault(1, 1, "the table has a heading and no wearers")
	case len(t.Wearers) > maxWearers:
		t.fault(1, 1, "the table has more than %d wearers", maxWearers)
	}
	if len(t.diags) > 0 {
		return nil, t.diags
	}
	return t.Table, nil
}

// separator tells tables of countries where the comma stands in numbers: their
// spreadsheets write semicolons.
func separator(text []byte) rune {
	heading, _, _ := bytes.Cut(text, []byte("\n"))
	if bytes.ContainsRune(heading, ';') && !bytes.ContainsRune(heading, ',') {
		return ';'
	}
	return ','
}

func (t *reading) row(rows *csv.Reader, offset int, cells []string) {
	if t.columns == nil {
		t.head.line, _ = rows.FieldPos(0)
		t.heading(rows, cells)
		return
	}
	line, _ := rows.FieldPos(0)
	if len(cells) != len(t.columns) {
		t.fault(line, 1, "this row has %d cells, and the heading has %d", len(cells), len(t.columns))
		return
	}
	w := Wearer{Name: strconv.Itoa(len(t.Wearers) + 1), Body: make(map[string]float64, len(cells))}
	for i, cell := range cells {
		cell = strings.TrimSpace(cell)
		line, column := rows.FieldPos(i)
		switch {
		case t.columns[i] == "":
			if cell == "" {
				t.fault(line, column, "this wearer has no name")
			}
			w.Name = cell
		case cell != "":
			v, err := t.length(cell)
			if err != nil {
				t.fault(line, column, "%s of %s: %v", t.columns[i], w.Name, err)
				continue
			}
			w.Body[t.columns[i]] = v
		}
	}
	if before := t.seen[w.Name]; before > 0 {
		t.fault(line, 1, "there is a wearer called %s already, on line %d", w.Name, before)
		return
	}
	t.seen[w.Name] = line
	t.Wearers, t.rows = append(t.Wearers, w), append(t.rows, row{offset, line})
}

// heading reads the names of the columns. A first column called wearer, name or
// id, or nothing, holds the wearers' names; without one their rows are
// counted.
func (t *reading) heading(rows *csv.Reader, cells []string) {
	t.columns = make([]string, 0, len(cells))
	for i, cell := range cells {
		name := strings.TrimSpace(cell)
		line, column := rows.FieldPos(i)
		switch {
		case i == 0 && (name == "wearer" || name == "name" || name == "id" || name == ""):
			name = ""
		case !measureName.MatchString(name):
			t.fault(line, column, "%q is not a body measure's name, such as waist_girth", name)
		case slices.Contains(t.columns, name):
			t.fault(line, column, "there is a column called %s already", name)
		}
		t.columns = append(t.columns, name)
	}
}

func (t *reading) length(cell string) (float64, error) {
	number := cell
	if t.comma == ';' {
		number = strings.Replace(cell, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(number, 64)
	if err != nil && !errors.Is(err, strconv.ErrRange) {
		return 0, fmt.Errorf("%q is not a number", cell)
	}
	v *= t.Unit.Millimetre
	switch {
	case math.IsNaN(v):
		return 0, fmt.Errorf("%q is not a number", cell)
	case v <= 0:
		return 0, fmt.Errorf("%s %s is not a length", cell, t.Unit.Name)
	case v > maxMeasure:
		return 0, fmt.Errorf("%s %s is more than any body measures; is the table in another unit?", cell, t.Unit.Name)
	}
	return v, nil
}

// fault adds a diagnostic at a line and a column that counts bytes.
func (t *reading) fault(line, column int, format string, args ...any) {
	t.diags = append(t.diags, model.Diagnostic{
		Severity: "error",
		Summary:  fmt.Sprintf(format, args...),
		Place:    placed(t.File, line, column1(t.text, line, column)),
	})
}
