package curve

import (
	"math"

	"pgregory.net/rapid"
)

// genPoint draws points on a coarse grid now and then, so that coincidences
// happen, and anywhere otherwise.
func genPoint(t *rapid.T) Point {
	if rapid.Bool().Draw(t, "grid") {
		return Point{float64(rapid.IntRange(-3, 3).Draw(t, "gx")) * 50, float64(rapid.IntRange(-3, 3).Draw(t, "gy")) * 50}
	}
	r := rapid.Float64Range(-200, 200)
	return Point{r.Draw(t, "x"), r.Draw(t, "y")}
}

// genSegment draws a segment from a given point, awkward ones included.
func genSegment(t *rapid.T, from Point) Segment {
	to := genPoint(t)
	switch rapid.IntRange(0, 8).Draw(t, "kind") {
	case 0:
		return Line(from, to)
	case 1: // no length, now and then
		return Line(from, from)
	case 2, 3:
		return Cubic(from, genPoint(t), genPoint(t), to)
	case 4: // the start's derivative vanishes
		return Cubic(from, from, genPoint(t), to)
	case 5: // a cusp: control points crosswise on a square
		d := to.Sub(from)
		up := d.Perp()
		return Cubic(from, to.Add(up), from.Add(up), to)
	case 6: // straight, there and back
		return Cubic(from, from.Lerp(to, 1.5), from.Lerp(to, -0.5), to)
	case 7: // a loop that closes
		return Cubic(from, genPoint(t), genPoint(t), from)
	}
	r := rapid.Float64Range(5, 300)
	return Arc(from, r.Draw(t, "rx"), r.Draw(t, "ry"), rapid.Float64Range(-180, 180).Draw(t, "turn"),
		rapid.Bool().Draw(t, "large"), rapid.Bool().Draw(t, "sweep"), to)
}

func genPath(t *rapid.T, most int) *Path {
	var segs []Segment
	at := genPoint(t)
	for range rapid.IntRange(1, most).Draw(t, "segments") {
		segs = append(segs, genSegment(t, at))
		at = segs[len(segs)-1].End()
	}
	return New(segs...)
}

func genMotion(t *rapid.T) Motion {
	m := Lay(genPoint(t), Point{1, 0}, genPoint(t), Point{1, 0}, rapid.Bool().Draw(t, "mirrored"))
	return m.Then(Rotate(genPoint(t), rapid.Float64Range(-4, 4).Draw(t, "radians")))
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
			bow := b.Sub(a).Perp().Scale(rapid.Float64Range(-0.2, 0.2).Draw(t, "bow"))
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
