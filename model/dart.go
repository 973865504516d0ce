package model

import (
	"math"

	"understitch/model/curve"
)

// Legs are the two lines of a dart that are sewn together, from the ends of
// its mouth (or its widest place) to a point.
type Legs struct{ Tip, A, B curve.Point }

// Legs of a dart: one pair for a dart on an edge, two for a dart inside the
// piece. A paper dart without a tip has none.
func (d *Dart) Legs() []Legs {
	if d.On == nil {
		half := curve.Point{X: d.Intake / 2}
		a, b := d.Centre.Sub(half), d.Centre.Add(half)
		return []Legs{
			{d.Centre.Add(curve.Point{Y: -d.Up}), a, b},
			{d.Centre.Add(curve.Point{Y: d.Down}), a, b},
		}
	}
	if !d.HasTip || !d.On.Drawn() {
		return nil
	}
	for _, m := range d.On.Mouths() {
		if m.Dart == d {
			return []Legs{{d.Tip, d.On.Path.At(m.From), d.On.Path.At(m.To)}}
		}
	}
	return nil
}

// Lengths of the two legs.
func (l Legs) Lengths() (a, b float64) { return l.Tip.Dist(l.A), l.Tip.Dist(l.B) }

// Close is the motion that lays leg B on leg A: a turn about the tip, and where
// the legs are unequal the step that brings the mouth's ends together.
func (l Legs) Close() curve.Motion {
	a, b := l.A.Sub(l.Tip), l.B.Sub(l.Tip)
	turn := curve.Rotate(l.Tip, math.Atan2(b.Cross(a), b.Dot(a)))
	return turn.Then(curve.Translate(l.A.Sub(turn.Apply(l.B))))
}

// Crossing tells where the horizontal at y meets one leg, as the distance from
// the tip, and whether it does.
func (l Legs) Crossing(end curve.Point, y float64) (fromTip float64, ok bool) {
	dy := end.Y - l.Tip.Y
	if dy == 0 {
		return 0, false
	}
	t := (y - l.Tip.Y) / dy
	return t * l.Tip.Dist(end), t >= 0 && t <= 1
}

// On is the point of a leg at a distance from the tip.
func (l Legs) On(end curve.Point, fromTip float64) curve.Point {
	if l.Tip == end {
		return end // a leg of no length
	}
	return l.Tip.Lerp(end, fromTip/l.Tip.Dist(end))
}

// besideMouth is how far beside the mouth, in millimetres, the edge's direction
// is taken: an edge that bends at the mouth is drawn to the tenth of a
// millimetre, and its bend may lie that much to either side.
const besideMouth = 0.5

// CapAngle is the turn, in degrees and never negative, that the edge makes over
// the dart once its legs are laid together: nothing where it runs on smoothly.
// It stands for darts whose mouth opens on a drawn edge, clear of its ends.
func (d *Dart) CapAngle() (float64, error) {
	if d.Pleat != nil {
		return d.foldedTurn()
	}
	legs := d.Legs()
	if d.On == nil || len(legs) != 1 {
		return 0, Missingf("%s does not open on a drawn edge", d.Address())
	}
	for _, m := range d.On.Mouths() {
		if m.Dart != d {
			continue
		}
		if m.From < besideMouth || m.To > d.On.Length()-besideMouth {
			return 0, Missingf("%s opens at the end of %s", d.Address(), d.On.Address())
		}
		before := d.On.Path.DirectionBefore(m.From - besideMouth)
		after := legs[0].Close().Direction(d.On.Path.Direction(m.To + besideMouth))
		return math.Abs(math.Atan2(before.Cross(after), before.Dot(after))) * 180 / math.Pi, nil
	}
	return 0, Missingf("%s has no mouth on %s", d.Address(), d.On.Address())
}
