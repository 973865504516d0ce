package model

import "math"

// besideMouth is how far beside the mouth, in millimetres, the edge's direction
// is taken: an edge that bends at the mouth is drawn to the tenth of a
// millimetre, and its bend may lie that much to either side.
const besideMouth = 0.5

// CapAngle is the turn, in degrees and never negative, that the edge makes over
// the dart once its legs are laid together: nothing where it runs on smoothly.
// It stands for darts whose mouth opens on a drawn edge, clear of its ends.
func (d *Dart) CapAngle() (float64, error) {
	legs := d.Legs()
	if d.On == nil || len(legs) != 1 {
		return 0, missing("%s does not open on a drawn edge", d.Address())
	}
	for _, m := range d.On.Mouths() {
		if m.Dart != d {
			continue
		}
		if m.From < besideMouth || m.To > d.On.Length()-besideMouth {
			return 0, missing("%s opens at the end of %s", d.Address(), d.On.Address())
		}
		before := d.On.Path.DirectionBefore(m.From - besideMouth)
		after := legs[0].Close().Direction(d.On.Path.Direction(m.To + besideMouth))
		return math.Abs(math.Atan2(before.Cross(after), before.Dot(after))) * 180 / math.Pi, nil
	}
	return 0, missing("%s has no mouth on %s", d.Address(), d.On.Address())
}
