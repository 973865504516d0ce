package curve

import "math"

// Outside returns how far the path stands outside the closed region at worst,
// 0 when it stands inside all along; stretches that lie on the outline are
// inside. The bound is proven by branch and bound, see signedMax.
func (r *Region) Outside(p *Path, tolerance float64) Bound {
	if len(r.sides) == 0 || len(p.segs) == 0 {
		return Bound{}
	}
	o := newOutsider(r, p, tolerance)
	o.search()
	if o.low <= 0 {
		return Bound{0, max(0, o.high), 0}
	}
	return Bound{o.low, o.high, o.at}
}

// Room returns the least distance from the path to the region's outline while
// it is inside. It is negative when the path stands outside: minus how far.
// At is where the least room was met, so there High was met.
func (r *Region) Room(p *Path, tolerance float64) Bound {
	if len(r.sides) == 0 || len(p.segs) == 0 {
		return Bound{}
	}
	o := newOutsider(r, p, tolerance/3)
	o.search()
	if o.low > 0 {
		return Bound{-o.high, -o.low, o.at}
	}
	// Nowhere outside by more than o.high: if the outline stays clear of the
	// path the path is inside, and the distance between them is the room. If
	// that cannot be told, the three thirds of the tolerance may add up.
	d := r.clearance(p, tolerance/3)
	if d.Low > max(0, o.high) {
		return d
	}
	return Bound{min(d.Low, -max(0, o.high)), d.High, d.At}
}

// probe is a point of the path with its distance outside the region.
type probe struct {
	s, t   float64 // arc length on the path, parameter on its segment
	p      Point
	signed float64 // distance from the outline, negative inside
	foot   foot
	q      Point   // the nearest point of the outline
	edge   int     // the edge that q lies on
	along  float64 // arc length of q on that edge
	passed bool    // it stands out over a place that does not count
}

// outsider searches for the place where a path stands farthest outside.
type outsider struct {
	r         *Region
	p         *Path
	tolerance float64
	slack     float64 // how wrong an arc length may be
	low, at   float64 // the farthest met, not less than 0
	high      float64

	counts func(Foot) bool // nil: every place of the outline counts
	past   Past
}

func newOutsider(r *Region, p *Path, tolerance float64) *outsider {
	return &outsider{r: r, p: p, tolerance: tolerance, slack: 1e-12 * (p.Length() + r.bounds.Width() + r.bounds.Height())}
}

// search goes over the path segment by segment. The ends are seen first, so
// that most of the path can be passed over at once.
func (o *outsider) search() {
	ends := make([][2]probe, len(o.p.segs))
	for i := range o.p.segs {
		g := &o.p.segs[i]
		ends[i][0] = o.probe(o.p.knot(int32(i)), 0, g.a)
		ends[i][1] = o.probe(o.p.knot(int32(i+1)), 1, g.d)
	}
	o.high = o.low
	for i := range o.p.segs {
		o.split(&o.p.segs[i], i, &ends[i][0], &ends[i][1], 60)
	}
}

// probe looks at one point of the path.
func (o *outsider) probe(s, t float64, p Point) probe {
	b := probe{s: s, t: t, p: p, foot: o.r.nearest(p)}
	b.signed = b.foot.distance
	if b.signed > 0 && o.r.winds(p) {
		b.signed = -b.signed
	}
	b.q = o.r.sides[b.foot.side].at(b.foot.t)
	b.edge, b.along = o.r.place(b.foot.side, b.foot.t)
	if o.counts != nil && b.signed > 0 && o.passes(&b) {
		return b
	}
	if b.signed > o.low {
		o.low, o.at = b.signed, s
	}
	return b
}

// split proves a bound for the stretch between two probes, or halves it.
func (o *outsider) split(g *Segment, index int, a, b *probe, depth int) {
	limit := o.low + o.tolerance
	bound := o.bound(g, a, b)
	if bound > limit && a.signed < 0 && b.signed < 0 && o.r.clearOf(g, g.strip(a.t, b.t, a.p, b.p)) {
		return // inside at its ends, and the outline does not come near
	}
	if (a.passed || b.passed) && b.s-a.s <= o.tolerance {
		o.high = max(o.high, o.low, o.beside(a, b))
		return
	}
	if bound <= limit || depth == 0 {
		o.high = max(o.high, bound, o.low)
		return
	}
	t := (a.t + b.t) / 2
	m := o.probe(o.p.lengthAt(index, t), t, g.at(t))
	// The half that may stand farther out first: it raises low soonest.
	if a.signed > b.signed {
		o.split(g, index, a, &m, depth-1)
		o.split(g, index, &m, b, depth-1)
	} else {
		o.split(g, index, &m, b, depth-1)
		o.split(g, index, a, &m, depth-1)
	}
	o.high = max(o.high, o.low)
}

// bound returns a proven upper bound of the signed distance on the stretch.
// The signed distance changes by no more than the length walked; and if the
// feet of both ends lie on the same edge, then every point of the stretch is
// near its chord, every point of the chord lies no farther from the chord of
// the feet than the ends do, and the outline is near that.
func (o *outsider) bound(g *Segment, a, b *probe) float64 {
	h := b.s - a.s
	bound := (a.signed+b.signed+h)/2 + o.slack
	if a.edge != b.edge || a.edge < 0 && a.foot.side != b.foot.side {
		return bound
	}
	near := max(a.foot.distance, b.foot.distance)
	if g.kind != Straight {
		near += min(enclosure(h, a.p.Dist(b.p), o.slack), g.strip(a.t, b.t, a.p, b.p).width)
	}
	f := &o.r.sides[a.foot.side]
	switch {
	case a.foot.side != b.foot.side:
		near += enclosure(math.Abs(b.along-a.along), a.q.Dist(b.q), o.slack)
	case f.kind != Straight:
		w := f.strip(min(a.foot.t, b.foot.t), max(a.foot.t, b.foot.t), a.q, b.q).width
		near += min(enclosure(math.Abs(b.along-a.along), a.q.Dist(b.q), o.slack), w)
	}
	return min(bound, near+1e-13)
}

// clearOf tells whether the outline provably does not touch the stretch. It
// gives up, answering no, when that takes too long.
func (r *Region) clearOf(g *Segment, s strip) bool {
	box := emptyBox().with(s.a).with(s.d)
	budget := 64
	apart := func(b *Box, _, _ int) bool { return box.apart(*b, s.width) }
	for i := r.boxes.next(0, apart); i < len(r.sides); i = r.boxes.next(i+1, apart) {
		f := &r.sides[i]
		if !clearOfSide(&f.Segment, f.whole(), &s, &budget) {
			return false
		}
	}
	return true
}

func clearOfSide(f *Segment, o strip, s *strip, budget *int) bool {
	if s.gap(&o) > 0 {
		return true
	}
	*budget--
	if *budget < 0 || o.width < s.width/4 || o.width == 0 {
		return false
	}
	left, right := f.halves(o)
	return clearOfSide(f, left, s, budget) && clearOfSide(f, right, s, budget)
}

// clearance returns the least distance between the path and the outline, by
// branch and bound over pairs of stretches.
func (r *Region) clearance(p *Path, tolerance float64) Bound {
	c := clearer{tolerance: tolerance, high: math.Inf(1)}
	for i := range p.segs {
		g := &p.segs[i]
		for _, t := range []float64{0, 0.5, 1} {
			if d := r.nearest(g.at(t)).distance; d < c.high {
				c.high, c.at = d, p.lengthAt(i, t)
			}
		}
	}
	c.low = c.high
	for i, box := range p.boxes.levels[0] {
		apart := func(b *Box, _, _ int) bool { return box.apart(*b, c.high) }
		for j := r.boxes.next(0, apart); j < len(r.sides); j = r.boxes.next(j+1, apart) {
			c.path, c.index, c.side = p, i, &r.sides[j].Segment
			c.pair(p.segs[i].whole(), r.sides[j].whole(), 100)
		}
	}
	return Bound{max(0, c.low), c.high, c.at}
}

type clearer struct {
	tolerance     float64
	low, high, at float64
	path          *Path
	index         int // of the path's segment at hand
	side          *Segment
}

func (c *clearer) pair(a, b strip, depth int) {
	between := chordDistance(a.a, a.d, b.a, b.d)
	gap := between - a.width - b.width
	if gap >= c.high {
		return
	}
	g := &c.path.segs[c.index]
	if d := toChord(a.a, b.a, b.d) + b.width; d < c.high {
		c.high, c.at = d, c.path.lengthAt(c.index, a.t0)
	}
	if d := toChord(a.d, b.a, b.d) + b.width; d < c.high {
		c.high, c.at = d, c.path.lengthAt(c.index, a.t1)
	}
	if both := between + a.width + b.width; both < c.high {
		c.high, c.at = both, c.path.lengthAt(c.index, (a.t0+a.t1)/2)
	}
	if gap >= c.high-c.tolerance || depth == 0 {
		c.low = min(c.low, gap)
		return
	}
	if a.width >= b.width {
		left, right := g.halves(a)
		c.pair(left, b, depth-1)
		c.pair(right, b, depth-1)
		return
	}
	left, right := c.side.halves(b)
	c.pair(a, left, depth-1)
	c.pair(a, right, depth-1)
}
