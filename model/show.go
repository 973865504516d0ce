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

// ShowRange writes a range of lengths for a message: "0 to 2 cm", "at least
// 1.5 cm", "4 mm", "any".
func (g *Garment) ShowRange(r Range) string {
	end := func(mm float64) string {
		if mm == 0 {
			return "0"
		}
		return g.Show(mm)
	}
	switch below, above := math.IsInf(r.Low, -1), math.IsInf(r.High, 1); {
	case r.Any():
		return "any"
	case below:
		return "at most " + end(r.High)
	case above:
		return "at least " + end(r.Low)
	case r.Low == r.High:
		return end(r.Low)
	}
	return end(r.Low) + " to " + end(r.High)
}

// Any reports whether the range is open at both ends, and asks for nothing.
func (r Range) Any() bool { return math.IsInf(r.Low, -1) && math.IsInf(r.High, 1) }
