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
	t.tried++ // whether it keeps to the protocol is one more example
	var faults []string
	for _, f := range tried.Faults {
		faults = append(faults, p.Place.String()+": "+f)
	}
	t.came(p.Name, tried.Examples, faults, "keeps to the protocol")
}
