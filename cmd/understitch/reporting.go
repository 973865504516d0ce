package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"understitch/cmd/understitch/internal/outfile"
	"understitch/cmd/understitch/internal/report"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/inspect"
)

// reporting says how what was found is written down.
type reporting struct {
	format      string
	beside      []string // FORMAT=FILE
	minSeverity string
	closest     int
	color       string

	least rules.Severity
	files []reportFile
}

// reportFile is a report that is written to a file beside the one on standard
// output.
type reportFile struct {
	format report.Format
	file   string
}

func (r *reporting) flags(f *pflag.FlagSet) {
	r.outputFlags(f)
	f.IntVar(&r.closest, "closest", 3, "list this `number` of the checks that passed with least room left")
}

// outputFlags are those that hold for any report, also one that was made
// before.
func (r *reporting) outputFlags(f *pflag.FlagSet) {
	f.StringVar(&r.format, "format", "text", "the `form` of the report: "+strings.Join(formatNames(), ", "))
	f.StringArrayVar(&r.beside, "report", nil, "write a report to a file as well, as `FORMAT=FILE`; may be given again")
	f.StringVar(&r.minSeverity, "min-severity", "error", "the least `severity` of a finding that forbids cutting: error, warning or note")
	f.StringVar(&r.color, "color", "auto", "colour `when`: auto, always or never")
}

func formatNames() []string {
	var names []string
	for _, f := range report.Formats() {
		names = append(names, f.Name)
	}
	return names
}

func formatNamed(flag, name string) (report.Format, error) {
	for _, f := range report.Formats() {
		if f.Name == name {
			return f, nil
		}
	}
	return report.Format{}, oneOf(flag, name, formatNames())
}

// valid settles the flags and tells which cannot be followed.
func (r *reporting) valid() error {
	severity, ok := rules.SeverityNamed(r.minSeverity)
	if !ok || severity == rules.Off {
		return oneOf("min-severity", r.minSeverity, []string{"error", "warning", "note"})
	}
	r.least = severity
	if r.closest < 0 {
		return fmt.Errorf("--closest %d: a number from 0", r.closest)
	}
	if _, err := formatNamed("format", r.format); err != nil {
		return err
	}
	if err := r.validFiles(); err != nil {
		return err
	}
	return oneOf("color", r.color, []string{"auto", "always", "never"})
}

func (r *reporting) validFiles() error {
	r.files = nil
	var seen []string
	for _, word := range r.beside {
		name, file, ok := strings.Cut(word, "=")
		if !ok || file == "" {
			return fmt.Errorf("--report %q: write FORMAT=FILE, such as sarif=report.sarif", word)
		}
		format, err := formatNamed("report", name)
		if err != nil {
			return err
		}
		file = filepath.Clean(file)
		switch {
		case file == "-":
			return fmt.Errorf("--report %q: standard output is for --format", word)
		case strings.HasSuffix(file, suffix) || filepath.Base(file) == spec.HouseFile:
			return fmt.Errorf("--report %q: a report does not overwrite a spec", word)
		case slices.Contains(seen, file):
			return fmt.Errorf("--report %q: two reports do not fit into one file", word)
		}
		seen = append(seen, file)
		r.files = append(r.files, reportFile{format, file})
	}
	return nil
}

// write writes what was found about garments, judged by a list of rules.
func (r *reporting) write(w *world, reports []*inspect.Report, list []*rules.Rule, trouble bool) error {
	return r.emit(w, report.Of(reports, report.Options{Version: version(), Least: r.least, Closest: r.closest, Rules: list}), trouble)
}

// emit writes a document to standard output and to the files that were asked
// for, and settles the exit status.
func (r *reporting) emit(w *world, doc *report.Document, trouble bool) error {
	format, err := formatNamed("format", r.format)
	if err != nil {
		return err
	}
	if err := format.Write(w.stdout, doc, w.look(r.color)); err != nil {
		return err
	}
	for _, f := range r.files {
		if err := f.write(w, doc, r.color); err != nil {
			trouble = true
			w.say(fmt.Sprintf("understitch: the report %s cannot be written: %v", f.file, err))
		}
	}
	switch {
	case trouble || doc.Summary.Unreadable > 0:
		return status(statusTrouble)
	case doc.Forbids():
		return status(statusFindings)
	}
	return nil
}

// write writes a report to a file.
func (f reportFile) write(w *world, doc *report.Document, color string) error {
	const usual = 80
	look := report.Look{Width: usual, Color: color == "always"}
	return bare(w.put(f.file, func(to io.Writer) error { return f.format.Write(to, doc, look) }))
}

// put replaces a file of the user's by what fill writes, all of it or nothing.
func (w *world) put(file string, fill func(io.Writer) error) error {
	out := outfile.Writer{Inputs: w.inputs, NewDir: func(dir string) { w.say("understitch: made the folder " + dir) }}
	return out.Write(file, fill)
}

// bare is what went wrong with a file, without its name.
func bare(err error) error {
	var p *fs.PathError
	var l *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.Err
	case errors.As(err, &l):
		return l.Err
	}
	return err
}
