package draft_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/draft"
	"understitch/rules/ruletest"
)

func TestUnitSlip(t *testing.T) {
	const back = `piece "back" {
    fold = centre
    edge "side"   { line = [[22, 0], [22, 40]] }
    edge "hem"    { line = [[22, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
    edge "top"    { line = [[0, 0], [22, 0]] }
  }
`
	for _, c := range []struct {
		name, unit, waist, y, ease, front, message string
	}{
		{"as it should be", "cm", "80", "18", "", front4(""), ""},
		{"a body in inches", "cm", "31.5 # fault unit-slip error", "18", "", front4(""),
			"the body looks as if it were in inches: body.waist_girth is 31.5 cm, and a trunk measures 40 cm to 200 cm. Read as inches it would be 80.01 cm"},
		{"a body in millimetres", "cm", "800 # fault unit-slip error", "18", "", front4(""), "Read as millimetres it would be 80 cm. Look at its unit."},
		{"a draft in inches in a file of centimetres", "cm", "190", "18 # fault unit-slip warning 800mm", "", front4(""),
			"shell is 80 cm round at the waist level, where the body is 190 cm"},
		{"the ease is stated, and body-ease reports it", "cm", "190", "18", "ease = { waist = [0, 4] }", front4(""), ""},
		{"a level ten times too low", "cm", "80", "180 # fault unit-slip warning 3.5", "", front4(""), "the waist level lies at 180 cm, 3.5 times the height of all pieces away from them."},
		{"a point with its decimal point lost", "cm", "80", "18", "", `piece "front" {
    fold = centre
    edge "side"   { line = [[18, 0], [18, 40]] }
    edge "hem"    { line = [[18, 40], [9, 410], [0, 40]] } # fault unit-slip warning 9.3
    edge "centre" { line = [[0, 40], [0, 0]] }
    edge "top"    { line = [[0, 0], [9, 2], [18, 0]] }
  }
`, "the point [9, 410] of shell.front.hem lies far from all others: without it shell.front would be 9.3 times smaller. Look for a lost decimal point."},
		{"an allowance in millimetres", "cm", "80", "18", "", front4("allowance = 12 # fault unit-slip warning 120mm"), "Read as millimetres it would be 1.2 cm."},
		{"a deep hem", "cm", "80", "18", "", front4("allowance = 8"), ""},
		{"an allowance in centimetres", "mm", "800", "18", "ease = { waist = [0, 4] }", front4("allowance = 1.2 # fault unit-slip warning 1.2mm"), "Read as centimetres it would be 12 mm."},
	} {
		t.Run(c.name, func(t *testing.T) {
			head, body := "garment \"trial\" { unit = \""+c.unit+"\" }", "body { waist_girth = "+c.waist+" }\n"
			if i := indexHash(c.waist); i >= 0 {
				body = "body { waist_girth = " + c.waist[:i] + "} " + c.waist[i:] + "\n"
			}
			y, want := c.y, ""
			if i := indexHash(c.y); i >= 0 {
				y, want = c.y[:i], c.y[i:]
			}
			r := ruletest.Spec(t, &draft.UnitSlip, head+"\n"+body+`level "waist" { `+want+`
  y    = `+y+`
  body = body.waist_girth
}
layer "shell" {
  side = "outer"
  `+c.ease+`
  `+c.front+back+`}
seam "side" { join = [shell.front.side, shell.back.side] }
`)
			require.Empty(t, r.Result.NotPossible)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
			}
		})
	}
}

func indexHash(s string) int {
	for i, r := range s {
		if r == '#' {
			return i
		}
	}
	return -1
}

func front4(more string) string {
	return `piece "front" {
    fold = centre
    ` + more + `
    edge "side"   { line = [[18, 0], [18, 40]] }
    edge "hem"    { line = [[18, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
    edge "top"    { line = [[0, 0], [18, 0]] }
  }
`
}
