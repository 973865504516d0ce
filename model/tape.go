package model

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
