package layers

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
)

// A brief under a skirt, alike down to the tummy; below it the brief is cut away for
// the legs, and the hip level crosses that.
const brief = `
garment "skirt" { unit = "cm" }
body {
  waist_girth = 70
  tummy_girth = 80
  hip_girth   = 90
}
level "waist" {
  y    = 0
  body = body.waist_girth
}
level "tummy" {
  y    = 10
  body = body.tummy_girth
}
level "hip"   {
  y    = 20
  body = body.hip_girth
}
layer "skirt" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"  { line = [[0, 0], [18, 0]] }
    edge "side" { line = [[18, 0], [20, 10], [22, 20], [24, 40]] }
    edge "hem"  {
      line   = [[24, 40], [0, 40]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 40], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "top"  { line = [[0, 0], [18, 0]] }
    edge "side" { line = [[18, 0], [20, 10], [22, 20], [24, 40]] }
    edge "hem"  {
      line   = [[24, 40], [0, 40]]
      finish = "hem"
    }
    edge "centre" { line = [[0, 40], [0, 0]] }
  }
}
layer "brief" {
  side = "inner"
  EASE
  piece "front" {
    fold = centre
    edge "top"  { line = [[0, 0], [18, 0]] }
    edge "side" { line = [[18, 0], [20, 10], [21, 15]] }
    edge "leg"  {
      line = [[21, 15], [8, 25], [4, 30]]
      LEG
    }
    edge "gusset" { line = [[4, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "top"  { line = [[0, 0], [18, 0]] }
    edge "side" { line = [[18, 0], [20, 10], [21, 15]] }
    edge "leg"  {
      line = [[21, 15], [8, 25], [4, 30]]
      LEG
    }
    edge "gusset" { line = [[4, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
}
seam "skirt"  { join = [skirt.front.side, skirt.back.side] }
seam "brief"  { join = [brief.front.side, brief.back.side] }
seam "gusset" { join = [brief.front.gusset, brief.back.gusset] }
INSIDE
`

func TestNoGirthAcrossALegOpening(t *testing.T) {
	const (
		open    = "brief is open at the hip level: brief.front.leg is not sewn, folded or closed there"
		insides = "inside \"front\" {\n  outer = skirt.front\n  inner = brief.front\n  clearance = { hip = [0, null] }\n}\ninside \"back\" {\n  outer = skirt.back\n  inner = brief.back\n}\n"
		elastic = "elastic \"leg\" {\n  edges  = [brief.front.leg, brief.back.leg]\n  length = 40\n}\n"
	)
	for _, c := range []struct {
		name, leg, inside string
		rule              *rules.Rule
		want              map[string]string
	}{
		{"a finished leg", `finish = "bound"`, insides, Suppression, map[string]string{"hip": open}},
		{"with elastic", "", insides + elastic, Suppression, map[string]string{"hip": open}},
		{"finished, and with elastic", `finish = "bound"`, insides + elastic, Suppression, map[string]string{"hip": open}},
		{"nothing said of the leg", "", insides, Suppression, map[string]string{"hip": open}},
		{"no insides", `finish = "bound"`, "", Girth, map[string]string{"brief": open}},
		{"elastic alone, no insides", "", elastic, Girth, map[string]string{"brief": open}},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, c.rule, strings.NewReplacer("LEG", c.leg, "INSIDE", c.inside, "EASE", "").Replace(brief))
			require.Empty(t, result.Findings)
			require.Equal(t, c.want, reasons(result.NotPossible))
		})
	}
}

// A lining below the hem forbids cutting; one that ends too little above it does not.
func TestALiningBelowTheHemIsAnError(t *testing.T) {
	below := look(t, HemDrop, change(t, hemDropBad, "59.2", "60.5", "59.2", "60.5", "59.2", "60.5", "59.2", "60.5")).Findings
	require.Equal(t, rules.Error, below[0].Severity)
	require.Equal(t, rules.Warning, look(t, HemDrop, hemDropBad).Findings[0].Severity)
}
