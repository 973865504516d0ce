package measuring

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// ASTM D5585-11e1, example rows, in inches: the grades are not constant.
var published = map[string][]float64{
	"bust":           {31.125, 31.75, 33, 34.125, 35.25, 36.25, 37.25, 38.75, 40.375, 42.125, 44, 46},
	"under-bust":     {25.75, 26.5, 27.25, 28, 29, 30, 31, 32.5, 34, 35.75, 37.625, 39.625},
	"upper chest":    {31.75, 32.25, 33.25, 34.125, 35, 35.875, 36.75, 38, 39.25, 40.625, 42.25, 43.875},
	"waist curvy":    {23.875, 24.625, 25.375, 26.125, 27, 28, 29, 30.75, 32.5, 34.5, 36.75, 39},
	"waist straight": {25.375, 26.125, 26.875, 27.625, 28.5, 29.5, 30.5, 32.25, 34, 36, 38.25, 40.5},
}

func TestSlip(t *testing.T) {
	for name, row := range published {
		t.Run(name, func(t *testing.T) {
			mm := make([]float64, len(row))
			for i, v := range row {
				mm[i] = v * 25.4
			}
			// Whole, and from any size to any other.
			for from := range mm {
				for to := from + 4; to <= len(mm); to++ {
					require.Less(t, abs(Series{Values: mm[from:to]}.Slip(1./3).Off), 5.0, "sizes %d to %d", from, to)
				}
			}
			// Mistyped by 5 cm in any one size but the ends, it is found, with the size.
			for i := 1; i < len(mm)-1; i++ {
				wrong := append([]float64(nil), mm...)
				wrong[i] += 50
				slip := Series{Values: wrong}.Slip(1. / 3)
				require.Equal(t, i, slip.At)
				require.InDelta(t, mm[i], slip.Meant, 10)
			}
		})
	}
	for _, c := range []struct {
		name   string
		values []float64
		slip   Slip
	}{
		{"steady", []float64{840, 880, 920, 960}, Slip{}},
		{"the same at every size", []float64{100, 100, 100, 100}, Slip{}},
		{"three sizes tell nothing", []float64{840, 980, 920}, Slip{}},
		{"a larger grade from a size on", []float64{880, 920, 960, 1020, 1080}, Slip{}},
		{"a larger grade at the last", []float64{840, 880, 920, 980}, Slip{}},
		{"one a centimetre too large", []float64{840, 880, 930, 960, 1000}, Slip{2, 920, 10}},
		{"figures turned round at the start", []float64{480, 880, 920, 960}, Slip{0, 840, -360}},
		{"figures turned round at the end", []float64{840, 880, 920, 690}, Slip{3, 960, -270}},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.slip, Series{Values: c.values}.Slip(1./3))
		})
	}
}

func abs(v float64) float64 { return max(v, -v) }

// In a steady table of any grade one slip is found wherever it is made, and what
// the neighbours suggest is what was there.
func TestSlipInASteadyTable(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		n := rapid.IntRange(5, 12).Draw(r, "n")
		grade := float64(rapid.IntRange(0, 60).Draw(r, "grade"))
		at := rapid.IntRange(1, n-2).Draw(r, "at")
		off := float64(rapid.IntRange(6, 400).Draw(r, "off")) * float64(rapid.SampledFrom([]int{-1, 1}).Draw(r, "sign"))
		var values []float64
		for i := range n {
			values = append(values, 800+grade*float64(i))
		}
		values[at] += off
		slip := Series{Values: values}.Slip(1. / 3)
		require.Equal(r, at, slip.At)
		require.InDelta(r, off, slip.Off, 1e-9)
	})
}
