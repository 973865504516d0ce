package faults

import (
	"math/rand/v2"
	"strings"

	"understitch/cmd/corpus/internal/sheet"
)

// Fault is a kind of fault.
type Fault struct {
	Name string // what went wrong, in a few words
	Rule string // the rule that must find it
	// Plant puts it into a garment and returns the address of the thing at
	// fault. It reports false where the garment has no place for it, and must
	// then be thrown away.
	Plant func(p *Planter) (subject string, ok bool)
}

// All are all kinds of fault that garments of up to so many sizes can have, in
// a fixed order.
func All(sizes int) []Fault {
	var out []Fault
	for _, family := range [][]Fault{layers, cloths, seams, darts, notches, allowances, closures, fit, draft, sleeves} {
		for _, f := range family {
			if f.Rule != "size-step" || sizes >= 4 {
				out = append(out, f)
			}
		}
	}
	return out
}

// Planter is a garment in which a fault is to be planted, and chance.
type Planter struct {
	*rand.Rand
	*sheet.Garment
	Drafted bool // set by a fault that needs the figures to be drafted from measures

	Apart bool // set by a fault in pieces that are to have levels of their own

	// Amount is how far off the fault is to be, in the unit of its Growth; 0 to let
	// chance choose.
	Amount float64
	// Touched are the addresses of the edges and notches that were considered for the
	// fault and taken.
	Touched []string
}

// spot is an edge of the garment.
type spot struct {
	address string
	layer   *sheet.Layer
	piece   *sheet.Piece
	edge    *sheet.Edge
}

// spots are the edges that suit.
func (p *Planter) spots(suits func(spot) bool) []spot {
	var out []spot
	for _, l := range p.Layers {
		for _, piece := range l.Pieces {
			for _, e := range piece.Edges {
				if s := (spot{l.Name + "." + piece.Name + "." + e.Name, l, piece, e}); suits(s) {
					out = append(out, s)
				}
			}
		}
	}
	return out
}

// spot is one of the edges that suit.
func (p *Planter) spot(suits func(spot) bool) (spot, bool) {
	s, ok := one(p, p.spots(suits))
	if ok {
		p.touch(s)
	}
	return s, ok
}

// touch notes what the fault is planted in.
func (p *Planter) touch(s spot) { p.Touched = append(p.Touched, s.address, s.pieceAddress()) }

// one picks one of a list.
func one[T any](p *Planter, list []T) (T, bool) {
	if len(list) == 0 {
		var none T
		return none, false
	}
	return list[p.IntN(len(list))], true
}

// by is how far off the fault is: from low to high, to a tenth of a millimetre, or
// the amount that was chosen for it.
func (p *Planter) by(low, high float64) float64 {
	chance := low + float64(p.IntN(int((high-low)*10)+1))/10
	if p.Amount != 0 {
		return p.Amount
	}
	return chance
}

// just is how far off a fault is that chance does not settle.
func (p *Planter) just(amount float64) float64 {
	if p.Amount != 0 {
		return p.Amount
	}
	return amount
}

// alone reports whether nothing but the fault is wrong; one that is to grow may
// spoil what it likes.
func (p *Planter) alone(nothingElse bool) bool { return nothingElse || p.Amount != 0 }

// sign is 1 or -1.
func (p *Planter) sign() float64 { return float64(2*p.IntN(2) - 1) }

func (s spot) drawn() bool { return s.edge.Form != sheet.Tape }

// stitch reports whether the piece is drawn on its stitch line.
func (s spot) stitch() bool { return s.drawn() && s.piece.Drawn != "cut" }

func (s spot) hem() bool { return s.edge.Finish != "" && s.edge.Name == "hem" }

// next is the edge drawn after this one, before the one drawn before it.
func (s spot) next() *sheet.Edge   { return s.neighbour(1) }
func (s spot) before() *sheet.Edge { return s.neighbour(-1) }

// sideOf is the side seam's edge beside a hem, whichever way the piece is drawn.
func (s spot) sideOf() *sheet.Edge {
	if s.next().Name == "side" {
		return s.next()
	}
	return s.before()
}

func (s spot) neighbour(by int) *sheet.Edge {
	n := len(s.piece.Edges)
	for i, e := range s.piece.Edges {
		if e == s.edge {
			return s.piece.Edges[(i+by+n)%n]
		}
	}
	return nil
}

// notches are the notches on the edge.
func (s spot) notches() []*sheet.Notch {
	var out []*sheet.Notch
	for _, n := range s.piece.Notches {
		if n.On == s.edge.Name {
			out = append(out, n)
		}
	}
	return out
}

// notch is the address of a notch of the piece.
func (s spot) notch(n *sheet.Notch) string {
	return s.layer.Name + "." + s.piece.Name + ".notch." + n.Name
}

func (s spot) pieceAddress() string { return s.layer.Name + "." + s.piece.Name }

// plainSeam is the seam that joins the whole edge to another whole edge, or nil.
func (p *Planter) plainSeam(address string) *sheet.Seam {
	for _, s := range p.Seams {
		if len(s.A) != 1 || len(s.B) != 1 || s.A[0].From != "" || s.A[0].Edge == s.B[0].Edge {
			continue
		}
		if s.A[0].Edge == address || s.B[0].Edge == address {
			return s
		}
	}
	return nil
}

// sewn are edges in plain seams without ease.
func (p *Planter) sewn(s spot) bool {
	seam := p.plainSeam(s.address)
	return seam != nil && seam.Ease == nil
}

// sharing is the share in which a layer shares the edge, whole, and whether it
// is the inner one of the layers; nil where there is none.
func (p *Planter) sharing(address string) (share *sheet.Share, inner bool) {
	for _, s := range p.Shares {
		for i, side := range [][]sheet.Stretch{s.Outer, s.Inner} {
			for _, st := range side {
				if st.Edge == address && st.From == "" {
					return s, i == 1
				}
			}
		}
	}
	return nil, false
}

// altered reports whether an alteration moves the edge.
func (p *Planter) altered(address string) *sheet.Alter {
	for _, a := range p.Alters {
		for _, e := range a.Edges {
			if e == address {
				return a
			}
		}
	}
	return nil
}

func (p *Planter) layerOf(address string) *sheet.Layer {
	name, _, _ := strings.Cut(address, ".")
	return p.Layer(name)
}

func (p *Planter) closed(address string) bool {
	for _, c := range p.Closures {
		if c.A.Edge == address || c.B.Edge == address {
			return true
		}
	}
	return false
}

// move moves one of an edge's points.
func move(e *sheet.Edge, i int, dx, dy float64) { e.Pts[i] = e.Pts[i].By(dx, dy) }

// moveKnot moves a knot of a curve with the handles on either side of it.
func moveKnot(e *sheet.Edge, i int, dx, dy float64) {
	for j := max(i-1, 0); j <= min(i+1, len(e.Pts)-1); j++ {
		move(e, j, dx, dy)
	}
}

// split parts the last stretch of a curve in the middle, without changing it
// (de Casteljau, 1959), and gives the place of the new knot.
func split(e *sheet.Edge) int {
	n := len(e.Pts)
	half := func(a, b sheet.Pt) sheet.Pt {
		return sheet.Pt{X: a.X.Times(0.5).Add(b.X.Times(0.5)), Y: a.Y.Times(0.5).Add(b.Y.Times(0.5))}
	}
	a, b, c, d := e.Pts[n-4], e.Pts[n-3], e.Pts[n-2], e.Pts[n-1]
	ab, bc, cd := half(a, b), half(b, c), half(c, d)
	abc, bcd := half(ab, bc), half(bc, cd)
	e.Pts = append(append([]sheet.Pt(nil), e.Pts[:n-3]...), ab, abc, half(abc, bcd), bcd, cd, d)
	return n - 1
}

// base is a point at the base size.
func base(p sheet.Pt) (x, y float64) { return p.X.Base(), p.Y.Base() }

func seamAddress(s *sheet.Seam) string   { return "seam." + s.Name }
func shareAddress(s *sheet.Share) string { return "share." + s.Name }

// insideOf is the inside in which a piece is the inner one.
func (p *Planter) insideOf(piece string) *sheet.Inside {
	for _, n := range p.Insides {
		if n.Inner == piece {
			return n
		}
	}
	return nil
}

func lastName(address string) string { return address[strings.LastIndexByte(address, '.')+1:] }
