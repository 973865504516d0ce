package report

import "io"

// Format is a way to write a document.
type Format struct {
	Name  string // as --format takes it
	Text  string // what it is for, in a few words
	Write func(w io.Writer, d *Document, look Look) error
}

// Look is how a report for people is laid out. Formats for machines take no
// notice of it.
type Look struct {
	Width int  // columns
	Color bool // emphasise with colour; nothing is ever told by colour alone
}

// Formats lists all formats.
func Formats() []Format {
	return []Format{
		{"text", "for reading at the table", writeText},
		{"json", "for other programs; the schema is in docs/report.schema.json", writeJSON},
		{"sarif", "SARIF 2.1.0, for code scanning and editors", writeSARIF},
		{"junit", "JUnit XML, for CI servers that show tests", writeJUnit},
		{"github", "marks on the lines of a change in a GitHub workflow", writeGitHub},
		{"html", "one page with the drawings, for looking at and printing", writeHTML},
	}
}
