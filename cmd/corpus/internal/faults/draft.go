package faults

import "understitch/cmd/corpus/internal/sheet"

var draft = []Fault{
	{"an outline with a gap", "outline-closed", openOutline},
	{"an outline that crosses itself", "outline-crossing", loop},
	{"a pair that is not mirrored", "mirror-pair", notMirrored},
	{"an alteration that the other side lacks", "alteration-partner", halfAltered},
	{"a waiver of a fault that is not there", "waiver-current", waiveNothing},
}

// openOutline lets the hem end short of the centre.
func openOutline(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.hem() && s.stitch() && s.edge.Form == sheet.Curve })
	if !ok {
		return "", false
	}
	n := len(s.edge.Pts)
	by := p.by(0.5, 2)
	move(s.edge, n-1, by, 0)
	move(s.edge, n-2, by, 0)
	return s.pieceAddress(), true
}

// loop puts a small loop into the middle of a hem.
func loop(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.hem() && s.stitch() && s.edge.Form == sheet.Curve && len(s.edge.Pts) == 4 })
	if !ok {
		return "", false
	}
	a, b, c, d := s.edge.Pts[0], s.edge.Pts[1], s.edge.Pts[2], s.edge.Pts[3]
	size := p.by(15, 30)
	middle := sheet.Pt{X: b.X.Times(0.5).Add(c.X.Times(0.5)), Y: b.Y.Times(0.5).Add(c.Y.Times(0.5))}
	s.edge.Pts = []sheet.Pt{a, b, middle.By(10, 0), middle, middle.By(-size, -size), middle.By(size, -size), middle.By(-2, 0), middle.By(-10, 0), c, d}
	return s.pieceAddress(), true
}

func waiveNothing(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return p.plainSeam(s.address) != nil })
	if !ok {
		return "", false
	}
	at := seamAddress(p.plainSeam(s.address))
	p.Waivers = append(p.Waivers, sheet.Waiver{Rule: "seam-walk", At: at, Reason: "eased in by hand"})
	return at, true
}

func notMirrored(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.piece.Cut == 2 })
	if !ok {
		return "", false
	}
	s.piece.Mirrored = "false"
	return s.pieceAddress(), true
}

// halfAltered alters one side of a lining's seam only, by little.
func halfAltered(p *Planter) (string, bool) {
	a, ok := one(p, p.Alters)
	if !ok {
		return "", false
	}
	for i := range a.Inward {
		a.Inward[i].MM = min(a.Inward[i].MM, 1)
	}
	a.Edges = a.Edges[:len(a.Edges)-1]
	return "alter." + a.Name, true
}
