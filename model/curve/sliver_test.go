package curve_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model/curve"
)

// A cut at a knot, as near as arithmetic comes to it, leaves nothing of the segment
// beyond, wherever on the paper the path lies: else two copies of one line would be
// made of different segments.
func TestPartLeavesNoSlivers(t *testing.T) {
	line := curve.New(
		curve.Cubic(curve.Point{}, curve.Point{X: 26.67}, curve.Point{X: 53.33}, curve.Point{X: 80}),
		curve.Cubic(curve.Point{X: 80}, curve.Point{X: 88.6, Y: 1.3}, curve.Point{X: 97.1, Y: 2.6}, curve.Point{X: 105.7, Y: 3.9}),
		curve.Cubic(curve.Point{X: 105.7, Y: 3.9}, curve.Point{X: 122.9, Y: 9.2}, curve.Point{X: 157.5, Y: -1.5}, curve.Point{X: 192.5, Y: -14}),
	)
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(-2000, 2000)
		moved := line.Move(curve.Rotate(curve.Point{}, rapid.Float64Range(0, 6.28).Draw(t, "turn")).
			Then(curve.Translate(curve.Point{X: at.Draw(t, "x"), Y: at.Draw(t, "y")})))
		knot := moved.Segments()[0]
		off := rapid.Float64Range(-1e-12, 1e-12).Draw(t, "off")
		k := curve.New(knot).Length() + off
		require.Len(t, moved.Part(0, k).Segments(), 1)
		require.Len(t, moved.Part(k, line.Length()).Segments(), 2)
		require.InDelta(t, k, moved.Part(0, k).Length(), 1e-9)
		require.InDelta(t, line.Length()-k, moved.Part(k, line.Length()).Length(), 1e-9)
	})
}
