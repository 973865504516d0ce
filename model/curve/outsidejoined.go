package curve

import "math"

// OutsideJoined is [Region.OutsideWhere] of several regions that are laid
// together: a place of the path is outside by its distance from the nearest of
// them. The regions may overlap or leave gaps. counts is told which region it is.
func OutsideJoined(regions []*Region, p *Path, tolerance float64, counts func(region int, f Foot) bool) Bound {
	j := joinedOutsider{tolerance: tolerance, counts: counts}
	for _, r := range regions {
		if len(r.sides) > 0 {
			j.each = append(j.each, newOutsider(r, p, tolerance))
		}
	}
	if len(j.each) == 0 || len(p.segs) == 0 {
		return Bound{}
	}
	for i := range p.segs {
		g := &p.segs[i]
		a, b := j.probe(p.knot(int32(i)), 0, g.a), j.probe(p.knot(int32(i+1)), 1, g.d)
		j.split(g, i, a, b, 60)
	}
	return Bound{j.low, max(j.high, j.low), j.at}
}

// joinedOutsider searches for the place where a path stands farthest outside all of
// several regions.
type joinedOutsider struct {
	each          []*outsider
	tolerance     float64
	counts        func(int, Foot) bool
	low, high, at float64
}

// together is one point of the path looked at from every region.
type together struct {
	probes []probe
	signed float64 // least distance outside, negative inside
	passed bool    // outside over a place that does not count
}

func (j *joinedOutsider) probe(s, t float64, p Point) together {
	out := together{signed: math.Inf(1)}
	nearest := 0
	for k, o := range j.each {
		b := o.probe(s, t, p)
		out.probes = append(out.probes, b)
		if b.signed < out.signed {
			out.signed, nearest = b.signed, k
		}
	}
	b := &out.probes[nearest]
	out.passed = out.signed > 0 && !j.counts(nearest, Foot{b.edge, b.along, b.q, b.p})
	if out.signed > j.low && !out.passed {
		j.low, j.at = out.signed, s
	}
	return out
}

// split proves a bound for the stretch between two points, or halves it: the
// least of the bounds that hold for any one region holds for all together.
func (j *joinedOutsider) split(g *Segment, index int, a, b together, depth int) {
	bound := math.Inf(1)
	for k, o := range j.each {
		pa, pb := &a.probes[k], &b.probes[k]
		bound = min(bound, o.bound(g, pa, pb))
		if pa.signed < 0 && pb.signed < 0 && o.r.clearOf(g, g.strip(pa.t, pb.t, pa.p, pb.p)) {
			return
		}
	}
	from, to := a.probes[0], b.probes[0]
	switch {
	case bound <= j.low+j.tolerance || depth == 0:
		j.high = max(j.high, bound)
		return
	case (a.passed || b.passed) && to.s-from.s <= j.tolerance:
		for _, end := range []together{a, b} {
			if !end.passed {
				j.high = max(j.high, end.signed+j.tolerance)
			}
		}
		return
	}
	t := (from.t + to.t) / 2
	m := j.probe(j.each[0].p.lengthAt(index, t), t, g.at(t))
	j.split(g, index, a, m, depth-1)
	j.split(g, index, m, b, depth-1)
}
