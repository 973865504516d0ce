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

// outline is a closed run of monotone pieces with arc lengths.
type outline struct {
	r      *Region
	path   *Path // all sides in one; knots fall on sides
	starts []float64
	length float64
	found  []contact
	apart  int  // how many of the contacts are not between neighbours
	halved int  // how many pairs of stretches were looked at
	plain  bool // halve every pair, for comparison
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
//
// A line drawn over itself very often touches itself in more places than can be
// gone through. Then the crossings among the first of them are returned, and
// whole is false.
func SelfCrossings(edges []*Path) (found []Meeting, whole bool) { return selfCrossings(edges, false) }

func selfCrossings(edges []*Path, plain bool) (found []Meeting, whole bool) {
	r := NewRegion(edges)
	if len(r.sides) == 0 {
		return nil, true
	}
	o := &outline{r: r, plain: plain}
	segs := make([]Segment, len(r.sides))
	for i := range r.sides {
		segs[i] = r.sides[i].Segment
	}
	o.path = New(segs...)
	o.length = o.path.Length()
	if len(o.path.segs) != len(r.sides) { // nothing but a point
		return nil, true
	}
	o.collect()
	for _, c := range o.merged() {
		if !o.adjoining(c) && o.crosses(c) {
			found = append(found, o.meeting(c))
		}
	}
	slices.SortStableFunc(found, func(a, b Meeting) int {
		return cmp.Or(cmp.Compare(a.EdgeA, b.EdgeA), cmp.Compare(a.SA, b.SA), cmp.Compare(a.SB, b.SB))
	})
	return found, !o.spent()
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
