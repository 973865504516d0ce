package layers

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
)

// A skirt and its lining known by tape, each of a front and a back on the fold.
const tapedSkirt = `
garment "skirt" { unit = "cm" }
body { hip_girth = 96 }
level "waist" {}
level "hip"   { body = body.hip_girth }
fabric "wool" {
  thickness = mm(1)
  stretch   = { across = 0 }
}
layer "shell" {
  side   = "outer"
  fabric = fabric.wool
  piece "front" {
    fold  = centre
    width = { waist = 18, hip = 25 }
    edge "waist"  { length = 18 }
    edge "side"   { length = 60 }
    edge "hem"    { length = 30 }
    edge "centre" { length = 60 }
  }
  piece "back" {
    fold  = centre
    width = { waist = 18, hip = 25 }
    edge "waist"  { length = 18 }
    edge "side"   { length = 60 }
    edge "hem"    { length = 30 }
    edge "centre" { length = 60 }
  }
}
layer "lining" {
  side   = "inner"
  fabric = fabric.wool
  piece "front" {
    fold  = centre
    width = { waist = 17, hip = 24 }
    edge "waist"  { length = 17 }
    edge "side"   { length = 58 }
    edge "hem"    { length = 29 }
    edge "centre" { length = 58 }
  }
  piece "back" {
    fold  = centre
    width = { waist = 17, hip = 24 }
    edge "waist"  { length = 17 }
    edge "side"   { length = 58 }
    edge "hem"    { length = 29 }
    edge "centre" { length = 58 }
  }
}
seam "side"        { join = [shell.front.side, shell.back.side] }
seam "lining-side" { join = [lining.front.side, lining.back.side] }
`

const fronts = `inside "front" {
  outer = shell.front
  inner = lining.front
}
inside "back" {
  outer = shell.back
  inner = lining.back
}
`

// A width that was left out is said to be missing by each rule that would have
// judged a girth or a clearance with it; none takes the rest for the whole.
func TestWhereAWidthIsMissing(t *testing.T) {
	lines := func(missing, beside, seam string) string {
		return missing + " has no drawing and no width at the hip level, which " + beside + " reaches beside it (" + seam + "): state its width there, or levels = {} if it reaches only those it has a width at"
	}
	shell, lining := lines("shell.front", "shell.back", "seam.side"), lines("lining.front", "lining.back", "seam.lining-side")
	noShell := []string{"width = { waist = 18, hip = 25 }", "width = { waist = 18 }"}
	noLining := []string{"width = { waist = 17, hip = 24 }", "width = { waist = 17 }"}
	for _, c := range []struct {
		name   string
		change []string
		shown  map[string]map[string]string
	}{
		{"nothing", nil, nil},
		{"on the shell", noShell, map[string]map[string]string{
			"layer-girth":        {"shell": shell},
			"suppression":        {"hip": shell},
			"turn-of-cloth":      {"lining in shell": shell},
			"inner-within-outer": {"hip": shell},
			"layer-stretch":      {"hip": shell},
		}},
		{"on the lining", noLining, map[string]map[string]string{
			"layer-girth":        {"lining": lining},
			"suppression":        {"hip": lining},
			"turn-of-cloth":      {"lining in shell": lining},
			"inner-within-outer": {"hip": lining},
			"layer-stretch":      {"hip": lining},
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := change(t, tapedSkirt, c.change...) + fronts
			for _, rule := range []*rules.Rule{Girth, Suppression, TurnOfCloth, InnerWithinOuter, Stretch} {
				result := look(t, rule, src)
				require.Empty(t, result.Findings, rule.Name)
				got := reasons(result.NotPossible)
				delete(got, "outline") // without a drawing none is laid on the other
				require.Equal(t, len(c.shown[rule.Name]), len(got), "%s: %v", rule.Name, got)
				for key, reason := range c.shown[rule.Name] {
					require.Equal(t, reason, got[key], rule.Name)
				}
			}
		})
	}
}
