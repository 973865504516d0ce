package faults

import (
	"understitch/cmd/corpus/internal/sheet"
	"understitch/cmd/corpus/internal/wardrobe"
)

var allowances = []Fault{
	{"an allowance off by 2 mm on one side of a seam", "allowance-match", seamAllowance},
	{"an allowance off on one layer of a shared edge", "allowance-match", sharedAllowance},
	{"a casing's allowance off by 2 mm", "allowance-standard", casingAllowance},
	{"a hem 20 mm wider than the hem beside it", "allowance-match", hemStep},
	{"a closure that needs more allowance", "allowance-closure", closureAllowance},
	{"an allowance on a fold", "allowance-fold", foldAllowance},
	{"a cut line drawn too far out", "allowance-drawn", cutLineOff},
	{"a bend too tight for its allowance", "allowance-room", tightBend},
}

func seamAllowance(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return p.plainSeam(s.address) != nil && s.piece.Drawn != "cut" })
	if !ok {
		return "", false
	}
	by := 12 + p.just(2)*p.sign()
	s.edge.Allowance = &by
	return seamAddress(p.plainSeam(s.address)), true
}

func sharedAllowance(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool {
		return p.sharedInner(s) && s.piece.Fold != s.edge.Name && !p.closed(s.address) && s.edge.Role == ""
	})
	if !ok {
		return "", false
	}
	by := 10 + p.just(2)*p.sign()
	s.edge.Allowance = &by
	share, _ := p.sharing(s.address)
	return shareAddress(share), true
}

func casingAllowance(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.edge.Role == "casing" && s.edge.Finish == "" })
	if !ok {
		return "", false
	}
	by := 10 + p.just(2)*p.sign()
	s.edge.Allowance = &by
	return s.address, true
}

// hemStep turns up one of two hems further that run on over a side seam.
func hemStep(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool {
		return s.edge.Finish == "hem" && s.stitch() && p.plainSeam(s.pieceAddress()+"."+s.sideOf().Name) != nil
	})
	if !ok {
		return "", false
	}
	by := 30 + p.just(20)
	s.edge.Allowance = &by
	return seamAddress(p.plainSeam(s.pieceAddress() + "." + s.sideOf().Name)), true
}

func closureAllowance(p *Planter) (string, bool) {
	c, ok := one(p, p.Closures)
	if !ok {
		return "", false
	}
	c.Allowance = 20 + p.by(1.5, 10)
	return "closure." + c.Name, true
}

func foldAllowance(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.piece.Fold == s.edge.Name && s.piece.Drawn != "cut" })
	if !ok {
		return "", false
	}
	by := p.by(5, 15)
	s.edge.Allowance = &by
	return s.pieceAddress(), true
}

// cutLineOff moves the end of a cut line that is drawn beside its stitch line.
func cutLineOff(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.edge.CutLine != nil })
	if !ok {
		return "", false
	}
	last := len(s.edge.CutLine) - 1
	s.edge.CutLine[last] = s.edge.CutLine[last].By(0, -p.by(1.5, 3))
	return s.address, true
}

// tightBend draws a leg line into the corner, its elastic as much longer.
func tightBend(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.edge.Name == "leg" })
	if !ok || len(p.Elastics) == 0 {
		return "", false
	}
	legs := func() float64 {
		return wardrobe.Length(p.Layers[1].Pieces[0].Edge("leg")) + wardrobe.Length(p.Layers[1].Pieces[1].Edge("leg"))
	}
	before := legs()
	a, d := s.edge.Pts[0], s.edge.Pts[3]
	x, _ := base(a)
	x1, _ := base(d)
	const tight = 7 // from the corner to where the lines leave it
	corner := sheet.Pt{X: d.X.Plus(4), Y: a.Y.Plus((x - x1 - 4) * 9 / 60)}
	in, out := corner.By(tight, -tight*9.0/60), corner.By(0, tight)
	third := func(a, b sheet.Pt, k float64) sheet.Pt {
		return sheet.Pt{X: a.X.Times(1 - k).Add(b.X.Times(k)), Y: a.Y.Times(1 - k).Add(b.Y.Times(k))}
	}
	s.edge.Pts = []sheet.Pt{a, third(a, in, 1.0/3), third(a, in, 2.0/3), in, third(in, corner, 0.55), third(out, corner, 0.55), out,
		third(out, d, 1.0/3), third(out, d, 2.0/3), d}
	e := p.Elastics[0]
	e.Length = e.Length.Times(0.99 * legs() / before)
	return s.pieceAddress(), true
}
