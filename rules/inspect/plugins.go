package inspect

import (
	"fmt"
	"io/fs"
	"path/filepath"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/plugin"
)

// withPlugins makes the plugins of a house ready, and gives the rules under
// whose names they report.
func (in *Inspector) withPlugins(h *house, taken []*rules.Rule) []*rules.Rule {
	var list []*model.Plugin
	var out []*rules.Rule
	for _, p := range h.spec.Plugins() {
		for _, r := range taken {
			if r.Name == p.Name {
				h.diags = append(h.diags, model.Diagnostic{
					Severity: "error", Place: p.Place, Detail: "Findings are reported under it; choose another.",
					Summary: fmt.Sprintf("there is a rule called %q already", p.Name),
				})
			}
		}
		list = append(list, p.Plugin)
		out = append(out, plugin.Rule(p.Plugin))
	}
	home := map[string]string{} // the house file that each module lies beside
	for _, p := range list {
		if _, nearer := home[p.File]; !nearer {
			home[p.File] = p.Place.File
		}
	}
	open := func(name string) (fs.File, error) { return plugin.Beside(home[name])(name) }
	if in.FS != nil {
		open = plugin.BesideIn(in.FS, filepath.ToSlash(h.file))
	}
	h.plugins = plugin.NewSet(in.Plugins, open, list, out)
	return out
}

// Close ends the processes that ran plugins. The inspector is of no more use for
// garments whose house has any.
func (in *Inspector) Close() {
	in.mu.Lock()
	defer in.mu.Unlock()
	for _, h := range in.houses {
		h.plugins.Close()
	}
}
