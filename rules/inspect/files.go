package inspect

import (
	"fmt"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	stated "understitch/rules/house"
	"understitch/rules/plugin"
)

// house is a house file and what it settles for the rules. It is read once,
// when the first garment below it is inspected.
type house struct {
	once     sync.Once
	file     string // "" where there is none
	spec     *spec.House
	engine   *rules.Engine // of the rules that are built in and those of the house
	plugins  *plugin.Set   // its rules that are programs
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
		h = &house{file: file}
		in.houses[file] = h
	}
	in.mu.Unlock()
	h.once.Do(func() {
		var own *model.House
		if file != "" {
			h.spec, h.diags = in.loadHouse(file, dir)
			if h.spec != nil {
				own = h.spec.Model()
			}
		}
		h.engine = in.withOwn(h)
		var diags []model.Diagnostic
		h.settings, diags = h.engine.Settings(own)
		h.diags = append(h.diags, diags...)
	})
	return h
}

// withOwn is the engine that has the rules that a house states itself, too.
func (in *Inspector) withOwn(h *house) *rules.Engine {
	if h.spec == nil || len(h.spec.Requires())+len(h.spec.Plugins()) == 0 {
		return in.Engine
	}
	own, diags := stated.Compile(h.spec, in.Engine.Rules())
	h.diags = append(h.diags, diags...)
	own = append(own, in.withPlugins(h, append(slices.Clone(in.Engine.Rules()), own...))...)
	engine, err := rules.New(append(slices.Clone(in.Engine.Rules()), own...))
	switch {
	case err == nil:
		return engine
	case !model.Errors(h.diags): // else it follows from what was told
		h.diags = append(h.diags, atTop(h.file, err.Error(), ""))
	}
	return in.Engine
}

// settingsFor are the settings that hold for one garment file below the house.
func (in *Inspector) settingsFor(h *house, file string) *rules.Settings {
	if h.file == "" {
		return h.settings
	}
	return h.settings.For(in.fromFolder(filepath.Dir(h.file), file))
}

// fromFolder names a file from a folder, with slashes.
func (in *Inspector) fromFolder(dir, file string) string {
	if in.FS == nil { // either may lead up out of where we are
		if abs, err := filepath.Abs(dir); err == nil {
			dir = abs
		}
		if abs, err := filepath.Abs(file); err == nil {
			file = abs
		}
	}
	if rel, err := filepath.Rel(dir, file); err == nil {
		file = rel
	}
	return filepath.ToSlash(file)
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

// Standards are all that holds for a garment file.
type Standards struct {
	House    *spec.House // nil where there is none
	File     string      // of the house
	Engine   *rules.Engine
	Settings *rules.Settings
	Faults   []model.Diagnostic // of the house file
}

// Standards tells what holds for one garment file, which need not be there.
func (in *Inspector) Standards(file string) Standards {
	h := in.houseAbove(filepath.Dir(file))
	return Standards{h.spec, h.file, h.engine, in.settingsFor(h, file), h.diags}
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

func (in *Inspector) loadHouse(file, dir string) (*spec.House, []model.Diagnostic) {
	if in.FS == nil {
		return spec.LoadHouseFor(file, dir)
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
