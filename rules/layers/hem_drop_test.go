package layers

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The sides fall 40 cm while they go 3 cm out, and 39.2 cm while 0.9 cm (closed
// form).
func TestHemDrop(t *testing.T) {
	for _, c := range []struct {
		name   string
		change []string
		more   string
		want   map[string]float64
		reason string
		passed int
	}{
		{"8 mm above", nil, "", map[string]float64{"": 8}, "", 0},
		{"below the shell", []string{"59.2", "60.5", "59.2", "60.5", "59.2", "60.5", "59.2", "60.5"}, "", map[string]float64{"": -5}, "", 0},
		{"three quarters of an inch", []string{"59.2", "58.1", "59.2", "58.1", "59.2", "58.1", "59.2", "58.1"}, "", nil, "", 1},
		{"sewn to the shell's hem", nil, "seam \"hems\" { join = [shell.front.hem, lining.front.hem] }\n", nil, "", 0},
		{"sharing the shell's hem", nil, "share \"hems\" {\n outer = shell.front.hem\n inner = lining.front.hem\n}\n", nil, "", 0},
		{"no hem to the lining", []string{"[24.4, 59.2], [0, 59.2]]\n      finish = \"hem\"", "[24.4, 59.2], [0, 59.2]]\n      finish = \"felled\""}, "", nil, "", 0},
		{"no level that crosses both", []string{`level "hip"   { y = 20 }`, "", `level "waist" { y = 0 }`, ""}, "",
			map[string]float64{"": 8}, "", 0},
		{"an edge of another name, drawn beside it", []string{"edge \"side\"  { line", "edge \"flank\" { line"}, "",
			map[string]float64{"": 8}, "", 0},
		{"drafted by itself", []string{"  piece \"front\" {\n    fold = centre\n    edge \"waist\" { line = [[0, 0], [18, 0]] }\n    edge \"side\"  { line",
			"  piece \"front\" {\n    fold = centre\n    levels = {}\n    edge \"waist\" { line = [[0, 0], [18, 0]] }\n    edge \"side\"  { line"}, "", nil,
			"no level crosses both shell.front.centre and lining.front.centre, and the layers share no edge above them, from which to measure down to the hems", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, HemDrop, change(t, hemDropBad, c.change...)+c.more)
			requireKeyed(t, c.want, result.Findings)
			require.Equal(t, c.passed, result.Passed)
			if c.reason == "" {
				require.Empty(t, result.NotPossible)
				return
			}
			require.Equal(t, map[string]string{"": c.reason}, reasons(result.NotPossible))
		})
	}
	found := look(t, HemDrop, hemDropBad).Findings[0]
	require.Equal(t, "lining.front ends 8 mm above the hem of shell.front along lining.front.centre, measured from the hip level; it is to end at least "+
		"1.9 cm above it. Shorten lining.front at the hem by 1.1 cm, all along, or lengthen shell.front.", found.Message)
	require.Len(t, found.Related, 2)
	require.Equal(t, "along lining.front.side it ends 9 mm above the outer hem", found.Related[1].Message)
}

// Paper pieces are measured from a notch that carries the level's name, and from
// the edge that the layers share.
func TestHemDropOnPaper(t *testing.T) {
	const src = `
garment "skirt" { unit = "cm" }
level "hip" {}
layer "shell" {
  side = "outer"
  piece "back" {
    edge "waist"  { length = 18 }
    edge "centre" { length = 60 }
    edge "hem" {
      length = 30
      finish = "hem"
    }
    edge "side" { length = 61.3 }
    notch "hip" {
      on = side
      at = 40.9
    }
  }
}
layer "lining" {
  side = "inner"
  piece "back" {
    edge "waist"  { length = 18 }
    edge "centre" { length = 58.5 }
    edge "hem" {
      length = 30
      finish = "hem"
    }
    edge "side" { length = 58.8 }
    notch "hip" {
      on = side
      at = 39.5
    }
  }
}
share "waist" {
  outer = shell.back.waist
  inner = lining.back.waist
}
inside "back" {
  outer = shell.back
  inner = lining.back
}
`
	result := look(t, HemDrop, src)
	requireKeyed(t, map[string]float64{"": 14}, result.Findings)
	require.Empty(t, result.NotPossible)
	require.Contains(t, result.Findings[0].Message, "along lining.back.side, measured from the hip level")
	require.Equal(t, "along lining.back.centre it ends 1.5 cm above the outer hem", result.Findings[0].Related[1].Message)

	// Without the notches there is only the shared waist to measure from.
	result = look(t, HemDrop, change(t, src, "notch \"hip\"", "notch \"low\"", "notch \"hip\"", "notch \"low\""))
	requireKeyed(t, map[string]float64{"": 15}, result.Findings)
	require.Contains(t, result.Findings[0].Message, "measured from lining.back.waist, which the layers share")
}
