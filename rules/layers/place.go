package layers

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/rules"
)

// landmark is how near, in millimetres, a notch or a level must be to a place to
// be named with it (common practice, no source: two fingers' breadth).
const landmark = 40

// placeOn names a place along an edge, as drawn, by its distance from the start
// and by the notch or else the level near it.
func placeOn(p *rules.Pass, e *model.Edge, at float64) string {
	switch {
	case p.Show(at) == p.Show(0):
		return "at the start of " + e.Address()
	case p.Show(at) == p.Show(e.Length()):
		return "at the end of " + e.Address()
	}
	return fmt.Sprintf("%s along %s%s", p.Show(at), e.Address(), landmarkNear(p, e, at))
}

func landmarkNear(p *rules.Pass, e *model.Edge, at float64) string {
	best, text := landmark+1.0, ""
	for _, n := range e.Piece.Notches {
		if there, _, err := n.Position(); n.On == e && err == nil && math.Abs(there-at) < best {
			best, text = math.Abs(there-at), fmt.Sprintf(", %s from %s", p.Show(math.Abs(there-at)), n.Address())
		}
	}
	if text != "" || !e.Drawn() {
		return text
	}
	y := e.Path.At(at).Y
	for _, l := range p.Garment.Levels {
		height, ok := e.Piece.LevelY(l)
		if off := math.Abs(height - y); ok && off < best {
			best = off
			switch {
			case p.Show(off) == p.Show(0):
				text = fmt.Sprintf(", at the %s level", l.Name)
			case y < height:
				text = fmt.Sprintf(", %s above the %s level", p.Show(off), l.Name)
			default:
				text = fmt.Sprintf(", %s below the %s level", p.Show(off), l.Name)
			}
		}
	}
	return text
}
