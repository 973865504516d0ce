package inspect

import (
	"fmt"
	"io/fs"
	"path"
	"path/filepath"
	"strings"
	"sync"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
)

// house is a house file and what it settles for the rules. It is read once,
// when the first garment below it is inspected.
type house struct {
	once     sync.Once
	spec     *spec.House
	settings *rules.Settings
	diags    []model.Diagnostic
}

// houseAbove finds, reads and keeps the house file that holds for a folder.
func (in *Inspector) houseAbove(dir string) *house {
	file := in.findHouse(dir)
	in.mu.Lock()
	if in.houses == nil {
		in.houses = map[string]*house{}
	}
	h := in.houses[file]
	if h == nil {
		h = &house{}
		in.houses[file] = h
	}
	in.mu.Unlock()
	h.once.Do(func() {
		var stated *model.House
		if file != "" {
			h.spec, h.diags = in.loadHouse(file)
			if h.spec != nil {
				stated = h.spec.Model()
			}
		}
		var diags []model.Diagnostic
		h.settings, diags = in.Engine.Settings(stated)
		h.diags = append(h.diags, diags...)
	})
	return h
}

// House tells what the house above a folder settles: the house itself, nil
// where there is none, and the rules in force.
func (in *Inspector) House(dir string) (*model.House, *rules.Settings, []model.Diagnostic) {
	h := in.houseAbove(dir)
	if h.spec == nil {
		return nil, h.settings, h.diags
	}
	return h.spec.Model(), h.settings, h.diags
}

// findHouse is the path of the nearest house file at or above a folder, or "".
func (in *Inspector) findHouse(dir string) string {
	if in.FS == nil {
		file, _ := spec.FindHouse(dir)
		return file
	}
	for dir = filepath.ToSlash(dir); ; dir = path.Dir(dir) {
		file := path.Join(dir, spec.HouseFile)
		if info, err := fs.Stat(in.FS, file); err == nil && !info.IsDir() {
			return file
		}
		if dir == "." || dir == "/" {
			return ""
		}
	}
}

func (in *Inspector) load(file string, h *spec.House) (*spec.Document, []model.Diagnostic) {
	if in.FS == nil {
		return spec.Load(file, h)
	}
	src, err := fs.ReadFile(in.FS, file)
	if err != nil {
		return nil, []model.Diagnostic{unreadable(file, err)}
	}
	return spec.Read(file, src, h)
}

func (in *Inspector) loadHouse(file string) (*spec.House, []model.Diagnostic) {
	if in.FS == nil {
		return spec.LoadHouse(file)
	}
	src, err := fs.ReadFile(in.FS, file)
	if err != nil {
		return nil, []model.Diagnostic{unreadable(file, err)}
	}
	return spec.ReadHouse(file, src)
}

func unreadable(file string, err error) model.Diagnostic {
	return atTop(file, fmt.Sprintf("the file cannot be read: %v", err), "")
}

// lacksSize says that a garment is not made in a size that was asked for.
func lacksSize(file, size string, sizes []string) model.Diagnostic {
	has := "it has no sizes"
	if len(sizes) > 0 {
		has = "it is made in " + strings.Join(sizes, ", ")
	}
	return atTop(file, fmt.Sprintf("there is no size %q of this garment", size), has)
}

// notAmong is the first of the wanted that is not among the known, or "".
func notAmong(wanted, known []string) string {
	for _, w := range wanted {
		found := false
		for _, k := range known {
			found = found || k == w
		}
		if !found {
			return w
		}
	}
	return ""
}

// atTop is a diagnostic of a whole file.
func atTop(file, summary, detail string) model.Diagnostic {
	at := model.Pos{Line: 1, Column: 1}
	return model.Diagnostic{Severity: "error", Summary: summary, Detail: detail, Place: model.Place{File: file, Start: at, End: at}}
}

// Unread is the report of something that is not a spec that can be read.
func Unread(file, reason string) *Report {
	return &Report{File: file, Diagnostics: []model.Diagnostic{atTop(file, reason, "")}}
}
