// Package outfile puts what the program makes into files of the user's. A file
// that is there is either the old one or the new one, whole, with its mode: the
// new one is written beside it under a name that nobody can guess, brought to
// disk, and renamed. Nothing is written through a link, nor over a file that the
// same run reads.
package outfile

import (
	"bytes"
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// Errors that say why a file is left alone.
var (
	ErrLink  = errors.New("this is a link; name the file itself")
	ErrInput = errors.New("this run reads that file; name another")
)

// Writer writes files. The zero value knows no inputs.
type Writer struct {
	Inputs []string         // files that the run reads, and must not replace
	NewDir func(dir string) // called with each folder that had to be made; may be nil
}

// Write replaces a file by what fill writes, all of it or nothing. A device or a
// pipe is written to as it is, once everything is there.
func (w Writer) Write(file string, fill func(io.Writer) error) error {
	var b bytes.Buffer
	if err := fill(&b); err != nil {
		return err
	}
	return w.put(file, b.Bytes())
}

func (w Writer) put(file string, text []byte) error {
	mode := fs.FileMode(0)
	switch info, err := os.Stat(file); {
	case err == nil && !info.Mode().IsRegular() && !info.IsDir():
		return writeTo(file, text)
	case err == nil && slices.ContainsFunc(w.Inputs, func(in string) bool { return isSame(info, in) }):
		return ErrInput
	case err == nil:
		mode = info.Mode().Perm()
	}
	if info, err := os.Lstat(file); err == nil && info.Mode()&fs.ModeSymlink != 0 {
		return ErrLink
	}
	if err := w.makeFolder(filepath.Dir(file)); err != nil {
		return err
	}
	return w.swap(file, mode, text)
}

func writeTo(file string, text []byte) error {
	f, err := os.OpenFile(file, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(text)
	return errors.Join(err, f.Close())
}

func isSame(info fs.FileInfo, file string) bool {
	other, err := os.Stat(file)
	return err == nil && os.SameFile(info, other)
}

func (w Writer) makeFolder(dir string) error {
	if _, err := os.Stat(dir); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	if w.NewDir != nil {
		w.NewDir(dir)
	}
	return nil
}

// swap writes a text beside a file and renames it. Mode is that of the file
// which is there; 0 for a new one, which gets what the user's mask leaves.
func (w Writer) swap(file string, mode fs.FileMode, text []byte) (err error) {
	temp := filepath.Join(filepath.Dir(file), fmt.Sprintf(".%s.%s", filepath.Base(file), rand.Text()))
	f, err := os.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(temp))
		}
	}()
	_, err = f.Write(text)
	if err == nil && mode != 0 {
		err = f.Chmod(mode)
	}
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		return err
	}
	return os.Rename(temp, file)
}
