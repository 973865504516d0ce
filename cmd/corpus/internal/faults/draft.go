package faults

import (
	"math"
	"slices"
	"strings"

	"understitch/cmd/corpus/internal/sheet"
)

var draft = []Fault{
	{"an outline with a gap", "outline-closed", openOutline},
	{"an outline with a gap of 4 mm", "outline-closed", wideGap},
	{"an edge that lies 4 mm off at both its ends", "outline-closed", offEdge},
	{"an outline that crosses itself", "outline-crossing", loop},
	{"a mirrored piece without its half", "mirror-pair", oneMirrored},
	{"two left fronts", "mirror-pair", twoLeft},
	{"two left sleeves", "mirror-pair", twoLeftSleeves},
	{"a size whose grade slips", "size-step", slip},
	{"a body measure in the wrong unit", "unit-slip", bodyUnit},
	{"a level in the wrong unit", "unit-slip", levelUnit},
	{"an allowance in the wrong unit", "unit-slip", allowanceUnit},
	{"a button's thickness in the wrong unit", "unit-slip", buttonUnit},
	{"a notch's depth in the wrong unit", "unit-slip", depthUnit},
	{"an alteration that the other side lacks", "alteration-partner", halfAltered},
	{"an alteration that misses one edge", "alteration-partner", missed},
	{"an alteration of one layer alone", "alteration-partner", oneLayer},
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

// wideGap moves one end of one edge by 4 mm, across or up and down, with its handle
// or without. What else is wrong by that is no fault of its own. An edge with a
// notch is left alone: written down the other way round, the notch would be counted
// along the edge that is wrong.
func wideGap(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.stitch() && len(s.edge.Pts) > 1 && len(s.notches()) == 0 })
	if !ok {
		return "", false
	}
	knot, handle := 0, 1
	if p.IntN(2) == 0 {
		knot, handle = len(s.edge.Pts)-1, len(s.edge.Pts)-2
	}
	dx, dy := p.just(4)*p.sign(), 0.0
	if p.IntN(2) == 0 {
		dx, dy = dy, dx
	}
	move(s.edge, knot, dx, dy)
	if s.edge.Form == sheet.Curve && p.IntN(2) == 0 {
		move(s.edge, handle, dx, dy)
	}
	return s.pieceAddress(), true
}

// offEdge moves an edge as a whole, square to the way from its start to its end.
func offEdge(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.stitch() && len(s.edge.Pts) > 1 })
	if !ok {
		return "", false
	}
	x0, y0 := base(s.edge.Pts[0])
	x1, y1 := base(s.edge.Pts[len(s.edge.Pts)-1])
	by := p.just(4) * p.sign() / math.Hypot(x1-x0, y1-y0)
	for i := range s.edge.Pts {
		move(s.edge, i, by*(y1-y0), -by*(x1-x0))
	}
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

// oneMirrored mirrors a piece on the fold.
func oneMirrored(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.piece.Fold != "" })
	if !ok {
		return "", false
	}
	s.piece.Mirrored = "true"
	return s.pieceAddress(), true
}

// twoLeft cuts both halves of a pair alike that are closed to each other.
func twoLeft(p *Planter) (string, bool) {
	for _, c := range p.Closures {
		if piece, _ := p.Edge(c.A.Edge); c.A.Edge == c.B.Edge && piece.Cut == 2 {
			piece.Mirrored = "false"
			return c.A.Edge[:strings.LastIndexByte(c.A.Edge, '.')], true
		}
	}
	return "", false
}

func twoLeftSleeves(p *Planter) (string, bool) {
	piece := p.Piece("shell.sleeve")
	if piece == nil {
		return "", false
	}
	piece.Mirrored = "false"
	return "shell.sleeve", true
}

// slip puts one measure of one size out of step; what is drafted from it follows.
func slip(p *Planter) (string, bool) {
	if len(p.Sizes) < 4 || len(p.Figs) == 0 {
		return "", false
	}
	p.HouseSizes, p.Drafted = false, true
	b := p.Bodies[1+p.IntN(len(p.Sizes)-2)]
	i := p.IntN(len(b))
	if p.Layer("foundation") != nil { // its seams walk because all girths grow alike
		i = len(b) - 1
	}
	b[i].MM += p.sign() * p.by(12, 18)
	return "garment", true
}

// bodyUnit writes a measure from which nothing is drafted in inches, as if they
// were the unit of the file.
func bodyUnit(p *Planter) (string, bool) {
	if p.Layer("foundation") != nil {
		return "", false
	}
	p.HouseSizes = false
	for _, b := range p.Bodies {
		for i := range b {
			if b[i].Name == "underbust_girth" {
				b[i].MM /= 2.54
			}
		}
	}
	return "garment", true
}

func levelUnit(p *Planter) (string, bool) {
	for _, l := range p.Levels {
		if l.Name == "knee" && l.Y != nil {
			y := sheet.N(l.Y.Base() * 10)
			l.Y = &y
			return "level.knee", true
		}
	}
	return "", false
}

func allowanceUnit(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.edge.Finish == "hem" && s.piece.Drawn != "cut" })
	if !ok {
		return "", false
	}
	by := 300.0
	s.edge.Allowance = &by
	return s.address, true
}

// buttonUnit writes a button's thickness in inches that was meant in millimetres.
func buttonUnit(p *Planter) (string, bool) {
	c, ok := p.closure("button")
	if !ok {
		return "", false
	}
	c.Thickness *= 25.4
	return "closure." + c.Name, true
}

func depthUnit(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return len(s.notches()) > 0 })
	if !ok {
		return "", false
	}
	n, _ := one(p, s.notches())
	n.Depth /= 10
	return s.notch(n), n.Depth > 0
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
	p.takenIn(a)
	a.Edges = a.Edges[:len(a.Edges)-1]
	return "alter." + a.Name, true
}

// takenIn lets an alteration take in as much as the fault is to be off.
func (p *Planter) takenIn(a *sheet.Alter) {
	for i := range a.Inward {
		a.Inward[i].MM = p.just(a.Inward[i].MM)
	}
}

// missed leaves one edge out of an alteration.
func missed(p *Planter) (string, bool) {
	a, ok := one(p, p.Alters)
	if !ok {
		return "", false
	}
	p.takenIn(a)
	i := p.IntN(len(a.Edges))
	a.Edges = slices.Delete(slices.Clone(a.Edges), i, i+1)
	return "alter." + a.Name, true
}

// oneLayer leaves the edges of one layer out of an alteration.
func oneLayer(p *Planter) (string, bool) {
	a, ok := one(p, p.Alters)
	if !ok {
		return "", false
	}
	p.takenIn(a)
	layer := p.Layers[p.IntN(2)].Name + "."
	var kept []string
	for _, e := range a.Edges {
		if strings.HasPrefix(e, layer) {
			kept = append(kept, e)
		}
	}
	a.Edges = kept
	return "alter." + a.Name, len(kept) > 0
}
