package spec

import (
	"io/fs"
	"math"
	"strings"
	"time"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// Plugin is a plugin that a house names, with the specs that show what it finds.
type Plugin struct {
	*model.Plugin
	Good, Bad []Text // specs, or the paths of specs
}

// Plugins are the rules of the house that are programs, in the order of the file.
func (h *House) Plugins() []*Plugin { return h.plugins }

func (s *scope) plugin(b *block) *Plugin {
	p := &model.Plugin{Name: b.name, Memory: model.PluginMemory, Time: model.PluginTime, Output: model.PluginOutput, Place: place(b.header)}
	out := &Plugin{Plugin: p, Good: s.texts(b.attr("good")), Bad: s.texts(b.attr("bad"))}
	if !isRuleName(b.name) {
		s.fault(b.header, "Findings are reported under it: small letters, with hyphens between words.", "%q cannot be the name of a plugin", b.name)
	}
	if e := b.attr("file"); e != nil {
		p.File, p.FilePlace = s.text(e), place(e.Range())
		if p.File != "" && !fs.ValidPath(p.File) {
			s.fault(e.Range(), "It lies under the folder of this file, with / between folders: rules/knits.wasm.", "%q is no place for a plugin", p.File)
		}
	}
	if e := b.attr("sha256"); e != nil {
		p.SHA256, p.SHA256Place = strings.ToLower(s.text(e)), place(e.Range())
		if p.SHA256 != "" && (len(p.SHA256) != 64 || strings.Trim(p.SHA256, "0123456789abcdef") != "") {
			s.fault(e.Range(), "It has 64 digits from 0 to 9 and a to f.", "this is not the sha256 of a file")
		}
	}
	if e := b.attr("memory"); e != nil {
		p.Memory = int64(s.most(e, 1<<20, "MB", 1<<20, model.PluginMemoryMost))
	}
	if e := b.attr("time"); e != nil {
		p.Time = time.Duration(s.most(e, float64(time.Second), "s", float64(10*time.Millisecond), float64(model.PluginTimeMost)))
	}
	if e := b.attr("output"); e != nil {
		p.Output = int64(s.most(e, 1<<10, "kB", 1<<10, model.PluginOutputMost))
	}
	return out
}

// most reads a cap that is stated in a unit of its own.
func (s *scope) most(e hclsyntax.Expression, unit float64, name string, least, most float64) float64 {
	v, ok := s.number(e)
	if !ok {
		return least
	}
	if v *= unit; math.IsNaN(v) || v < least || v > most {
		s.fault(e.Range(), "", "from %s to %s %s are meant here", model.Decimal(least/unit, 3), model.Decimal(most/unit, 0), name)
		return least
	}
	return v
}

// isRuleName tells whether a name is one that a rule can have: words of small
// letters joined by hyphens.
func isRuleName(s string) bool {
	for word := range strings.SplitSeq(s, "-") {
		if word == "" || strings.Trim(word, "abcdefghijklmnopqrstuvwxyz") != "" {
			return false
		}
	}
	return true
}
