package curve

import (
	"cmp"
	"math"
	"slices"
)

// contact is a stretch of the outline, by arc length from its start, in touch
// with another one farther on.
type contact struct{ a0, a1, b0, b1 float64 }

// mostContacts is how many contacts of stretches that are no neighbours are
// looked for: far more than any outline has that can be cut.
const mostContacts = 20_000

// mostHalved is how many pairs of stretches are looked at besides four for each
// piece: a hundred times as many as the pieces of a garment need. A line that lies
// on itself but for less than can be told apart needs ever more of them.
const mostHalved = 250_000

// spent tells whether no more contacts are looked for.
func (o *outline) spent() bool {
	return o.apart >= mostContacts || o.halved > mostHalved+4*len(o.r.pieces)
}

// collect finds the contacts between all pairs of pieces, or the first of them.
func (o *outline) collect() {
	pieces := o.r.pieces
	strips := make([]strip, len(pieces))
	for i := range pieces {
		m := &pieces[i]
		strips[i] = o.segment(m).strip(m.t0, m.t1, m.p0, m.p1)
	}
	boxes := &o.r.spread
	for i, box := range boxes.levels[0] {
		if o.spent() {
			return
		}
		apart := func(b *Box, _, _ int) bool { return box.apart(*b, overlapNear) }
		for j := boxes.next(i+1, apart); j < len(pieces); j = boxes.next(j+1, apart) {
			if !o.plain && o.partsAtJoint(i, j) {
				continue
			}
			if !o.overlap(&pieces[i], &pieces[j]) {
				o.touch(&pieces[i], &pieces[j], strips[i], strips[j], 100)
			}
		}
	}
}

// partsAtJoint certifies that two neighbouring pieces meet at their joint alone:
// the outline goes on across it to the right or to the left, or up or down. Each
// piece lies all on its own side of the upright or level line through the joint,
// since it does not turn back. Such a contact runs into the next piece and is no
// crossing; finding it by halving would cost more than all other pairs together.
func (o *outline) partsAtJoint(i, j int) bool {
	a, b := &o.r.pieces[i], &o.r.pieces[j]
	switch n := len(o.r.pieces); {
	case n < 3:
		return false // two pieces may meet at both their ends
	case j == i+1 && a.p1 == b.p0:
	case i == 0 && j == n-1 && b.p1 == a.p0:
		a, b = b, a
	default:
		return false
	}
	in, out := a.p1.Sub(a.p0), b.p1.Sub(b.p0)
	return in.X*out.X > 0 || in.Y*out.Y > 0
}

func (o *outline) put(c contact) {
	o.found = append(o.found, c)
	if !o.adjoining(c) {
		o.apart++
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
	o.put(contact{o.lengthAt(a, lo), o.lengthAt(a, hi), o.lengthAt(b, first), o.lengthAt(b, last)})
	return true
}

// touch records the contacts between two stretches.
func (o *outline) touch(a, b *monotone, sa, sb strip, depth int) {
	if o.halved++; o.spent() {
		return
	}
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
		o.put(contact{at(a, sa, u0), at(a, sa, u1), at(b, sb, v0), at(b, sb, v1)})
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
		var ends []float64 // the greatest a1 up to each of next
	each:
		for _, c := range list {
			for k := len(next) - 1; k >= 0 && c.a0 <= ends[k]+contactJoin; k-- {
				if n := &next[k]; together(*n, c) {
					*n = contact{min(n.a0, c.a0), max(n.a1, c.a1), min(n.b0, c.b0), max(n.b1, c.b1)}
					for i := k; i < len(ends) && ends[i] < n.a1; i++ {
						ends[i] = n.a1
					}
					changed = true
					continue each
				}
			}
			next = append(next, c)
			ends = append(ends, c.a1)
			if k := len(ends) - 1; k > 0 {
				ends[k] = max(ends[k], ends[k-1])
			}
		}
		list = next
	}
	return list
}
