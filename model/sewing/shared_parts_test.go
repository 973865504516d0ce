package sewing_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/sewing"
)

// Two walks cut alike lie on each other wherever and whichever way round the
// second is drawn; and a bulge shows as what it is.
func TestSharedPartsLieOnEachOther(t *testing.T) {
	region := func(points ...curve.Point) []*curve.Path {
		var out []*curve.Path
		for i := range points {
			out = append(out, curve.Polyline(points[i], points[(i+1)%len(points)]))
		}
		return out
	}
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(50, 400).Draw(t, "length")
		bulge := rapid.Float64Range(0, 5).Draw(t, "bulge")
		motion := curve.Rotate(curve.Point{}, rapid.Float64Range(0, 6).Draw(t, "turn")).
			Then(curve.Translate(curve.Point{X: rapid.Float64Range(-500, 500).Draw(t, "shift")}))
		if rapid.Bool().Draw(t, "turned over") {
			motion = curve.Mirror(curve.Point{}, curve.Point{X: 1}).Then(motion)
		}
		side := func(m curve.Motion, up float64) *sewing.Walk {
			p := &model.Piece{Name: "front", Layer: &model.Layer{Name: "shell"}}
			paths := region(curve.Point{}, curve.Point{X: length / 2, Y: -up}, curve.Point{X: length}, curve.Point{X: length / 2, Y: 300})
			top := curve.Join(paths[0], paths[1])
			for i, path := range []*curve.Path{top, paths[2], paths[3]} {
				p.Edges = append(p.Edges, &model.Edge{Name: "edge", Piece: p, Index: i, Path: path.Move(m)})
			}
			n := p.Edges[0].Length()
			return &sewing.Walk{Length: n, Runs: []sewing.Run{{Edge: p.Edges[0], To: n, Length: n}}}
		}
		a, b := side(curve.Identity(), 20), side(motion, 20+bulge)
		parts := sewing.SharedParts(a, b, sewing.PairCrossings(a, b, 5), 5)
		require.Len(t, parts, 1)
		bound, err := parts[0].Apart()
		require.NoError(t, err)
		require.LessOrEqual(t, bound.High, bulge+0.011)
		// A triangle raised by the bulge, both laid with their centres together:
		// half of it stands out in the middle and half at the ends.
		require.GreaterOrEqual(t, bound.High, bulge*0.45-1e-6)
		require.InDelta(t, a.EndAngle(false), side(motion, 20).EndAngle(false), 1e-6)
	})
}
