package drafting_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model/curve"
	"understitch/model/drafting"
	"understitch/model/modeltest"
)

// beside is a piece drawn net, 300 mm along its top, with a cut line drawn beside
// that.
func beside(top, cut string) string {
	return fmt.Sprintf(`
garment "both" { unit = "mm" }
layer "shell" {
  side = "outer"
  piece "front" {
    allowance = 10
    edge "top" {
      %s
      cut_line = { %s }
    }
    edge "rest" { line = [[300, 0], [300, 200], [0, 200], [0, 0]] }
  }
}`, top, cut)
}

// Closed forms: the cut line is 10 mm above a straight line, or on a circle of
// another radius.
func TestDrawnCut(t *testing.T) {
	const straight = "line = [[0, 0], [300, 0]]"
	arch := `path = "M 0 0 A 150 150 0 0 1 300 0"`
	for _, c := range []struct {
		name, top, cut  string
		off, at, within float64
	}{
		{"as stated", straight, "line = [[0, -10], [300, -10]]", 0, -1, 0},
		{"run on to the corners' mitres", straight, "line = [[-10, -10], [310, -10]]", 0, -1, 0},
		{"run the other way", straight, "line = [[310, -10], [-10, -10]]", 0, -1, 0},
		{"cut off by a corner", straight, "line = [[8, -10], [295, -10]]", 0, -1, 0},
		{"ends far too early", straight, "line = [[0, -10], [200, -10]]", 100, 200, 0.1},
		{"too wide all along", straight, "line = [[-10, -12], [310, -12]]", 2, -1, 0},
		{"runs off by 1 in 100", straight, "line = [[0, -10], [300, -13]]", 3, 300, 0.1},
		{"on the side of the cloth", straight, "line = [[0, 10], [300, 10]]", 20, -1, 0},
		{"a bump", straight, "line = [[0, -10], [140, -10], [150, -14], [160, -10], [300, -10]]", 4, 150, 1},
		{"a spike", straight, "line = [[0, -10], [150, -10], [150.01, -15], [150.02, -10], [300, -10]]", 5, 150, 1},
		{"a circle", arch, `path = "M -10 0 A 160 160 0 0 1 310 0"`, 0, -1, 0},
		{"a circle a millimetre wide", arch, `path = "M -11 0 A 161 161 0 0 1 311 0"`, 1, -1, 0},
		{"a circle drawn in chords of 30 degrees", arch, chords(160, 6), 160 * (1 - math.Cos(math.Pi/12)), -1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			e := modeltest.Build(t, beside(c.top, c.cut)).Edges()[0]
			d, err := drafting.DrawnCut(e)
			require.NoError(t, err)
			require.InDelta(t, c.off, d.Off, 0.021)
			require.GreaterOrEqual(t, d.Off, c.off-0.002, "the bound is proven; the parallel is followed to a micrometre")
			if c.at >= 0 {
				require.InDelta(t, c.at, d.At, c.within)
			}
		})
	}
}

// chords is half a circle about (150, 0) in straight lines.
func chords(radius float64, n int) string {
	text := "line = ["
	for i := range n + 1 {
		angle := math.Pi * (1 + float64(i)/float64(n))
		text += fmt.Sprintf("[%.9f, %.9f], ", 150+radius*math.Cos(angle), radius*math.Sin(angle))
	}
	return text + "]"
}

// Whatever free curve the stitch line is, the line set out by its allowance is
// found to lie where it must, and one set out by half a millimetre more to be off
// by that; every sample agrees with the bound.
func TestDrawnCutOfFreeCurves(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		more := float64(rapid.IntRange(0, 20).Draw(r, "more")) / 10
		y := rapid.SliceOfN(rapid.IntRange(-30, 30), 3, 3).Draw(r, "y")
		top := fmt.Sprintf("smooth = [[0, 0], [80, %d], [150, %d], [220, %d], [300, 0]]", y[0], y[1], y[2])
		e := modeltest.Build(t, beside(top, "line = [[0, -10], [300, -10]]")).Edges()[0]
		if _, radius, err := drafting.TightTurn(e); err != nil || radius < 14 {
			r.Skip("the allowance cannot be turned")
		}
		e.CutDrawn = e.Path.Parallel(-10-more, 1e-4)
		began := time.Now()
		d, err := drafting.DrawnCut(e)
		require.NoError(r, err)
		require.Less(r, time.Since(began), time.Minute, "a fault of the order of growth, not of the machine")
		require.InDelta(r, more, d.Off, 0.025)
	})
}

// A straight line drawn as a curve bends nowhere, wherever on the paper it lies: the
// digits of its points are no bend.
func TestAStraightCurveDoesNotBend(t *testing.T) {
	e := modeltest.Build(t, beside("path = \"M 0 0 C 100 0 200 0 300 0\"", "line = [[0, -10], [300, -10]]")).Edges()[0]
	drawn := e.Path
	rapid.Check(t, func(r *rapid.T) {
		at := rapid.Float64Range(-2000, 2000)
		e.Path = drawn.Move(curve.Rotate(curve.Point{}, rapid.Float64Range(0, 6.28).Draw(r, "turn")).
			Then(curve.Translate(curve.Point{X: at.Draw(r, "x"), Y: at.Draw(r, "y")})))
		_, radius, err := drafting.TightTurn(e)
		require.NoError(r, err)
		require.True(r, math.IsInf(radius, 1), "%v", radius)
	})
}
