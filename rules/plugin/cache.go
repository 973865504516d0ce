package plugin

import (
	"bytes"
	"fmt"
	"hash/crc32"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Compiling a module of a few megabytes takes a second or more, loading what was
// compiled a few milliseconds. So each compiled module is kept, in a folder of
// its own named for the module's sha256. Inside, the runtime names its file for
// its own version, the machine and the processor's abilities.
//
// The runtime trusts its file as far as the machine code goes but not beyond; one
// that was damaged elsewhere would crash the child. So the sums of the files are
// kept beside them, and a folder where they do not agree is thrown away: a cache
// that cannot be read is a miss.

// sumsFile holds the sums of the other files.
const sumsFile = "sums"

// trusted makes a cache folder fit for use: there, this user's own, and with
// files that are as they were written. It returns "" where there can be none.
func trusted(dir string) string {
	if dir == "" {
		return ""
	}
	if sums, err := os.ReadFile(filepath.Join(dir, sumsFile)); err == nil {
		if now, err := sumsOf(dir); err == nil && bytes.Equal(now, sums) {
			return dir
		}
	}
	// No sums, or others: begin anew.
	if os.RemoveAll(dir) != nil || os.MkdirAll(dir, 0o700) != nil {
		return ""
	}
	return dir
}

// seal writes the sums of what was compiled just now. Where it cannot, the next
// start compiles again.
func seal(dir string) {
	sums, err := sumsOf(dir)
	if err != nil {
		return
	}
	if old, err := os.ReadFile(filepath.Join(dir, sumsFile)); err == nil && bytes.Equal(old, sums) {
		return
	}
	f, err := os.CreateTemp(dir, sumsFile+".*.tmp")
	if err != nil {
		return
	}
	_, err = f.Write(sums)
	if shut := f.Close(); err == nil && shut == nil {
		err = os.Rename(f.Name(), filepath.Join(dir, sumsFile))
	}
	if err != nil {
		_ = os.Remove(f.Name())
	}
}

// sumsOf lists the files under a folder with their checksums. They guard against
// damage, not against malice: the folder is this user's own, as the program is.
func sumsOf(dir string) ([]byte, error) {
	var lines []string
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || !d.Type().IsRegular() || filepath.Dir(path) == dir || strings.HasSuffix(path, ".tmp") {
			return err
		}
		f, err := os.Open(path)
		if err != nil {
			return err
		}
		defer f.Close()
		sum := crc32.New(crc32.MakeTable(crc32.Castagnoli))
		if _, err := io.Copy(sum, f); err != nil {
			return err
		}
		name, err := filepath.Rel(dir, path)
		lines = append(lines, fmt.Sprintf("%08x %s\n", sum.Sum32(), filepath.ToSlash(name)))
		return err
	})
	slices.Sort(lines)
	return []byte(strings.Join(lines, "")), err
}
