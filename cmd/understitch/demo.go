package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"understitch/cmd/understitch/demo"
	"understitch/cmd/understitch/internal/outfile"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

func newDemo(w *world) *cobra.Command {
	var r reporting
	cmd := &cobra.Command{
		Use:   "demo [FOLDER]",
		Short: "Check the built-in wardrobe, or write it to a folder",
		Long: `Check a small made-up wardrobe: garments that are sound, and a faulty twin of each
with faults that were planted on purpose. One faulty garment is reported in full,
the others in a line each, and a page to open in a browser is written here.

The exit status is 0 if exactly the planted faults were found, and 1 if not.

With a folder, write the wardrobe there instead, to try things on. Nothing in the
folder is overwritten.`,
		Args: atMostOne("demo", "folder"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 {
				return writeWardrobe(w, demo.Files(), args[0])
			}
			if err := r.valid(); err != nil {
				return err
			}
			reports, err := inspectWardrobe(cmd.Context(), w, demo.Files())
			if err != nil {
				return err
			}
			t := tryout{w: w, r: &r, reports: reports}
			if err := t.compare(demo.Files()); err != nil {
				return err
			}
			if r.format == "text" {
				err = t.tell()
			} else if err = r.write(w, reports, builtin.Rules(), false); errors.Is(err, status(statusFindings)) {
				err = nil
			}
			if err == nil && t.unlike > 0 {
				return status(statusFindings)
			}
			return err
		},
	}
	r.flags(cmd.Flags())
	return cmd
}

func inspectWardrobe(ctx context.Context, w *world, files fs.FS) ([]*inspect.Report, error) {
	engine, err := rules.New(builtin.Rules())
	if err != nil {
		return nil, fmt.Errorf("the rules that are built in are not in order: %w", err)
	}
	names, err := wardrobe(files, suffix)
	if err != nil {
		return nil, err
	}
	in := &inspect.Inspector{Engine: engine, FS: files}
	reports, err := in.Files(ctx, names, inspect.Options{Today: w.now(), Jobs: runtime.GOMAXPROCS(0)})
	if err == nil {
		w.problems(reports)
	}
	return reports, err
}

// wardrobe lists the files whose names end in an ending, in order.
func wardrobe(files fs.FS, ending string) ([]string, error) {
	var names []string
	err := fs.WalkDir(files, ".", func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() && strings.HasSuffix(path, ending) {
			names = append(names, path)
		}
		return err
	})
	return names, err
}

// writeWardrobe writes the wardrobe to a folder, all of it or, where a file is
// in the way, nothing.
func writeWardrobe(w *world, files fs.FS, dir string) error {
	names, err := wardrobe(files, "")
	if err != nil {
		return err
	}
	var fresh []string // those that are not there yet: an earlier run may have been cut short
	for _, name := range names {
		target := filepath.Join(dir, filepath.FromSlash(name))
		switch same, err := holdsAlready(target, files, name); {
		case errors.Is(err, fs.ErrNotExist):
			fresh = append(fresh, name)
		case err != nil:
			return fmt.Errorf("%s: %s", target, readingTrouble(err))
		case !same:
			return fmt.Errorf("%s is there already, and nothing was written; name another folder", target)
		}
	}
	for _, name := range fresh {
		src, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		target := filepath.Join(dir, filepath.FromSlash(name))
		out := outfile.Writer{}
		if err := out.Write(target, func(to io.Writer) error { _, err := to.Write(src); return err }); err != nil {
			return err
		}
	}
	_, err = fmt.Fprintf(w.stdout, "wrote %d files to %s; next: understitch check %s\n", len(names), dir, dir)
	return err
}

// holdsAlready reports whether a file is there with the very text of one of the
// wardrobe.
func holdsAlready(target string, files fs.FS, name string) (bool, error) {
	if info, err := os.Lstat(target); err != nil || !info.Mode().IsRegular() {
		return false, err
	}
	there, err := os.ReadFile(target)
	if err != nil {
		return false, err
	}
	src, err := fs.ReadFile(files, name)
	return bytes.Equal(there, src), err
}
