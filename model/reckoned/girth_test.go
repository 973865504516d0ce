package reckoned_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/model/spec"
)

// A bodice and a skirt, joined at a waist seam that lies on the waist level: the
// bodice 24 cm across each front, of which 1.5 cm laps over, and 20 cm across the half
// back; both a little wider a millimetre above. The skirt's front is on the fold
// and has a dart that takes out 2 cm at the seam.
const waistSeam = `
garment "dress" { unit = "cm" }
body { waist_girth = 80 }
level "above" { y = -0.1 }
level "waist" {
  y    = 0
  body = body.waist_girth
}
level "below" { y = 0.1 }
layer "shell" {
  side = "outer"
  piece "skirt_front" {
    fold = centre
    edge "waist"  { line = [[0, 0], [24.5, 0]] }
    edge "side"   { line = [[24.5, 0], [30.5, 40]] }
    edge "hem"    { line = [[30.5, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
    dart "front" {
      on     = waist
      at     = 10
      intake = 2
      tip    = [10, 10]
    }
  }
  piece "skirt_back" {
    fold = centre
    edge "waist"  { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [26, 40]] }
    edge "hem"    { line = [[26, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
  }
  piece "front" {
    cut = 2
    edge "waist"  { line = [[-1.5, 0], [22.5, 0]] }
    edge "side"   { line = [[22.5, 0], [24.5, -20]] }
    edge "top"    { line = [[24.5, -20], [-1.5, -20]] }
    edge "centre" { line = [[-1.5, -20], [-1.5, 0]] }
  }
  piece "back" {
    fold = centre
    edge "waist"  { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [22, -20]] }
    edge "top"    { line = [[22, -20], [0, -20]] }
    edge "centre" { line = [[0, -20], [0, 0]] }
  }
}
seam "side"       { join = [shell.front.side, shell.back.side] }
seam "skirt-side" { join = [shell.skirt_front.side, shell.skirt_back.side] }
seam "front"      { join = [shell.front.waist, shell.skirt_front.waist] }
seam "back"       { join = [shell.back.waist, shell.skirt_back.waist] }
closure "front" {
  kind  = "button"
  edges = [shell.front.centre, shell.front.centre]
  lap   = 3
}
`

func garment(t *testing.T, src string) *model.Garment {
	t.Helper()
	doc, diags := spec.Read("test.garment.hcl", []byte(src), nil)
	require.Empty(t, diags)
	g, diags := doc.Garment("")
	require.Empty(t, diags)
	return g
}

// The cloth is one line at a waist seam, and a cutter's tape lies on it once. A
// millimetre above it is on the bodice alone, a millimetre below on the skirt alone.
// All figures are closed form.
func TestGirthAtAWaistSeam(t *testing.T) {
	g := garment(t, waistSeam)
	for _, c := range []struct {
		level  string
		pieces []string
		lap    bool
		total  float64
	}{
		{"above", []string{"shell.front, 2 times", "shell.back, 2 times"}, true, 2*(240+0.1) + 2*(200+0.1) - 30},
		{"waist", []string{"shell.front, 2 times", "shell.back, 2 times"}, true, 2*240 + 2*200 - 30},
		// the skirt is wider by 0.15 mm a millimetre down, its dart narrower by 0.2
		{"below", []string{"shell.skirt_front, 2 times", "shell.skirt_back, 2 times"}, false, 2*(245+0.15-19.8) + 2*(200+0.15)},
	} {
		t.Run(c.level, func(t *testing.T) {
			lines, ok := reckoned.Of(g, "level."+c.level)
			require.True(t, ok)
			var pieces []string
			sum, lap, total := 0.0, false, 0.0
			for _, l := range lines {
				switch {
				case l.Text == "less what laps over at closure.front":
					require.InDelta(t, -30, l.Figure, 1e-9)
					lap = true
					sum += l.Figure
				case l.Kind == reckoned.Result && strings.HasSuffix(l.Text, "times"):
					pieces = append(pieces, l.Text)
					sum += l.Figure
				case l.Text == "shell round at the "+c.level+" level":
					total = l.Figure
				}
			}
			require.Equal(t, c.pieces, pieces)
			require.Equal(t, c.lap, lap)
			require.InDelta(t, total, sum, 1e-9, "what it is made of comes to it")
			require.InDelta(t, c.total, total, 1e-6)
		})
	}
	t.Run("the ease is that of the cloth done up", func(t *testing.T) {
		lines, _ := reckoned.Of(g, "level.waist")
		last := lines[len(lines)-1]
		require.Equal(t, "is the ease at the waist level", last.Text)
		require.InDelta(t, 850-800, last.Figure, 1e-6)
	})
}

// A closure at both sides is there twice.
func TestAccountOfALapAtBothSides(t *testing.T) {
	src := strings.Replace(waistSeam, `seam "side"       { join = [shell.front.side, shell.back.side] }`, `seam "centre" { join = [shell.front.centre, shell.front.centre] }`, 1)
	src = strings.Replace(src, "edges = [shell.front.centre, shell.front.centre]", "edges = [shell.front.side, shell.back.side]", 1)
	lines, _ := reckoned.Of(garment(t, src), "level.waist")
	for _, l := range lines {
		if l.Text == "less what laps over at closure.front, 2 times" {
			require.InDelta(t, -60, l.Figure, 1e-9)
			return
		}
	}
	require.Fail(t, "no line for the lap")
}
