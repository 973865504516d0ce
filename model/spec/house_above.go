package spec

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/body"
)

// inheritance reads what a house block says of the houses above it, and which size
// table stands beside it.
func (s *scope) inheritance(h *House, head *block) {
	if e := head.attr("root"); e != nil {
		h.root = s.flag(e)
	}
	if e := head.attr("sizes"); e != nil {
		h.table, h.tableAt = s.text(e), e.Range()
		if h.table != "" && !filepath.IsLocal(filepath.FromSlash(h.table)) {
			s.fault(e.Range(), "Put the table beside the house: sizes = \"sizes.csv\".", "%q is outside the folder of the house", h.table)
		}
	}
}

// LoadHouse reads a house from a file, with what it inherits.
func LoadHouse(path string) (*House, []model.Diagnostic) {
	return LoadHouseFor(path, filepath.Dir(path))
}

// LoadHouseFor reads a house from a file, for the garments of a folder at or below its own.
// What it does not state it inherits from the house files above it, up to one with
// root = true or the top of the git repository; outside of one only the nearest counts.
func LoadHouseFor(path, garments string) (*House, []model.Diagnostic) {
	h, diags := oneHouse(path, garments)
	if h == nil {
		return nil, diags
	}
	top := gitTop(filepath.Dir(path))
	for below := h; top != "" && !below.root; {
		up, ok := FindHouse(filepath.Join(filepath.Dir(path), ".."))
		if !ok || !within(top, up) {
			break
		}
		above, more := oneHouse(up, garments)
		diags = append(diags, more...)
		if above == nil {
			return nil, diags
		}
		h.inherit(above)
		path, below = up, above
	}
	return h, diags
}

func oneHouse(path, garments string) (*House, []model.Diagnostic) {
	if d := foreign(path, garments); d != nil {
		return nil, []model.Diagnostic{*d}
	}
	src, diags := readFile(path)
	if diags != nil {
		return nil, diags
	}
	h, diags := ReadHouse(path, src)
	if h == nil || h.table == "" {
		return h, diags
	}
	more := h.readSizes(filepath.Dir(path))
	if diags = append(diags, more...); model.Errors(more) {
		return nil, diags
	}
	return h, diags
}

// readSizes reads the size table beside the house: a row a size, and a column a measure,
// in the house's unit.
func (h *House) readSizes(dir string) []model.Diagnostic {
	fault := func(text string) []model.Diagnostic {
		return []model.Diagnostic{{Severity: "error", Summary: text, Place: place(h.tableAt)}}
	}
	if len(h.sizes) > 0 {
		return fault("the house has size blocks and a table of sizes: keep one of them")
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return fault(fmt.Sprintf("the table of sizes cannot be read: %v", err))
	}
	defer root.Close()
	src, err := root.ReadFile(filepath.FromSlash(h.table))
	if err != nil {
		return fault(fmt.Sprintf("the table of sizes cannot be read: %v", err))
	}
	table, diags := body.Read(filepath.Join(dir, h.table), bytes.NewReader(src), h.unit)
	if table == nil {
		return diags
	}
	for i, w := range table.Wearers {
		at := map[string]model.Place{}
		for measure := range w.Body {
			at[measure], _ = table.Cell(i, measure)
		}
		h.sizes = append(h.sizes, &sizeBody{w.Name, w.Body, at})
	}
	return diags
}

// inherit takes over from a house above what this one does not state: rules attribute by
// attribute, a size table as a whole, all else by name.
func (h *House) inherit(above *House) {
	own := func(name string) bool {
		return slices.ContainsFunc(h.requires, func(r *Require) bool { return r.Name == name })
	}
	var rules []model.RuleSetting
	for _, r := range above.model.Rules {
		if !own(r.Rule) {
			rules = append(rules, r)
		}
	}
	h.model.Rules = append(rules, h.model.Rules...) // a later one wins
	under := folderFrom(above.model.File, h.model.Files[0])
	var styles []model.StyleSetting
	for _, s := range above.model.Styles {
		s.Under = filepath.ToSlash(filepath.Join(under, s.Under))
		styles = append(styles, s)
	}
	h.model.Styles = append(styles, h.model.Styles...)
	h.model.Allowances = joinNamed(h.model.Allowances, above.model.Allowances, func(s *model.Standard) string { return s.Role })
	h.tapes = joinNamed(h.tapes, above.tapes, func(t *model.Tape) string { return t.Name })
	h.fabrics = joinNamed(h.fabrics, above.fabrics, func(f *model.Fabric) string { return f.Name })
	h.levels = joinNamed(h.levels, above.levels, func(l houseLevel) string { return l.name })
	h.requires = joinNamed(h.requires, above.requires, func(r *Require) string { return r.Name })
	h.plugins = joinNamed(h.plugins, above.plugins, func(p *Plugin) string { return p.Name })
	if len(h.sizes) == 0 {
		h.sizes = above.sizes
	}
	h.model.Files = append(h.model.Files, above.model.File)
}

// joinNamed are the members of a list, and those of another whose names it does not have.
func joinNamed[T any](own, other []T, nameOf func(T) string) []T {
	out := slices.Clone(own)
	for _, x := range other {
		if !slices.ContainsFunc(own, func(o T) bool { return nameOf(o) == nameOf(x) }) {
			out = append(out, x)
		}
	}
	return out
}

// folderFrom is the folder of one house file, as a path from that of another above it.
func folderFrom(above, below string) string {
	from, errA := filepath.Abs(filepath.Dir(above))
	to, errB := filepath.Abs(filepath.Dir(below))
	if errA != nil || errB != nil {
		return ""
	}
	rel, err := filepath.Rel(from, to)
	if err != nil {
		return ""
	}
	return rel
}

// gitTop is the top of the git repository that holds a folder; "" outside of one.
func gitTop(dir string) string {
	at, err := filepath.Abs(dir)
	if err != nil {
		return ""
	}
	for {
		if _, err := os.Lstat(filepath.Join(at, ".git")); err == nil {
			return at
		}
		up := filepath.Dir(at)
		if up == at {
			return ""
		}
		at = up
	}
}

// within reports whether a file lies at or below a folder.
func within(top, file string) bool {
	abs, err := filepath.Abs(file)
	if err != nil {
		return false
	}
	rel, err := filepath.Rel(top, abs)
	return err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator))
}

// foreign refuses a house file of somebody who is neither the owner of the garments nor
// the current user: what it says would hold for work that is not theirs.
func foreign(path, garments string) *model.Diagnostic {
	owner, known := ownerOf(path)
	theirs, knownToo := ownerOf(garments)
	if !known || owner == os.Geteuid() || knownToo && owner == theirs {
		return nil
	}
	at := model.Pos{Line: 1, Column: 1}
	return &model.Diagnostic{Severity: "error", Summary: "the house file belongs to somebody else",
		Detail: "A house counts where it has the owner of the garment or of this run. Copy it, or run as its owner.",
		Place:  model.Place{File: path, Start: at, End: at}}
}
