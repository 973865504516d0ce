package faults

import "understitch/cmd/corpus/internal/sheet"

// answer is a dart that answers one on the other layer.
type answer struct {
	inside       *sheet.Inside
	outer, inner *sheet.Dart
}

// answers are the darts of pieces that lie in each other, those that suit.
func (p *Planter) answers(suits func(*sheet.Dart) bool) []answer {
	var out []answer
	for _, n := range p.Insides {
		outer, inner := p.Piece(n.Outer).Darts, p.Piece(n.Inner).Darts
		if len(outer) == 1 && len(inner) == 1 && suits(outer[0]) && suits(inner[0]) {
			out = append(out, answer{n, outer[0], inner[0]})
		}
	}
	return out
}

func twoPoints(d *sheet.Dart) bool { return d.Centre != nil }

// either is one of the two darts.
func (p *Planter) either(a answer) *sheet.Dart {
	if p.IntN(2) == 0 {
		return a.outer
	}
	return a.inner
}

// innerLetOut lets a dart of the inner layer take out less than the clearance
// bears.
func innerLetOut(p *Planter) (string, bool) {
	a, ok := one(p, p.answers(twoPoints))
	if !ok {
		return "", false
	}
	a.inner.Intake = a.inner.Intake.Plus(-p.by(6, 9))
	return "inside." + a.inside.Name, true
}

// moveDart moves a dart, of two points or on paper, by 8 mm or more: the lining
// may be 4 mm narrower, and that much is allowed for.
func moveDart(p *Planter) (string, bool) {
	a, ok := one(p, p.answers(func(d *sheet.Dart) bool { return twoPoints(d) || d.Tip == nil }))
	if !ok {
		return "", false
	}
	d, by := p.either(a), p.sign()*p.by(8, 15)
	if d.Centre == nil {
		d.At = d.At.Plus(by)
	} else {
		moved := d.Centre.By(by, 0)
		d.Centre = &moved
	}
	return "inside." + a.inside.Name, true
}

// shortenDart lets a dart end sooner. Above the waist only the outer one: the
// inner piece would be too wide there.
func shortenDart(p *Planter) (string, bool) {
	a, ok := one(p, p.answers(twoPoints))
	if !ok {
		return "", false
	}
	if p.IntN(2) == 0 {
		a.outer.Up -= p.by(12, 18)
	} else {
		a.outer.Down -= p.by(12, 18)
	}
	return "inside." + a.inside.Name, true
}
