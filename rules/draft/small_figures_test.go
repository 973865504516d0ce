package draft_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/draft"
	"understitch/rules/ruletest"
)

const smallThings = `garment "trial" { unit = "cm" }
tape "hooks" {
  kind         = "hook-and-eye"
  pitch        = 1.9
  head         = 0.9
  clear        = 0.15
  width_closed = [3.2, 4.5]
}
fabric "wool" {
  thickness = 0.12
}
layer "shell" {
  side   = "outer"
  fabric = fabric.wool
  piece "front" {
    cut       = 2
    allowance = 1.5
    edge "side"   { line = [[18, 0], [18, 40]] }
    edge "hem"    { line = [[18, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
    edge "top"    { line = [[0, 0], [18, 0]] }
    notch "one" {
      on    = side
      at    = 10
      depth = 0.4
    }
    notch "two" {
      on    = side
      at    = 20
      depth = 0.4
    }
  }
}
closure "front" {
  kind      = "button"
  edges     = [shell.front.centre, shell.front.centre]
  diameter  = 1.8
  thickness = 0.3
  extension = 1.5
  lap       = 3
}
closure "side" {
  kind  = "tape"
  tape  = tape.hooks
  edges = [shell.front.side, shell.front.side]
}
closure "also" {
  kind  = "tape"
  tape  = tape.hooks
  edges = [shell.front.top, shell.front.top]
}
`

// A small figure in the wrong unit is told once, at the attribute that states it.
func TestUnitSlipInSmallFigures(t *testing.T) {
	for _, c := range []struct {
		name, from, to string
		message        string
	}{
		{"as they should be", "", "", ""},
		{"a button three inches thick", "thickness = 0.3\n", "thickness = inch(3) # fault unit-slip warning 76.2mm\n",
			"the thickness of the buttons of closure.front is 7.62 cm; buttons are from 0.5 mm to 3 cm thick."},
		{"a diameter in millimetres", "diameter  = 1.8", "diameter = 18 # fault unit-slip warning 180mm", "Read as millimetres it would be 1.8 cm."},
		{"an extension in millimetres", "extension = 1.5", "extension = 15.5 # fault unit-slip warning 155mm", "Read as millimetres it would be 1.55 cm."},
		{"a lap far too small", "lap       = 3", "lap = mm(1) # fault unit-slip warning 1mm", "closed edges lap by 3 mm to 50 cm."},
		{"edge to edge", "lap       = 3", "lap = 0", ""},
		{"a pitch in millimetres, once for both closures", "pitch        = 1.9", "pitch = 19 # fault unit-slip warning 190mm",
			"the pitch of tape.hooks is 19 cm; tapes have a pitch of 5 mm to 11 cm. Read as millimetres it would be 1.9 cm."},
		{"metal of nothing", "head         = 0.9", "head = 0.09 # fault unit-slip warning 0.9mm", "the metal of tape.hooks is 0.9 mm"},
		{"a clear space in millimetres", "clear        = 0.15", "clear = 1.6 # fault unit-slip warning 16mm", "Read as millimetres it would be 1.6 mm."},
		{"closed widths in millimetres, told once by the farthest", "[3.2, 4.5]", "[32, 45] # fault unit-slip warning 450mm", "Read as millimetres it would be 4.5 cm."},
		{"a cloth in millimetres", "thickness = 0.12", "thickness = 1.2 # fault unit-slip warning 12mm", "Read as millimetres it would be 1.2 mm."},
		{"notches no deeper than a hair, once for all that are so", "      at    = 10\n      depth = 0.4", "      at    = 10\n      depth = 0.04 # fault unit-slip warning 0.4mm",
			"the depth of shell.front.notch.one is 0.4 mm; notches are from 1 mm to 2 cm deep. Read as inches it would be 1 mm."},
		{"a deep notch in an allowance that is not known", "    allowance = 1.5\n", "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Contains(t, smallThings, c.from)
			src := strings.Replace(smallThings, c.from, c.to, 1)
			if c.name == "a deep notch in an allowance that is not known" {
				src = strings.Replace(src, "depth = 0.4", "depth = 4 # fault unit-slip warning 40mm", 1)
				c.message = "Read as millimetres it would be 4 mm."
			}
			r := ruletest.Spec(t, &draft.UnitSlip, src)
			require.Empty(t, r.Result.NotPossible)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
			}
		})
	}
}
