package spec

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/bmatcuk/doublestar/v4"
	"github.com/hashicorp/hcl/v2"

	"understitch/model"
)

// HouseFile is the name of the file that holds a house's standards.
const HouseFile = "house.hcl"

// House is what a house.hcl states: its standards, and the tapes, fabrics,
// sizes and levels that every garment below its folder may use. It does not
// change after it was read.
type House struct {
	model   *model.House
	unit    model.Unit
	tapes   []*model.Tape
	fabrics []*model.Fabric
	sizes   []*sizeBody
	levels  []houseLevel // what the wearer measures there is known per garment
	root    bool         // nothing is inherited from houses above it
	table   string       // the size table beside the house; "" for none
	tableAt hcl.Range    // where that is named

	requires []*Require
	plugins  []*Plugin
}

// houseLevel is a level of a house, in the unit of the file that states it.
type houseLevel struct {
	*block
	unit model.Unit
}

// sizeBody is the body of one size, in millimetres.
type sizeBody struct {
	name string
	body map[string]float64
	at   map[string]model.Place // where each measure is
}

// Model is the part of the house that rules need.
func (h *House) Model() *model.House { return h.model }

// Requires are the rules that the house states itself, in the order of the file.
func (h *House) Requires() []*Require { return h.requires }

// FindHouse looks for the nearest house.hcl in a folder or one above it.
func FindHouse(dir string) (path string, ok bool) {
	if dir == "" {
		dir = "."
	}
	up, err := filepath.Abs(dir)
	if err != nil {
		return "", false
	}
	// The path that is handed out keeps the form in which the folder was given,
	// as it stands in messages.
	for given := dir; ; {
		path = filepath.Join(given, HouseFile)
		if info, err := os.Stat(path); err == nil && !info.IsDir() {
			return path, true
		}
		parent := filepath.Dir(up)
		if parent == up {
			return "", false
		}
		up = parent
		if filepath.IsAbs(dir) {
			given = up
		} else {
			given = filepath.Join(given, "..")
		}
	}
}

// ReadHouse reads a house. It is nil when there is an error among the
// diagnostics.
func ReadHouse(name string, src []byte) (*House, []model.Diagnostic) {
	f := &faults{}
	root := parse(name, src, houseShape, f)
	if root == nil || f.failed {
		return nil, f.sorted()
	}
	head := root.first("house")
	if head == nil {
		f.fault(root.header, "Begin it with house \"name\" { unit = \"cm\" }.", "the file has no house block")
		return nil, f.sorted()
	}
	s := &scope{faults: f}
	s.unit = s.unitOf(head)
	h := &House{unit: s.unit, model: &model.House{Name: head.name, File: name, Unit: s.unit, Files: []string{name}, Place: place(head.header)}}
	s.inheritance(h, head)
	for _, b := range root.blocks {
		switch b.kind {
		case "allowance":
			e := b.attr("width")
			h.model.Allowances = append(h.model.Allowances,
				&model.Standard{Role: b.name, Width: s.length(e, atLeast0), Place: place(e.Range())})
		case "size":
			body, at := s.bodyOf(b)
			h.sizes = append(h.sizes, &sizeBody{b.name, body, at})
		case "tape":
			h.tapes = append(h.tapes, s.tape(b))
		case "fabric":
			h.fabrics = append(h.fabrics, s.fabric(b))
		case "level":
			h.levels = append(h.levels, houseLevel{b, s.unit})
			try := *s // levels are read again for each garment; here only for their faults
			try.lenient = true
			try.level(b)
		case "rule":
			h.model.Rules = append(h.model.Rules, s.ruleSetting(b))
		case "styles":
			h.model.Styles = append(h.model.Styles, s.styles(b))
		case "require":
			r := s.require(b)
			h.requires = append(h.requires, r)
			if e := b.attrs["severity"]; e != nil { // a rule block may still change it
				h.model.Rules = append([]model.RuleSetting{{
					Rule: r.Name, Severity: r.Severity, SeverityPlace: place(e.SrcRange), Place: place(b.header),
				}}, h.model.Rules...)
			}
		case "plugin":
			h.plugins = append(h.plugins, s.plugin(b))
		}
	}
	if f.failed {
		return nil, f.sorted()
	}
	return h, f.sorted()
}

// severities are the words that a severity is stated in.
var severities = []string{"error", "warning", "note", "off"}

// styles reads what holds for some of the garments below the house only.
func (s *scope) styles(b *block) model.StyleSetting {
	style := model.StyleSetting{Pattern: b.name, Place: place(b.header)}
	switch {
	case strings.HasPrefix(b.name, "/") || strings.Contains(b.name, `\\`) || slices.Contains(strings.Split(b.name, "/"), ".."):
		s.fault(b.header, "For example: styles \"archive/**\".", "garments are named from the folder of this file, with / between")
	case !doublestar.ValidatePattern(b.name):
		s.fault(b.header, "* is any part of a name, ** any folders, {a,b} either.", "%q cannot be read as names with stars", b.name)
	case len(b.blocks) == 0:
		s.warn(b.header, "Write rule blocks inside it.", "styles %q changes nothing", b.name)
	}
	for _, r := range b.blocks {
		style.Rules = append(style.Rules, s.ruleSetting(r))
	}
	return style
}

// ruleSetting reads what the house says about one rule: its severity, and
// limits by any name.
func (s *scope) ruleSetting(b *block) model.RuleSetting {
	r := model.RuleSetting{Rule: b.name, Place: place(b.header)}
	for _, a := range b.inOrder {
		if a.Name == "severity" {
			r.Severity, r.SeverityPlace = s.choice(a.Expr, severities...), place(a.SrcRange)
			continue
		}
		r.Limits = append(r.Limits, s.limit(a.Name, a.Expr))
	}
	return r
}

// size finds the body of a size, or nil.
func (h *House) size(name string) *sizeBody {
	if h == nil {
		return nil
	}
	if i := slices.IndexFunc(h.sizes, func(z *sizeBody) bool { return z.name == name }); i >= 0 {
		return h.sizes[i]
	}
	return nil
}
