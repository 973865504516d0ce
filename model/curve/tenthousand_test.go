package curve

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// pairKinds are the ways in which the second edge of a pair comes about from
// the first one, a path of three cubics.
var pairKinds = []struct {
	name string
	draw func(r *rand.Rand, a *Path) *Path
}{
	{"apart", func(r *rand.Rand, _ *Path) *Path { return drawEdge(r) }},
	{"shaken", func(r *rand.Rand, a *Path) *Path { return shaken(r, a, 3) }},
	{"reversed", func(r *rand.Rand, a *Path) *Path { return shaken(r, a.Reverse(), r.Float64()) }},
	{"mirrored", func(r *rand.Rand, a *Path) *Path { return a.Move(Mirror(a.Start(), a.End())) }},
	{"moved", func(r *rand.Rand, a *Path) *Path {
		return a.Move(Rotate(a.End(), r.NormFloat64()*0.1).Then(Translate(spot(r, 5))))
	}},
	{"split", func(r *rand.Rand, a *Path) *Path {
		l := a.Length()
		cut := []float64{0, r.Float64() * l, r.Float64() * l, r.Float64() * l, l}
		slices.Sort(cut)
		return Join(a.Part(0, cut[1]), a.Part(cut[1], cut[2]), a.Part(cut[2], cut[3]), a.Part(cut[3], l))
	}},
	{"degenerate", drawDegenerate},
	{"touching", func(r *rand.Rand, a *Path) *Path { // the same up to a corner, and back at the end
		segs := a.Segments()
		segs[1] = Cubic(segs[1].a, segs[1].a.Add(spot(r, 40)), segs[1].d.Add(spot(r, 40)), segs[1].d)
		return New(segs...)
	}},
	{"a part", func(r *rand.Rand, a *Path) *Path {
		return a.Cut(r.Float64()*a.Length(), r.Float64()*a.Length()*1.2)
	}},
}

func spot(r *rand.Rand, reach float64) Point {
	return Point{(2*r.Float64() - 1) * reach, (2*r.Float64() - 1) * reach}
}

// drawEdge draws three cubics, either at random or as a cutter would: running
// on without a corner.
func drawEdge(r *rand.Rand) *Path {
	var segs []Segment
	at, last := spot(r, 100), spot(r, 60)
	for range 3 {
		b, c, d := spot(r, 150), spot(r, 150), spot(r, 150)
		if r.IntN(2) == 0 {
			d = at.Add(last).Add(spot(r, 60))
			b, c = at.Add(last.Scale(r.Float64())), d.Sub(spot(r, 40))
		}
		segs = append(segs, Cubic(at, b, c, d))
		at, last = d, d.Sub(c)
	}
	return New(segs...)
}

func shaken(r *rand.Rand, a *Path, reach float64) *Path {
	segs := a.Segments()
	at := segs[0].a
	for i, g := range segs {
		end := g.d.Add(spot(r, reach))
		segs[i] = Cubic(at, g.b.Add(spot(r, reach)), g.c.Add(spot(r, reach)), end)
		at = end
	}
	return New(segs...)
}

// drawDegenerate draws an edge of three cubics that stand still, turn back,
// close up or have no length at all.
func drawDegenerate(r *rand.Rand, a *Path) *Path {
	var segs []Segment
	at := a.Start()
	for _, g := range a.Segments() {
		up := g.d.Sub(at).Perp()
		segs = append(segs, []Segment{
			Cubic(at, at, g.c, g.d),
			Cubic(at, at, g.d, g.d),
			Cubic(at, g.d.Add(up), at.Add(up), g.d),
			Cubic(at, at.Lerp(g.d, 1.5), at.Lerp(g.d, -0.5), g.d),
			Cubic(at, at.Lerp(g.d, 1.0/3), at.Lerp(g.d, 2.0/3), g.d),
			Cubic(at, g.b, g.c, at),
			Cubic(at, at, at, at),
		}[r.IntN(7)])
		at = segs[len(segs)-1].d
	}
	return New(segs...)
}

// pair returns the i-th pair, the name of its kind, and an outline that runs
// along its first edge.
func pair(i int) (kind string, a, b *Path, outline []*Path) {
	r := rand.New(rand.NewPCG(1, uint64(i)))
	k := pairKinds[i%len(pairKinds)]
	a = drawEdge(r)
	b = k.draw(r, a)
	outline = []*Path{a, Polyline(a.End(), spot(r, 200), spot(r, 200), a.Start())}
	if r.IntN(4) == 0 {
		outline = outline[:1] // the gap is bridged
	}
	return k.name, a, b, outline
}

// chords are an edge as a plain program would have it: short chords, and the
// length that was run through at the end of each. They lie within 0.002 mm of
// the edge, which must have no gaps.
type chords struct {
	pts  []Point
	upTo []float64
}

func flatten(p *Path) chords {
	c := chords{[]Point{p.Start()}, []float64{0}}
	for _, g := range p.Segments() {
		b, e := g.Controls()
		// Within (1/n)²/8 · max|r”|, where |r”| is greatest at an end.
		bend := 6 * max(g.a.Sub(b.Scale(2)).Add(e).Len(), b.Sub(e.Scale(2)).Add(g.d).Len())
		n := int(math.Sqrt(bend/(8*0.002))) + 1
		if g.kind == Straight {
			n = 1
		}
		for i := 1; i <= n; i++ {
			t := float64(i) / float64(n)
			s := 1 - t
			q := g.a.Scale(s * s * s).Add(b.Scale(3 * s * s * t)).Add(e.Scale(3 * s * t * t)).Add(g.d.Scale(t * t * t))
			if g.kind == Straight {
				q = g.d
			}
			c.upTo = append(c.upTo, c.upTo[len(c.upTo)-1]+c.pts[len(c.pts)-1].Dist(q))
			c.pts = append(c.pts, q)
		}
	}
	return c
}

// at returns the points at n+1 equal shares of the length.
func (c chords) at(n int) []Point {
	out := make([]Point, n+1)
	i, whole := 0, c.upTo[len(c.upTo)-1]
	for k := range out {
		s := whole * float64(k) / float64(n)
		for i < len(c.pts)-2 && c.upTo[i+1] < s {
			i++
		}
		out[k] = c.pts[i]
		if i+1 < len(c.pts) && c.upTo[i+1] > c.upTo[i] {
			out[k] = c.pts[i].Lerp(c.pts[i+1], min(1, (s-c.upTo[i])/(c.upTo[i+1]-c.upTo[i])))
		}
	}
	return out
}

// outside returns how far q lies outside the closed line through the points.
func (c chords) outside(q Point) float64 {
	turns, near := 0, math.Inf(1)
	p := c.pts[len(c.pts)-1]
	for _, n := range c.pts {
		ux, uy, vx, vy := n.X-p.X, n.Y-p.Y, q.X-p.X, q.Y-p.Y
		if (p.Y <= q.Y) != (n.Y <= q.Y) {
			if side := ux*vy - uy*vx; n.Y > q.Y && side > 0 {
				turns++
			} else if n.Y <= q.Y && side < 0 {
				turns--
			}
		}
		if along := ux*vx + uy*vy; along > 0 {
			k := min(1, along/(ux*ux+uy*uy))
			vx, vy = vx-k*ux, vy-k*uy
		}
		near = min(near, vx*vx+vy*vy)
		p = n
	}
	if turns != 0 {
		return 0
	}
	return math.Sqrt(near)
}

// TestTenThousandPairs holds Deviation and Outside against dense samples of
// chords for 10,000 pairs of edges. Samples fall short of the worst place, so
// the upper bounds must reach them, but for the chords' own error, and the
// lower bounds can exceed them by no more than half a step.
func TestTenThousandPairs(t *testing.T) {
	pairs := 10000
	if testing.Short() {
		pairs = 1000
	}
	const tolerance, chordsOff, steps, probes = 0.01, 0.004, 1000, 50
	short := 0.0 // how far an upper bound stayed below the samples
	for i := range pairs {
		kind, a, b, outline := pair(i)
		fa, fb := flatten(a), flatten(b)

		got := Deviation(a, b, tolerance)
		ref := 0.0
		qs := fb.at(steps)
		for k, p := range fa.at(steps) {
			ref = max(ref, p.Dist(qs[k]))
		}
		step := (a.Length() + b.Length()) / (2 * steps)
		require.False(t, math.IsNaN(got.Low+got.High+got.At), "pair %d, %s: %v", i, kind, got)
		require.LessOrEqual(t, got.High-got.Low, tolerance+1e-9, "pair %d, %s: deviation %v", i, kind, got)
		require.GreaterOrEqual(t, got.High, ref-chordsOff, "pair %d, %s: deviation %v", i, kind, got)
		require.LessOrEqual(t, got.Low, ref+step+chordsOff, "pair %d, %s: deviation %v", i, kind, got)
		short = max(short, ref-got.High)

		got = NewRegion(outline).Outside(b, tolerance)
		ring := flatten(Join(outline...))
		ref = 0
		for _, q := range fb.at(probes) {
			ref = max(ref, ring.outside(q))
		}
		step = b.Length() / (2 * probes)
		require.False(t, math.IsNaN(got.Low+got.High+got.At), "pair %d, %s: %v", i, kind, got)
		require.LessOrEqual(t, got.High-got.Low, tolerance+1e-9, "pair %d, %s: outside %v", i, kind, got)
		require.GreaterOrEqual(t, got.High, ref-chordsOff, "pair %d, %s: outside %v", i, kind, got)
		require.LessOrEqual(t, got.Low, ref+step+chordsOff, "pair %d, %s: outside %v", i, kind, got)
		short = max(short, ref-got.High)
	}
	t.Logf("%d pairs; upper bounds stayed below the samples by at most %.2g mm", pairs, short)
}

// BenchmarkPairs reports the median time that a pair of edges takes.
func BenchmarkPairs(b *testing.B) {
	const pairs = 900
	for _, fn := range []struct {
		name string
		run  func(a, b *Path, r *Region)
	}{
		{"deviation", func(a, b *Path, _ *Region) { Deviation(a, b, 0.01) }},
		{"outside", func(_, b *Path, r *Region) { r.Outside(b, 0.01) }},
	} {
		b.Run(fn.name, func(b *testing.B) {
			took := make([]time.Duration, 0, pairs)
			for i := 0; b.Loop(); i++ {
				b.StopTimer()
				_, p, q, outline := pair(i % pairs)
				r := NewRegion(outline)
				b.StartTimer()
				begin := time.Now()
				fn.run(p, q, r)
				took = append(took, time.Since(begin))
			}
			slices.Sort(took)
			b.ReportMetric(float64(took[len(took)/2]), "median-ns")
		})
	}
}
