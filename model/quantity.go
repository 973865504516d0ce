package model

import (
	"math"
	"strconv"
	"strings"
)

// Unit is a unit of length that a spec may be written in.
type Unit struct {
	Name       string  // "mm", "cm" or "in"
	Millimetre float64 // how many millimetres one unit is
}

// The units a spec may be written in. The inch is exactly 25.4 mm
// (international yard and pound agreement, 1959).
var (
	Millimetre = Unit{"mm", 1}
	Centimetre = Unit{"cm", 10}
	Inch       = Unit{"in", 25.4}
)

// Units are all units that a spec may be written in.
func Units() []Unit { return []Unit{Millimetre, Centimetre, Inch} }

// UnitNamed finds a unit by its name.
func UnitNamed(name string) (Unit, bool) {
	for _, u := range Units() {
		if u.Name == name {
			return u, true
		}
	}
	return Unit{}, false
}

// Show writes a length given in millimetres in this unit, for a person to
// read: "18.6 cm", "4.1 mm", "2.38 in".
func (u Unit) Show(mm float64) string { return u.Bare(mm) + " " + u.Name }

// Bare writes a length given in millimetres as the bare number that a spec in
// this unit would have, rounded as Show rounds.
func (u Unit) Bare(mm float64) string {
	digits := map[string]int{"mm": 1, "cm": 2, "in": 3}[u.Name]
	return Decimal(mm/u.Millimetre, digits)
}

// Decimal writes a number with at most the given digits after the point and no
// trailing zeros. Minus zero is zero.
func Decimal(v float64, digits int) string {
	s := strconv.FormatFloat(v, 'f', digits, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// Known reports whether a figure was stated.
func Known(v float64) bool { return !math.IsNaN(v) }

// Unknown is the figure that was not stated.
func Unknown() float64 { return math.NaN() }

// Range is a span of allowed values; an open end is infinite.
type Range struct{ Low, High float64 }

// Exactly is the range of a single value.
func Exactly(v float64) Range { return Range{v, v} }

// AnyFrom is the range from low upward.
func AnyFrom(low float64) Range { return Range{low, math.Inf(1)} }

// Beyond tells how far v lies outside the range: negative below it, positive
// above it, zero inside.
func (r Range) Beyond(v float64) float64 {
	switch {
	case v < r.Low:
		return v - r.Low
	case v > r.High:
		return v - r.High
	}
	return 0
}

// Room tells how far v lies from the nearer end: positive inside the range,
// negative outside.
func (r Range) Room(v float64) float64 { return math.Min(v-r.Low, r.High-v) }

// halfway is how far, in millimetres, a value may lie from the middle of a range by
// the computer's arithmetic alone: a draft moved on the paper has other digits.
const halfway = 1e-9

// Nearer is the end of the range that v is closer to, or has passed; in its middle
// the upper.
func (r Range) Nearer(v float64) float64 {
	if v-r.Low < r.High-v-2*halfway {
		return r.Low
	}
	return r.High
}

// Hull is the smallest range that holds both.
func (r Range) Hull(o Range) Range {
	return Range{math.Min(r.Low, o.Low), math.Max(r.High, o.High)}
}

// Less is the range of what is left of a value of this range when one of the
// other is taken off.
func (r Range) Less(o Range) Range { return Range{r.Low - o.High, r.High - o.Low} }
