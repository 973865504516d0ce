package curve

import (
	"cmp"
	"math"
	"slices"
)

// Meeting is a place where a closed outline crosses itself: the edges that
// meet (−1 for a bridged gap), the arc lengths on them, and the point.
type Meeting struct {
	EdgeA, EdgeB int
	SA, SB       float64
	P            Point
}

// Lengths in millimetres that SelfCrossings goes by.
const (
	contactNear = 1e-9 // stretches nearer than this are in contact
	overlapNear = 1e-7 // curves nearer than this all along run together
	contactJoin = 2e-4 // contacts nearer than this along the outline are one
	sideClear   = 1e-7 // a point this far off a line has a side
)

// contact is a stretch of the outline, by arc length from its start, in touch
// with another one farther on.
type contact struct{ a0, a1, b0, b1 float64 }

// outline is a closed run of monotone pieces with arc lengths.
type outline struct {
	r      *Region
	path   *Path // all sides in one; knots fall on sides
	starts []float64
	length float64
	found  []contact
}

// SelfCrossings returns the places where the closed outline made of the edges
// properly crosses itself, in order along it. Edges that meet their neighbours
// at their ends do not cross, nor do stretches that touch or run together and
// part again on the side they came from.
//
// The outline is cut into pieces that neither turn back in X nor in Y, so that
// no piece meets itself; contacts between pieces are found by enclosing strips
// that are halved until they part; and each contact counts as a crossing if
// the outline leaves it on the other side than it came from.
func SelfCrossings(edges []*Path) []Meeting {
	r := NewRegion(edges)
	if len(r.sides) == 0 {
		return nil
	}
	o := &outline{r: r}
	segs := make([]Segment, len(r.sides))
	for i := range r.sides {
		segs[i] = r.sides[i].Segment
	}
	o.path = New(segs...)
	o.length = o.path.Length()
	if len(o.path.segs) != len(r.sides) { // nothing but a point
		return nil
	}
	o.collect()
	var out []Meeting
	for _, c := range o.merged() {
		if !o.adjoining(c) && o.crosses(c) {
			out = append(out, o.meeting(c))
		}
	}
	slices.SortStableFunc(out, func(a, b Meeting) int {
		return cmp.Or(cmp.Compare(a.EdgeA, b.EdgeA), cmp.Compare(a.SA, b.SA), cmp.Compare(a.SB, b.SB))
	})
	return out
}

// collect finds the contacts between all pairs of pieces.
func (o *outline) collect() {
	pieces := o.r.pieces
	strips := make([]strip, len(pieces))
	boxes := make([]Box, len(pieces))
	for i := range pieces {
		m := &pieces[i]
		strips[i] = o.segment(m).strip(m.t0, m.t1, m.p0, m.p1)
		boxes[i] = m.box()
	}
	for i := range pieces {
		for j := i + 1; j < len(pieces); j++ {
			if boxes[i].apart(boxes[j], overlapNear) {
				continue
			}
			if !o.overlap(&pieces[i], &pieces[j]) {
				o.touch(&pieces[i], &pieces[j], strips[i], strips[j], 100)
			}
		}
	}
}

func (o *outline) segment(m *monotone) *Segment { return &o.r.sides[m.owner].Segment }

func (o *outline) lengthAt(m *monotone, t float64) float64 {
	return o.path.lengthAt(int(m.owner), t)
}

// overlap records the stretch that two pieces run together, if they do so all
// along the stretch they share. Two different curves of the kinds used here
// meet in nine points at the most (Bézout), so eleven points in common mean a
// common stretch.
func (o *outline) overlap(a, b *monotone) bool {
	ga, gb := o.segment(a), o.segment(b)
	if ga.kind == Straight && gb.kind == Straight {
		return false // touch does it exactly
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	see := func(t float64) { lo, hi = min(lo, t), max(hi, t) }
	on := func(g *Segment, m *monotone, p Point) (float64, bool) {
		h := g.part(m.t0, m.t1)
		t, d := h.nearest(p)
		return m.t0 + t*(m.t1-m.t0), d <= overlapNear
	}
	for _, end := range []struct {
		t float64
		p Point
	}{{a.t0, a.p0}, {a.t1, a.p1}} {
		if _, ok := on(gb, b, end.p); ok {
			see(end.t)
		}
	}
	for _, p := range []Point{b.p0, b.p1} {
		if t, ok := on(ga, a, p); ok {
			see(t)
		}
	}
	if hi <= lo || ga.at(lo).Dist(ga.at(hi)) < contactJoin {
		return false
	}
	first, last := math.Inf(1), math.Inf(-1)
	for k := 0.0; k <= 12; k++ {
		t, ok := on(gb, b, ga.at(lo+(hi-lo)*k/12))
		if !ok {
			return false
		}
		first, last = min(first, t), max(last, t)
	}
	o.found = append(o.found, contact{o.lengthAt(a, lo), o.lengthAt(a, hi), o.lengthAt(b, first), o.lengthAt(b, last)})
	return true
}

// touch records the contacts between two stretches.
func (o *outline) touch(a, b *monotone, sa, sb strip, depth int) {
	if sa.gap(&sb) > contactNear {
		return
	}
	ga, gb := o.segment(a), o.segment(b)
	if sa.width+sb.width <= contactNear/10 || depth == 0 {
		o.chords(a, b, sa, sb)
		return
	}
	if sa.width >= sb.width {
		left, right := ga.halves(sa)
		o.touch(a, b, left, sb, depth-1)
		o.touch(a, b, right, sb, depth-1)
		return
	}
	left, right := gb.halves(sb)
	o.touch(a, b, sa, left, depth-1)
	o.touch(a, b, sa, right, depth-1)
}

// chords records the contact of two stretches that are as good as straight.
func (o *outline) chords(a, b *monotone, sa, sb strip) {
	r, s, w := sa.d.Sub(sa.a), sb.d.Sub(sb.a), sb.a.Sub(sa.a)
	put := func(u0, u1, v0, v1 float64) {
		at := func(m *monotone, k strip, u float64) float64 {
			return o.lengthAt(m, k.t0+(k.t1-k.t0)*clamp(u, 0, 1))
		}
		o.found = append(o.found, contact{at(a, sa, u0), at(a, sa, u1), at(b, sb, v0), at(b, sb, v1)})
	}
	rr, ss, cross := r.Dot(r), s.Dot(s), r.Cross(s)
	if rr == 0 || ss == 0 {
		put(0, 1, 0, 1)
		return
	}
	if math.Abs(cross) > 1e-7*math.Sqrt(rr*ss) {
		u, v := w.Cross(s)/cross, w.Cross(r)/cross
		u, v = clamp(u, 0, 1), clamp(v, 0, 1)
		if sa.a.Lerp(sa.d, u).Dist(sb.a.Lerp(sb.d, v)) <= overlapNear {
			put(u, u, v, v)
			return
		}
	}
	// As good as parallel: the common stretch, seen along each of the two.
	u0, u1 := w.Dot(r)/rr, w.Add(s).Dot(r)/rr
	v0, v1 := -w.Dot(s)/ss, r.Sub(w).Dot(s)/ss
	put(min(u0, u1), max(u0, u1), min(v0, v1), max(v0, v1))
}

// merged joins contacts that lie together on both stretches.
func (o *outline) merged() []contact {
	list := o.found
	together := func(p, q contact) bool {
		return p.a0 <= q.a1+contactJoin && q.a0 <= p.a1+contactJoin &&
			p.b0 <= q.b1+contactJoin && q.b0 <= p.b1+contactJoin
	}
	slices.SortFunc(list, func(p, q contact) int { return cmp.Or(cmp.Compare(p.a0, q.a0), cmp.Compare(p.b0, q.b0)) })
	for changed := true; changed; {
		changed = false
		var next []contact
	each:
		for _, c := range list {
			for k := len(next) - 1; k >= 0; k-- {
				if n := &next[k]; together(*n, c) {
					*n = contact{min(n.a0, c.a0), max(n.a1, c.a1), min(n.b0, c.b0), max(n.b1, c.b1)}
					changed = true
					continue each
				}
			}
			next = append(next, c)
		}
		list = next
	}
	return list
}

// adjoining tells whether the two stretches of a contact run into each other,
// as neighbours do.
func (o *outline) adjoining(c contact) bool {
	return c.b0 <= c.a1+contactJoin || c.a0+o.length <= c.b1+contactJoin
}

// crosses tells whether the outline leaves the contact on the other side of
// itself than it came from.
func (o *outline) crosses(c contact) bool {
	reach := min(c.b0-c.a1, c.a0+o.length-c.b1) / 2
	before, after := 0, 0
	for step := min(1e-3, reach/4); ; step *= 2 {
		near := o.window(c.a0-2*step, c.a1+2*step)
		if before == 0 {
			before = sideOf(near, o.at(c.b0-step))
		}
		if after == 0 {
			after = sideOf(near, o.at(c.b1+step))
		}
		if before != 0 && after != 0 || step > reach/4 || step > 10 {
			return before*after < 0
		}
	}
}

// at returns the point of the closed outline at arc length s, going round.
func (o *outline) at(s float64) Point {
	s = math.Mod(s, o.length)
	if s < 0 {
		s += o.length
	}
	return o.path.At(s)
}

// window returns the stretch of the closed outline between two arc lengths,
// going round.
func (o *outline) window(from, to float64) *Path {
	switch {
	case from < 0:
		return Join(o.path.Part(o.length+from, o.length), o.path.Part(0, to))
	case to > o.length:
		return Join(o.path.Part(from, o.length), o.path.Part(0, to-o.length))
	}
	return o.path.Part(from, to)
}

// sideOf tells on which side of the line q lies, 0 if it is too near to tell.
// At a corner the sum of the two tangents gives the side, as Bærentzen and
// Aanæs (2005) show for the normals.
func sideOf(line *Path, q Point) int {
	s, d := line.Nearest(q)
	if d <= sideClear {
		return 0
	}
	along := line.Direction(s).Add(line.DirectionBefore(s))
	if along.Len() < 1e-6 {
		along = line.Direction(s)
	}
	if along.Cross(q.Sub(line.At(s))) > 0 {
		return 1
	}
	return -1
}

// meeting describes a contact.
func (o *outline) meeting(c contact) Meeting {
	sa, sb := (c.a0+c.a1)/2, (c.b0+c.b1)/2
	m := Meeting{P: o.at(sa)}
	m.EdgeA, m.SA = o.place(sa)
	m.EdgeB, m.SB = o.place(sb)
	return m
}

func (o *outline) place(s float64) (edge int, along float64) {
	lf := o.path.find(s, false)
	return o.r.place(int(lf.seg), lf.param(&o.path.segs[lf.seg], s))
}
