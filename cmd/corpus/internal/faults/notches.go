package faults

import (
	"slices"

	"understitch/cmd/corpus/internal/sheet"
)

var notches = []Fault{
	{"a notch moved 3 mm", "notch-match", moveNotch(3.2, 5)},
	{"a notch moved 2 mm", "notch-match", moveNotch(1.8, 2.6)},
	{"a missing notch", "notch-match", loseNotch},
	{"a notch of another kind", "notch-match", changeNotch},
	{"a notch off its line", "notch-on-line", notchOff},
	{"a notch left on the line before the alteration", "notch-on-line", notchLeft},
	{"a notch too near a corner", "notch-spacing", notchNear},
	{"two seams notched alike", "notch-unique", notchedAlike},
	{"a notch cut too deep", "notch-depth", notchDeep},
}

func drop(piece *sheet.Piece, n *sheet.Notch) {
	piece.Notches = slices.DeleteFunc(piece.Notches, func(o *sheet.Notch) bool { return o == n })
}

func otherKind(n *sheet.Notch) {
	if n.Kind == "" {
		n.Kind = "double"
	} else {
		n.Kind = ""
	}
}

// seamNotch is a notch on a plain seam of which the place is stated so.
func (p *Planter) seamNotch(suits func(spot, *sheet.Notch) bool) (spot, *sheet.Notch, bool) {
	type notched struct {
		spot
		n *sheet.Notch
	}
	var list []notched
	for _, s := range p.spots(func(s spot) bool { return p.plainSeam(s.address) != nil }) {
		for _, n := range s.notches() {
			if suits(s, n) {
				list = append(list, notched{s, n})
			}
		}
	}
	c, ok := one(p, list)
	if ok {
		p.touch(c.spot)
	}
	return c.spot, c.n, ok
}

func anyNotch(spot, *sheet.Notch) bool { return true }

func moveNotch(low, high float64) func(p *Planter) (string, bool) {
	return func(p *Planter) (string, bool) {
		s, n, ok := p.seamNotch(func(_ spot, n *sheet.Notch) bool { return n.At != nil })
		if !ok {
			return "", false
		}
		*n.At = n.At.Plus(p.sign() * p.by(low, high))
		return seamAddress(p.plainSeam(s.address)), true
	}
}

func loseNotch(p *Planter) (string, bool) {
	s, n, ok := p.seamNotch(anyNotch)
	if !ok {
		return "", false
	}
	drop(s.piece, n)
	return seamAddress(p.plainSeam(s.address)), true
}

func changeNotch(p *Planter) (string, bool) {
	s, n, ok := p.seamNotch(anyNotch)
	if !ok {
		return "", false
	}
	otherKind(n)
	return seamAddress(p.plainSeam(s.address)), true
}

// atKnot are notches at a level where their edge has a knot.
func atKnot(s spot, n *sheet.Notch) bool {
	_, ok := s.edge.At[n.Level]
	return ok
}

func notchOff(p *Planter) (string, bool) {
	s, n, ok := p.seamNotch(atKnot)
	if !ok {
		return "", false
	}
	point := s.edge.Pts[s.edge.At[n.Level]].By(p.by(1.5, 4), 0)
	n.Point, n.Level = &point, ""
	return s.notch(n), true
}

// notchLeft states the place of a notch by a point of the draft, which an
// alteration has since moved away from.
func notchLeft(p *Planter) (string, bool) {
	s, n, ok := p.seamNotch(func(s spot, n *sheet.Notch) bool {
		a := p.altered(s.address)
		return a != nil && atKnot(s, n) && slices.ContainsFunc(a.Inward, func(f sheet.Figure) bool { return f.Name == n.Level && f.MM >= 1 })
	})
	if !ok {
		return "", false
	}
	point := s.edge.Pts[s.edge.At[n.Level]]
	n.Point, n.Level = &point, ""
	return s.notch(n), true
}

func notchDeep(p *Planter) (string, bool) {
	s, n, ok := p.seamNotch(anyNotch)
	if !ok {
		return "", false
	}
	n.Depth = 4 + p.by(4, 10)
	return s.notch(n), true
}

// notchNear puts a notch close to the lower end of a seam at the centre.
func notchNear(p *Planter) (string, bool) {
	for _, seam := range p.Seams {
		a := seam.A[0]
		if a.Edge != seam.B[0].Edge {
			continue
		}
		piece, e := p.Edge(a.Edge)
		at := sheet.N(12.7 - p.by(3, 10))
		if e.Form == sheet.Tape {
			at = e.Length.Less(at)
		}
		n := &sheet.Notch{Name: "foot", On: e.Name, At: &at, Depth: 4}
		piece.Notches = append(piece.Notches, n)
		return a.Edge[:len(a.Edge)-len(e.Name)] + "notch.foot", true
	}
	return "", false
}

// notchedAlike gives a gown's side seam the notches of its princess seam.
func notchedAlike(p *Planter) (string, bool) {
	if p.Layer("foundation") == nil {
		return "", false
	}
	for _, address := range []string{"shell.side-front", "shell.back"} {
		piece := p.Piece(address)
		piece.Notches = slices.DeleteFunc(piece.Notches, func(n *sheet.Notch) bool { return n.On == "side" })
		for _, n := range []struct {
			name string
			at   float64
		}{{"upper", 70}, {"lower", 255}} {
			at := sheet.N(n.at)
			piece.Notches = append(piece.Notches, &sheet.Notch{Name: n.name, On: "side", At: &at, Depth: 4})
		}
	}
	return "seam.shell-side", true
}
