package draft_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/draft"
	"understitch/rules/ruletest"
)

// Trousers of two legs, drafted in inches.
const trousers = `garment "trousers" { unit = UNIT } # FILE
BODY
level "waist" {
  y = 0
  WAIST
}
level "hip" {
  y = 8
  HIP
}
layer "shell" {
  side = "outer"
  EASE
  piece "front" {
    cut = 2
    edge "waist"   { line = [[0, 0], [7, 0]] }
    edge "outseam" { line = [[7, 0], [9, 8], [9, 40]] }
    edge "hem"     { line = [[9, 40], [0, 40]] }
    edge "inseam"  { line = [[0, 40], [-2, 11]] }
    edge "centre"  { line = [[-2, 11], [0, 8], [0, 0]] }
  }
  piece "back" {
    cut = 2
    edge "waist"   { line = [[0, 0], [7.5, 0]] }
    edge "outseam" { line = [[7.5, 0], [10.5, 8], [10.5, 40]] }
    edge "hem"     { line = [[10.5, 40], [0, 40]] }
    edge "inseam"  { line = [[0, 40], [-3, 11]] }
    edge "centre"  { line = [[-3, 11], [0, 8], [0, 0]] }
  }
}
seam "outseam" { join = [shell.front.outseam, shell.back.outseam] }
seam "inseam"  { join = [shell.front.inseam, shell.back.inseam] }
seam "front"   { join = [shell.front.centre, shell.front.centre] }
seam "back"    { join = [shell.back.centre, shell.back.centre] }
`

func TestAFileOrABodyInAnotherUnit(t *testing.T) {
	const (
		inches    = "body {\n  waist_girth = 28\n  hip_girth   = 38\n}"
		centimes  = "body {\n  waist_girth = cm(71)\n  hip_girth   = cm(97)\n}"
		wrongFile = "fault unit-slip error"
	)
	for _, c := range []struct {
		name, unit, body, ease, file, message string
		levels                                bool
	}{
		{"as it is", `"in"`, inches, "", "", "", true},
		{"the file in centimetres", `"cm"`, inches, "", wrongFile, "every figure of the file looks as if it were in inches: shell measures 29 cm round at the waist level. Read as inches it would be 73.66 cm", true},
		{"the file in millimetres", `"mm"`, inches, "", wrongFile, "looks as if it were in inches", true},
		{"no body, in centimetres", `"cm"`, "", "", wrongFile, "all that is drafted looks as if it were in inches", false},
		{"a body in centimetres, the drawing not", `"cm"`, centimes, "", wrongFile, "all that is drafted looks as if it were in inches", true},
		{"and its ease is stated", `"cm"`, centimes, "ease = { waist = [1, 4], hip = [1, 4] }", wrongFile, "all that is drafted looks as if it were in inches", true},
		{"a body in inches, the drawing in inches as well", `"in"`, centimes, "", "", "", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			waist, hip := "", ""
			if c.levels {
				waist, hip = "body = body.waist_girth", "body = body.hip_girth"
			}
			src := strings.NewReplacer("UNIT", c.unit, "BODY", c.body, "WAIST", waist, "HIP", hip, "EASE", c.ease, "FILE", c.file).Replace(trousers)
			r := ruletest.Spec(t, &draft.UnitSlip, src)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
			}
		})
	}
}

func TestABodyInAnotherUnit(t *testing.T) {
	src := strings.NewReplacer("UNIT", `"in"`, "BODY", "body {\n  waist_girth = 71 # fault unit-slip error\n  hip_girth = 97\n}",
		"WAIST", "body = body.waist_girth", "HIP", "body = body.hip_girth", "EASE", "", "FILE", "").Replace(trousers)
	r := ruletest.Spec(t, &draft.UnitSlip, src)
	require.Contains(t, r.Result.Findings[0].Message, "the body looks as if it were in centimetres: body.waist_girth is 71 in")
}
