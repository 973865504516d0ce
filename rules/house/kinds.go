package house

import (
	"slices"

	"understitch/model"
	"understitch/model/measured"
)

// dim is what a number measures.
type dim uint8

const (
	plain  dim = iota // a bare number, which goes with anything
	length            // in the house's unit
	area              // in that unit squared
	percent
	degrees
	ratio
	mixed // of several that do not go together
)

// shape is the form in which a figure comes.
type shape uint8

const (
	number shape = iota
	text
	flag
	levels // lengths by the names of levels
	pair   // two lengths
	texts  // several texts
	many   // things by name
)

// figure is one thing that can be read of a kind of thing. Exactly one of the
// functions is set, by its shape. Lengths are in millimetres and NaN where they
// cannot be had.
type figure struct {
	name  string
	shape shape
	dim   dim
	kind  string // of many things
	said  bool   // the spec states it as it is: no fitting and no other size changes it

	number func(g *model.Garment, x any) float64
	text   func(x any) string
	flag   func(x any) bool
	levels func(g *model.Garment, x any) measured.Levels
	pair   func(g *model.Garment, x any) *[2]float64
	texts  func(x any) []string
	many   func(g *model.Garment, x any) []named
}

// named is a thing and the name under which it is found.
type named struct {
	name  string
	thing any
}

// kind is a kind of thing that a rule can look at.
type kind struct {
	name    string
	roots   []string // what an expression can start with: the thing, what it belongs to
	figures []figure
	list    func(g *model.Garment) []model.Thing
	above   func(x any) []any // the things that the roots after the first stand for; nil ones are not there
}

func (k *kind) figure(name string) *figure {
	for i := range k.figures {
		if k.figures[i].name == name {
			return &k.figures[i]
		}
	}
	return nil
}

func (k *kind) names() []string {
	var out []string
	for _, f := range k.figures {
		out = append(out, f.name)
	}
	slices.Sort(out)
	return out
}

// kindNamed finds a kind, or nil.
func kindNamed(name string) *kind {
	i := slices.IndexFunc(kinds, func(k *kind) bool { return k.name == name })
	if i < 0 {
		return nil
	}
	return kinds[i]
}

func kindNames() []string {
	var out []string
	for _, k := range kinds {
		out = append(out, k.name)
	}
	return out
}

// The makers of figures take functions of the thing's own type.

func numberOf[T any](name string, d dim, get func(g *model.Garment, x T) float64) figure {
	return figure{name: name, shape: number, dim: d, number: func(g *model.Garment, x any) float64 { return get(g, x.(T)) }}
}

func lengthOf[T any](name string, get func(x T) float64) figure {
	return numberOf(name, length, func(_ *model.Garment, x T) float64 { return get(x) })
}

// said marks a figure that the spec states as it is.
func said(f figure) figure {
	f.said = true
	return f
}

// maybe is a figure of the measurement document, which leaves out what cannot
// be had.
func maybe[T any](name string, d dim, get func(g *model.Garment, x T) *float64) figure {
	return numberOf(name, d, func(g *model.Garment, x T) float64 {
		if v := get(g, x); v != nil {
			return *v
		}
		return model.Unknown()
	})
}

func textOf[T any](name string, get func(x T) string) figure {
	return figure{name: name, shape: text, text: func(x any) string { return get(x.(T)) }}
}

func flagOf[T any](name string, get func(x T) bool) figure {
	return figure{name: name, shape: flag, flag: func(x any) bool { return get(x.(T)) }}
}

func levelsOf[T any](name string, get func(g *model.Garment, x T) measured.Levels) figure {
	return figure{name: name, shape: levels, dim: length,
		levels: func(g *model.Garment, x any) measured.Levels { return get(g, x.(T)) }}
}

func pairOf[T any](name string, get func(g *model.Garment, x T) *[2]float64) figure {
	return figure{name: name, shape: pair, dim: length,
		pair: func(g *model.Garment, x any) *[2]float64 { return get(g, x.(T)) }}
}

// manyOf are things of a kind that belong to another thing, by their names or,
// where those are not unique, their addresses.
func manyOf[T any, U model.Thing](name, kind string, key func(U) string, get func(x T) []U) figure {
	return figure{name: name, shape: many, kind: kind, many: func(_ *model.Garment, x any) []named {
		var out []named
		for _, thing := range get(x.(T)) {
			out = append(out, named{key(thing), thing})
		}
		return out
	}}
}

func listOf[U model.Thing](get func(*model.Garment) []U) func(*model.Garment) []model.Thing {
	return func(g *model.Garment) []model.Thing {
		list := get(g)
		out := make([]model.Thing, len(list))
		for i, x := range list {
			out[i] = x
		}
		return out
	}
}

func addressOf[T model.Thing](x T) string { return x.Address() }

func address[T model.Thing]() figure { return textOf("address", addressOf[T]) }
