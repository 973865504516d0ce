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

// Nearest is the span with the most room round a length, or where none holds it
// the nearest; and the spans to choose from. There is none where the tape cannot
// be cut at all.
func (t *Tape) Nearest(length float64) (Window, []Window) {
	choices, below, above := t.Windows(length)
	if len(choices) == 0 {
		for _, w := range []*Window{below, above} {
			if w != nil {
				choices = append(choices, *w)
			}
		}
	}
	best, most := Window{}, math.Inf(-1)
	for _, w := range choices {
		if r := (Range{w.Low, w.High}).Room(length); r > most {
			best, most = w, r
		}
	}
	return best, choices
}

// EndMargin is how far either end of a tape of a length lies from its metal, when
// so many fasteners lie in the middle of it.
func (t *Tape) EndMargin(length float64, fasteners int) float64 {
	return (length - float64(fasteners-1)*t.Pitch - t.Head) / 2
}

// ZipsAround are the longest length in stock that goes into an opening and the
// shortest that does not; 0 for none.
func (c *Closure) ZipsAround(opening float64) (shorter, longer float64) {
	const grain = 1e-6 // 33.9 cm is not quite 339 mm in binary
	for _, l := range slices.Sorted(slices.Values(c.Stock)) {
		if l > opening+grain {
			return shorter, l
		}
		shorter = math.Min(l, opening)
	}
	return shorter, 0
}
