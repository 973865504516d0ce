package curve

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

// recordedLength is a path, with its length and points at arc lengths as other
// libraries have them.
type recordedLength struct {
	Name, Kind, Path    string
	SVG, Bezier, Pieces struct {
		Length float64
		Points [][3]float64 // arc length, X, Y
	}
}

func readRecorded(t *testing.T, name string, into any) {
	t.Helper()
	data, err := os.ReadFile("testdata/independent/" + name)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(data, into))
}

// TestLengthsAgainstOtherLibraries holds lengths, and points at lengths, against
// figures recorded by testdata/independent/lengths.mjs from bezier-js 6.1.4
// (licence MIT) and svg-path-properties 2.1.0 (licence ISC).
//
// What may be off is stated for each of them, just above what was met; the
// closed forms in TestLengthClosedForms show that it is theirs.
//
//   - bezier-js asked for 64 pieces of every curve agrees to what was recorded,
//     nine digits after the point. Asked for a curve as a whole it was off by
//     up to 0.0005 mm on smooth ones, and by 0.46 mm at a cusp.
//   - svg-path-properties was off by up to 0.003 mm on smooth cubics, 1.1 mm on
//     a cubic that turns back on itself and 0.05 mm on arcs, which it finds
//     too short. Its point at a length is off by up to a thousandth of the
//     length; on an ellipse it runs evenly by the angle, so that its points are
//     only good for lying on the line.
func TestLengthsAgainstOtherLibraries(t *testing.T) {
	var recorded struct{ Cases []recordedLength }
	readRecorded(t, "lengths.json", &recorded)
	within := map[string]struct {
		svg, bezier, pieces float64 // mm of length
		point               float64 // svg's points, as a share of the length
	}{
		"drawn":   {1e-9, 1e-9, 1e-9, 1e-3},
		"smooth":  {0.003, 0.0005, 1e-9, 1e-3},
		"circle":  {0.05, 0, 0, 1e-3},
		"ellipse": {0.05, 0, 0, math.Inf(1)},
		"cusp":    {1.1, 0.47, 3e-5, 5e-3},
	}
	met := map[string]int{}
	for _, c := range recorded.Cases {
		met[c.Kind]++
		t.Run(c.Name, func(t *testing.T) {
			w := within[c.Kind]
			p, err := ParsePath(c.Path, 1)
			require.NoError(t, err)
			l := p.Length()
			require.InDelta(t, c.SVG.Length, l, w.svg)
			for _, q := range c.SVG.Points {
				_, d := p.Nearest(Point{q[1], q[2]})
				require.Less(t, d, 2e-9)
				require.LessOrEqual(t, p.At(q[0]).Dist(Point{q[1], q[2]}), w.point*l)
			}
			if w.pieces == 0 { // arcs are unknown to bezier-js
				require.GreaterOrEqual(t, l, c.SVG.Length-1e-9)
				return
			}
			require.InDelta(t, c.Bezier.Length, l, w.bezier)
			require.InDelta(t, c.Pieces.Length, l, w.pieces)
			require.NotEmpty(t, c.Pieces.Points)
			for _, q := range c.Pieces.Points {
				require.Less(t, p.At(q[0]).Dist(Point{q[1], q[2]}), 2*w.pieces)
			}
		})
	}
	require.Equal(t, map[string]int{"drawn": 8, "smooth": 100, "circle": 20, "ellipse": 20, "cusp": 3}, met)
}
