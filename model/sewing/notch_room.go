package sewing

import (
	"math"

	"understitch/model"
)

// NotchRoom is what lies near a notch along its edge: a corner of the piece, the
// mouth of a dart, or another notch. Exactly one of Corner, Dart and Notch is set.
// Apart is the distance in millimetres along the edge as drawn.
type NotchRoom struct {
	Corner *model.Edge // the edge that the notch's own meets there
	Dart   *model.Dart // or pleat
	Notch  *model.Notch
	Apart  float64
}

// runsOn is how far, in degrees, two edges of a piece may turn where they meet
// and still be one line without a corner (common practice, no source).
const runsOn = 30.0

// Room lists what a notch must keep clear of on its edge: the corners at its ends,
// the mouths of its darts, and the notches that were stated before it. A fold is
// no corner, nor is a place where the outline runs on; and a notch within a
// millimetre of a mouth's end marks the dart's leg. One that marks a line of a
// pleat keeps clear of other notches only, and not of those of that pleat. The error tells why the notch
// lies on no place of its edge.
func Room(n *model.Notch) ([]NotchRoom, error) {
	e := n.On
	at, _, err := n.Position()
	if err != nil {
		return nil, err
	}
	if at < -model.NearEnd || at > e.Length()+model.NearEnd {
		return nil, model.Missingf("%s lies beyond the end of %s", n.Address(), e.Address())
	}
	marks := n.OnPleat(atStep)
	var out []NotchRoom
	for _, atEnd := range []bool{false, true} {
		if corner(e, atEnd) && marks == nil {
			apart := at
			if atEnd {
				apart = e.Length() - at
			}
			out = append(out, NotchRoom{Corner: e.Neighbour(atEnd), Apart: math.Max(apart, 0)})
		}
	}
	for _, m := range e.Mouths() {
		toEnd := math.Min(math.Abs(at-m.From), math.Abs(at-m.To))
		switch {
		case toEnd <= atStep || m.Dart == marks:
		case at > m.From && at < m.To:
			out = append(out, NotchRoom{Dart: m.Dart})
		default:
			out = append(out, NotchRoom{Dart: m.Dart, Apart: toEnd})
		}
	}
	for _, other := range e.Piece.Notches {
		if other == n {
			break
		}
		if other.On != e || marks != nil && other.OnPleat(atStep) == marks {
			continue
		}
		if there, _, err := other.Position(); err == nil {
			out = append(out, NotchRoom{Notch: other, Apart: math.Abs(at - there)})
		}
	}
	return out, nil
}

// corner reports whether the piece has a corner at the edge's end (or start).
func corner(e *model.Edge, atEnd bool) bool {
	n := e.Neighbour(atEnd)
	if n == e || e.Piece.Fold == n {
		return false
	}
	run := Run{Edge: e, To: e.Length()}
	angle := run.CornerAngle(atEnd)
	return !(math.Abs(angle-180) < runsOn) // on paper, a corner
}

// AlikeNotched reports whether two walks are hard to tell apart by their notches:
// both have some, as many of the same kinds in the same order, and from one end or
// the other none lies further than near from where the other walk has it. Their
// lengths may differ by as much.
func AlikeNotched(a, b *Walk, near float64) bool {
	if len(a.Notches) == 0 || len(a.Notches) != len(b.Notches) || math.Abs(a.Length-b.Length) >= near {
		return false
	}
	return a.notchedAs(b, near) || a.notchedAs(b.Reversed(), near)
}

func (w *Walk) notchedAs(b *Walk, near float64) bool {
	for i, n := range w.Notches {
		if n.Kind() != b.Notches[i].Kind() || math.Abs(n.At-b.Notches[i].At) >= near {
			return false
		}
	}
	return true
}
