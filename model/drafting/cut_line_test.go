package drafting_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/drafting"
	"understitch/model/modeltest"
)

// piece writes a piece from its edges' geometry, drawn net or with its 10 mm
// allowances.
func piece(drawn string, edges ...string) string {
	var b strings.Builder
	for i, e := range edges {
		fmt.Fprintf(&b, "    edge \"e%d\" { %s }\n", i, e)
	}
	return fmt.Sprintf(`
garment "both" { unit = "mm" }
layer "shell" {
  side = "outer"
  piece "front" {
    drawn     = %q
    allowance = 10
%s  }
}`, drawn, b.String())
}

// A piece drawn with its allowances and the same piece drawn net have the same
// lengths: lines and arcs worked out by hand (closed form) to 0.01 mm.
func TestDrawnWithAllowancesIsTheSameAsNet(t *testing.T) {
	out := math.Sqrt(110*110 - 10*10) // where the arc's cut line meets the sides'
	for _, c := range []struct {
		name    string
		cut     []string
		lengths []float64
	}{
		{"rectangle", []string{
			"line = [[-10, -10], [210, -10]]", "line = [[210, -10], [210, 310]]",
			"line = [[210, 310], [-10, 310]]", "line = [[-10, 310], [-10, -10]]",
		}, []float64{200, 300, 200, 300}},
		{"the same the other way round", []string{
			"line = [[-10, -10], [-10, 310]]", "line = [[-10, 310], [210, 310]]",
			"line = [[210, 310], [210, -10]]", "line = [[210, -10], [-10, -10]]",
		}, []float64{300, 200, 300, 200}},
		{"quarter of a circle", []string{
			fmt.Sprintf("line = [[-10, -10], [%.9f, -10]]", out),
			fmt.Sprintf(`path = "M %.9f -10 A 110 110 0 0 1 -10 %.9f"`, out, out),
			fmt.Sprintf("line = [[-10, %.9f], [-10, -10]]", out),
		}, []float64{100, 50 * math.Pi, 100}},
	} {
		t.Run(c.name, func(t *testing.T) {
			for i, e := range modeltest.Build(t, piece("cut", c.cut...)).Edges() {
				require.InDelta(t, c.lengths[i], e.Length(), 0.01, e.Name)
			}
		})
	}
}

// Free curves come back to 0.05 mm: set out by the allowance and read in again
// as a drawing with allowances.
func TestFreeCurvesComeBackThroughTheCutLine(t *testing.T) {
	net := modeltest.Build(t, piece("stitch",
		"smooth = [[0, 20], [60, 30], [95, 0]]",
		"smooth = [[95, 0], [120, 90], [170, 130]]",
		"smooth = [[170, 130], [150, 260], [185, 400]]",
		"smooth = [[185, 400], [90, 412], [0, 410]]",
		"line = [[0, 410], [0, 20]]",
	))
	lines, err := drafting.CutLine(net.Layers[0].Pieces[0])
	require.NoError(t, err)
	var drawn []string
	for _, l := range lines {
		drawn = append(drawn, fmt.Sprintf("path = %q", l.Data(-1)))
	}
	for i, e := range modeltest.Build(t, piece("cut", drawn...)).Edges() {
		require.InDelta(t, net.Edges()[i].Length(), e.Length(), 0.05, e.Name)
	}
}

// A 10 mm allowance round a half circle of any radius makes the cut edge
// 31.416 mm longer than the stitch line (pi times the allowance, closed form).
func TestCutLineRoundAHalfCircle(t *testing.T) {
	for _, radius := range []float64{60, 140, 420} {
		g := modeltest.Build(t, fmt.Sprintf(`
garment "disc" { unit = "mm" }
layer "shell" {
  side = "outer"
  piece "half" {
    edge "curve" {
      path      = "M 0 0 A %[1]g %[1]g 0 0 1 %[2]g 0"
      allowance = 10
    }
    edge "across" {
      line      = [[%[2]g, 0], [0, 0]]
      allowance = 0
    }
  }
}`, radius, 2*radius))
		lines, err := drafting.CutLine(g.Layers[0].Pieces[0])
		require.NoError(t, err)
		curve := modeltest.Edge(t, g, "shell.half.curve")
		require.InDelta(t, math.Pi*radius, curve.Length(), 1e-9)
		require.InDelta(t, math.Pi*10, lines[0].Length()-curve.Length(), 1e-6)
	}
}

// The sides beside a flared hem's allowance are the mirror image of what lies
// above the turn: turned up, the cut edge lies on the side seam.
func TestHemIsFoldedBack(t *testing.T) {
	g := modeltest.Build(t, `
garment "flare" { unit = "mm" }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist" {
      line      = [[0, 0], [200, 0]]
      allowance = 10
    }
    edge "side" {
      line      = [[200, 0], [300, 300]]
      allowance = 10
    }
    edge "hem" {
      line      = [[300, 300], [0, 300]]
      allowance = 30
      finish    = "hem"
    }
    edge "centre" { line = [[0, 300], [0, 0]] }
  }
}`)
	lines, err := drafting.CutLine(g.Layers[0].Pieces[0])
	require.NoError(t, err)
	side, hem := lines[1], lines[2]
	require.InDelta(t, 330, side.End().Y, 1e-6)
	require.InDelta(t, 0, side.End().Dist(hem.Start()), 1e-6)
	// Turned up at y = 300 the end lies at y = 270, on the side's own cut line:
	// through (200, 0) and (300, 300), 10 mm out.
	x, y := side.End().X, 270.0
	out := (3*(x-200) - y) / math.Sqrt(10)
	require.InDelta(t, 10, out, 1e-3)
}
