package model

import (
	"math"

	"understitch/model/curve"
)

// Position is where the notch lies along its edge as drawn, and how far off
// the edge it was given (nothing unless given by a point). A place beyond the
// edge's ends is not moved on to it.
func (n *Notch) Position() (along, off float64, err error) {
	switch {
	case n.ByPoint && !n.On.Drawn():
		return 0, 0, Missingf("%s is given by a point, but %s has no drawing", n.Address(), n.On.Address())
	case n.ByPoint:
		along, off = n.On.Path.Nearest(n.Point)
		if n.On.Cut != nil { // such a notch is marked on the line that was drawn
			if s, onCut := n.On.Cut.Nearest(n.Point); onCut < off {
				off = onCut
				along, _ = n.On.Path.Nearest(n.On.Cut.At(s))
			}
		}
		return along, off, nil
	case n.Level != nil:
		along, err = n.On.LevelAt(n.Level)
		return along, 0, err
	}
	return n.At, 0, nil
}

// Mark is the point of the stitch line that the notch marks.
func (n *Notch) Mark() (curve.Point, error) {
	s, _, err := n.Position()
	if err == nil && !n.On.Drawn() {
		err = Missingf("%s has no drawing", n.On.Address())
	}
	if err != nil {
		return curve.Point{}, err
	}
	return n.On.Path.At(s), nil
}

// Beyond tells how far a notch that is given by its distance lies beyond the
// ends of its edge: negative before the start, positive past the end, nothing
// on it.
func (n *Notch) Beyond() float64 {
	out := Range{0, n.On.Length()}.Beyond(n.At)
	if math.Abs(out) <= NearEnd {
		return 0
	}
	return out
}
