package faults

import (
	"math"

	"understitch/cmd/corpus/internal/sheet"
)

var seams = []Fault{
	{"a seam side longer", "seam-walk", lengthen(3.6, 6)},
	{"a seam side a little longer", "seam-walk", lengthen(2, 2.9)},
	{"ease on the wrong side", "ease-side", easeWrong},
	{"a grain line turned", "grain-match", turnGrain},
	{"a hem that does not run on over the side seam", "seam-true", hemPeaks},
	{"a bowed fold", "fold-straight", bowFold},
	{"a hem not square to the fold", "fold-straight", hemAtFold},
	{"an edge of which nothing is said", "edge-unused", forgetFinish},
	{"a seam that runs on into the closure", "edge-unused", sewTwice},
}

var darts = []Fault{
	{"the tip of a dart moved", "dart-legs", moveTip},
	{"a swapped dart", "dart-legs", swapDart},
}

// lengthen makes one side of a seam longer on the outer layer, or shorter on
// the inner, at its lower end.
func lengthen(low, high float64) func(p *Planter) (string, bool) {
	return func(p *Planter) (string, bool) {
		s, ok := p.spot(func(s spot) bool {
			return p.sewn(s) && s.edge.Name == "side" && (!s.drawn() || s.stitch() && s.next().Form == sheet.Curve)
		})
		if !ok {
			return "", false
		}
		by := p.by(low, high)
		if s.layer.Side == "inner" {
			by = -by
		}
		if !s.drawn() {
			s.edge.Length = s.edge.Length.Plus(by)
		} else {
			n := len(s.edge.Pts)
			x0, y0 := base(s.edge.Pts[n-2])
			x1, y1 := base(s.edge.Pts[n-1])
			l := math.Hypot(x1-x0, y1-y0)
			dx, dy := by*(x1-x0)/l, by*(y1-y0)/l
			move(s.edge, n-1, dx, dy)
			move(s.edge, n-2, dx, dy)
			move(s.next(), 0, dx, dy)
			move(s.next(), 1, dx, dy)
		}
		return seamAddress(p.plainSeam(s.address)), true
	}
}

// hemPeaks turns the hem's first handle, at the side seam.
func hemPeaks(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool {
		return s.hem() && s.stitch() && s.edge.Form == sheet.Curve && p.plainSeam(s.pieceAddress()+"."+s.before().Name) != nil
	})
	if !ok {
		return "", false
	}
	turn(s.edge, 0, 1, p.sign()*p.by(5, 12))
	return seamAddress(p.plainSeam(s.pieceAddress() + "." + s.before().Name)), true
}

// turn turns a handle about its knot by so many degrees.
func turn(e *sheet.Edge, knot, handle int, degrees float64) {
	x0, y0 := base(e.Pts[knot])
	x1, y1 := base(e.Pts[handle])
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	dx, dy := x1-x0, y1-y0
	move(e, handle, dx*cos-dy*sin-dx, dx*sin+dy*cos-dy)
}

func (p *Planter) onFold(s spot) bool { return s.piece.Fold == s.edge.Name && s.drawn() }

// bowFold lets a fold bow out on the outer layer, and in on the inner.
func bowFold(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return p.onFold(s) && len(s.edge.Pts) == 2 })
	if !ok {
		return "", false
	}
	a, b := s.edge.Pts[0], s.edge.Pts[1]
	bow := p.by(1.2, 2)
	if s.layer.Side == "outer" {
		bow = -bow
	}
	middle := sheet.Pt{X: a.X.Times(0.5).Add(b.X.Times(0.5)), Y: a.Y.Times(0.4).Add(b.Y.Times(0.6))}.By(bow, 0)
	s.edge.Form, s.edge.Pts = sheet.Smooth, []sheet.Pt{a, middle, b}
	return s.pieceAddress(), true
}

func hemAtFold(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool {
		return s.hem() && s.stitch() && s.edge.Form == sheet.Curve && s.next().Name == s.piece.Fold
	})
	if !ok {
		return "", false
	}
	n := len(s.edge.Pts)
	turn(s.edge, n-1, n-2, p.sign()*p.by(2.5, 7))
	return s.pieceAddress(), true
}

func forgetFinish(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return s.edge.Finish != "" && s.stitch() || s.edge.Finish != "" && !s.drawn() })
	if !ok {
		return "", false
	}
	s.edge.Finish = ""
	return s.address, true
}

// sewTwice sews the whole of an edge of which the closure takes a part.
func sewTwice(p *Planter) (string, bool) {
	for _, s := range p.Seams {
		if len(s.A) == 1 && s.A[0].From != "" && p.closed(s.A[0].Edge) {
			s.A, s.B = sheet.Whole(s.A[0].Edge), sheet.Whole(s.A[0].Edge)
			return s.A[0].Edge, true
		}
	}
	return "", false
}

// edgeDart is a dart drawn on an edge.
func (p *Planter) edgeDart() (spot, *sheet.Dart, bool) {
	var dart *sheet.Dart
	s, ok := p.spot(func(s spot) bool {
		return s.drawn() && len(s.piece.Darts) > 0 && s.piece.Darts[0].On == s.edge.Name && s.piece.Darts[0].Tip != nil
	})
	if ok {
		dart = s.piece.Darts[0]
	}
	return s, dart, ok
}

// moveTip moves a tip sideways so far that the legs come to differ by 1.6 mm at least.
func moveTip(p *Planter) (string, bool) {
	s, d, ok := p.edgeDart()
	if !ok {
		return "", false
	}
	_, top := base(s.edge.Pts[0])
	_, tip := base(*d.Tip)
	moved := d.Tip.By(p.sign()*p.by(1.6, 2.2)*(tip-top)/d.Intake.Base(), 0)
	d.Tip = &moved
	return s.pieceAddress() + ".dart." + d.Name, true
}

// swapDart counts the dart's place from the other end of the edge.
func swapDart(p *Planter) (string, bool) {
	s, d, ok := p.edgeDart()
	if !ok {
		return "", false
	}
	n := len(s.edge.Pts)
	from, _ := base(s.edge.Pts[0])
	to, _ := base(s.edge.Pts[n-1])
	if math.Abs(to-from-2*d.At.Base()) < 12 {
		return "", false // it lies in the middle
	}
	d.At = sheet.N(to - from - d.At.Base())
	return s.pieceAddress() + ".dart." + d.Name, true
}

// easeWrong makes the side that is to be eased in a little the shorter.
func easeWrong(p *Planter) (string, bool) {
	for _, s := range p.Seams {
		if s.Ease == nil {
			continue
		}
		_, first := p.Edge(s.A[0].Edge)
		_, second := p.Edge(s.B[0].Edge)
		if first.Form != sheet.Tape {
			continue
		}
		ease := sheet.Between(0, 3)
		s.Ease = &ease
		first.Length = second.Length.Plus(-p.by(0.7, 1.4))
		return seamAddress(s), true
	}
	return "", false
}

// turnGrain turns the grain line of a piece that is sewn to another.
func turnGrain(p *Planter) (string, bool) {
	s, ok := p.spot(func(s spot) bool { return len(s.piece.Grain) == 2 && p.plainSeam(s.address) != nil })
	if !ok {
		return "", false
	}
	turnPts(s.piece.Grain, p.sign()*p.by(4, 9))
	for _, seam := range p.Seams { // it is told with the first seam of the piece
		for _, side := range []sheet.Stretch{seam.A[0], seam.B[0]} {
			if piece, _ := p.Edge(side.Edge); piece == s.piece && seam.A[0].Edge != seam.B[0].Edge {
				return seamAddress(seam), true
			}
		}
	}
	return "", false
}

func turnPts(pts []sheet.Pt, degrees float64) {
	e := &sheet.Edge{Pts: pts}
	turn(e, 0, 1, degrees)
}
