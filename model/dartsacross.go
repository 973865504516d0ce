package model

// DartAcross is a dart that takes something out of its piece's width at a level,
// in millimetres.
type DartAcross struct {
	Dart  *Dart
	Takes float64
}

// DartsAcross are the darts that take something out of the width at a level; all
// together they make the difference between gross and net.
func (p *Piece) DartsAcross(l *Level) []DartAcross {
	y, ok := p.LevelY(l)
	if !ok {
		return nil
	}
	var out []DartAcross
	for _, d := range p.Darts {
		if by := d.takes(y); by != 0 {
			out = append(out, DartAcross{d, by})
		}
	}
	return out
}
