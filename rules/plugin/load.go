package plugin

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"

	"understitch/model"
)

// moduleMost is the largest module that is taken, in bytes.
const moduleMost = 32 << 20

// Open opens a file under a house's folder.
type Open func(name string) (fs.File, error)

// Beside opens files under the folder of a house file on the disk, and none
// outside, whatever links may say.
func Beside(house string) Open {
	return func(name string) (fs.File, error) {
		root, err := os.OpenRoot(filepath.Dir(house))
		if err != nil {
			return nil, err
		}
		defer root.Close()
		return root.Open(filepath.FromSlash(name))
	}
}

// BesideIn is the same in a file system.
func BesideIn(files fs.FS, house string) Open {
	return func(name string) (fs.File, error) { return files.Open(path.Join(path.Dir(house), name)) }
}

// load reads a plugin's module. It is nil where it is not what the house pins.
func load(open Open, p *model.Plugin) ([]byte, *model.Diagnostic) {
	refused := func(at model.Place, detail, format string, args ...any) ([]byte, *model.Diagnostic) {
		return nil, &model.Diagnostic{
			Severity: "error", Place: at, Detail: detail,
			Summary: fmt.Sprintf("the plugin %q cannot be used: ", p.Name) + fmt.Sprintf(format, args...),
		}
	}
	f, err := open(p.File)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return refused(p.FilePlace, "It is looked for under the folder of the house file.", "there is no file %s", p.File)
	case err != nil:
		return refused(p.FilePlace, "It must lie under the folder of the house file.", "%s cannot be opened: %s", p.File, because(err))
	}
	defer f.Close()
	if info, err := f.Stat(); err != nil || !info.Mode().IsRegular() {
		return refused(p.FilePlace, "", "%s is not a file", p.File)
	}
	module, err := io.ReadAll(io.LimitReader(f, moduleMost+1))
	switch {
	case err != nil:
		return refused(p.FilePlace, "", "%s cannot be read: %s", p.File, because(err))
	case len(module) > moduleMost:
		return refused(p.FilePlace, "", "%s is larger than %d MB", p.File, moduleMost>>20)
	}
	if sum := sumOf(module); sum != p.SHA256 {
		return refused(p.SHA256Place, "Look at what has changed before you state the new one.", "%s is not the file that the house means; its sha256 is %s", p.File, sum)
	}
	return module, nil
}

func sumOf(module []byte) string {
	sum := sha256.Sum256(module)
	return hex.EncodeToString(sum[:])
}

// because is an error without the path that is named beside it.
func because(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}

// cacheFor is the folder for one compiled module.
func (r *Runner) cacheFor(p *model.Plugin) string {
	if r.Cache == "" {
		return ""
	}
	return filepath.Join(r.Cache, p.SHA256)
}
