package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestMeet(t *testing.T) {
	right := Polyline(pt(0, 0), pt(100, 0))
	down := func(x, from, to float64) *Path { return Polyline(pt(x, from), pt(x, to)) }
	circle := New(Arc(pt(0, -50), 50, 50, 0, false, true, pt(0, 50))) // right half, run downward
	tests := []struct {
		name   string
		a, b   *Path
		reach  float64
		sa, sb float64
		ok     bool
	}{
		{"ends coincide", right, down(100, 0, 50), 10, 100, 0, true},
		{"ends coincide to rounding", right, down(100+1e-10, 0, 50), 10, 100, 0, true},
		{"ends coincide, no reach", right, down(100, 0, 50), 0, 100, 0, true},
		{"both trimmed", right, down(90, -5, 50), 20, 90, 5, true},
		{"both run on", right, down(110, 5, 50), 20, 110, -5, true},
		{"one trimmed, one run on", right, down(95, 7, 50), 20, 95, -7, true},
		{"out of reach", right, down(130, 5, 50), 20, 100, 0, false},
		{"just within reach", right, down(120, 5, 50), 20, 120, -5, true},
		{"trimming out of reach", right, down(70, -5, 50), 20, 100, 0, false},
		{"parallel, apart", right, Polyline(pt(100, 1), pt(200, 1)), 50, 100, 0, false},
		{"in line, gap", right, Polyline(pt(106, 0), pt(200, 0)), 50, 103, -3, true},
		{"in line, overlapping", right, Polyline(pt(94, 0), pt(200, 0)), 50, 97, 3, true},
		{"in line, gap too wide", right, Polyline(pt(206, 0), pt(300, 0)), 50, 100, 0, false},
		{"against each other", right, Polyline(pt(104, 0), pt(104, 0)), 50, 104, 0, true},
		{"touches in its middle", right, Polyline(pt(95, -10), pt(97, 0), pt(99, -10)), 50, 97, math.Hypot(2, 10), true},
		{"no length, nowhere", Polyline(pt(0, 0)), Polyline(pt(1, 1)), 50, 0, 0, false},
		// A level line at height 30 meets the half circle at (40, 30), closed form.
		{"curve trimmed", circle, Polyline(pt(60, 30), pt(20, 30)), 60, 50 * (math.Pi/2 + math.Asin(0.6)), 20, true},
		{"curve run on along its tangent", circle, Polyline(pt(-10, 90), pt(-10, 40)), 45, 50*math.Pi + 10, 40, true},
		// At height 0 it is met at (50, 0) only; the far side is not drawn.
		{"nearest of two", circle, Polyline(pt(30, 60), pt(30, -60)), 200, 50 * (math.Pi/2 + math.Asin(0.8)), 20, true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			sa, sb, ok := Meet(tt.a, tt.b, tt.reach)
			require.Equal(t, tt.ok, ok)
			require.InDelta(t, tt.sa, sa, 1e-9, "closed form")
			require.InDelta(t, tt.sb, sb, 1e-9, "closed form")
			// The same corner seen from the other side.
			rb, ra, ok := Meet(tt.b.Reverse(), tt.a.Reverse(), tt.reach)
			require.Equal(t, tt.ok, ok)
			require.InDelta(t, tt.sa, tt.a.Length()-ra, 1e-7)
			require.InDelta(t, tt.sb, tt.b.Length()-rb, 1e-7)
		})
	}
}

// What Meet returns is a meeting, within reach; and lines that were drawn
// through a common point and cut off or shortened there are found to meet.
func TestMeetMeets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := genPath(t, 2), genPath(t, 2)
		reach := genNumber(t, 0, 200, "reach")
		sa, sb, ok := Meet(a, b, reach)
		if !ok {
			require.Equal(t, a.Length(), sa)
			require.Zero(t, sb)
			return
		}
		require.LessOrEqual(t, math.Abs(sa-a.Length()), reach+1e-9)
		require.LessOrEqual(t, math.Abs(sb), reach+1e-9)
		require.LessOrEqual(t, runOnAt(a, sa).Dist(runOnAt(b, sb)), 1e-6)
	})
}

func TestMeetFindsCommonPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := genSmooth(t), genSmooth(t)
		at := a.at(genNumber(t, 0.6, 0.95, "ta"))
		tb := genNumber(t, 0.05, 0.4, "tb")
		p := New(a)
		q := New(b.move(Translate(at.Sub(b.at(tb)))))
		s, _ := p.Nearest(at)
		u, _ := q.Nearest(at)
		angle := math.Abs(p.Direction(s).Cross(q.Direction(u)))
		if angle < 1e-6 { // they all but coincide
			return
		}
		sa, sb, ok := Meet(p, q, 1000)
		require.True(t, ok)
		require.LessOrEqual(t, runOnAt(p, sa).Dist(runOnAt(q, sb)), 1e-7)
		within := 1e-6
		if angle < 1e-2 {
			within = 1e-3 // lines that touch are within 1e-9 of each other for some way
		}
		require.LessOrEqual(t, math.Hypot(p.Length()-sa, sb), math.Hypot(p.Length()-s, u)+within, "none nearer")
	})
}

func runOnAt(p *Path, s float64) Point {
	l := p.Length()
	switch {
	case s < 0:
		return p.Start().Add(p.Direction(0).Scale(s))
	case s > l:
		return p.End().Add(p.DirectionBefore(l).Scale(s - l))
	}
	return p.At(s)
}

// Lines that run along each other all the way are no trap.
func TestMeetAlongEachOther(t *testing.T) {
	g := Cubic(pt(0, 0), pt(30, 60), pt(90, 60), pt(120, 0))
	h := g.part(0.4, 1)
	p, q := New(g.part(0, 0.7)), New(h)
	sa, sb, ok := Meet(p, q, 1000)
	require.True(t, ok)
	require.LessOrEqual(t, runOnAt(p, sa).Dist(runOnAt(q, sb)), 1e-6)
	require.InDelta(t, p.Length()-sa, sb, 0.01, "in the middle of what they share")
}

func TestCut(t *testing.T) {
	arc := New(Arc(pt(-50, 0), 50, 50, 0, false, true, pt(50, 0))) // starts upward, ends downward
	line := Polyline(pt(0, 0), pt(10, 0))
	l := arc.Length()
	tests := []struct {
		name       string
		path       *Path
		from, to   float64
		start, end Point
		segments   int
	}{
		{"inside", line, 2, 7, pt(2, 0), pt(7, 0), 1},
		{"beyond both ends of a line", line, -5, 30, pt(-5, 0), pt(30, 0), 1},
		{"backwards", line, 30, -5, pt(30, 0), pt(-5, 0), 1},
		{"all before", line, -5, -2, pt(-5, 0), pt(-2, 0), 1},
		{"all beyond", line, 12, 20, pt(12, 0), pt(20, 0), 1},
		{"beyond both ends of an arc", arc, -7, l + 9, pt(-50, 7), pt(50, 9), 3},
		{"one end", arc, l / 2, l + 9, pt(0, -50), pt(50, 9), 2},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			q := tt.path.Cut(tt.from, tt.to)
			require.InDelta(t, 0, tt.start.Dist(q.Start()), 1e-9)
			require.InDelta(t, 0, tt.end.Dist(q.End()), 1e-9)
			require.InDelta(t, math.Abs(tt.to-tt.from), q.Length(), 1e-9)
			require.Len(t, q.segs, tt.segments)
		})
	}
	require.Same(t, arc, arc.Cut(0, l))
}

// parallels offsets every edge of a clockwise outline by its own distance.
func parallels(edges []*Path, d ...float64) []*Path {
	out := make([]*Path, len(edges))
	for i, e := range edges {
		out[i] = e.Parallel(d[i%len(d)], 1e-3)
	}
	return out
}

func TestCloseCornersClosedForms(t *testing.T) {
	sides := func(pts ...Point) []*Path {
		var out []*Path
		for i := range pts {
			out = append(out, Polyline(pts[i], pts[(i+1)%len(pts)]))
		}
		return out
	}
	rectangle := sides(pt(0, 0), pt(100, 0), pt(100, 60), pt(0, 60))
	half := []*Path{New(Arc(pt(-50, 0), 50, 50, 0, false, true, pt(50, 0))), Polyline(pt(50, 0), pt(-50, 0))}
	inside := math.Sqrt(40*40 - 10*10)
	tests := []struct {
		name    string
		edges   []*Path
		d       []float64
		lengths []float64
		area    float64
	}{
		{"rectangle, inside", rectangle, []float64{10}, []float64{80, 40, 80, 40}, 80 * 40},
		{"rectangle, outside", rectangle, []float64{-10}, []float64{120, 80, 120, 80}, 120 * 80},
		{"rectangle, each side its own", rectangle, []float64{-10, -15, -40, -20}, []float64{135, 110, 135, 110}, 135 * 110},
		{"rectangle, none on one side", rectangle, []float64{-10, 0, -10, -10}, []float64{110, 80, 110, 80}, 110 * 80},
		// The arc of radius 40 and the line 10 above the diameter.
		{"half circle, inside", half, []float64{10}, []float64{40 * (math.Pi - 2*math.Asin(0.25)), 2 * inside},
			0.5*1600*(math.Pi-2*math.Asin(0.25)) - inside*10},
		// The arc of radius 60 runs on straight by 10.
		{"half circle, outside", half, []float64{-10}, []float64{60*math.Pi + 20, 120}, 1800*math.Pi + 1200},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			out, open := CloseCorners(parallels(tt.edges, tt.d...), 100)
			require.Equal(t, -1, open)
			for i, want := range tt.lengths {
				require.InDelta(t, want, out[i].Length(), 1e-9, "closed form, edge %d", i)
				require.Equal(t, out[i].End(), out[(i+1)%len(out)].Start())
			}
			require.InDelta(t, tt.area, NewRegion(out).Area(), 1e-7, "closed form")
		})
	}
}

func TestCloseCornersThatCannotBeClosed(t *testing.T) {
	// A strip 15 wide, 10 taken off on each side: nothing is left of the ends.
	strip := []*Path{Polyline(pt(0, 0), pt(100, 0)), Polyline(pt(100, 0), pt(100, 15)), Polyline(pt(100, 15), pt(0, 15)), Polyline(pt(0, 15), pt(0, 0))}
	in := parallels(strip, 10)
	out, open := CloseCorners(in, 100)
	require.Equal(t, 0, open)
	require.Same(t, in[1], out[1], "left as it is")

	// Out of reach: the second corner.
	edges := []*Path{Polyline(pt(0, 0), pt(100, 0)), Polyline(pt(100, 0), pt(100, 50)), Polyline(pt(60, 90), pt(0, 90)), Polyline(pt(0, 90), pt(0, 0))}
	out, open = CloseCorners(edges, 10)
	require.Equal(t, 1, open)
	require.Same(t, edges[1], out[1])
	out, open = CloseCorners(edges, 40)
	require.Equal(t, -1, open)
	require.InDelta(t, 90, out[1].Length(), 1e-9)
	require.InDelta(t, 100, out[2].Length(), 1e-9)

	out, open = CloseCorners(nil, 10)
	require.Empty(t, out)
	require.Equal(t, -1, open)
}

func TestCloseCornersOfAClosedOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := genOutline(t)
		out, open := CloseCorners(edges, genNumber(t, 0, 100, "reach"))
		require.Equal(t, -1, open)
		for i := range edges {
			require.Same(t, edges[i], out[i])
		}
	})
}

// One edge that starts and ends at the same corner is closed like others.
func TestCloseCornersOfOneEdge(t *testing.T) {
	p := Polyline(pt(50, 5), pt(50, 100), pt(-50, 100), pt(-50, 0), pt(60, 0))
	out, open := CloseCorners([]*Path{p}, 20)
	require.Equal(t, -1, open)
	require.InDelta(t, 0, out[0].Start().Dist(pt(50, 0)), 1e-9)
	require.InDelta(t, 0, out[0].End().Dist(pt(50, 0)), 1e-9)
	require.InDelta(t, 400, out[0].Length(), 1e-9)
}

// An allowance round a convex outline of lines adds perimeter·d plus, for the
// mitres, d²·Σtan(half the turn) to its area; and taking it off again gives the
// outline back.
func TestAllowanceThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 8).Draw(t, "corners")
		pts := make([]Point, n)
		for i := range pts { // points on an ellipse, so the outline is convex
			sin, cos := math.Sincos(2 * math.Pi * (float64(i) + genNumber(t, -0.3, 0.3, "about")) / float64(n))
			pts[i] = pt(200*cos, 130*sin)
		}
		d := genNumber(t, 1, 20, "d")
		var edges []*Path
		tans := 0.0
		for i := range pts {
			a, b, c := pts[i], pts[(i+1)%n], pts[(i+2)%n]
			edges = append(edges, Polyline(a, b))
			u, v := b.Sub(a), c.Sub(b)
			tans += math.Tan(math.Atan2(u.Cross(v), u.Dot(v)) / 2)
		}
		outer, open := CloseCorners(parallels(edges, -d), 1000)
		require.Equal(t, -1, open)
		r := NewRegion(edges)
		require.InDelta(t, r.Area()+d*r.Perimeter()+d*d*tans, NewRegion(outer).Area(), 1e-5, "closed form")
		back, open := CloseCorners(parallels(outer, d), 1000)
		require.Equal(t, -1, open)
		for i := range edges {
			require.InDelta(t, edges[i].Length(), back[i].Length(), 1e-7)
			require.InDelta(t, 0, edges[i].Start().Dist(back[i].Start()), 1e-7)
		}
	})
}

func BenchmarkMeet(b *testing.B) {
	p, q := benchEdges()
	turned := q.Move(Rotate(q.Start(), 1.4)).Move(Translate(p.At(p.Length() - 12).Sub(q.At(15))))
	for b.Loop() {
		Meet(p, turned, 40)
	}
}

func BenchmarkCloseCorners(b *testing.B) {
	edges, _ := benchRegion()
	outer := parallels(edges, -10)
	for b.Loop() {
		CloseCorners(outer, 40)
	}
}
