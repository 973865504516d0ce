package curve

import (
	"math"
	"sort"
)

// Path is a run of segments that knows its arc length. It never changes once
// made, so it may be shared between goroutines. Places on it are given by
// arc length from its start, in millimetres.
//
// Segments normally start where the one before ends. If they do not, the gap
// is kept: it adds no length, and At jumps over it.
type Path struct {
	segs   []Segment
	first  []int32 // index of the first leaf of each segment, and one past the last
	leaves []leaf
	boxes  boxTree // of the segments
}

// New returns the path made of the segments in order. Segments of no length
// are left out, unless there is nothing else.
func New(segs ...Segment) *Path {
	p := &Path{segs: make([]Segment, 0, len(segs))}
	for i := range segs {
		if segs[i].reach() > 0 {
			p.segs = append(p.segs, segs[i])
		}
	}
	if len(p.segs) == 0 && len(segs) > 0 {
		p.segs = append(p.segs, Line(segs[0].a, segs[0].a))
	}
	p.first = make([]int32, 0, len(p.segs)+1)
	p.leaves = make([]leaf, 0, len(p.segs)+2)
	s := 0.0
	for i := range p.segs {
		p.first = append(p.first, int32(len(p.leaves)))
		p.leaves = p.segs[i].appendLeaves(p.leaves, int32(i), s)
		s = p.leaves[len(p.leaves)-1].s1
	}
	p.first = append(p.first, int32(len(p.leaves)))
	p.fence()
	return p
}

// fence works out the bounds of every segment.
func (p *Path) fence() {
	boxes := make([]Box, len(p.segs))
	for i := range p.segs {
		boxes[i] = p.segs[i].box()
	}
	p.boxes = newBoxTree(boxes)
}

// Polyline returns the path of straight lines through the points.
func Polyline(pts ...Point) *Path {
	if len(pts) == 1 {
		return New(Line(pts[0], pts[0]))
	}
	var segs []Segment
	for i := 1; i < len(pts); i++ {
		segs = append(segs, Line(pts[i-1], pts[i]))
	}
	return New(segs...)
}

// Join returns the paths one after the other. Gaps between them are kept.
func Join(paths ...*Path) *Path {
	var segs []Segment
	for _, p := range paths {
		segs = append(segs, p.segs...)
	}
	return New(segs...)
}

// Segments returns a copy of the path's segments.
func (p *Path) Segments() []Segment { return append([]Segment(nil), p.segs...) }

// Start returns the first point of the path.
func (p *Path) Start() Point {
	if len(p.segs) == 0 {
		return Point{}
	}
	return p.segs[0].a
}

// End returns the last point of the path.
func (p *Path) End() Point {
	if len(p.segs) == 0 {
		return Point{}
	}
	return p.segs[len(p.segs)-1].d
}

// Length returns the arc length of the path.
func (p *Path) Length() float64 {
	if len(p.leaves) == 0 {
		return 0
	}
	return p.leaves[len(p.leaves)-1].s1
}

// Bounds returns the smallest upright box that holds the path.
func (p *Path) Bounds() Box {
	if len(p.segs) == 0 {
		return Box{}
	}
	return p.boxes.whole()
}

// find returns the leaf that holds arc length s: the last one that starts at
// or before s, or with before set the first one that reaches s.
func (p *Path) find(s float64, before bool) *leaf {
	n := len(p.leaves)
	lo, hi := 0, n-1
	for lo < hi {
		mid := (lo + hi) / 2
		if p.leaves[mid].s1 < s || !before && p.leaves[mid].s1 <= s {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return &p.leaves[lo]
}

// At returns the point at arc length s, clamped to the path. At a gap it is
// the point after the gap.
func (p *Path) At(s float64) Point {
	if len(p.leaves) == 0 {
		return Point{}
	}
	lf := p.find(s, false)
	g := &p.segs[lf.seg]
	return g.at(lf.param(g, s))
}

// Direction returns the running direction, of length 1, of the part after
// arc length s, or at the end of the path of the part before it. A path of
// no length has no direction: it gives the zero point.
func (p *Path) Direction(s float64) Point { return p.heading(s, !(s < p.Length())) }

// DirectionBefore returns the running direction of the part before arc
// length s, or at the start of the path of the part after it.
func (p *Path) DirectionBefore(s float64) Point { return p.heading(s, s > 0) }

func (p *Path) heading(s float64, before bool) Point {
	if len(p.leaves) == 0 {
		return Point{}
	}
	lf := p.find(s, before)
	g := &p.segs[lf.seg]
	return g.tangent(lf.param(g, s), before)
}

// onSegment returns the point at arc length s of the segment with that
// index, clamped to the segment.
func (p *Path) onSegment(index int32, s float64) Point {
	g := &p.segs[index]
	i, last := p.first[index], p.first[index+1]-1
	for i < last && p.leaves[i].s1 < s {
		i++
	}
	return g.at(p.leaves[i].param(g, s))
}

// onLeaf returns the point at arc length s of the leaf with that index,
// clamped to the leaf.
func (p *Path) onLeaf(index int32, s float64) Point {
	lf := &p.leaves[index]
	g := &p.segs[lf.seg]
	return g.at(lf.param(g, s))
}

// knot returns the arc length at the start of the segment with that index;
// the index one past the last gives the end of the path.
func (p *Path) knot(index int32) float64 {
	if int(index) >= len(p.segs) {
		return p.Length()
	}
	return p.leaves[p.first[index]].s0
}

// lengthAt returns the arc length on the path at parameter t of a segment.
func (p *Path) lengthAt(index int, t float64) float64 {
	i, last := p.first[index], p.first[index+1]-1
	for i < last && p.leaves[i].t1 < t {
		i++
	}
	return p.leaves[i].lengthTo(&p.segs[index], t)
}

// Part returns the stretch between two arc lengths, both clamped to the path.
// If from is greater than to the stretch runs backwards.
func (p *Path) Part(from, to float64) *Path {
	if from > to {
		return p.Part(to, from).Reverse()
	}
	l := p.Length()
	from, to = clamp(from, 0, l), clamp(to, 0, l)
	if len(p.segs) == 0 || from == 0 && to == l {
		return p
	}
	if from == to {
		at := p.At(from)
		return New(Line(at, at))
	}
	a, b := p.find(from, false), p.find(to, true)
	ga, gb := &p.segs[a.seg], &p.segs[b.seg]
	ta, tb := a.param(ga, from), b.param(gb, to)
	if a.seg == b.seg {
		return New(ga.part(ta, tb))
	}
	segs := make([]Segment, 0, b.seg-a.seg+1)
	if p.knot(a.seg+1)-from > sliver {
		segs = append(segs, ga.part(ta, 1))
	}
	segs = append(segs, p.segs[a.seg+1:b.seg]...)
	if to-p.knot(b.seg) > sliver {
		segs = append(segs, gb.part(0, tb))
	}
	if len(segs) == 0 { // on either side of one knot
		segs = append(segs, ga.part(ta, 1), gb.part(0, tb))
	}
	return New(segs...)
}

// sliver is the length up to which what Part cuts off a segment is left out: whether
// anything would be left of it depends on the digits of its coordinates, and so on
// where the path lies.
const sliver = 1e-9

func clamp(x, lo, hi float64) float64 {
	if !(x > lo) { // also when x is not a number
		return lo
	}
	return min(x, hi)
}

// Reverse returns the path run the other way.
func (p *Path) Reverse() *Path {
	segs := make([]Segment, len(p.segs))
	for i := range p.segs {
		segs[len(segs)-1-i] = p.segs[i].reverse()
	}
	return New(segs...)
}

// Move returns the path after the motion. Arc lengths stay as they are.
func (p *Path) Move(m Motion) *Path {
	q := &Path{segs: make([]Segment, len(p.segs)), first: p.first, leaves: p.leaves}
	for i := range p.segs {
		q.segs[i] = p.segs[i].move(m)
	}
	q.fence()
	return q
}

// Corners returns the arc lengths of the places inside the path where its
// direction turns by more than deg degrees at once: between segments, and at
// a cusp inside one.
func (p *Path) Corners(deg float64) []float64 {
	var out []float64
	limit := deg * math.Pi / 180
	sharp := func(before, after Point) bool {
		return math.Abs(math.Atan2(before.Cross(after), before.Dot(after))) > limit
	}
	for i := range p.segs {
		g := &p.segs[i]
		if i > 0 && sharp(p.segs[i-1].tangent(1, true), g.tangent(0, false)) {
			out = append(out, p.knot(int32(i)))
		}
		if g.kind != Bezier {
			continue
		}
		var t [2]float64
		for axis := range 2 {
			for _, t := range t[:g.extrema(axis == 1, &t)] {
				if g.speedAt(t) <= 1e-9*g.reach() && sharp(g.tangent(t, true), g.tangent(t, false)) {
					out = append(out, p.lengthAt(i, t))
				}
			}
		}
	}
	sort.Float64s(out)
	kept := out[:0]
	for _, s := range out { // a cusp is found once for each coordinate
		if len(kept) == 0 || s-kept[len(kept)-1] > 1e-9*p.Length() {
			kept = append(kept, s)
		}
	}
	return kept
}
