package model

import (
	"cmp"
	"math"
	"slices"
)

// ButtonsInOrder are the places of the buttons from where the closure begins.
func (c *Closure) ButtonsInOrder() []float64 { return slices.Sorted(slices.Values(c.Buttons)) }

// Buttonhole is the length of a buttonhole, the button's diameter and thickness
// together (Buttonholes, 1999); NaN where one of them is not stated.
func (c *Closure) Buttonhole() float64 { return c.Diameter + c.Thickness }

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

// WindowFrom is the span of lengths with n fasteners when the middle of the first
// lies at a distance from the upper cut, which the last cut then follows: with the
// pitch p, the head h and the clearance m
//
//	first + (n-1)p + h/2 + m <= L <= first + np - h/2 - m
//
// (derived from the layout; no published source).
func (t *Tape) WindowFrom(first float64, n int) Window {
	need := t.Head/2 + t.Clear
	return Window{n, first + float64(n-1)*t.Pitch + need, first + float64(n)*t.Pitch - need}
}

// FirstAt is where the middle of the first fastener may lie from the upper cut.
func (t *Tape) FirstAt() Range { return Range{t.Head/2 + t.Clear, t.Pitch - t.Head/2 - t.Clear} }

// NearestFrom are the two windows around a length when the first fastener is
// placed, the one that the length lies in or nearest to first.
func (t *Tape) NearestFrom(first, length float64) (best Window, other Window) {
	n := max(1, int((length-first)/t.Pitch)+1)
	if length/t.Pitch > mostFasteners {
		n = 1
	}
	windows := []Window{t.WindowFrom(first, n)}
	for _, k := range []int{n - 1, n + 1} {
		if k > 0 {
			windows = append(windows, t.WindowFrom(first, k))
		}
	}
	slices.SortStableFunc(windows, func(a, b Window) int {
		off := func(w Window) float64 { return math.Abs(Range{w.Low, w.High}.Beyond(length)) }
		return cmp.Compare(off(a), off(b))
	})
	return windows[0], windows[1]
}

// Metal are the middles of n fasteners from the upper cut, the first one placed.
func (t *Tape) Metal(first float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = first + float64(i)*t.Pitch
	}
	return out
}

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
