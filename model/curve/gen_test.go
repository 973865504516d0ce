package curve

import (
	"math"

	"pgregory.net/rapid"
)

// Drafts have their figures to a thousandth of a millimetre or so. Lines that
// differ by less say nothing of where they lead: an arc whose ends are 1e-10 mm
// apart turns wherever the last digit points.
const fine = 1. / 1024

func genNumber(t *rapid.T, low, high float64, label string) float64 {
	return genMultiple(t, fine, low, high, label)
}

// genMultiple draws a multiple of the step, or any number where it is zero.
func genMultiple(t *rapid.T, step, low, high float64, label string) float64 {
	x := rapid.Float64Range(low, high).Draw(t, label)
	if step > 0 {
		x = math.Round(x/step) * step
	}
	return x
}

func genPoint(t *rapid.T) Point { return genPointOf(t, fine) }

// genPointOf draws points on a coarse grid now and then, so that coincidences
// happen, and anywhere otherwise, to the given step.
func genPointOf(t *rapid.T, step float64) Point {
	if rapid.Bool().Draw(t, "grid") {
		return Point{float64(rapid.IntRange(-3, 3).Draw(t, "gx")) * 50, float64(rapid.IntRange(-3, 3).Draw(t, "gy")) * 50}
	}
	return Point{genMultiple(t, step, -200, 200, "x"), genMultiple(t, step, -200, 200, "y")}
}

func genSegment(t *rapid.T, from Point) Segment { return genSegmentOf(t, fine, from) }

// genSegmentOf draws a segment from a given point, awkward ones included.
func genSegmentOf(t *rapid.T, step float64, from Point) Segment {
	point := func() Point { return genPointOf(t, step) }
	to := point()
	switch rapid.IntRange(0, 8).Draw(t, "kind") {
	case 0:
		return Line(from, to)
	case 1: // no length, now and then
		return Line(from, from)
	case 2, 3:
		return Cubic(from, point(), point(), to)
	case 4: // the start's derivative vanishes
		return Cubic(from, from, point(), to)
	case 5: // a cusp: control points crosswise on a square
		d := to.Sub(from)
		up := d.Perp()
		return Cubic(from, to.Add(up), from.Add(up), to)
	case 6: // straight, there and back
		return Cubic(from, from.Lerp(to, 1.5), from.Lerp(to, -0.5), to)
	case 7: // a loop that closes
		return Cubic(from, point(), point(), from)
	}
	return genArc(t, from, to)
}

func genArc(t *rapid.T, from, to Point) Segment {
	return Arc(from, genNumber(t, 5, 300, "rx"), genNumber(t, 5, 300, "ry"), genNumber(t, -180, 180, "turn"),
		rapid.Bool().Draw(t, "large"), rapid.Bool().Draw(t, "sweep"), to)
}

func genPath(t *rapid.T, most int) *Path { return genPathOf(t, fine, most) }

func genPathOf(t *rapid.T, step float64, most int) *Path {
	var segs []Segment
	at := genPointOf(t, step)
	for range rapid.IntRange(1, most).Draw(t, "segments") {
		segs = append(segs, genSegmentOf(t, step, at))
		at = segs[len(segs)-1].End()
	}
	return New(segs...)
}

func genMotion(t *rapid.T) Motion {
	m := Lay(genPoint(t), Point{1, 0}, genPoint(t), Point{1, 0}, rapid.Bool().Draw(t, "mirrored"))
	return m.Then(Rotate(genPoint(t), genNumber(t, -4, 4, "radians")))
}

// genOutline draws a star-shaped closed outline of one to five edges about
// the origin, with curves of all kinds between its corners.
func genOutline(t *rapid.T) []*Path {
	n := rapid.IntRange(3, 7).Draw(t, "corners")
	pts := make([]Point, n)
	for i := range pts {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r := float64(rapid.IntRange(2, 8).Draw(t, "radius")) * 25
		pts[i] = Point{r * cos, r * sin}
	}
	var edges []*Path
	for i := range pts {
		a, b := pts[i], pts[(i+1)%n]
		switch rapid.IntRange(0, 3).Draw(t, "side") {
		case 0:
			edges = append(edges, New(Line(a, b)))
		case 1:
			edges = append(edges, New(Line(a, a.Lerp(b, 0.5)), Line(a.Lerp(b, 0.5), b)))
		case 2:
			bow := b.Sub(a).Perp().Scale(genNumber(t, -0.2, 0.2, "bow"))
			edges = append(edges, New(Cubic(a, a.Lerp(b, 0.3).Add(bow), a.Lerp(b, 0.7).Add(bow), b)))
		case 3:
			l := a.Dist(b)
			edges = append(edges, New(Arc(a, l, l*0.8, 20, false, rapid.Bool().Draw(t, "sweep"), b)))
		}
	}
	return edges
}

// samples returns n+1 points evenly spaced along the path.
func samples(p *Path, n int) []Point {
	out := make([]Point, n+1)
	for i := range out {
		out[i] = p.At(p.Length() * float64(i) / float64(n))
	}
	return out
}
