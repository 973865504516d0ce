package curve

import "math"

// redrawnNear is how near, in millimetres, a path lies to what Smooth draws
// through its knots where it was drawn so: rounding alone.
const redrawnNear = 1e-6

// EndAt returns the path with its last point moved to p. A path that Smooth drew
// is drawn anew through its knots; of any other the last segment is moved, and
// with handle set its last control point goes along, so that a curve keeps its
// direction there.
func (p *Path) EndAt(end Point, handle bool) *Path {
	n := len(p.segs)
	if n == 0 {
		return p
	}
	if knots := p.smoothKnots(); knots != nil {
		knots[n] = end
		return Smooth(knots...)
	}
	segs := p.segs[n-1].lastAsCubic(p.Segments()[:n-1])
	last := &segs[len(segs)-1]
	if last.kind == Bezier && handle {
		last.c = last.c.Add(end.Sub(last.d))
	}
	last.d = end
	return New(segs...)
}

// arcStep is the angle of an arc that one cubic follows to a few millionths of
// its radius: an eighth of a turn.
const arcStep = math.Pi / 4

// lastAsCubic appends the segment to others. Of an arc the last eighth of a turn
// becomes a cubic, by the known construction: handles of four thirds of the
// tangent of a quarter of the angle.
func (g *Segment) lastAsCubic(segs []Segment) []Segment {
	if g.kind != Elliptic {
		return append(segs, *g)
	}
	from := max(0, 1-arcStep/math.Abs(g.turn))
	if from > 0 {
		segs = append(segs, g.part(0, from))
	}
	tail := g.part(from, 1)
	reach := 4. / 3 * math.Tan(tail.turn/4) / tail.turn
	a, d := tail.derivative(0).Scale(reach), tail.derivative(1).Scale(reach)
	return append(segs, Cubic(tail.a, tail.a.Add(a), tail.d.Sub(d), tail.d))
}

// smoothKnots are the points through which Smooth drew the path; nil where it was
// drawn in another way.
func (p *Path) smoothKnots() []Point {
	if len(p.segs) < 2 {
		return nil
	}
	knots := []Point{p.segs[0].a}
	for i := range p.segs {
		knots = append(knots, p.segs[i].d)
	}
	again := Smooth(knots...).segs
	if len(again) != len(p.segs) {
		return nil
	}
	for i, s := range again {
		if o := p.segs[i]; s.kind != o.kind || s.b.Dist(o.b) > redrawnNear || s.c.Dist(o.c) > redrawnNear {
			return nil
		}
	}
	return knots
}
