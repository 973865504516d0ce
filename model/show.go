package model

import "math"

// Show writes a length for a message, in the unit that the spec is written in;
// what is under a centimetre reads better in millimetres.
func (g *Garment) Show(mm float64) string {
	if g.Unit != Inch && math.Abs(mm) < 10 {
		return Millimetre.Show(mm)
	}
	return g.Unit.Show(mm)
}
