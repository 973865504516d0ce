package draft_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/draft"
	"understitch/rules/ruletest"
)

// A piece is cut too seldom where there is twice as much of all that it is sewn to;
// what one seam alone does not tell is left open.
func TestAPieceCutTooSeldom(t *testing.T) {
	const pieces = `garment "trial" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "waist"  { length = 18 }
    edge "side"   { length = 40 }
    edge "hem"    { length = 20 }
    edge "centre" { length = 40 }
  }
  piece "back" {
    cut = 2
    edge "waist"  { length = 18 }
    edge "side"   { length = 40 }
    edge "hem"    { length = 20 }
    edge "centre" { length = 40 }
  }
`
	const sewn = `seam "front" { join = [shell.panel.front, shell.front.side] }
seam "back" { join = [shell.panel.back, shell.back.side] }
`
	panel := func(cut string) string {
		return `  piece "panel" {
    ` + cut + `
    edge "front" { length = 40 }
    edge "hem"   { length = 5 }
    edge "back"  { length = 40 }
    edge "top" {
      length = 5
      finish = "bound"
    }
  }
}
`
	}
	const hem = `elastic "hem" {
  edges  = [shell.panel.hem]
  length = 5
}
`
	for _, c := range []struct {
		name, spec string
		found      bool
	}{
		{"cut once between a fold and a pair", panel("cut = 1") + sewn + hem, true},
		{"cut twice", panel("cut = 2") + sewn + hem, false},
		{"one of two panels that differ, each on its side", panel("cut = 1") + sewn + hem + `seam "other" { join = [shell.panel.top, shell.front.side] }
`, false},
		{"a whole panel sewn to both halves of the front", panel("cut = 1") + `seam "top" { join = [shell.panel.front, [shell.front.side, shell.front.side]] }
seam "low" { join = [shell.panel.back, [shell.back.side, shell.back.side]] }
` + hem, false},
		{"sewn to one edge alone, which may be cut twice for its facing", panel("cut = 1") + `seam "front" { join = [shell.panel.front, shell.front.side] }
` + hem, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			if !c.found {
				ruletest.Spec(t, &draft.MirrorPair, pieces+c.spec)
				return
			}
			wanted := strings.Replace(c.spec, `piece "panel" {`, `piece "panel" { # fault mirror-pair error`, 1)
			r := ruletest.Spec(t, &draft.MirrorPair, pieces+wanted)
			require.Contains(t, r.Result.Findings[0].Message, "shell.panel is cut once, and all that it is sewn to is there twice (shell.front.side and shell.back.side)")
		})
	}
}
