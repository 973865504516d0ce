package house

import (
	"maps"
	"math"
	"slices"
	"strconv"

	"understitch/model"
)

// Figures tells all that a rule of a house can read of a garment in the size at
// hand: thing by thing in the garment's order, each figure with its name and with
// a value that is a float64, a string or a bool. Lengths are in millimetres. A
// figure at a level is called NAME.LEVEL, one of a list NAME.1, NAME.2 and so on.
// What cannot be had is left out, and what the address tells by itself.
func Figures(g *model.Garment, put func(address, figure string, value any)) {
	for _, k := range kinds {
		for _, x := range k.list(g) {
			address := x.Address()
			for i := range k.figures {
				if f := &k.figures[i]; k == garmentKind || !inAddress[f.name] {
					f.tell(g, x, func(name string, value any) { put(address, name, value) })
				}
			}
		}
	}
}

// inAddress are the figures that an address tells, but for that of a garment.
var inAddress = map[string]bool{"address": true, "name": true, "layer": true, "piece": true}

// tell tells one figure of a thing. Things that belong to it are told themselves.
func (f *figure) tell(g *model.Garment, x any, put func(name string, value any)) {
	switch f.shape {
	case number:
		if v := f.number(g, x); !math.IsNaN(v) && !math.IsInf(v, 0) {
			put(f.name, v)
		}
	case text:
		if v := f.text(x); v != "" {
			put(f.name, v)
		}
	case flag:
		put(f.name, f.flag(x))
	case levels:
		at := f.levels(g, x)
		for _, level := range slices.Sorted(maps.Keys(at)) {
			put(f.name+"."+level, at[level])
		}
	case pair:
		if v := f.pair(g, x); v != nil {
			put(f.name+".1", v[0])
			put(f.name+".2", v[1])
		}
	case texts:
		for i, v := range f.texts(x) {
			put(f.name+"."+strconv.Itoa(i+1), v)
		}
	}
}
