package sheet

import "math"

// Fig is a figure that grows with the sizes and has a name in the draft.
type Fig struct {
	Name       string
	Base, Step float64 // mm at the base size, and more for each size up
	Measure    string  // the body measure it is drafted from; "" for none
	Share      float64 // the share of that measure: 4 for a quarter
	More       float64 // mm added to that share
}

// Num is a length in mm: a constant and so many times each of some figures.
type Num struct {
	C     float64
	Terms []Term
}

// Term is a figure, taken so many times.
type Term struct {
	Times float64
	Fig   *Fig
}

// N is a length that is the same in all sizes.
func N(mm float64) Num { return Num{C: mm} }

// Of is a figure as a length.
func Of(f *Fig) Num { return Num{Terms: []Term{{1, f}}} }

// Plus adds millimetres.
func (n Num) Plus(mm float64) Num {
	n.C += mm
	return n
}

// Add adds two lengths.
func (n Num) Add(m Num) Num {
	out := Num{C: n.C + m.C, Terms: append([]Term(nil), n.Terms...)}
next:
	for _, t := range m.Terms {
		for i := range out.Terms {
			if out.Terms[i].Fig == t.Fig {
				out.Terms[i].Times += t.Times
				continue next
			}
		}
		out.Terms = append(out.Terms, t)
	}
	kept := out.Terms[:0]
	for _, t := range out.Terms {
		if math.Abs(t.Times) > 1e-12 {
			kept = append(kept, t)
		}
	}
	out.Terms = kept
	return out
}

// Times multiplies.
func (n Num) Times(k float64) Num {
	out := Num{C: n.C * k}
	for _, t := range n.Terms {
		out.Terms = append(out.Terms, Term{t.Times * k, t.Fig})
	}
	return out
}

// Less subtracts.
func (n Num) Less(m Num) Num { return n.Add(m.Times(-1)) }

// Fixed reports whether the length is the same in all sizes.
func (n Num) Fixed() bool { return n.Step() == 0 && len(n.Terms) == 0 }

// Base is the length at the base size, in mm.
func (n Num) Base() float64 {
	sum := n.C
	for _, t := range n.Terms {
		sum += t.Times * t.Fig.Base
	}
	return sum
}

// Step is how much longer it gets with each size up, in mm.
func (n Num) Step() float64 {
	sum := 0.0
	for _, t := range n.Terms {
		sum += t.Times * t.Fig.Step
	}
	return sum
}

// Pt is a point of a draft.
type Pt struct{ X, Y Num }

// P is a point that is the same in all sizes.
func P(x, y float64) Pt { return Pt{N(x), N(y)} }

// By is the point so many millimetres further on.
func (p Pt) By(dx, dy float64) Pt { return Pt{p.X.Plus(dx), p.Y.Plus(dy)} }
