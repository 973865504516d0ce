// Package reckoned tells how a figure was reached, line by line, so that a
// cutter can verify it with a tape: each length, dart, ease and allowance that
// entered, and what they come to. It adds nothing up by itself that package
// model has not; it lays open what model did.
package reckoned

import (
	"fmt"
	"math"
	"slices"

	"understitch/model"
)

// Line is one step: what was taken, and its figure in millimetres. Depth tells
// how far it is set in: a sum stands a step out from what it sums up.
type Line struct {
	Depth  int
	Text   string
	Figure float64 // NaN for a line without a figure
	Degree bool    // the figure is an angle in degrees
	Sum    bool    // what the lines before it, set further in, come to
}

// Lines is the account of one thing.
type Lines []Line

func (l *Lines) say(depth int, format string, args ...any) {
	*l = append(*l, Line{Depth: depth, Text: fmt.Sprintf(format, args...), Figure: math.NaN()})
}

func (l *Lines) figure(depth int, mm float64, format string, args ...any) {
	*l = append(*l, Line{Depth: depth, Text: fmt.Sprintf(format, args...), Figure: mm})
}

func (l *Lines) sum(depth int, mm float64, format string, args ...any) {
	*l = append(*l, Line{Depth: depth, Text: fmt.Sprintf(format, args...), Figure: mm, Sum: true})
}

// cannot says why a figure is not to be had.
func (l *Lines) cannot(depth int, err error) { l.say(depth, "not possible: %s", err) }

// Of accounts for everything that is reckoned about the thing at an address,
// in the garment's size. It is false where the garment has no such thing.
func Of(g *model.Garment, address string) (Lines, bool) {
	var l Lines
	thing := Find(g, address)
	switch x := thing.(type) {
	case nil:
		return nil, false
	case *model.Seam:
		l.join(g, g.JoinOf(x))
	case *model.Closure:
		l.closure(g, x)
	case *model.Share:
		l.share(g, x)
	case *model.Nest:
		l.nest(g, x)
	case *model.Level:
		for _, layer := range g.Layers {
			l.girth(g, layer, x)
		}
	case *model.Layer:
		for _, level := range g.Levels {
			l.girth(g, x, level)
		}
	case *model.Measure:
		l.run(g, x)
	case *model.Piece:
		l.piece(g, x)
	case *model.Edge:
		l.edge(0, x)
	case *model.Dart:
		l.dart(x)
	case *model.Notch:
		l.notch(x)
	case *model.Elastic:
		l.elastic(x)
	case *model.Bone:
		l.bone(x)
	case *model.Alteration:
		l.alteration(x)
	default:
		l.say(0, "%s is checked as a whole; name a thing in it", address)
	}
	return l, true
}

// Things are all things of a garment that have an address.
func Things(g *model.Garment) []model.Thing {
	out := []model.Thing{g}
	out = appendThings(out, g.Levels)
	out = appendThings(out, g.Layers)
	out = appendThings(out, g.Pieces())
	out = appendThings(out, g.Edges())
	out = appendThings(out, g.Darts())
	out = appendThings(out, g.Notches())
	out = appendThings(out, g.Seams)
	out = appendThings(out, g.Shares)
	out = appendThings(out, g.Nests)
	out = appendThings(out, g.Closures)
	out = appendThings(out, g.Elastics)
	out = appendThings(out, g.Bones)
	out = appendThings(out, g.Measures)
	return appendThings(out, g.Alterations)
}

func appendThings[T model.Thing](out []model.Thing, list []T) []model.Thing {
	for _, x := range list {
		out = append(out, x)
	}
	return out
}

// Find is the thing at an address, or nil.
func Find(g *model.Garment, address string) model.Thing {
	things := Things(g)
	i := slices.IndexFunc(things, func(t model.Thing) bool { return t.Address() == address })
	if i < 0 {
		return nil
	}
	return things[i]
}
