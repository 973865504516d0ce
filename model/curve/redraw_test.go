package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestEndAt(t *testing.T) {
	arc := New(Arc(Point{100, 0}, 100, 100, 0, true, true, Point{-100, 0})) // round the point [0, 0]
	bow := New(Line(Point{0, 0}, Point{50, 0}), Cubic(Point{50, 0}, Point{80, 0}, Point{100, 20}, Point{100, 50}))
	for _, c := range []struct {
		name       string
		path, want *Path
		end        Point
		handle     bool
	}{
		{"a line", Polyline(Point{0, 0}, Point{10, 0}), Polyline(Point{0, 0}, Point{10, 4}), Point{10, 4}, false},
		{"a bent line keeps its other points", Polyline(Point{0, 0}, Point{10, 0}, Point{10, 9}), Polyline(Point{0, 0}, Point{10, 0}, Point{12, 9}), Point{12, 9}, true},
		{"a curve whose handle stays", bow, New(Line(Point{0, 0}, Point{50, 0}), Cubic(Point{50, 0}, Point{80, 0}, Point{100, 20}, Point{104, 50})), Point{104, 50}, false},
		{"a curve whose handle goes along", bow, New(Line(Point{0, 0}, Point{50, 0}), Cubic(Point{50, 0}, Point{80, 0}, Point{104, 20}, Point{104, 50})), Point{104, 50}, true},
		{"a smooth curve through its points", Smooth(Point{0, 0}, Point{40, 10}, Point{90, 15}), Smooth(Point{0, 0}, Point{40, 10}, Point{90, 18}), Point{90, 18}, false},
		{"an arc that stays", arc, arc, arc.End(), true},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.path.EndAt(c.end, c.handle)
			require.Equal(t, c.end, got.End())
			require.InDelta(t, c.want.Length(), got.Length(), 1e-3)
			for s := 0.0; s <= c.want.Length(); s += c.want.Length() / 40 {
				_, off := got.Nearest(c.want.At(math.Min(s, c.want.Length())))
				require.Less(t, off, 1e-3, "the cubic of an eighth of a turn lies off by four millionths of the radius (closed form)")
			}
		})
	}
}
