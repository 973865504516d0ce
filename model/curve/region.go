package curve

import "math"

// Region is the area inside a closed outline. The outline is made of edges in
// order, each a path; where one does not end on the very point at which the
// next starts a straight line bridges the gap. A point is inside when the
// outline winds round it, in either sense; the outline itself counts as
// inside.
type Region struct {
	edges  []*Path
	sides  []side
	boxes  boxTree    // of the sides
	pieces []monotone // owner is an index into sides
	spread boxTree    // the boxes of the pieces
	bounds Box
	area   float64
}

// side is one segment of the outline.
type side struct {
	Segment
	edge int32 // −1 for a bridged gap
	seg  int32 // index of the segment within its edge
}

// NewRegion returns the region inside the edges. Edges of no length are
// tolerated; nothing at all gives an empty region.
func NewRegion(edges []*Path) *Region {
	r := &Region{edges: append([]*Path(nil), edges...)}
	var start, at Point
	begun := false
	bridge := func(to Point) {
		if at != to {
			r.add(Line(at, to), -1, 0)
		}
	}
	for e, p := range r.edges {
		for i := range p.segs {
			if begun {
				bridge(p.segs[i].a)
			} else {
				start, begun = p.segs[i].a, true
			}
			r.add(p.segs[i], int32(e), int32(i))
			at = p.segs[i].d
		}
	}
	if begun {
		bridge(start)
	}
	boxes := make([]Box, len(r.sides))
	for i := range r.sides {
		boxes[i] = r.sides[i].Segment.box()
	}
	r.boxes = newBoxTree(boxes)
	if begun {
		r.bounds = r.boxes.whole()
	}
	for i := range r.sides {
		r.pieces = r.sides[i].appendMonotone(r.pieces, int32(i))
		r.area += r.sides[i].Segment.area(r.bounds.Min.Lerp(r.bounds.Max, 0.5))
	}
	spread := make([]Box, len(r.pieces))
	for i := range r.pieces {
		spread[i] = r.pieces[i].box()
	}
	r.spread = newBoxTree(spread)
	return r
}

func (r *Region) add(g Segment, edge, seg int32) {
	r.sides = append(r.sides, side{Segment: g, edge: edge, seg: seg})
}

// SignedArea returns the area in square millimetres, exact for lines, cubics
// and arcs by Green's theorem: positive if the outline runs clockwise as seen
// on paper. Where an outline crosses itself its loops are summed with their
// signs.
func (r *Region) SignedArea() float64 { return r.area }

// Area returns the area in square millimetres, never negative.
func (r *Region) Area() float64 { return math.Abs(r.area) }

// Clockwise tells whether the outline runs clockwise as seen on paper, with Y
// downward.
func (r *Region) Clockwise() bool { return r.area > 0 }

// Bounds returns the smallest upright box that holds the region.
func (r *Region) Bounds() Box { return r.bounds }

// Perimeter returns the length of the outline, bridged gaps included.
func (r *Region) Perimeter() float64 {
	sum := 0.0
	for _, e := range r.edges {
		sum += e.Length()
	}
	for i := range r.sides {
		if r.sides[i].edge < 0 {
			sum += r.sides[i].a.Dist(r.sides[i].d)
		}
	}
	return sum
}

// onOutline is how near to the outline a point counts as lying on it, in mm.
const onOutline = 1e-9

// Contains tells whether q lies inside or on the outline.
func (r *Region) Contains(q Point) bool {
	if len(r.sides) == 0 || r.bounds.distance(q) > onOutline {
		return false
	}
	return r.winds(q) || r.nearest(q).distance <= onOutline
}

// winds tells whether the outline winds round q. It counts the pieces that
// pass to the right of q; a piece takes its upper end but not its lower one,
// and neighbours share ends exactly, so none is counted twice or missed. Of a
// run of pieces that lies to the right of q as a whole only the two ends count.
func (r *Region) winds(q Point) bool {
	winding := 0
	passed := func(first, end int) {
		if r.pieces[first].p0.Y <= q.Y {
			winding++
		}
		if r.pieces[end-1].p1.Y <= q.Y {
			winding--
		}
	}
	settled := func(b *Box, first, end int) bool {
		switch {
		case b.Max.X < q.X || b.Max.Y <= q.Y || b.Min.Y > q.Y:
			return true
		case b.Min.X > q.X:
			passed(first, end)
			return true
		}
		return false
	}
	for i := r.spread.next(0, settled); i < len(r.pieces); i = r.spread.next(i+1, settled) {
		m := &r.pieces[i]
		g := &r.sides[m.owner].Segment
		if g.at(m.levelParam(g, q.Y)).X > q.X {
			passed(i, i+1)
		}
	}
	return winding != 0
}

// foot is the point of the outline nearest to some point.
type foot struct {
	side     int
	t        float64
	distance float64
}

// nearest finds the foot of q on the outline.
func (r *Region) nearest(q Point) foot {
	first := r.boxes.nearest(q)
	best := foot{side: first}
	best.t, best.distance = r.sides[first].nearest(q)
	tooFar := func(b *Box, _, _ int) bool { return b.distance(q) >= best.distance }
	for i := r.boxes.next(0, tooFar); i < len(r.sides); i = r.boxes.next(i+1, tooFar) {
		if i == first {
			continue
		}
		if t, d := r.sides[i].nearest(q); d < best.distance {
			best = foot{i, t, d}
		}
	}
	return best
}

// place returns the edge and the arc length on it of a place on a side; for a
// bridged gap edge is −1 and the length counts from the gap's start.
func (r *Region) place(sideIndex int, t float64) (edge int, s float64) {
	d := &r.sides[sideIndex]
	if d.edge < 0 {
		return -1, t * d.a.Dist(d.d)
	}
	return int(d.edge), r.edges[d.edge].lengthAt(int(d.seg), t)
}
