package curve

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func newRamp(t require.TestingT, ys, values []float64) *Ramp {
	r, err := NewRamp(ys, values)
	require.NoError(t, err)
	return r
}

func TestRampClosedForms(t *testing.T) {
	tests := []struct {
		name         string
		ys, values   []float64
		y            float64
		value, slope float64
	}{
		{"one height", []float64{5}, []float64{3}, -100, 3, 0},
		{"above all", []float64{0, 100}, []float64{0, 10}, -1, 0, 0},
		{"below all", []float64{0, 100}, []float64{0, 10}, 101, 10, 0},
		// Two heights: 10(3x² − 2x³), x = y/100, since both end slopes are 0.
		{"two heights, middle", []float64{0, 100}, []float64{0, 10}, 50, 5, 0.15},
		{"two heights, quarter", []float64{0, 100}, []float64{0, 10}, 25, 10 * (3.0/16 - 2.0/64), 10 * (6*0.25 - 6*0.0625) / 100},
		// Secants 1/10 and 3/10 over stretches of 10 and 30: three-point slope
		// (30·0.1 + 10·0.3)/40 = 0.15; in units of the secants (0, 1.5) and
		// (0.5, 0): inside the circle.
		{"slope at an inner height", []float64{0, 10, 40}, []float64{0, 1, 10}, 10, 1, 0.15},
		// Halfway in the first stretch: (0+1)/2 + 10/8·(0 − 0.15).
		{"middle of the first stretch", []float64{0, 10, 40}, []float64{0, 1, 10}, 5, 0.5 - 0.1875, 0.1*1.5 - 0.15/4},
		// Secants 0.1 and 1: slope 0.55, 5.5 secants of the first stretch, so it
		// is brought back to 3 of them: 0.3.
		{"slope brought back", []float64{0, 10, 20}, []float64{0, 1, 11}, 10, 1, 0.3},
		{"slope brought back, upside down", []float64{-20, -10, 0}, []float64{11, 1, 0}, -10, 1, -0.3},
		{"turning place", []float64{0, 10, 20}, []float64{0, 5, 1}, 10, 5, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := newRamp(t, tt.ys, tt.values)
			require.InDelta(t, tt.value, r.At(tt.y), 1e-13, "closed form")
			require.InDelta(t, tt.slope, r.Slope(tt.y), 1e-13, "closed form")
		})
	}
}

func TestRampErrors(t *testing.T) {
	tests := []struct {
		name       string
		ys, values []float64
		want       string
	}{
		{"nothing", nil, nil, "at least one height"},
		{"lists differ", []float64{1, 2}, []float64{1}, "2 heights, 1 values"},
		{"twice", []float64{1, 2, 2}, []float64{1, 2, 3}, "height 2 is given twice"},
		{"as good as twice", []float64{1, 1 + 1e-9}, []float64{1, 2}, "is given twice"},
		{"falling", []float64{1, 0}, []float64{1, 2}, "0 comes after 1"},
		{"height not a number", []float64{math.NaN()}, []float64{1}, "not a finite pair"},
		{"value infinite", []float64{1}, []float64{math.Inf(1)}, "not a finite pair"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := NewRamp(tt.ys, tt.values)
			require.ErrorContains(t, err, tt.want)
		})
	}
}

// genRamp draws a ramp with up to six heights, some values equal.
func genRamp(t *rapid.T) *Ramp {
	var ys, values []float64
	y := genNumber(t, -200, 100, "first")
	for range rapid.IntRange(1, 6).Draw(t, "heights") {
		ys = append(ys, y)
		if rapid.Bool().Draw(t, "whole") {
			values = append(values, float64(rapid.IntRange(-3, 3).Draw(t, "step"))*5)
		} else {
			values = append(values, genNumber(t, -30, 30, "value"))
		}
		y += genNumber(t, 2, 90, "apart")
	}
	return newRamp(t, ys, values)
}

// The properties proved by Fritsch and Carlson (1980): the curve is monotone
// between neighbouring data, so it does not overshoot, and it is C1.
func TestRampProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := genRamp(t)
		for i := 0; i+1 < len(r.ys); i++ {
			y0, y1, v0, v1 := r.ys[i], r.ys[i+1], r.values[i], r.values[i+1]
			require.Equal(t, v0, r.At(y0))
			sign := 0.0
			if v0 != v1 {
				sign = math.Copysign(1, v1-v0)
			}
			last := v0
			for k := 1.0; k <= 64; k++ {
				y := y0 + (y1-y0)*k/64
				v := r.At(y)
				require.GreaterOrEqual(t, (v-last)*sign, -1e-12, "monotone")
				if sign == 0 {
					require.Equal(t, v0, v)
				}
				require.LessOrEqual(t, v, max(v0, v1)+1e-12, "no overshoot")
				require.GreaterOrEqual(t, v, min(v0, v1)-1e-12, "no overshoot")
				require.GreaterOrEqual(t, r.Slope(y)*sign, -1e-12, "slope")
				last = v
			}
		}
		for _, y := range r.ys { // C1: the same from both sides
			const e = 1e-7
			require.InDelta(t, r.At(y-e), r.At(y+e), 1e-4)
			require.InDelta(t, r.Slope(y-e), r.Slope(y+e), 1e-4)
		}
	})
}

func TestRampUpsideDown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := genRamp(t)
		ys, values := slices.Clone(r.ys), slices.Clone(r.values)
		slices.Reverse(ys)
		slices.Reverse(values)
		for i := range ys {
			ys[i] = -ys[i]
		}
		down := newRamp(t, ys, values)
		y := genNumber(t, -300, 300, "y")
		require.InDelta(t, r.At(y), down.At(-y), 1e-9)
		require.InDelta(t, r.Slope(y), -down.Slope(-y), 1e-9)
	})
}

func TestShift(t *testing.T) {
	r := newRamp(t, []float64{0, 10, 40}, []float64{0, 1, 10})
	q := newRamp(t, []float64{10, 20}, []float64{4, 0})
	s := Shift{{r, 2}, {q, -1}, {newRamp(t, []float64{7}, []float64{5}), 0}}
	require.Equal(t, []float64{0, 10, 20, 40}, s.Knots(), "distinct, and none of a ramp taken no times")
	for _, y := range []float64{-5, 0, 3, 10, 14, 20, 33, 40, 50} {
		require.InDelta(t, 2*r.At(y)-q.At(y), s.At(y), 1e-12)
		require.InDelta(t, 2*r.Slope(y)-q.Slope(y), s.Slope(y), 1e-12)
	}
	require.Zero(t, Shift(nil).At(3))
	require.Empty(t, Shift(nil).Knots())
}

// Between its cuts a shift is the cubic that pieces gives.
func TestShiftPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Shift{{genRamp(t), genNumber(t, -2, 2, "f")}, {genRamp(t), 1}}
		cuts, cubics := s.pieces()
		require.Len(t, cubics, len(cuts)+1)
		y := genNumber(t, -300, 300, "y")
		i := 0
		for i < len(cuts) && cuts[i] < y {
			i++
		}
		v, d := cubics[i].eval(y)
		require.InDelta(t, s.At(y), v, 1e-8)
		require.InDelta(t, s.Slope(y), d, 1e-4)
	})
}
