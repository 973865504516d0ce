package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// TestWildCoordinates draws ends that all but coincide, bends of a billionth of
// a millimetre and the like. What such a path is worth nobody can say; but every
// figure is finite, every enclosure holds its own ends, and all of it ends.
func TestWildCoordinates(t *testing.T) {
	finite := func(t *rapid.T, figures ...float64) {
		for _, x := range figures {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%v", figures)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		p, q := genPathOf(t, 0, 3), genPathOf(t, 0, 3)
		l := p.Length()
		finite(t, l, q.Length())
		for _, s := range []float64{0, 1e-12, l / 3, l} {
			at, way := p.At(s), p.Direction(s)
			finite(t, at.X, at.Y, way.X, way.Y)
		}
		d := Deviation(p, q, 0.01)
		finite(t, d.Low, d.High)
		require.LessOrEqual(t, d.Low, d.High)
		require.LessOrEqual(t, d.High-d.Low, 0.01+1e-6)
		r := NewRegion(genOutline(t))
		for _, out := range []float64{r.Outside(p, 0.01).Low, r.Outside(p, 0.01).High, r.Room(q, 0.01).Low, r.Room(q, 0.01).High} {
			finite(t, out)
		}
		for _, g := range p.Segments() {
			_, _, turn, _, _ := g.Ellipse()
			finite(t, turn)
		}
		SelfCrossings([]*Path{p, q})
	})
}
