package layers

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// together is a shell and a lining of a front and a back each, either half on the
// fold, whose side seams slant; every case draws the lining.
const together = `
garment "together" { unit = "cm" }
level "bust"  { y = 0 }
level "waist" { y = 18 }
layer "shell" {
  side = "outer"
%s}
layer "lining" {
  side = "inner"
%s}
seam "side" { join = [shell.front.side, shell.back.side] }
%s
inside "half" {
  outer = [shell.front, shell.back]
  inner = %s
}
`

// half is a front or a back from the bust to the waist.
func half(name, side string, fold float64) string {
	first, last := strings.Index(side, "["), strings.LastIndex(side, "[")
	return fmt.Sprintf(`
  piece %q {
    fold = centre
    edge "top"    { line = [[%[3]g, 0], %[4]s }
    edge "side"   { %[2]s }
    edge "hem"    { line = [%[5]s, [%[3]g, 18]] }
    edge "centre" { line = [[%[3]g, 18], [%[3]g, 0]] }
  }
`, name, side, fold, point(side[first+1:])+"]", point(side[last:]))
}

// point is the first point in a text.
func point(text string) string {
	return text[strings.Index(text, "[") : strings.Index(text, "]")+1]
}

func TestPiecesLaidTogether(t *testing.T) {
	const (
		joined  = `seam "lining-side" { join = [lining.front.side, lining.back.side] }`
		both    = "[lining.front, lining.back]"
		sharp   = "line = [[22, 0], [10, 7.9], [22, 18]]"
		bulging = "outline bust to waist"
	)
	line := func(top, waist float64) string { return fmt.Sprintf("line = [[%g, 0], [%g, 18]]", top, waist) }
	smooth := func(x float64) string {
		return fmt.Sprintf("smooth = [[%g, 0], [%g, 6], [%g, 12], [%g, 18]]", x, x-2.2, x-3.4, x-4)
	}
	shell := half("front", line(22, 18), 0) + half("back", line(22, 18), 0)
	turned := math.Cos(2 * math.Atan(4.0/18)) // how the back lies turned against the front
	for _, c := range []struct {
		name, shell, lining, seam, inner string
		want                             map[string]float64
		reasons                          map[string]string
	}{
		{"one drawing", shell, half("front", line(22, 18), 0) + half("back", line(22, 18), 0), joined, both, nil, nil},
		{"side seams 15 mm nearer the front", shell, half("front", line(20.5, 16.5), 0) + half("back", line(23.5, 19.5), 0), joined, both, nil, nil},
		{"side seams 15 mm nearer the back", shell, half("front", line(23.5, 19.5), 0) + half("back", line(20.5, 16.5), 0), joined, both, nil, nil},
		{"the back named first", shell, half("front", line(20.5, 16.5), 0) + half("back", line(23.5, 19.5), 0), joined, "[lining.back, lining.front]", nil, nil},
		{"20 mm over as one", shell, half("front", line(24, 20), 2) + half("back", line(24, 20), 2), joined, both,
			map[string]float64{bulging: 20 * turned}, nil},
		{"20 mm over the other way", shell, half("front", line(20, 16), -2) + half("back", line(20, 16), -2), joined, both,
			map[string]float64{bulging: 20}, nil},
		{"curved side seams", half("front", smooth(22), 0) + half("back", smooth(22), 0), half("front", smooth(22), 0) + half("back", smooth(22), 0), joined, both, nil, nil},
		{"curved side seams 15 mm nearer the front", half("front", smooth(22), 0) + half("back", smooth(22), 0), half("front", smooth(20.5), 0) + half("back", smooth(23.5), 0), joined, both, nil, nil},
		{"a lining in one piece", half("front", line(22, 22), 0) + half("back", line(22, 22), 0), half("front", line(44, 44), 0), "", "lining.front", nil, nil},
		{"a lining in one piece, 20 mm over", half("front", line(22, 22), 0) + half("back", line(22, 22), 0), half("front", line(46, 46), 2), "", "lining.front",
			map[string]float64{bulging: 20}, nil},
		{"a lining in one piece, the shell's seam slanting", shell, half("front", line(44, 36), 0), "", "lining.front", nil,
			map[string]string{bulging + ", laid together": "between the levels bust and waist a place may be 7.8"}},
		{"not sewn to each other", shell, half("front", line(22, 18), 0) + half("back", line(22, 18), 0), "", both, nil,
			map[string]string{bulging + ", laid together": "no seam joins edge to edge, one whole edge each, all of lining.front and lining.back, so they cannot be laid together"}},
		{"beside each other", shell, half("front", line(72, 68), 50) + half("back", line(72, 68), 50), joined, both, nil,
			map[string]string{bulging + ", laid together": "shell.front and shell.back and lining.front and lining.back are drawn beside each other; only a share named by align tells how one lies in the other"}},
		{"a corner in the side seam", half("front", sharp, 0) + half("back", sharp, 0), half("front", sharp, 0) + half("back", sharp, 0), joined, both, map[string]float64{},
			map[string]string{bulging + ", laid together": "seam.side does not lie flat between the levels bust and waist: the lines of its two sides part by"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, InnerWithinOuter, fmt.Sprintf(together, c.shell, c.lining, c.seam, c.inner))
			requireKeyed(t, c.want, result.Findings)
			got := reasons(result.NotPossible)
			require.Len(t, got, len(c.reasons), "%v", got)
			for key, begins := range c.reasons {
				require.True(t, strings.HasPrefix(got[key], begins), "%s: %s", key, got[key])
			}
		})
	}
	t.Run("beyond the levels", func(t *testing.T) {
		src := fmt.Sprintf(together, shell, half("front", line(24, 20), 2)+half("back", line(24, 20), 2), joined, both)
		src = strings.Replace(src, "level \"waist\" { y = 18 }\n", "", 1)
		result := look(t, InnerWithinOuter, src)
		requireKeyed(t, map[string]float64{"outline below bust": 20 * turned}, result.Findings)
		require.Empty(t, reasons(result.NotPossible))
	})
	t.Run("farther than the seams go", func(t *testing.T) {
		long := strings.ReplaceAll(half("front", line(22, 18), 0), "[0, 18]", "[0, 30]") + half("back", line(22, 18), 0)
		result := look(t, InnerWithinOuter, fmt.Sprintf(together, long, long, joined, both))
		require.Empty(t, result.Findings)
		require.Equal(t, map[string]string{"outline below waist, farther off": "below the waist level not all of the pieces are sewn side by side, so there they cannot be laid together as one"},
			reasons(result.NotPossible))
	})
	// Laid in parts, each of which is turned by its own slant, from 2.2 in 6 to none.
	result := look(t, InnerWithinOuter, fmt.Sprintf(together, half("front", smooth(22), 0)+half("back", smooth(22), 0),
		half("front", smooth(24), 2)+half("back", smooth(24), 2), joined, both))
	require.Len(t, result.Findings, 1)
	require.Less(t, result.Findings[0].Measured, 20.01)
	require.Greater(t, result.Findings[0].Measured, 20*math.Cos(2*math.Atan(2.2/6)))
}
