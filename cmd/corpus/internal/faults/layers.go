package faults

import (
	"math"
	"strings"

	"understitch/cmd/corpus/internal/sheet"
	"understitch/cmd/corpus/internal/wardrobe"
)

var layers = []Fault{
	{"a shared edge bent on one layer", "shared-edge", bendShared},
	{"the end of a shared edge turned on one layer", "shared-edge", turnShared},
	{"a shared edge longer on one layer", "shared-edge", lengthenShared},
	{"a notch on a shared edge moved on one layer", "shared-edge", moveSharedNotch},
	{"a notch on a shared edge missing on one layer", "shared-edge", loseSharedNotch},
	{"a notch on a shared edge of another kind", "shared-edge", changeSharedNotch},
	{"an inner point out by 2 mm", "inner-within-outer", innerOut},
	{"an inner point out between the levels", "inner-within-outer", innerBulges},
	{"an inner point out below the last level", "inner-within-outer", innerBulgesBelow},
	{"an inner point out by 8 mm, in pieces with levels of their own", "inner-within-outer", innerOutApart},
	{"an inner piece too narrow", "inner-within-outer", innerIn},
	{"a dart let out on the inner layer alone", "inner-within-outer", innerLetOut},
	{"a dart moved sideways on one layer", "dart-answer", moveDart},
	{"a dart shortened on one layer", "dart-answer", shortenDart},
	{"a dart too deep on the outer layer", "layer-girth", shellTight},
	{"a dart let out on the outer layer alone", "suppression", shellLoose},
	{"a lining that hangs too low", "hem-drop", liningLow},
}

// unnoticed is by how much a side may become longer, in mm, without the seam
// being at fault as well.
const unnoticed = 1.2

func (p *Planter) sharedInner(s spot) bool {
	share, inner := p.sharing(s.address)
	return share != nil && inner && share.Match != "eased"
}

// bendShared moves the middle of a stretch of the inner edge sideways.
func bendShared(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool {
		share, _ := p.sharing(s.address)
		return p.sharedInner(s) && share.Match == "identical" && s.edge.Form == sheet.Curve
	})
	if !ok {
		return "", false
	}
	n := len(s.edge.Pts)
	x0, y0 := base(s.edge.Pts[n-4])
	x1, y1 := base(s.edge.Pts[n-1])
	chord := math.Hypot(x1-x0, y1-y0)
	off := p.sign() * p.by(2, 3.5)
	moveKnot(s.edge, split(s.edge), off*(y1-y0)/chord, -off*(x1-x0)/chord)
	share, _ := p.sharing(s.address)
	return shareAddress(share), true
}

// turnShared turns the end of the inner edge, so that its corner is another.
func turnShared(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool {
		share, _ := p.sharing(s.address)
		return p.sharedInner(s) && share.Match == "identical" && s.edge.Form == sheet.Curve
	})
	if !ok {
		return "", false
	}
	knot, handle := len(s.edge.Pts)-1, len(s.edge.Pts)-2
	if p.IntN(2) == 0 {
		knot, handle = 0, 1
	}
	turn(s.edge, knot, handle, p.sign()*p.by(6, 12))
	share, _ := p.sharing(s.address)
	return shareAddress(share), true
}

func lengthenShared(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return p.sharedInner(s) && s.edge.Form == sheet.Tape })
	if !ok {
		return "", false
	}
	s.edge.Length = s.edge.Length.Plus(p.sign() * p.by(2, 5))
	share, _ := p.sharing(s.address)
	return shareAddress(share), true
}

// sharedNotch is a notch of the inner layer along a shared edge.
func (p *Planter) sharedNotch() (spot, *sheet.Notch, bool) {
	s, ok := p.spot(func(s spot) bool { return p.sharedInner(s) && len(s.notches()) > 0 })
	if !ok {
		return s, nil, false
	}
	n, _ := one(p, s.notches())
	return s, n, n.At != nil
}

func moveSharedNotch(p *Planter) (string, bool) {
	s, n, ok := p.sharedNotch()
	if !ok {
		return "", false
	}
	*n.At = n.At.Plus(p.sign() * p.by(3, 5))
	share, _ := p.sharing(s.address)
	return shareAddress(share), true
}

func loseSharedNotch(p *Planter) (string, bool) {
	s, n, ok := p.sharedNotch()
	if !ok {
		return "", false
	}
	drop(s.piece, n)
	share, _ := p.sharing(s.address)
	return shareAddress(share), true
}

func changeSharedNotch(p *Planter) (string, bool) {
	s, n, ok := p.sharedNotch()
	if !ok {
		return "", false
	}
	otherKind(n)
	share, _ := p.sharing(s.address)
	return shareAddress(share), true
}

// clearing is a level at which an inside asks for a clearance, with what lies there.
type clearing struct {
	inside *sheet.Inside
	asked  sheet.LevelRange
	spot   spot
	outer  *sheet.Edge
	index  int
}

// clearings are the places where inner pieces have a knot at a level and lie in
// outer ones from one and the same centre.
func (p *Planter) clearings() []clearing {
	var out []clearing
	for _, s := range p.spots(func(s spot) bool { return len(s.edge.At) > 0 }) {
		inside := p.insideOf(s.pieceAddress())
		if inside == nil {
			continue
		}
		piece := p.Piece(inside.Outer)
		outer := piece.Edge(s.edge.Name)
		if outer == nil || piece.Fold != s.piece.Fold || s.edge.Name == "princess" {
			continue
		}
		for _, asked := range inside.Clearance {
			i, ok := s.edge.At[asked.Level]
			if j, also := outer.At[asked.Level]; ok && also && i == j {
				out = append(out, clearing{inside, asked, s, outer, i})
			}
		}
	}
	return out
}

// set moves the knot so that the clearance is so much.
func (c clearing) set(clearance float64) {
	outer, _ := base(c.outer.Pts[c.index])
	inner, _ := base(c.spot.edge.Pts[c.index])
	moveKnot(c.spot.edge, c.index, outer-inner-clearance, 0)
}

// paperClearings are the widths of inner paper pieces.
func (p *Planter) paperClearing() (*sheet.Inside, sheet.LevelRange, *sheet.Num, sheet.Num, bool) {
	inside, ok := one(p, p.Insides)
	if !ok || len(p.Piece(inside.Inner).Width) == 0 {
		return nil, sheet.LevelRange{}, nil, sheet.Num{}, false
	}
	asked, _ := one(p, inside.Clearance)
	var inner *sheet.Num
	var outer sheet.Num
	for i := range p.Piece(inside.Inner).Width {
		if w := &p.Piece(inside.Inner).Width[i]; w.Level == asked.Level {
			inner, outer = &w.At, p.Piece(inside.Outer).Width[i].At
		}
	}
	return inside, asked, inner, outer, inner != nil
}

func (p *Planter) clear(off func(r sheet.Range) float64) (string, bool) {
	if c, ok := one(p, p.clearings()); ok {
		before := wardrobe.Length(c.spot.edge)
		c.set(off(c.asked.Range))
		p.touch(c.spot)
		return "inside." + c.inside.Name, p.alone(math.Abs(wardrobe.Length(c.spot.edge)-before) < unnoticed)
	}
	inside, asked, inner, outer, ok := p.paperClearing()
	if !ok {
		return "", false
	}
	*inner = outer.Plus(-off(asked.Range))
	return "inside." + inside.Name, true
}

func innerOut(p *Planter) (string, bool) {
	return p.clear(func(r sheet.Range) float64 { return *r.Low - p.by(2, 3.5) })
}

// innerOutApart lets a back stand out that is drawn beside the fronts, further down,
// on both layers alike.
func innerOutApart(p *Planter) (string, bool) {
	var list []clearing
	for _, c := range p.clearings() {
		if strings.HasSuffix(c.inside.Outer, ".back") {
			list = append(list, c)
		}
	}
	c, ok := one(p, list)
	if !ok {
		return "", false
	}
	p.Apart = true
	p.touch(c.spot)
	before := wardrobe.Length(c.spot.edge)
	c.set(*c.asked.Range.Low - p.just(8))
	return "inside." + c.inside.Name, p.alone(math.Abs(wardrobe.Length(c.spot.edge)-before) < unnoticed)
}

func innerIn(p *Planter) (string, bool) {
	return p.clear(func(r sheet.Range) float64 { return *r.High + p.by(2, 4) })
}

// innerBulges lets the inner side swell half-way between two levels.
func innerBulges(p *Planter) (string, bool) {
	var list []clearing
	for _, c := range p.clearings() {
		if c.index >= 6 && c.spot.layer.Name != "foundation" {
			list = append(list, c)
		}
	}
	c, ok := one(p, list)
	if !ok {
		return "", false
	}
	before := wardrobe.Length(c.spot.edge)
	outer, _ := base(c.outer.Pts[c.index])
	inner, _ := base(c.spot.edge.Pts[c.index])
	out := (outer - inner + p.by(2, 3)) / 0.75 // the middle of the curve moves by three quarters
	move(c.spot.edge, c.index-1, out, 0)
	move(c.spot.edge, c.index-2, out, 0)
	p.touch(c.spot)
	return "inside." + c.inside.Name, p.alone(math.Abs(wardrobe.Length(c.spot.edge)-before) < unnoticed)
}

// innerBulgesBelow lets the inner side swell half-way between the lowest level and
// its end, past what the clearance at that level lets it be larger by.
func innerBulgesBelow(p *Planter) (string, bool) {
	var list []clearing
	for _, c := range p.clearings() {
		asked := c.inside.Clearance
		if c.asked.Level == asked[len(asked)-1].Level && c.index == len(c.spot.edge.Pts)-4 && c.spot.edge.Form == sheet.Curve {
			list = append(list, c)
		}
	}
	c, ok := one(p, list)
	if !ok {
		return "", false
	}
	before := wardrobe.Length(c.spot.edge)
	knot := split(c.spot.edge)
	x, y := base(c.spot.edge.Pts[knot])
	outer, ok := wardrobe.Across(c.outer, y)
	out := outer - x - math.Min(0, *c.asked.Range.Low) + p.by(2, 3)
	moveKnot(c.spot.edge, knot, out, 0)
	p.touch(c.spot)
	return "inside." + c.inside.Name, ok && p.alone(math.Abs(wardrobe.Length(c.spot.edge)-before) < unnoticed && wardrobe.Bend(c.spot.edge) > turned)
}

// turned is a radius round which any allowance can be turned, in mm.
const turned = 20

// liningLow lets a lining's hem sink at the centre.
func liningLow(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool {
		return s.edge.Name == "hem" && s.edge.Finish == "hem" && s.layer.Side == "inner" && s.piece.Drawn == "" && p.insideOf(s.pieceAddress()) != nil
	})
	if !ok {
		return "", false
	}
	inside := p.insideOf(s.pieceAddress())
	outer := p.Piece(inside.Outer).Edge("centre")
	inner := s.piece.Edge("centre")
	drop := 19 - p.by(4, 15)
	if s.edge.Form == sheet.Tape {
		inner.Length = outer.Length.Plus(-drop)
		return "inside." + inside.Name, true
	}
	for _, n := range s.piece.Notches {
		if n.On == "centre" {
			return "", false // it is counted from the hem, and would move
		}
	}
	_, shellHem := base(outer.Pts[0])
	_, hem := base(inner.Pts[0])
	n := len(s.edge.Pts)
	for _, i := range []int{n - 2, n - 1} {
		move(s.edge, i, 0, shellHem-hem-drop)
	}
	move(inner, 0, 0, shellHem-hem-drop)
	return "inside." + inside.Name, true
}
