package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"understitch/model/spec"
	"understitch/rules/inspect"
	"understitch/rules/known"
)

// acceptance says which findings are known and accepted, and where they are
// written down.
type acceptance struct {
	known string
	write string
	add   bool

	partial bool // not all sizes are looked at: what is not found may be there all the same
}

func (a *acceptance) flags(f *pflag.FlagSet) {
	f.StringVar(&a.known, "known", "", "accept the findings that this `FILE` knows, until they get worse")
	f.StringVar(&a.write, "write-known", "", "write the findings of today to this `FILE`, or take out of it what is mended")
	f.BoolVar(&a.add, "add-known", false, "with --write-known: put what is new or worse into a file that is there, too")
}

// valid tells which flags cannot be followed.
func (a *acceptance) valid(s *selection, paths []string) error {
	a.partial = s.size != "" || s.bodies != ""
	switch {
	case a.add && a.write == "":
		return errors.New("--add-known says what to write; name the file by --write-known")
	case a.write != "" && a.known != "" && filepath.Clean(a.known) != filepath.Clean(a.write):
		return errors.New("--known and --write-known name two files; what --write-known names is known as well, so name it alone")
	case a.write != "" && a.partial:
		return errors.New("--write-known needs all sizes: what is not looked at cannot be told from what is mended")
	case strings.HasSuffix(a.write, suffix) || filepath.Base(a.write) == spec.HouseFile:
		return fmt.Errorf("--write-known %q: what is known does not overwrite a spec", a.write)
	case a.write != "" && len(paths) == 1 && paths[0] == "-":
		return errors.New("--write-known is for files, and - is standard input")
	}
	return nil
}

// apply takes what is known out of the findings in force, after writing it down
// where that is asked for.
func (a *acceptance) apply(w *world, got *garments) error {
	reports := got.reports
	if a.known != "" && a.known != a.write {
		w.inputs = append(w.inputs, a.known)
	}
	held, there, err := a.read()
	if err != nil || held == nil {
		return err
	}
	switch {
	case a.write != "" && got.stopped:
		w.say("understitch: " + a.write + " is left as it was, because the run was stopped")
	case a.write != "":
		// What a file is begun with is what is found. One that is there grows only
		// where that is asked for.
		after, change := held.Update(checkedFor(a.write, reports), a.add || !there, existsFrom(a.write))
		text, err := after.Bytes()
		if err != nil {
			return err
		}
		if err := w.put(a.write, func(to io.Writer) error { _, err := to.Write(text); return err }); err != nil {
			return fmt.Errorf("%s cannot be written: %w", a.write, bare(err))
		}
		if held, err = known.Read(a.write, text); err != nil {
			return err
		}
		w.say(fmt.Sprintf("understitch: %s knows %d findings: %s", a.write, held.Len(), change))
	case !a.partial:
		w.mended(a.known, held, reports)
	}
	for _, r := range reports {
		held.Apply(from(held.Name, r.File), &r.Result, r.Unit)
	}
	return nil
}

// mended tells how much of what is known no longer occurs.
func (w *world) mended(name string, held *known.File, reports []*inspect.Report) {
	_, change := held.Update(checkedFor(name, reports), false, existsFrom(name))
	switch change.Gone {
	case 0:
	case 1:
		w.say(fmt.Sprintf("understitch: 1 finding in %s no longer occurs; --write-known %[1]s takes it out", name))
	default:
		w.say(fmt.Sprintf("understitch: %d findings in %s no longer occur; --write-known %[2]s takes them out", change.Gone, name))
	}
}

// read reads the file that is known or is to be written. There tells whether there was one. None is nil.
func (a *acceptance) read() (file *known.File, there bool, err error) {
	name := a.known
	if name == "" {
		name = a.write
	}
	if name == "" {
		return nil, false, nil
	}
	if _, err := os.Stat(name); errors.Is(err, fs.ErrNotExist) && a.known == "" {
		return known.Empty(name), false, nil
	}
	src, err := readBounded(name, maxKnown)
	if err != nil {
		return nil, false, err
	}
	file, err = known.Read(name, src)
	return file, true, err
}

// from names a garment's file from the folder of a known file, so that the name
// is the same wherever the check is started.
func from(knownFile, file string) string {
	dir, err := filepath.Abs(filepath.Dir(knownFile))
	if err != nil {
		return filepath.ToSlash(file)
	}
	abs, err := filepath.Abs(file)
	if err != nil {
		return filepath.ToSlash(file)
	}
	rel, err := filepath.Rel(dir, abs)
	if err != nil {
		return filepath.ToSlash(file)
	}
	return filepath.ToSlash(rel)
}

func existsFrom(knownFile string) func(string) bool {
	return func(file string) bool {
		_, err := os.Lstat(filepath.Join(filepath.Dir(knownFile), filepath.FromSlash(file)))
		return !errors.Is(err, fs.ErrNotExist)
	}
}

func checkedFor(knownFile string, reports []*inspect.Report) []known.Checked {
	var out []known.Checked
	for _, r := range reports {
		out = append(out, known.Checked{
			File: from(knownFile, r.File), Complete: r.Complete(), Result: &r.Result,
		})
	}
	return out
}
