package curve

// Straightness returns the largest distance of the path from the chord
// between its two ends, and at most 1e-7 mm more than that: it is a proven
// upper bound. The distance from a chord is a convex function, so over a
// stretch of curve it is nowhere greater than at the control points.
func (p *Path) Straightness() float64 {
	a, b := p.Start(), p.End()
	low := 0.0
	for i := range p.segs {
		low = max(low, toChord(p.segs[i].a, a, b), toChord(p.segs[i].d, a, b))
	}
	high := low
	for i := range p.segs {
		high = max(high, p.segs[i].farthest(a, b, &low, 48))
	}
	return high
}

// farthest returns an upper bound, no more than 1e-7 above the truth or above
// low, of how far the segment goes from the chord; low is raised to what is met.
func (g *Segment) farthest(a, b Point, low *float64, depth int) float64 {
	const tolerance = 1e-7
	bound := max(toChord(g.a, a, b), toChord(g.d, a, b))
	*low = max(*low, bound)
	switch g.kind {
	case Bezier:
		bound = max(bound, toChord(g.b, a, b), toChord(g.c, a, b))
	case Elliptic:
		w := g.whole()
		bound += w.width
	}
	if bound <= *low+tolerance || depth == 0 {
		return bound
	}
	left, right := g.part(0, 0.5), g.part(0.5, 1)
	return max(left.farthest(a, b, low, depth-1), right.farthest(a, b, low, depth-1))
}
