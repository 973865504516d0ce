package curve

// Foot is the place of an outline that lies nearest to a point outside it: on
// which of its edges (−1 for a bridged gap), how far along, and where.
type Foot struct {
	Edge  int
	Along float64
	On    Point // the place
	From  Point // the point outside
}

// Past is the farthest that a path was seen to stand out over places of an
// outline that do not count: how far, over which edge, and where on the path.
type Past struct {
	Distance float64
	Edge     int
	At       float64
}

// OutsideWhere is [Region.Outside] of those places of the path alone whose
// nearest place on the outline counts. Which places do is looked at no farther
// apart than the tolerance; how far the others stand out is proven as there.
func (r *Region) OutsideWhere(p *Path, tolerance float64, counts func(Foot) bool) (Bound, Past) {
	if len(r.sides) == 0 || len(p.segs) == 0 {
		return Bound{}, Past{Edge: -1}
	}
	o := newOutsider(r, p, tolerance)
	o.counts, o.past.Edge = counts, -1
	o.search()
	return Bound{max(0, o.low), max(0, o.high), o.at}, o.past
}

// passes notes a point that stands out over a place that does not count.
func (o *outsider) passes(b *probe) bool {
	if o.counts(Foot{b.edge, b.along, b.q, b.p}) {
		return false
	}
	b.passed = true
	if b.signed > o.past.Distance {
		o.past = Past{b.signed, b.edge, b.s}
	}
	return true
}

// beside bounds how far a stretch no longer than the tolerance stands out over
// places that count, one of its ends or both standing out over one that does not.
func (o *outsider) beside(a, b *probe) float64 {
	switch {
	case !a.passed:
		return a.signed + o.tolerance
	case !b.passed:
		return b.signed + o.tolerance
	}
	return 0
}
