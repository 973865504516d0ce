package model

import (
	"math"
	"slices"
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
	s := c.Stretch(0)
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
	if at < min(start, end)-NearEnd || at > max(start, end)+NearEnd {
		return 0, Missingf("the %s level does not cross %s", l.Name, c.Address())
	}
	return math.Abs(s.Edge.Net(at) - s.Edge.Net(start)), nil
}

// SewnLength of the closure along one of its edges as drawn, darts closed.
func (c *Closure) SewnLength(side int) (float64, error) { return c.Stretch(side).SewnLength() }

// FullLength is how long the closure is when made up; see Stretch.FullLength.
func (c *Closure) FullLength() (length float64, halves bool, err error) {
	return c.Stretch(0).FullLength()
}

// FullLength is the length of the stretch when the piece is cut, darts closed.
// An edge that runs up to the fold is drawn by its half: the cloth on the other
// side of the fold continues it, so it counts twice, and halves says so.
func (s Stretch) FullLength() (length float64, halves bool, err error) {
	from, to, err := s.Extent()
	if err != nil {
		return 0, false, err
	}
	e, fold := s.Edge, s.Edge.Piece.Fold
	length = e.Net(to) - e.Net(from)
	if fold == nil || fold == e {
		return length, false, nil
	}
	atStart := from < NearEnd && e.Neighbour(false) == fold
	atEnd := to > e.Length()-NearEnd && e.Neighbour(true) == fold
	if atStart || atEnd {
		return 2 * length, true, nil
	}
	return length, false, nil
}

// Window is a span of lengths that can be cut from a tape with a whole number
// of fasteners on it.
type Window struct {
	Fasteners int
	Low, High float64 // lengths of the cut tape, in millimetres
}

// Window is the span of lengths with n fasteners: each end is cut in the clear
// gap between two heads, so with pitch p, head h and clearance m
//
//	(n-1)p + h + 2m <= L <= (n+1)p - h - 2m
//
// (derived from the layout; no published source). It is empty where the heads
// leave no gap wide enough for a cut.
func (t *Tape) Window(n int) Window {
	need := t.Head + 2*t.Clear
	return Window{n, float64(n-1)*t.Pitch + need, float64(n+1)*t.Pitch - need}
}

// CanBeCut reports whether the tape can be cut between two heads at all.
func (t *Tape) CanBeCut() bool { return t.Pitch >= t.Head+2*t.Clear }

// mostFasteners is more than any tape has; past it the pitch is a slip.
const mostFasteners = 1e6

// Windows are the spans around a length: those that hold it (more fasteners
// first, for the firmest hold), or the nearest ones below and above it.
func (t *Tape) Windows(length float64) (holding []Window, below, above *Window) {
	if !t.CanBeCut() {
		return nil, nil, nil
	}
	// The numbers of fasteners that can hold the length lie within one of its
	// share of the pitch.
	share := length / t.Pitch
	if share > mostFasteners {
		return nil, nil, nil
	}
	for n := int(share) + 3; n >= max(1, int(share)-2); n-- {
		w := t.Window(n)
		switch {
		case length >= w.Low && length <= w.High:
			holding = append(holding, w)
		case w.High < length && below == nil:
			below = &w
		case w.Low > length:
			above = &w
		}
	}
	return holding, below, above
}
