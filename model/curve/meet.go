package curve

import (
	"container/heap"
	"math"
)

// Meet returns where line a near its end and line b near its start meet when
// each may be trimmed, or run on straight along its direction there, by up to
// reach. The places are arc lengths: sa above a's length means that a runs on
// by the difference, sb below 0 that b is run on backwards. Ends that lie
// within 1e-9 mm of each other meet as they are.
//
// Of several meetings that one is taken for which the two changes, as legs of
// a right angle, have the shortest hypotenuse. Lines that run along each other
// meet in the middle of what they share. Stretches within 1e-9 mm of each
// other count as meeting. A line that is to meet itself is trimmed by less
// than half.
//
// Stretches are enclosed and halved, nearest to the ends first, until they
// part or are as good as straight, so no meeting is overlooked; only curves
// that run beside each other for long within some 1e-8 mm can use up the
// search, and then count as not meeting.
func Meet(a, b *Path, reach float64) (sa, sb float64, ok bool) {
	if !(reach > 0) {
		reach = 0
	}
	return meet(a, b, reach, reach)
}

// meet is Meet with different lengths for trimming and for running on.
func meet(a, b *Path, trim, runOn float64) (sa, sb float64, ok bool) {
	la := a.Length()
	if len(a.segs) == 0 || len(b.segs) == 0 {
		return la, 0, false
	}
	if a.End().Dist(b.Start()) <= joinNear {
		return la, 0, true
	}
	if a == b {
		trim = min(trim, 0.4999*la)
	}
	m := meeter{best: math.Inf(1)}
	for _, p := range a.tail(trim, runOn) {
		for _, q := range b.head(trim, runOn) {
			m.put(p, q)
		}
	}
	for budget := 50000; len(m.open) > 0 && budget > 0; budget-- {
		pair := heap.Pop(&m.open).(reachPair)
		if pair.cost >= m.best {
			break
		}
		if pair.a.width+pair.b.width <= contactNear/10 {
			m.settle(pair)
			continue
		}
		if pair.a.width >= pair.b.width {
			left, right := pair.a.halves()
			m.put(left, pair.b)
			m.put(right, pair.b)
		} else {
			left, right := pair.b.halves()
			m.put(pair.a, left)
			m.put(pair.a, right)
		}
	}
	if !m.found {
		return la, 0, false
	}
	return la + m.changeA, m.changeB, true
}

// reachable is a stretch of a line that may be met, or of the straight line it
// runs on along. c0 and c1 are the changes of the line's length that end it
// at the stretch's two ends: negative for trimming.
type reachable struct {
	strip
	g      *Segment
	path   *Path // nil for the straight line it runs on along
	seg    int
	head   bool // of line b: changes count from its start
	c0, c1 float64
}

// tail returns the stretches near the end of the line.
func (p *Path) tail(trim, runOn float64) []reachable {
	l := p.Length()
	var out []reachable
	from := max(0, l-trim)
	lf := p.find(from, false)
	for i := int(lf.seg); i < len(p.segs); i++ {
		t0 := 0.0
		if i == int(lf.seg) {
			t0 = lf.param(&p.segs[i], from)
		}
		out = append(out, p.reachable(i, t0, 1, false))
	}
	if dir := p.DirectionBefore(l); runOn > 0 && dir != (Point{}) {
		g := Line(p.End(), p.End().Add(dir.Scale(runOn)))
		out = append(out, reachable{strip: g.whole(), g: &g, c1: runOn})
	}
	return out
}

// head returns the stretches near the start of the line.
func (p *Path) head(trim, runOn float64) []reachable {
	var out []reachable
	to := min(p.Length(), trim)
	lf := p.find(to, true)
	for i := 0; i <= int(lf.seg); i++ {
		t1 := 1.0
		if i == int(lf.seg) {
			t1 = lf.param(&p.segs[i], to)
		}
		out = append(out, p.reachable(i, 0, t1, true))
	}
	if dir := p.Direction(0); runOn > 0 && dir != (Point{}) {
		g := Line(p.Start().Sub(dir.Scale(runOn)), p.Start())
		out = append(out, reachable{strip: g.whole(), g: &g, head: true, c0: -runOn})
	}
	return out
}

func (p *Path) reachable(i int, t0, t1 float64, head bool) reachable {
	g := &p.segs[i]
	r := reachable{strip: g.strip(t0, t1, g.at(t0), g.at(t1)), g: g, path: p, seg: i, head: head}
	r.c0, r.c1 = r.change(t0), r.change(t1)
	return r
}

// change returns by how much the line's length changes if it ends at the
// stretch's parameter t; for line b that is the arc length trimmed off.
func (r *reachable) change(t float64) float64 {
	switch {
	case r.path == nil && r.head:
		return r.c0 * (1 - t)
	case r.path == nil:
		return r.c1 * t
	case r.head:
		return r.path.lengthAt(r.seg, t)
	}
	return r.path.lengthAt(r.seg, t) - r.path.Length()
}

func (r *reachable) halves() (left, right reachable) {
	left, right = *r, *r
	left.strip, right.strip = r.g.halves(r.strip)
	mid := r.change(left.t1)
	left.c1, right.c0 = mid, mid
	return left, right
}

// least returns the smallest change of length on the stretch.
func (r *reachable) least() float64 {
	if r.c0 < 0 && r.c1 > 0 {
		return 0
	}
	return min(math.Abs(r.c0), math.Abs(r.c1))
}

// reachPair is a pair of stretches that may meet, at this cost at least.
type reachPair struct {
	a, b reachable
	cost float64
}

// meeter searches pairs of stretches in order of their cost.
type meeter struct {
	open             pairHeap
	best             float64
	found            bool
	changeA, changeB float64
}

func (m *meeter) put(a, b reachable) {
	if a.gap(&b.strip) <= contactNear {
		cost := math.Hypot(a.least(), b.least())
		if cost < m.best {
			heap.Push(&m.open, reachPair{a, b, cost})
		}
	}
}

// settle takes the meeting of two stretches that are as good as straight.
func (m *meeter) settle(pair reachPair) {
	a, b := &pair.a, &pair.b
	r, s, w := a.d.Sub(a.a), b.d.Sub(b.a), b.strip.a.Sub(a.strip.a)
	rr, ss, cross := r.Dot(r), s.Dot(s), r.Cross(s)
	var u, v float64
	if math.Abs(cross) > 1e-7*math.Sqrt(rr*ss) {
		u, v = clamp(w.Cross(s)/cross, 0, 1), clamp(w.Cross(r)/cross, 0, 1)
	} else {
		u, v = m.alongside(pair, r, w)
	}
	ta, tb := a.t0+(a.t1-a.t0)*u, b.t0+(b.t1-b.t0)*v
	if math.Abs(cross) > 1e-7*math.Sqrt(rr*ss) {
		ta, tb = polish(a, b, ta, tb)
	}
	if a.g.at(ta).Dist(b.g.at(tb)) > 2*contactNear {
		return
	}
	ca, cb := a.change(ta), b.change(tb)
	if cost := math.Hypot(ca, cb); cost < m.best {
		m.found, m.best, m.changeA, m.changeB = true, cost, ca, cb
	}
}

// alongside returns the best place, as shares, where two stretches run along
// each other or touch.
func (m *meeter) alongside(pair reachPair, r, w Point) (u, v float64) {
	a, b := &pair.a, &pair.b
	s := b.d.Sub(b.strip.a)
	rr, ss := r.Dot(r), s.Dot(s)
	onB := func(u float64) float64 {
		if ss == 0 {
			return 0
		}
		return clamp(r.Scale(u).Sub(w).Dot(s)/ss, 0, 1)
	}
	if rr == 0 {
		return 0, onB(0)
	}
	u0, u1 := w.Dot(r)/rr, w.Add(s).Dot(r)/rr
	lo, hi := clamp(min(u0, u1), 0, 1), clamp(max(u0, u1), 0, 1)
	// Both changes run evenly from lo to hi; the sum of their squares is least at
	// the foot of the origin on the straight way between the two.
	change := func(u float64) Point {
		return Point{a.c0 + (a.c1-a.c0)*u, b.c0 + (b.c1-b.c0)*onB(u)}
	}
	from := change(lo)
	way := change(hi).Sub(from)
	u = lo
	if l := way.Dot(way); l > 0 {
		u += (hi - lo) * clamp(-from.Dot(way)/l, 0, 1)
	}
	return u, onB(u)
}

// polish brings a crossing to rounding by Newton's step; it stays in the two
// stretches.
func polish(a, b *reachable, ta, tb float64) (float64, float64) {
	for range 4 {
		gap := b.g.at(tb).Sub(a.g.at(ta))
		da, db := a.g.derivative(ta), b.g.derivative(tb)
		cross := da.Cross(db)
		if gap == (Point{}) || cross == 0 {
			break
		}
		ta = clamp(ta+gap.Cross(db)/cross, a.t0, a.t1)
		tb = clamp(tb+gap.Cross(da)/cross, b.t0, b.t1)
	}
	return ta, tb
}

// pairHeap orders pairs by cost, for container/heap.
type pairHeap []reachPair

func (h pairHeap) Len() int           { return len(h) }
func (h pairHeap) Less(i, j int) bool { return h[i].cost < h[j].cost }
func (h pairHeap) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *pairHeap) Push(x any)        { *h = append(*h, x.(reachPair)) }
func (h *pairHeap) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}
