package body

import (
	"bytes"
	"encoding/csv"
	"slices"
	"unicode/utf8"

	"understitch/model"
)

// Table is a table of wearers. It knows where in its file each figure stands,
// so that what is wrong with a figure can be told there. One that was not read
// from a file, but made of wearers alone, has no places.
type Table struct {
	File    string
	Unit    model.Unit // of the figures in the file; those of Wearers are in millimetres
	Wearers []Wearer   // a row each, in the order of the file

	text    []byte // of the file
	comma   rune
	columns []string // measures; "" for the column of names
	head    row
	rows    []row // one for each wearer
}

// row is where a row begins: in bytes, and its line.
type row struct{ offset, line int }

// Measures are the names of the columns but for that of the wearers, as they
// stand in the heading.
func (t *Table) Measures() []string {
	return slices.DeleteFunc(slices.Clone(t.columns), func(c string) bool { return c == "" })
}

// Heading is where a measure stands in the heading; for one that is no column,
// or "", it is the beginning of the heading.
func (t *Table) Heading(measure string) model.Place { return t.at(t.head, t.column(measure)) }

// Cell is where the figure of the n-th wearer, counted from 0, stands or would
// stand. There is none where the table has no such column.
func (t *Table) Cell(n int, measure string) (at model.Place, ok bool) {
	i := t.column(measure)
	if measure == "" || i < 0 || n >= len(t.rows) {
		return model.Place{}, false
	}
	return t.at(t.rows[n], i), true
}

// Row is where the row of the n-th wearer, counted from 0, begins.
func (t *Table) Row(n int) (at model.Place, ok bool) {
	if n >= len(t.rows) {
		return model.Place{}, false
	}
	return t.at(t.rows[n], 0), true
}

func (t *Table) column(measure string) int { return slices.Index(t.columns, measure) }

// at is the place of the i-th cell of a row, of the first where i is negative.
// The row is read again: few rows are ever asked for.
func (t *Table) at(r row, i int) model.Place {
	rest := t.text[r.offset:]
	cells := reader(rest, t.comma)
	if _, err := cells.Read(); err != nil { // it was read before
		return placed(t.File, r.line, 1)
	}
	first, _ := cells.FieldPos(0)
	line, column := cells.FieldPos(max(i, 0))
	return placed(t.File, r.line+line-first, column1(rest, line, column))
}

// reader reads the rows of a table; how many cells they have is for the caller
// to look at.
func reader(text []byte, comma rune) *csv.Reader {
	rows := csv.NewReader(bytes.NewReader(text))
	rows.Comma = comma
	rows.FieldsPerRecord = -1
	return rows
}

// column1 is a column of a line, counted in characters from 1. The reader of
// the table counts in bytes.
func column1(text []byte, line, column int) int {
	for n := 1; n < line; n++ {
		_, text, _ = bytes.Cut(text, []byte("\n"))
	}
	return 1 + utf8.RuneCount(text[:min(column-1, len(text))])
}

func placed(file string, line, column int) model.Place {
	at := model.Pos{Line: line, Column: column}
	return model.Place{File: file, Start: at, End: at}
}

// Middle is the median of a measure, in millimetres, over the wearers that have
// it, and how many they are. It is 0 where none has.
func (t *Table) Middle(measure string) (mm float64, of int) {
	var all []float64
	for _, w := range t.Wearers {
		if v, ok := w.Body[measure]; ok {
			all = append(all, v)
		}
	}
	if len(all) == 0 {
		return 0, 0
	}
	slices.Sort(all)
	return (all[(len(all)-1)/2] + all[len(all)/2]) / 2, len(all)
}
