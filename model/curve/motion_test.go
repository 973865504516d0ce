package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func near(t require.TestingT, want, got Point) {
	require.Less(t, want.Dist(got), 1e-9, "want %v, got %v", want, got)
}

func TestMotions(t *testing.T) {
	near(t, pt(3, 4), Motion{}.Apply(pt(3, 4)))
	near(t, pt(4, 6), Translate(pt(1, 2)).Apply(pt(3, 4)))
	near(t, pt(1, 2), Rotate(pt(1, 1), math.Pi/2).Apply(pt(2, 1))) // clockwise on paper
	near(t, pt(4, 3), Mirror(pt(0, 0), pt(1, 1)).Apply(pt(3, 4)))
	near(t, pt(-3, 4), Mirror(pt(0, 0), pt(0, 9)).Apply(pt(3, 4)))
	near(t, pt(3, -4), Mirror(pt(0, 0), pt(0, 0)).Apply(pt(3, 4)))
	m := Lay(pt(1, 2), pt(1, 0), pt(5, 5), pt(0, 2), false)
	near(t, pt(5, 5), m.Apply(pt(1, 2)))
	near(t, pt(5, 8), m.Apply(pt(4, 2)))
	near(t, pt(4, 5), m.Apply(pt(1, 3)))
	near(t, pt(6, 5), Lay(pt(1, 2), pt(1, 0), pt(5, 5), pt(0, 2), true).Apply(pt(1, 3)))
}

func TestMotionsAreRigid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, n := genMotion(t), genMotion(t)
		p, q := genPoint(t), genPoint(t)
		require.InDelta(t, p.Dist(q), m.Apply(p).Dist(m.Apply(q)), 1e-9)
		near(t, p, m.Inverse().Apply(m.Apply(p)))
		near(t, p, m.Apply(m.Inverse().Apply(p)))
		near(t, n.Apply(m.Apply(p)), m.Then(n).Apply(p))
		near(t, m.Apply(p).Sub(m.Apply(q)), m.Direction(p.Sub(q)))
		require.Equal(t, m.Mirrored() != n.Mirrored(), m.Then(n).Mirrored())
		a := genPath(t, 3)
		s := genNumber(t, 0, 1, "s") * a.Length()
		require.Less(t, m.Apply(a.At(s)).Dist(a.Move(m).At(s)), 1e-9)
		require.InDelta(t, a.Length(), New(a.Move(m).Segments()...).Length(), 1e-8)
	})
}

// squares is what Fit makes least, from dense samples.
func squares(fixed, moving *Path, m Motion) float64 {
	sum := 0.0
	const n = 400
	for i := range n {
		x := (float64(i) + 0.5) / n
		d := fixed.At(x * fixed.Length()).Dist(m.Apply(moving.At(x * moving.Length())))
		sum += d * d / n
	}
	return sum
}

func TestFitFindsTheMotion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := genPath(t, 3)
		if a.Length() < 1 {
			t.Skip("no length")
		}
		m := genMotion(t)
		got := Fit(a.Move(m), a, m.Mirrored())
		require.Equal(t, m.Mirrored(), got.Mirrored())
		require.Less(t, Deviation(a.Move(m), a.Move(got), 1e-6).High, 1e-5)
	})
}

func TestFitIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := genPath(t, 3), genPath(t, 3)
		mirrored := rapid.Bool().Draw(t, "mirrored")
		best := Fit(a, b, mirrored)
		least := squares(a, b, best)
		for _, v := range []Point{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
			require.LessOrEqual(t, least, squares(a, b, best.Then(Translate(v)))+0.05)
		}
		for _, angle := range []float64{0.3, -0.3, 1.5, 3} {
			require.LessOrEqual(t, least, squares(a, b, best.Then(Rotate(best.Apply(b.At(b.Length()/2)), angle)))*1.001+0.05)
		}
	})
}

func TestSmooth(t *testing.T) {
	pts := []Point{pt(0, 0), pt(0, 0), pt(50, 20), pt(60, 90), pt(60, 90), pt(200, 100)}
	p := Smooth(pts...)
	require.Len(t, p.Segments(), 3)
	for _, q := range pts {
		_, d := p.Nearest(q)
		require.Less(t, d, 1e-9)
	}
	require.Empty(t, p.Corners(0.001), "smooth through its points")
	require.Less(t, Deviation(p, Smooth(pt(200, 100), pt(60, 90), pt(50, 20), pt(0, 0)).Reverse(), 1e-6).High, 1e-6)
	require.Equal(t, Straight, Smooth(pt(0, 0), pt(3, 4)).Segments()[0].Kind())
	require.InDelta(t, 100, Smooth(pt(0, 0), pt(20, 0), pt(70, 0), pt(100, 0)).Length(), 1e-9)
	// Evenly spaced points: the handles are those of the plain Catmull–Rom
	// spline, a sixth of the way between the neighbours (closed form).
	b, _ := Smooth(pt(0, 0), pt(3, 4), pt(6, 0), pt(9, 4)).Segments()[1].Controls()
	near(t, pt(3+1, 4), b)
}

func TestArcs(t *testing.T) {
	// Closed forms, W3C SVG 2 appendix B.2.
	g := Arc(pt(0, 0), 10, 10, 0, false, true, pt(100, 0)) // too small: scaled to 50
	rx, ry, _, _, _ := g.Ellipse()
	require.InDelta(t, 50, rx, 1e-9)
	require.InDelta(t, 50, ry, 1e-9)
	require.InDelta(t, 50*math.Pi, New(g).Length(), 1e-9)
	near(t, pt(50, -50), New(g).At(25*math.Pi)) // rising angle: over the top on paper
	large := New(Arc(pt(0, 0), 50, 50, 0, true, false, pt(50, 50)))
	require.InDelta(t, 75*math.Pi, large.Length(), 1e-9)
	require.Equal(t, Straight, Arc(pt(0, 0), 0, 5, 0, true, true, pt(9, 9)).Kind())
	require.Zero(t, New(Arc(pt(1, 1), 5, 5, 0, true, true, pt(1, 1))).Length())
	rapid.Check(t, func(t *rapid.T) {
		g := genArc(t, genPoint(t), genPoint(t))
		p := New(g)
		if g.Kind() != Elliptic {
			return
		}
		m := genMotion(t)
		moved := p.Move(m).Segments()[0]
		rx, ry, turn, big, sweep := moved.Ellipse()
		again := New(Arc(moved.Start(), rx, ry, turn, big, sweep, moved.End()))
		require.Less(t, Deviation(p.Move(m), again, 1e-4).High, 1e-3)
		require.Less(t, Deviation(p, New(g.Cubics()...), 1e-4).Low, 1e-3)
	})
}
