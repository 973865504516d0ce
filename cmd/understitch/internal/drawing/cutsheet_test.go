package drawing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestCutSheet(t *testing.T) {
	s := CutSheetOf(garment(t, plan))
	require.Equal(t, CutPiece{
		Name: "front", How: "cut 1 on the fold", Grain: "grain along the fold", Allowances: []string{"1.5 cm: top, side, hem"}, Notches: []string{"side: waist, double at 10 cm"},
	}, s.Layers[0].Pieces[0])
	require.Equal(t, []CutLength{{"closure.hem", "tape snap", "38 cm", "15 fasteners, both cuts 6 mm from metal"}}, s.Lengths)
}

// Of a button closure the sheet says how many there are where it is stated where
// they lie, and nothing else.
func TestCutSheetOfButtons(t *testing.T) {
	const coat = `garment "coat" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    cut = 2
    edge "edge" { length = 40 }
    edge "rest" { length = 100 }
  }
}
closure "front" {
  kind  = "button"
  edges = [shell.front.edge, shell.front.edge]
  %s
}
`
	for buttons, want := range map[string]string{"": "", "buttons = [10]": "1 button", "buttons = [3, 20, 37]": "3 buttons"} {
		s := CutSheetOf(garment(t, strings.Replace(coat, "%s", buttons, 1)))
		require.Equal(t, []CutLength{{"closure.front", "button", "40 cm", want}}, s.Lengths)
	}
}
