package sewing_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/sewing"
)

// topOf is a walk along a line drawn as the top of a piece that hangs below it,
// the whole moved.
func topOf(m curve.Motion, points ...curve.Point) *sewing.Walk {
	p := &model.Piece{Name: "front", Layer: &model.Layer{Name: "shell"}}
	first, last := points[0], points[len(points)-1]
	low := curve.Point{X: (first.X + last.X) / 2, Y: 300}
	for i, path := range []*curve.Path{curve.Polyline(points...), curve.Polyline(last, low), curve.Polyline(low, first)} {
		p.Edges = append(p.Edges, &model.Edge{Name: "edge", Piece: p, Index: i, Path: path.Move(m)})
	}
	n := p.Edges[0].Length()
	return &sewing.Walk{Length: n, Runs: []sewing.Run{{Edge: p.Edges[0], To: n, Length: n}}}
}

// Two lines 200 mm long are laid together by both ends, unless one of the ends is
// what differs; all figures in closed form, wherever the second line is drawn.
func TestParting(t *testing.T) {
	at := func(x, y float64) curve.Point { return curve.Point{X: x, Y: y} }
	const bend = 5 * math.Pi / 180
	kick := at(150+50*math.Cos(bend), -50*math.Sin(bend))
	across := 2 * 50 * math.Sin(bend/2)
	for _, c := range []struct {
		name  string
		line  []curve.Point
		by    sewing.LaidBy
		at    float64
		apart float64
	}{
		{"a bow in the middle", []curve.Point{at(0, 0), at(100, -4), at(200, 0)}, sewing.ByBothEnds, 100, 4},
		{"a bow nearer one end", []curve.Point{at(0, 0), at(80, -4), at(200, 0)}, sewing.ByBothEnds, 80, 4},
		{"the end turned off", []curve.Point{at(0, 0), at(150, 0), kick}, sewing.ByStart, 200, across},
		{"the start turned off", []curve.Point{at(200-kick.X, kick.Y), at(50, 0), at(200, 0)}, sewing.ByEnd, 0, across},
	} {
		t.Run(c.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				motion := curve.Rotate(curve.Point{}, rapid.Float64Range(0, 6).Draw(t, "turn")).
					Then(curve.Translate(curve.Point{X: rapid.Float64Range(-500, 500).Draw(t, "shift")}))
				if rapid.Bool().Draw(t, "turned over") {
					motion = curve.Mirror(curve.Point{}, curve.Point{X: 1}).Then(motion)
				}
				a, b := topOf(curve.Identity(), at(0, 0), at(200, 0)), topOf(motion, c.line...)
				part := sewing.SharedParts(a, b, nil, 5)[0]
				parting, err := part.Parting(0.5)
				require.NoError(t, err)
				require.Equal(t, c.by, parting.By)
				require.InDelta(t, c.at, parting.At, 1)
				require.InDelta(t, c.apart, parting.Apart, 0.1)
				bound, err := part.Apart()
				require.NoError(t, err)
				require.LessOrEqual(t, bound.High, parting.Apart+0.02, "the closest fit is closer")
			})
		})
	}
}
