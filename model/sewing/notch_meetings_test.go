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

// A place proposed for a notch keeps clear of the corners, and no clear place
// lies nearer (closed form: an edge 200 mm long with corners at its ends, and
// another notch in the middle).
func TestClearPlace(t *testing.T) {
	square := func(notches ...float64) *model.Piece {
		p := &model.Piece{Name: "front", Layer: &model.Layer{Name: "shell"}}
		corners := []curve.Point{{}, {X: 200}, {X: 200, Y: 200}, {Y: 200}}
		for i, from := range corners {
			line := curve.Polyline(from, corners[(i+1)%4])
			p.Edges = append(p.Edges, &model.Edge{Name: "edge", Piece: p, Index: i, Path: line})
		}
		for _, at := range notches {
			p.Notches = append(p.Notches, &model.Notch{Name: "n", Piece: p, On: p.Edges[0], At: at})
		}
		return p
	}
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(0, 200).Draw(t, "at")
		clear := rapid.Float64Range(2, 40).Draw(t, "clear")
		p := square(at, 100)
		got, ok := sewing.ClearPlace(p.Notches[0], at, clear)
		require.True(t, ok)
		off := func(s float64) bool { return s >= clear && s <= 200-clear && (s <= 100-clear || s >= 100+clear) }
		require.True(t, off(got), "%v is clear", got)
		if off(at) {
			require.Equal(t, at, got)
		}
		for s := 0.0; s <= 200; s += 0.5 {
			if off(s) {
				require.LessOrEqual(t, math.Abs(got-at), math.Abs(s-at)+0.5)
			}
		}
	})
	_, ok := sewing.ClearPlace(square(10, 100).Notches[0], 10, 60)
	require.False(t, ok, "no room anywhere")
}
