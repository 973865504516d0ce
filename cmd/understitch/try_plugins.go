package main

import (
	"understitch/model/spec"
	"understitch/rules/inspect"
	"understitch/rules/plugin"
)

// plugin tries one rule of a house that is a program.
func (t *trials) plugin(file string, s inspect.Standards, p *spec.Plugin) {
	t.rules++
	tried := plugin.Try(pluginRunner(), plugin.Beside(file), s.House, p, beside(file))
	var faults []string
	for _, f := range tried.Faults {
		faults = append(faults, p.Place.String()+": "+f)
	}
	right := "keeps to the protocol"
	if len(tried.Examples) == 0 {
		right += "; it has no examples"
	}
	if len(faults) > 0 {
		t.unkept++ // which is no example
	}
	t.came(p.Name, tried.Examples, faults, right)
}
