package wardrobe

import (
	"math"

	"understitch/cmd/corpus/internal/sheet"
	"understitch/model/curve"
)

type pt = sheet.Pt

func line(name string, pts ...pt) *sheet.Edge {
	return &sheet.Edge{Name: name, Form: sheet.Line, Pts: pts}
}

func bent(name string, pts ...pt) *sheet.Edge {
	return &sheet.Edge{Name: name, Form: sheet.Curve, Pts: pts}
}

func paper(name string, mm float64) *sheet.Edge {
	return &sheet.Edge{Name: name, Form: sheet.Tape, Length: sheet.N(mm)}
}

func finished(e *sheet.Edge, finish string) *sheet.Edge {
	e.Finish = finish
	return e
}

func role(e *sheet.Edge, role string) *sheet.Edge {
	e.Role = role
	return e
}

// at is a point of which one ordinate grows with the sizes.
func at(x sheet.Num, y float64) pt { return pt{X: x, Y: sheet.N(y)} }

// along are the two handles of a straight stretch written as a curve.
func along(a, b pt) []pt {
	third := func(k float64) pt {
		return pt{X: a.X.Times(1 - k).Add(b.X.Times(k)), Y: a.Y.Times(1 - k).Add(b.Y.Times(k))}
	}
	return []pt{third(1.0 / 3), third(2.0 / 3), b}
}

// upright is a line through knots, which it passes vertically.
func upright(name string, knots ...pt) *sheet.Edge {
	pts := []pt{knots[0]}
	for i := 1; i < len(knots); i++ {
		dy := (knots[i].Y.Base() - knots[i-1].Y.Base()) / 3
		pts = append(pts, knots[i-1].By(0, dy), knots[i].By(0, -dy), knots[i])
	}
	return bent(name, pts...)
}

// level is a line between two points, which it leaves and meets horizontally.
func level(name string, a, b pt) *sheet.Edge {
	dx := (b.X.Base() - a.X.Base()) / 3
	return bent(name, a, a.By(dx, 0), b.By(-dx, 0), b)
}

// knots says at which levels which points of an edge lie.
func knots(e *sheet.Edge, at map[string]int) *sheet.Edge {
	e.At = at
	return e
}

// Length is how long an edge is at the base size, in mm.
func Length(e *sheet.Edge) float64 {
	if e.Form == sheet.Tape {
		return e.Length.Base()
	}
	return drawn(e).Length()
}

// Across is where a drawn edge crosses a height, at the base size.
func Across(e *sheet.Edge, y float64) (x float64, ok bool) {
	path := drawn(e)
	at := path.Crossings(y)
	if len(at) == 0 {
		return 0, false
	}
	return path.At(at[0]).X, true
}

// Bend is the smallest radius to which a drawn edge bends on either hand.
func Bend(e *sheet.Edge) float64 {
	_, right := drawn(e).TightestInside(1)
	_, left := drawn(e).TightestInside(-1)
	return math.Min(left, right)
}

func drawn(e *sheet.Edge) *curve.Path {
	p := func(i int) curve.Point { return curve.Point{X: e.Pts[i].X.Base(), Y: e.Pts[i].Y.Base()} }
	var segs []curve.Segment
	for i := 1; i < len(e.Pts); {
		if e.Form == sheet.Curve {
			segs = append(segs, curve.Cubic(p(i-1), p(i), p(i+1), p(i+2)))
			i += 3
			continue
		}
		segs = append(segs, curve.Line(p(i-1), p(i)))
		i++
	}
	return curve.New(segs...)
}

// upTo is the length of an edge's first stretches.
func upTo(e *sheet.Edge, point int) float64 {
	return Length(&sheet.Edge{Form: e.Form, Pts: e.Pts[:point+1]})
}

// evenly sinks the last knot of an upright line until the line is so long.
func evenly(e *sheet.Edge, length float64) *sheet.Edge {
	n := len(e.Pts)
	for range 30 {
		off := length - Length(e)
		if math.Abs(off) < 1e-9 {
			break
		}
		e.Pts[n-1] = e.Pts[n-1].By(0, off)
		e.Pts[n-2] = e.Pts[n-2].By(0, off)
	}
	return e
}

// backwards is the edge drawn from its other end.
func backwards(e *sheet.Edge) *sheet.Edge {
	out := *e
	out.Pts = nil
	out.At = nil
	for i := len(e.Pts) - 1; i >= 0; i-- {
		out.Pts = append(out.Pts, e.Pts[i])
	}
	for level, i := range e.At {
		if out.At == nil {
			out.At = map[string]int{}
		}
		out.At[level] = len(e.Pts) - 1 - i
	}
	return &out
}

// notch is a notch at a distance along an edge.
func notch(name, on string, mm float64) *sheet.Notch {
	at := sheet.N(mm)
	return &sheet.Notch{Name: name, On: on, At: &at, Depth: 4}
}

func double(n *sheet.Notch) *sheet.Notch {
	n.Kind = "double"
	return n
}

func grain(x, from, to float64) []pt { return []pt{sheet.P(x, from), sheet.P(x, to)} }

func seam(name, a, b string) *sheet.Seam {
	return &sheet.Seam{Name: name, A: sheet.Whole(a), B: sheet.Whole(b)}
}

// part is a part of an edge.
func part(edge, from, to string) sheet.Stretch {
	return sheet.Stretch{Edge: edge, From: from, To: to}
}

func partly(s sheet.Stretch) []sheet.Stretch { return []sheet.Stretch{s} }

func within(level string, low, high float64) sheet.LevelRange {
	return sheet.LevelRange{Level: level, Range: sheet.Between(low, high)}
}
