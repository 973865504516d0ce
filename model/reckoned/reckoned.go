// Package reckoned tells how a figure was reached, line by line, so that a
// cutter can verify it with a tape: each length, dart, ease and allowance that
// entered, and what they come to. It adds nothing up by itself that package
// model has not; it lays open what model did.
//
// A thing has an account of all that is reckoned about it (Of). A rule lays open
// besides how it came to the one figure that it judges, by the same lines.
package reckoned

import (
	"fmt"
	"math"
	"slices"

	"understitch/model"
)

// Unit is the unit of a figure.
type Unit string

// The units of figures.
const (
	Millimetres Unit = "mm"
	Degrees     Unit = "degrees"
	Ratio       Unit = "ratio"
	Percent     Unit = "%"
)

// Kind tells what a line's figure does in an account.
type Kind uint8

// The kinds of lines.
const (
	Entry  Kind = iota // it is added to what the next line further out comes to
	Beside             // it is told, and enters no sum
	Sum                // what the lines before it, set one step further in, add up to
	Result             // what the lines before it come to otherwise, as its text says
)

// Line is one step: what was taken, and its figure. Depth tells how far it is set
// in: a sum stands a step out from what it sums up, and is itself an entry of what
// stands a step further out. What is taken off has a figure below nothing.
type Line struct {
	Depth  int
	Text   string
	Figure float64 // NaN for a line without a figure
	Unit   Unit
	Kind   Kind
}

// Lines is the account of one thing, or of one figure that a rule judged: that
// figure stands in the last line.
type Lines []Line

// Say adds a line without a figure.
func (l *Lines) Say(depth int, format string, args ...any) {
	l.put(depth, Beside, "", math.NaN(), format, args)
}

// Add adds a length that enters the sum that follows, in millimetres.
func (l *Lines) Add(depth int, mm float64, format string, args ...any) {
	l.put(depth, Entry, Millimetres, mm, format, args)
}

// AddIn does so with a figure of another unit.
func (l *Lines) AddIn(unit Unit, depth int, v float64, format string, args ...any) {
	l.put(depth, Entry, unit, v, format, args)
}

// Beside tells a length that enters no sum, in millimetres.
func (l *Lines) Beside(depth int, mm float64, format string, args ...any) {
	l.put(depth, Beside, Millimetres, mm, format, args)
}

// BesideIn does so with a figure of another unit.
func (l *Lines) BesideIn(unit Unit, depth int, v float64, format string, args ...any) {
	l.put(depth, Beside, unit, v, format, args)
}

// Sum is what the lengths before it, set one step further in, add up to.
func (l *Lines) Sum(depth int, mm float64, format string, args ...any) {
	l.put(depth, Sum, Millimetres, mm, format, args)
}

// SumIn does so with figures of another unit.
func (l *Lines) SumIn(unit Unit, depth int, v float64, format string, args ...any) {
	l.put(depth, Sum, unit, v, format, args)
}

// Result is a length that the lines before it come to otherwise than by adding.
func (l *Lines) Result(depth int, mm float64, format string, args ...any) {
	l.put(depth, Result, Millimetres, mm, format, args)
}

// ResultIn does so with a figure of another unit.
func (l *Lines) ResultIn(unit Unit, depth int, v float64, format string, args ...any) {
	l.put(depth, Result, unit, v, format, args)
}

func (l *Lines) put(depth int, kind Kind, unit Unit, v float64, format string, args []any) {
	*l = append(*l, Line{depth, fmt.Sprintf(format, args...), v, unit, kind})
}

// Before is what the lines before the i-th come to that enter it if it is a sum:
// those of its unit, set one step further in, since the last line that is not
// further in than it.
func (l Lines) Before(i int) float64 {
	sum := 0.0
	for k := i - 1; k >= 0 && l[k].Depth > l[i].Depth; k-- {
		if l[k].Depth == l[i].Depth+1 && l[k].Kind != Beside && l[k].Unit == l[i].Unit {
			sum += l[k].Figure
		}
	}
	return sum
}

// Differ takes the smaller of two figures off the larger, each told in words, and
// gives what they differ by.
func (l *Lines) Differ(unit Unit, depth int, a float64, textA string, b float64, textB string) {
	if a < b {
		a, textA, b, textB = b, textB, a, textA
	}
	l.AddIn(unit, depth+1, a, "%s", textA)
	l.AddIn(unit, depth+1, -b, "less %s", textB)
	l.SumIn(unit, depth, a-b, "is what they differ by")
}

// Off tells how far a length lies outside a range that is meant, which is told in
// words.
func (l *Lines) Off(depth int, mm float64, r model.Range, meant string) {
	off := r.Beyond(mm)
	if r == (model.Range{}) {
		meant = "nothing"
	}
	switch {
	case off == 0:
		l.Result(depth, 0, "is how far it lies outside what is meant, %s", meant)
	case mm == off:
		l.Result(depth, off, "is how far it lies from what is meant, %s", meant)
	default:
		l.Add(depth+1, off-mm, "less what is meant, %s", meant)
		l.Sum(depth, off, "is how far it lies outside that")
	}
}

// Misplaced tells how far a place along one side lies from that along the other,
// but for what the first side is longer by, which may lie before them.
func (l *Lines) Misplaced(g *model.Garment, at float64, text string, other float64, otherText string, longer float64) {
	if max(longer, -longer) < 1e-9 {
		l.Add(1, at, "%s", text)
		l.Add(1, -other, "less %s", otherText)
		l.Sum(0, at-other, "is how much further along the first lies")
		return
	}
	l.Add(2, at, "%s", text)
	l.Add(2, -other, "less %s", otherText)
	l.Sum(1, at-other, "is how much further along the first lies")
	l.Off(0, at-other, model.Range{Low: min(0, longer), High: max(0, longer)}, fmt.Sprintf("anything up to the %s by which the sides differ in length", g.Show(max(longer, -longer))))
}

// cannot says why a figure is not to be had.
func (l *Lines) cannot(depth int, err error) { l.Say(depth, "not possible: %s", err) }

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
	case *model.Inside:
		l.inside(g, x)
	case *model.Level:
		for _, layer := range g.Layers {
			l.girth(g, layer, x)
		}
	case *model.Layer:
		for _, level := range g.Levels {
			l.girth(g, x, level)
		}
	case *model.Measure:
		l.Run(g, x)
	case *model.Piece:
		l.piece(g, x)
	case *model.Edge:
		l.edge(0, x)
	case *model.Dart:
		l.dart(x)
	case *model.Notch:
		l.notch(x)
	case *model.Elastic:
		l.Elastic(g, x)
	case *model.Bone:
		l.Bone(x)
	case *model.Alteration:
		l.alteration(x)
	default:
		l.Say(0, "%s is checked as a whole; name a thing in it", address)
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
	out = appendThings(out, g.Pleats())
	out = appendThings(out, g.Notches())
	out = appendThings(out, g.Seams)
	out = appendThings(out, g.Shares)
	out = appendThings(out, g.Insides)
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
