package curve

import "math"

// strip encloses a stretch of a segment: each of its points lies within width
// of the chord from a to d. The width is the textbook error of linear
// interpolation, (t1−t0)²/8 · max|r”|, which is proven and costs no square
// root but one.
type strip struct {
	t0, t1 float64
	a, d   Point
	width  float64
}

func (g *Segment) strip(t0, t1 float64, a, d Point) strip {
	s := strip{t0: t0, t1: t1, a: a, d: d}
	h := (t1 - t0) * (t1 - t0) / 8
	switch g.kind {
	case Bezier: // r'' is linear, so its length is greatest at an end
		s.width = h * max(g.second(t0).Len(), g.second(t1).Len())
	case Elliptic:
		s.width = h * g.turn * g.turn * max(g.c.Len(), g.v.Len())
	}
	return s
}

// whole returns the strip of the whole segment.
func (g *Segment) whole() strip { return g.strip(0, 1, g.a, g.d) }

// halves cuts a strip of the segment in two.
func (g *Segment) halves(s strip) (left, right strip) {
	mid := (s.t0 + s.t1) / 2
	m := g.at(mid)
	return g.strip(s.t0, mid, s.a, m), g.strip(mid, s.t1, m, s.d)
}

// gap returns a lower bound of the distance between the two stretches.
func (s *strip) gap(o *strip) float64 {
	return chordDistance(s.a, s.d, o.a, o.d) - s.width - o.width
}

// span returns how long the stretch can be at most, seen from outside.
func (s *strip) span() float64 { return s.a.Dist(s.d) + 2*s.width }

// toChord returns the distance of q from the straight stretch from a to b.
func toChord(q, a, b Point) float64 {
	d, w := b.Sub(a), q.Sub(a)
	u := w.Dot(d)
	if !(u > 0) {
		return w.Len()
	}
	l := d.Dot(d)
	if u >= l {
		return q.Dist(b)
	}
	return math.Abs(d.Cross(w)) / math.Sqrt(l)
}

// chordDistance returns the distance between two straight stretches.
func chordDistance(a, b, c, d Point) float64 {
	ab, cd := b.Sub(a), d.Sub(c)
	if ab.Cross(c.Sub(a))*ab.Cross(d.Sub(a)) < 0 && cd.Cross(a.Sub(c))*cd.Cross(b.Sub(c)) < 0 {
		return 0
	}
	return min(toChord(a, c, d), toChord(b, c, d), toChord(c, a, b), toChord(d, a, b))
}
