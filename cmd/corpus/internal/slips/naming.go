package slips

import (
	"slices"

	"understitch/cmd/corpus/internal/tally"
	"understitch/model"
	"understitch/rules"
)

// named reports whether a finding points at a thing: by what it is about, by its
// place, by a place it has to do with, or by an address in its words.
func named(f *rules.Finding, th thing, file string) bool {
	if slices.Contains(th.keys, f.Key) && f.Key != "" {
		return true
	}
	words := f.Subject + " | " + f.Message
	places := []model.Place{f.Place}
	for _, r := range f.Related {
		words += " | " + r.Message
		places = append(places, r.Place)
	}
	if slices.ContainsFunc(places, func(p model.Place) bool { return p.File == file && th.holds(p.Start.Line) }) {
		return true
	}
	return slices.ContainsFunc(th.names, func(name string) bool { return tally.Says(words, name) })
}

func (th thing) holds(line int) bool { return th.lines[0] <= line && line <= th.lines[1] }
