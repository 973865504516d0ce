package model

import (
	"math"
	"slices"
)

// Buttons are from LeastButton to GreatestButton across, in millimetres (common
// practice, no source): a diameter beyond is a slip of the unit.
const (
	LeastButton    = 4
	GreatestButton = 80
)

// ButtonsInOrder are the places of the buttons from where the closure begins.
func (c *Closure) ButtonsInOrder() []float64 { return slices.Sorted(slices.Values(c.Buttons)) }

// Buttonhole is the length of a buttonhole, the button's diameter and thickness
// together (Buttonholes, 1999); NaN where one of them is not stated.
func (c *Closure) Buttonhole() float64 { return c.Diameter + c.Thickness }

// LevelAt is how far along the closure a level crosses its first edge, from
// where the closure begins, darts closed; missing where it crosses outside the
// closure.
func (c *Closure) LevelAt(l *Level) (float64, error) {
	s := c.stretch(0)
	start, end := 0.0, s.Edge.Length()
	var err error
	if s.From.Kind != NoMark {
		if start, err = s.Edge.MarkAt(s.From); err != nil {
			return 0, err
		}
	}
	if s.To.Kind != NoMark {
		if end, err = s.Edge.MarkAt(s.To); err != nil {
			return 0, err
		}
	}
	at, err := s.Edge.LevelAt(l)
	if err != nil {
		return 0, err
	}
	if at < min(start, end)-nearEnd || at > max(start, end)+nearEnd {
		return 0, missing("the %s level does not cross %s", l.Name, c.Address())
	}
	return math.Abs(s.Edge.Net(at) - s.Edge.Net(start)), nil
}
