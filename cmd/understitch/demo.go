package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"understitch/cmd/understitch/demo"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

func newDemo(w *world) *cobra.Command {
	var r reporting
	cmd := &cobra.Command{
		Use:   "demo [FOLDER]",
		Short: "checks the wardrobe that is built in, or writes it to a folder",
		Long: `demo checks a small made-up wardrobe, some of it with faults, and reports as check
does. With a folder it writes the wardrobe there instead, to try things on; nothing
that is there already is overwritten.`,
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
			return r.write(w, reports, builtin.Rules(), false)
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
	reports, err := in.Files(ctx, names, inspect.Options{Today: w.now(), Jobs: runtime.GOMAXPROCS(0), Lean: true})
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
	for _, name := range names {
		target := filepath.Join(dir, filepath.FromSlash(name))
		if _, err := os.Lstat(target); !errors.Is(err, fs.ErrNotExist) {
			if err != nil {
				return fmt.Errorf("%s: %s", target, readingTrouble(err))
			}
			return fmt.Errorf("%s is there already, and nothing was written; name another folder", target)
		}
	}
	for _, name := range names {
		if err := writeNew(filepath.Join(dir, filepath.FromSlash(name)), files, name); err != nil {
			return err
		}
	}
	_, err = fmt.Fprintf(w.stdout, "wrote %d files to %s; next: understitch check %s\n", len(names), dir, dir)
	return err
}

func writeNew(target string, files fs.FS, name string) error {
	src, err := fs.ReadFile(files, name)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(target), 0o777); err != nil {
		return err
	}
	f, err := os.OpenFile(target, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = f.Write(src)
	return errors.Join(err, f.Close())
}
