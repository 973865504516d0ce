package model

import "math"

// Show writes a length for a message, in the unit that the spec is written in.
func (g *Garment) Show(mm float64) string { return g.Unit.ShowSmall(mm) }

// ShowSmall writes a length in this unit; what is under a centimetre reads better
// in millimetres.
func (u Unit) ShowSmall(mm float64) string {
	if u != Inch && math.Abs(mm) < 10 {
		return Millimetre.Show(mm)
	}
	return u.Show(mm)
}
