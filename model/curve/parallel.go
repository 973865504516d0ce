package curve

import "math"

// mitreLimit is how far from its corner the tip of a mitre may lie, in units
// of the distance between the lines.
const mitreLimit = 4

// Parallel returns the line at distance |d| beside the path all along: to the
// right of the running direction as seen on paper if d is positive, to the
// left if it is negative. A clockwise outline has its inside to the right.
//
// Lines stay lines and circular arcs stay arcs, exactly. Cubics and other
// elliptic arcs are followed by cubics with the true parallel's end points and
// derivatives, within the tolerance in millimetres of where the points at
// equal parameter belong; that is bounded, not sampled (see parallelTrace).
//
// Where the path bends to the parallel's side more tightly than d, the true
// parallel turns back on itself, and so does what is returned: TightestInside
// tells where. A circular arc of radius below d comes out on the far side of
// its centre, run the other way.
//
// At a corner of the path, on its outer side, the two lines run on straight
// until they meet, but no farther from the corner than four times |d|, where
// the tip is cut square. On its inner side they are trimmed where they cross
// nearest to the corner; a straight line too short for that is turned round,
// and curves that do not cross are joined by a straight line. A line that runs
// there and back on itself has its outer side on both sides. Gaps in the path
// stay, and its start and end are no corner even where they are one point:
// CloseCorners is for those.
func (p *Path) Parallel(d, tolerance float64) *Path {
	if d == 0 || p.Length() == 0 {
		return p
	}
	runs := p.smoothRuns(d, max(tolerance, 1e-9))
	for i := 1; i < len(runs); i++ {
		if runs[i].follows {
			corner(&runs[i-1], &runs[i], d)
		}
	}
	var segs []Segment
	for i := range runs {
		segs = runs[i].appendTo(segs)
	}
	return New(joined(segs)...)
}

// run is a stretch of a path without corners, and its parallel.
type run struct {
	path     *Path // the parallel
	length   float64
	from, to float64 // what is kept of it; from > to turns a line round
	follows  bool    // starts where the run before ends
	at, end  Point   // ends of the stretch itself, and its directions there
	in, out  Point
	tip      []Point // between this parallel and the next
}

// straight tells whether the run is one line.
func (r *run) straight() bool { return len(r.path.segs) == 1 && r.path.segs[0].kind == Straight }

// smoothRuns cuts the path at its corners and gaps, and draws the parallel of
// every run.
func (p *Path) smoothRuns(d, tolerance float64) []run {
	var runs []run
	var segs []Segment
	var now run
	finish := func() {
		now.path = New(joined(segs)...)
		now.length = now.path.Length()
		now.to = now.length
		runs = append(runs, now)
		segs = nil
	}
	for i := range p.segs {
		t0 := 0.0
		for _, t1 := range append(p.segs[i].cusps(), 1) {
			g := p.segs[i].part(t0, t1)
			if g.reach() == 0 {
				continue
			}
			in, out := g.tangent(0, false), g.tangent(1, true)
			gap := g.a.Dist(now.end) > joinNear
			if len(segs) > 0 && (gap || in.Sub(now.out).Len()*math.Abs(d) > joinNear) {
				finish()
			}
			if len(segs) == 0 {
				now = run{at: g.a, in: in, follows: len(runs) > 0 && !gap}
			}
			segs = append(segs, g.parallel(d, tolerance)...)
			now.end, now.out = g.d, out
			t0 = t1
		}
	}
	finish()
	return runs
}

// cusps returns the parameters inside the segment at which it stands still.
func (g *Segment) cusps() []float64 {
	var out []float64
	if g.kind != Bezier {
		return nil
	}
	var turns [2]float64
	for axis := range 2 {
		for _, t := range turns[:g.extrema(axis == 1, &turns)] {
			fresh := t > 1e-9 && t < 1-1e-9 && (len(out) == 0 || math.Abs(t-out[len(out)-1]) > 1e-6)
			if fresh && g.speedAt(t) <= 1e-9*g.reach() {
				out = append(out, t)
			}
		}
	}
	if len(out) == 2 && out[0] > out[1] {
		out[0], out[1] = out[1], out[0]
	}
	return out
}

// parallel returns the parallel of a segment without a cusp inside.
func (g *Segment) parallel(d, tolerance float64) []Segment {
	a := g.a.Add(g.tangent(0, false).Perp().Scale(d))
	e := g.d.Add(g.tangent(1, true).Perp().Scale(d))
	switch {
	case g.kind == Straight:
		return []Segment{Line(a, e)}
	case g.kind == Elliptic && g.round():
		h := *g
		hand := math.Copysign(1, g.c.Cross(g.v))
		h.c = g.c.Scale(1 - math.Copysign(d, d*g.turn*hand)/g.c.Len())
		h.a, h.d, h.v = a, e, h.c.Perp().Scale(hand)
		return []Segment{h}
	}
	out := parallelTrace(g, d).follow(nil, 0, 1, tolerance, 30)
	segs := make([]Segment, len(out))
	for i := range out {
		segs[i] = out[i].seg
	}
	return segs
}

// round tells whether the arc is one of a circle, to what is left of one after
// many motions; what Parallel makes of it is one to the last bit.
func (g *Segment) round() bool {
	u, v := g.c.Len(), g.v.Len()
	return math.Abs(u-v) <= 1e-13*(u+v)
}

// corner settles how the parallels of two runs meet at the corner between
// them.
func corner(a, b *run, d float64) {
	turn := a.out.Cross(b.in)
	inner := turn*d > 0 && (a.out.Dot(b.in) > 0 || math.Abs(turn) > 1e-9)
	half := math.Atan2(math.Abs(turn), a.out.Dot(b.in)) / 2
	size := math.Abs(d)
	sin, cos := math.Sincos(half)
	run := size * sin / cos // from the end of each parallel to the mitre's tip
	if !inner {
		if size/cos <= mitreLimit*size {
			a.tip = []Point{a.path.End().Add(a.out.Scale(run))}
			return
		}
		run = size * (mitreLimit - cos) / sin
		a.tip = []Point{a.path.End().Add(a.out.Scale(run)), b.path.Start().Sub(b.in.Scale(run))}
		return
	}
	if a.straight() && b.straight() {
		if run <= min(a.length, b.length) || size/cos <= mitreLimit*size {
			a.to, b.from = a.length-run, run
		}
		return
	}
	if sa, sb, ok := meet(a.path, b.path, a.length+b.length, 0); ok {
		a.to, b.from = sa, sb
	}
}

// appendTo appends what is kept of the run's parallel and the way to the next.
// Mitres prolong straight lines rather than adding to them.
func (r *run) appendTo(segs []Segment) []Segment {
	rest := r.path
	switch {
	case r.straight():
		g := r.path.segs[0]
		along := g.d.Sub(g.a).Unit()
		rest = New(Line(g.a.Add(along.Scale(r.from)), g.d.Sub(along.Scale(r.length-r.to))))
	case r.from < r.to:
		rest = r.path.Part(r.from, r.to)
	}
	first := len(segs)
	segs = append(segs, rest.segs...)
	if first > 0 && r.follows {
		last, next := &segs[first-1], &segs[first]
		if gap := last.d.Dist(next.a); gap > joinNear {
			segs = append(segs[:first], Line(last.d, next.a))
			segs = append(segs, rest.segs...)
			segs = merged(segs, first)
		}
	}
	for _, q := range r.tip {
		at := len(segs)
		segs = append(segs, Line(segs[at-1].d, q))
		segs = merged(segs, at-1)
	}
	return segs
}

// merged makes one line of the segments i and i+1 if both are lines and the
// second runs on from the first.
func merged(segs []Segment, i int) []Segment {
	g, h := segs[i], segs[i+1]
	if g.kind != Straight || h.kind != Straight {
		return segs
	}
	u, v := g.d.Sub(g.a).Unit(), h.d.Sub(h.a).Unit()
	if u.Dot(v) < 0 || math.Abs(u.Cross(v))*min(g.reach(), h.reach()) > joinNear {
		return segs
	}
	segs[i].d = h.d
	return append(segs[:i+1], segs[i+2:]...)
}
