package plugin

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// The starter is a plugin to begin one's own with. Its Go files are a package of
// this module, so that they are compiled and tested with it.
//
//go:embed starter/golang/*.go starter/c/dart_intake.c starter/README.md starter/go.mod.txt
var starter embed.FS

// WriteStarter writes the starter into a new folder, and gives the names of what
// it wrote. It leaves a folder alone that has anything in it.
func WriteStarter(dir string) ([]string, error) {
	if list, err := os.ReadDir(dir); err == nil && len(list) > 0 {
		return nil, fmt.Errorf("%s has something in it; name a new folder", dir)
	} else if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%s: %s", dir, because(err))
	}
	var written []string
	err := fs.WalkDir(starter, "starter", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := starter.ReadFile(name)
		if err != nil {
			return err
		}
		to := strings.TrimPrefix(name, "starter/")
		to = strings.TrimPrefix(to, "golang/")
		to = strings.TrimSuffix(to, ".txt")
		if err := os.MkdirAll(filepath.Join(dir, path.Dir(to)), 0o777); err != nil {
			return fmt.Errorf("%s: %s", dir, because(err))
		}
		written = append(written, filepath.FromSlash(to))
		file := filepath.Join(dir, filepath.FromSlash(to))
		if err := os.WriteFile(file, text, 0o666); err != nil {
			return fmt.Errorf("%s: %s", file, because(err))
		}
		return nil
	})
	return written, err
}
