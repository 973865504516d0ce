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
)

// suffix is how the name of every garment's spec ends.
const suffix = ".garment.hcl"

// found is one garment file, or the reason why something that was asked for is
// not one.
type found struct {
	file   string
	reason string // "" for a file that can be inspected
}

// find lists the garments under paths: folders are searched all the way down
// but for hidden ones, and files are taken as they are named. The order is that
// of the names, and a file that is reached twice is listed once. Links to files
// are followed only where they stay in the folder that is searched, links to
// folders not at all.
func find(paths []string) []found {
	f := finder{seen: map[string]bool{}}
	for _, p := range paths {
		f.path(filepath.Clean(p))
	}
	slices.SortStableFunc(f.list, func(a, b found) int { return strings.Compare(a.file, b.file) })
	return f.list
}

type finder struct {
	list []found
	seen map[string]bool // by absolute path
}

func (f *finder) path(path string) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		f.add(path, readingTrouble(err))
	case info.IsDir() && !strings.HasSuffix(path, suffix):
		f.folder(path)
	case !strings.HasSuffix(path, suffix):
		f.add(path, "this is not a garment: its name does not end in "+suffix)
	default: // a folder of that name is told of when it is read
		f.add(path, "")
	}
}

func (f *finder) folder(root string) {
	inside, _ := filepath.EvalSymlinks(root)
	// The callback returns no error but to skip a folder, so neither does this.
	_ = filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			f.add(path, readingTrouble(err))
			return skipFolder(entry)
		case path == root:
			return nil
		case strings.HasPrefix(entry.Name(), "."):
			return skipFolder(entry)
		case !strings.HasSuffix(entry.Name(), suffix):
			return nil
		case entry.Type()&fs.ModeSymlink != 0:
			f.link(path, inside)
			return nil
		}
		f.add(path, "")
		return skipFolder(entry)
	})
}

func skipFolder(entry fs.DirEntry) error {
	if entry != nil && entry.IsDir() {
		return fs.SkipDir
	}
	return nil
}

// link takes a link to a file only where it stays inside the folder.
func (f *finder) link(path, root string) {
	target, err := filepath.EvalSymlinks(path)
	if err != nil {
		f.add(path, readingTrouble(err))
		return
	}
	if rel, err := filepath.Rel(root, target); err != nil || !filepath.IsLocal(rel) {
		f.add(path, "this is a link that leads out of the folder; to check the garment, name its own file")
		return
	}
	f.add(path, "")
}

func (f *finder) add(path, reason string) {
	key, err := filepath.Abs(path)
	if err != nil {
		key = path
	}
	if !f.seen[key] {
		f.seen[key] = true
		f.list = append(f.list, found{path, reason})
	}
}

// What no run needs of a file that is named on the command line, in bytes.
const (
	maxTable = 256 << 20 // a million wearers with thirty measures
	maxKnown = 64 << 20
)

// readBounded reads a file that the user names: all of it, or an error that
// names it. One without an end, such as a device, is refused.
func readBounded(name string, most int64) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("%s: %s", name, readingTrouble(err))
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.Mode()&fs.ModeDevice != 0 {
		return nil, fmt.Errorf("%s: this is not a plain file", name)
	}
	src, err := io.ReadAll(io.LimitReader(f, most+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s: %s", name, readingTrouble(err))
	case int64(len(src)) > most:
		return nil, fmt.Errorf("%s: this is larger than %d MB", name, most>>20)
	}
	return src, nil
}

// readingTrouble says in words why a file cannot be read.
func readingTrouble(err error) string {
	var p *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file or folder"
	case errors.Is(err, fs.ErrPermission):
		return "this may not be read: its permissions forbid it"
	case errors.As(err, &p):
		return "this cannot be read: " + p.Err.Error()
	}
	return "this cannot be read: " + err.Error()
}
