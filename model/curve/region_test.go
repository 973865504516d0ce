package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func rectangle(x0, y0, x1, y1 float64) []*Path {
	return []*Path{
		Polyline(pt(x0, y0), pt(x1, y0)), Polyline(pt(x1, y0), pt(x1, y1)),
		Polyline(pt(x1, y1), pt(x0, y1)), Polyline(pt(x0, y1), pt(x0, y0)),
	}
}

func TestAreaClosedForms(t *testing.T) {
	ellipse := fullEllipse(170, 110)
	tests := []struct {
		name      string
		edges     []*Path
		want      float64 // half of the bow, closed form, integrated by the Simpson rule
		clockwise bool
	}{
		{"rectangle", rectangle(10, 20, 110, 70), 5000, true},
		{"rectangle reversed", []*Path{Join(rectangle(10, 20, 110, 70)...).Reverse()}, 5000, false},
		{"ellipse", []*Path{ellipse}, math.Pi * 170 * 110, true},
		{"half disc, chord bridged", []*Path{New(Arc(pt(-50, 0), 50, 50, 0, false, true, pt(50, 0)))}, math.Pi * 1250, true},
		{"parabola", []*Path{New(quadratic(pt(0, 0), pt(50, 80), pt(100, 0)))}, 2.0 / 3 * 100 * 40, false},
		{"far away", []*Path{ellipse.Move(Translate(pt(1e6, -1e6)))}, math.Pi * 170 * 110, true},
		{"mirrored", []*Path{ellipse.Move(Mirror(pt(0, 0), pt(1, 3)))}, math.Pi * 170 * 110, false},
		{"nothing", nil, 0, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := NewRegion(tt.edges)
			require.InDelta(t, tt.want, r.Area(), 1e-6)
			require.Equal(t, tt.clockwise, r.Clockwise())
		})
	}
	require.InDelta(t, 300.0, NewRegion(rectangle(10, 20, 110, 70)).Perimeter(), 1e-12)
	require.InDelta(t, 50*math.Pi+100, NewRegion(tests[3].edges).Perimeter(), 1e-9)
}

// plainWinding counts turns of the direction from q to dense samples.
func plainWinding(edges []*Path, q Point) (inside bool, distance float64) {
	turn, distance := 0.0, math.Inf(1)
	var all []Point
	for _, e := range edges {
		all = append(all, samples(e, 250)...)
	}
	for i, p := range all {
		n := all[(i+1)%len(all)]
		u, w := p.Sub(q), n.Sub(q)
		turn += math.Atan2(u.Cross(w), u.Dot(w))
		distance = min(distance, toChord(q, p, n))
	}
	return math.Abs(turn) > 3, distance
}

func TestContainsAgainstTurning(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := genOutline(t)
		m := genMotion(t)
		moved := make([]*Path, len(edges))
		for i := range edges {
			moved[i] = edges[i].Move(m)
		}
		r, rm := NewRegion(edges), NewRegion(moved)
		for range 20 {
			q := genPoint(t)
			inside, d := plainWinding(edges, q)
			if d < 0.1 {
				continue
			}
			require.Equal(t, inside, r.Contains(q), "%v", q)
			require.Equal(t, inside, rm.Contains(m.Apply(q)), "%v moved", q)
		}
		e := edges[0]
		require.True(t, r.Contains(e.At(genNumber(t, 0, e.Length(), "s"))), "the outline is inside")
		require.InDelta(t, r.Area(), rm.Area(), 1e-6)
	})
}

func TestSpansCases(t *testing.T) {
	notched := []*Path{Polyline(pt(0, 0), pt(40, 0), pt(50, 30), pt(60, 0), pt(100, 0)), Polyline(pt(100, 0), pt(100, 80)), Polyline(pt(100, 80), pt(0, 80)), Polyline(pt(0, 80), pt(0, 0))}
	slanting := []*Path{Polyline(pt(0, 0), pt(100, 0)), Polyline(pt(100, 0), pt(100, 80.00000002)), Polyline(pt(100, 80.00000002), pt(0, 79.99999998)), Polyline(pt(0, 79.99999998), pt(0, 0))}
	stepped := []*Path{Polyline(pt(0, 0), pt(50, 0), pt(50, 40), pt(100, 40), pt(100, 80), pt(0, 80), pt(0, 0))}
	diamond := []*Path{Polyline(pt(50, 0), pt(100, 50), pt(50, 100), pt(0, 50), pt(50, 0))}
	tests := []struct {
		name  string
		edges []*Path
		y     float64
		want  []Span
	}{
		{"between", notched, 40, []Span{{X0: 0, X1: 100, E0: 3, S0: 40, E1: 1, S1: 40}}},
		{"through the notch", notched, 15, []Span{{X0: 0, X1: 45, E0: 3, S0: 65}, {X0: 55, X1: 100, E1: 1, S1: 15}}},
		{"at the notch's tip", notched, 30, []Span{{X0: 0, X1: 100, E0: 3, S0: 50, E1: 1, S1: 30}}},
		{"on the top edge", notched, 0, []Span{{X0: 0, X1: 40, E0: 3, S0: 80}, {X0: 60, X1: 100, E1: 1, S1: 0}}},
		{"on the hem", notched, 80, []Span{{X0: 0, X1: 100, E0: 3, S0: 0, E1: 1, S1: 80}}},
		{"a hem off by rounding", slanting, 80, []Span{{X0: 0, X1: 100, E0: 3, S0: 0, E1: 1, S1: 80}}},
		{"on a step", stepped, 40, []Span{{X0: 0, X1: 100}}},
		{"through corners", diamond, 50, []Span{{X0: 0, X1: 100}}},
		{"touching a tip", diamond, 0, []Span{{X0: 50, X1: 50}}},
		{"above all", diamond, -1, []Span{}},
	}
	for _, tt := range tests {
		for name, edges := range map[string][]*Path{"": tt.edges} {
			t.Run(tt.name+name, func(t *testing.T) {
				got := NewRegion(edges).Spans(tt.y)
				require.Len(t, got, len(tt.want))
				for i, w := range tt.want {
					require.InDelta(t, w.X0, got[i].X0, 1e-6)
					require.InDelta(t, w.X1, got[i].X1, 1e-6)
					for _, end := range []struct {
						e    int
						s, x float64
					}{{got[i].E0, got[i].S0, got[i].X0}, {got[i].E1, got[i].S1, got[i].X1}} {
						require.Less(t, edges[end.e].At(end.s).Dist(pt(end.x, tt.y)), 1e-6)
					}
					if w.S0 != 0 || w.E0 != 0 {
						require.Equal(t, w.E0, got[i].E0)
						require.InDelta(t, w.S0, got[i].S0, 1e-6)
					}
					if w.S1 != 0 || w.E1 != 0 {
						require.Equal(t, w.E1, got[i].E1)
						require.InDelta(t, w.S1, got[i].S1, 1e-6)
					}
				}
			})
		}
	}
}

func TestSpansAgainstContains(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := genOutline(t)
		r := NewRegion(edges)
		ys := []float64{genNumber(t, -200, 200, "y"), edges[0].Start().Y, edges[1].Start().Y, r.Bounds().Max.Y}
		for _, y := range ys {
			spans := r.Spans(y)
			in := func(x float64) bool {
				for _, s := range spans {
					if s.X0 <= x && x <= s.X1 {
						return true
					}
				}
				return false
			}
			for i, s := range spans {
				require.LessOrEqual(t, s.X0, s.X1)
				if i > 0 {
					require.Less(t, spans[i-1].X1, s.X0)
				}
				for _, end := range []struct {
					e    int
					s, x float64
				}{{s.E0, s.S0, s.X0}, {s.E1, s.S1, s.X1}} {
					if end.e >= 0 {
						require.Less(t, edges[end.e].At(end.s).Dist(pt(end.x, y)), 1e-6)
					}
				}
			}
			for range 30 {
				x := genNumber(t, -220, 220, "x")
				if r.nearest(pt(x, y)).distance > 1e-5 {
					require.Equal(t, r.Contains(pt(x, y)), in(x), "at %v, %v", x, y)
				}
			}
		}
	})
}

func TestCrossings(t *testing.T) {
	zigzag := Polyline(pt(0, 0), pt(10, 10), pt(20, 10), pt(30, 0), pt(40, 10), pt(50, 20))
	s := math.Sqrt2 * 10
	tests := []struct {
		name string
		p    *Path
		y    float64
		want []float64
	}{
		{"stretch on the level, then through a corner", zigzag, 10, []float64{s, s + 10, 3*s + 10}},
		{"touching", zigzag, 0, []float64{0, 2*s + 10}},
		{"through", zigzag, 5, []float64{s / 2, 1.5*s + 10, 2.5*s + 10}},
		{"missing", zigzag, -1, nil},
		{"touching a bow", New(quadratic(pt(0, 0), pt(50, 80), pt(100, 0))), 40, []float64{133.370540 / 2}}, // half of the bow, closed form, integrated by the Simpson rule
		{"touching a circle", fullEllipse(50, 50), 50, []float64{25 * math.Pi}},
		{"two stretches in one line", Polyline(pt(0, 0), pt(10, 0), pt(20, 0)), 0, []float64{0, 20}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := tt.p.Crossings(tt.y)
			require.Len(t, got, len(tt.want), "%v", got)
			for i := range tt.want {
				require.InDelta(t, tt.want[i], got[i], 1e-6)
			}
		})
	}
}

func TestCrossingsLieOnTheLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genPath(t, 4)
		y := genPoint(t).Y
		got := p.Crossings(y)
		for i, s := range got {
			require.InDelta(t, y, p.At(s).Y, 2e-7)
			if i > 0 {
				require.Less(t, got[i-1], s)
			}
		}
		pts := samples(p, 700)
		changes := 0
		for i := 1; i < len(pts); i++ {
			if (pts[i-1].Y-y)*(pts[i].Y-y) < 0 && math.Abs(pts[i].Y-y) > 1e-5 && math.Abs(pts[i-1].Y-y) > 1e-5 {
				changes++
			}
		}
		require.GreaterOrEqual(t, len(got), changes)
	})
}
