package faults

import (
	"math"

	"understitch/cmd/corpus/internal/sheet"
	"understitch/cmd/corpus/internal/wardrobe"
)

var sleeves = []Fault{
	{"the front notch of a sleeve moved 30 mm", "notch-match", sleeveNotch},
	{"a cap too short", "seam-walk", capShort},
}

// cap is the cap of one of the sleeves.
func (p *Planter) cap() (spot, bool) {
	return p.spot(func(s spot) bool { return s.edge.Name == "cap" })
}

// sleeveNotch moves the front notch of an armhole.
func sleeveNotch(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool {
		return s.edge.Name == "armhole" && s.piece.Name == "forepart" && p.Piece(s.layer.Name+".sleeve") != nil
	})
	if !ok {
		return "", false
	}
	n := s.notches()[0]
	*n.At = n.At.Plus(p.sign() * p.just(30))
	return "seam." + s.layer.Name + "-sleeve", true
}

// capShort lowers the crown until the cap is shorter than it is to be: its notches
// come as much nearer.
func capShort(p *Planter) (string, bool) {
	s, ok := p.cap()
	if !ok {
		return "", false
	}
	before, by := wardrobe.Length(s.edge), p.by(4, 7)
	was := append([]sheet.Pt(nil), s.edge.Pts...)
	lower, upper := 0.0, 130.0
	for range 50 {
		down := (lower + upper) / 2
		copy(s.edge.Pts, was)
		for _, i := range []int{2, 3, 4} {
			move(s.edge, i, 0, down)
		}
		if before-wardrobe.Length(s.edge) < by {
			lower = down
		} else {
			upper = down
		}
	}
	if math.Abs(before-wardrobe.Length(s.edge)-by) > 0.01 {
		return "", false
	}
	scale := wardrobe.Length(s.edge) / before
	for _, n := range s.notches() {
		if n.Name == "crown" {
			*n.At = n.At.Times(scale)
		} else if n.At.Base() > before/2 {
			*n.At = n.At.Plus(-by)
		}
	}
	return "seam." + s.layer.Name + "-sleeve", true
}
