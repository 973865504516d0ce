package curve

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"
)

// benchEdges are two edges of three cubics each, alike but for a bow of a few
// millimetres in the middle.
func benchEdges() (a, b *Path) {
	a = New(
		Cubic(pt(0, 0), pt(30, 10), pt(70, 40), pt(90, 90)),
		Cubic(pt(90, 90), pt(110, 140), pt(120, 200), pt(120, 260)),
		Cubic(pt(120, 260), pt(120, 320), pt(110, 380), pt(100, 440)))
	b = New(
		Cubic(pt(0, 0), pt(31, 10), pt(70, 42), pt(91, 90)),
		Cubic(pt(91, 90), pt(112, 140), pt(124, 200), pt(122, 260)),
		Cubic(pt(122, 260), pt(120, 320), pt(111, 380), pt(100, 440)))
	return a, b
}

func BenchmarkNew(b *testing.B) {
	p, _ := benchEdges()
	segs := p.Segments()
	for b.Loop() {
		New(segs...)
	}
}

func BenchmarkAt(b *testing.B) {
	p, _ := benchEdges()
	l, i := p.Length(), 0
	for b.Loop() {
		p.At(l * float64(i%997) / 997)
		i++
	}
}

func BenchmarkAtEllipse(b *testing.B) {
	p := fullEllipse(170, 110)
	l, i := p.Length(), 0
	for b.Loop() {
		p.At(l * float64(i%997) / 997)
		i++
	}
}

func BenchmarkNearest(b *testing.B) {
	p, _ := benchEdges()
	i := 0
	for b.Loop() {
		p.Nearest(pt(float64(i%101), float64(i%307)))
		i++
	}
}

func BenchmarkFit(b *testing.B) {
	p, q := benchEdges()
	for b.Loop() {
		Fit(p, q, false)
	}
}

func BenchmarkDeviation(b *testing.B) {
	p, q := benchEdges()
	for b.Loop() {
		Deviation(p, q, 0.01)
	}
}

func BenchmarkDeviationSame(b *testing.B) {
	p, _ := benchEdges()
	for b.Loop() {
		Deviation(p, p, 0.01)
	}
}

// BenchmarkDeviationMedian reports the median over random pairs of edges of
// three cubics whose control points differ by a few millimetres.
func BenchmarkDeviationMedian(b *testing.B) {
	rnd := rand.New(rand.NewPCG(1, 2))
	base, _ := benchEdges()
	var took []time.Duration
	for b.Loop() {
		segs := base.Segments()
		shake := func(p Point) Point { return p.Add(Point{rnd.Float64()*6 - 3, rnd.Float64()*6 - 3}) }
		at := shake(segs[0].a)
		for i := range segs {
			g := segs[i]
			end := shake(g.d)
			segs[i] = Cubic(at, shake(g.b), shake(g.c), end)
			at = end
		}
		q := New(segs...)
		begin := time.Now()
		Deviation(base, q, 0.01)
		took = append(took, time.Since(begin))
	}
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2]), "median-ns")
	b.ReportMetric(float64(took[len(took)*99/100]), "p99-ns")
}

func benchRegion() ([]*Path, *Path) {
	a, _ := benchEdges()
	edges := []*Path{a, Polyline(pt(100, 440), pt(-80, 440)), Polyline(pt(-80, 440), pt(-80, 60)), Smooth(pt(-80, 60), pt(-60, 20), pt(0, 0))}
	inner := New(
		Cubic(pt(0, 1), pt(28, 10), pt(66, 40), pt(86, 90)),
		Cubic(pt(86, 90), pt(106, 140), pt(116, 200), pt(116, 260)),
		Cubic(pt(116, 260), pt(116, 320), pt(106, 380), pt(96, 439)))
	return edges, inner
}

func BenchmarkRegion(b *testing.B) {
	edges, _ := benchRegion()
	for b.Loop() {
		NewRegion(edges)
	}
}

func BenchmarkContains(b *testing.B) {
	edges, _ := benchRegion()
	r, i := NewRegion(edges), 0
	for b.Loop() {
		r.Contains(pt(float64(i%101), float64(i%307)))
		i++
	}
}

func BenchmarkSpans(b *testing.B) {
	edges, _ := benchRegion()
	r, i := NewRegion(edges), 0
	for b.Loop() {
		r.Spans(float64(i % 440))
		i++
	}
}

func BenchmarkOutside(b *testing.B) {
	edges, inner := benchRegion()
	r := NewRegion(edges)
	for b.Loop() {
		r.Outside(inner, 0.01)
	}
}

func BenchmarkOutsideShared(b *testing.B) {
	edges, _ := benchRegion()
	r := NewRegion(edges)
	for b.Loop() {
		r.Outside(edges[0], 0.01)
	}
}

func BenchmarkRoom(b *testing.B) {
	edges, inner := benchRegion()
	r := NewRegion(edges)
	for b.Loop() {
		r.Room(inner, 0.01)
	}
}

func BenchmarkSelfCrossings(b *testing.B) {
	edges, _ := benchRegion()
	for b.Loop() {
		SelfCrossings(edges)
	}
}
