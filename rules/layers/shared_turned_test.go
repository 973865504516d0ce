package layers

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Two fronts on the fold whose tops have one line, the lining's turned end for end:
// the corner at the fold lies where the other has its side.
const turnedTop = `
garment "bodice" { unit = "mm" }
level "top" { y = 40 }
level "hem" { y = 90 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [60, -8], [140, -3], [200, 5]] }
    edge "side"   { line = [[200, 5], [200, 100]] }
    edge "hem"    { line = [[200, 100], [0, 100]] }
    edge "centre" { line = [[0, 100], [0, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 5], [60, -3], [140, -8], [200, 0]] }
    edge "side"   { line = [[200, 0], [200, 100]] }
    edge "hem"    { line = [[200, 100], [0, 100]] }
    edge "centre" { line = [[0, 100], [0, 5]] }
  }
}
share "top" {
  outer = [shell.front.top]
  inner = [lining.front.top]
}
`

const oneInOther = `
inside "front" {
  outer = shell.front
  inner = lining.front
}
`

// The lining of turnedTop, its top the shell's own line, drawn from the side to the
// fold and on the other side of it, as on a sheet laid face down.
const drawnBack = `    fold = centre
    edge "top"    { line = [[-200, 5], [-140, -3], [-60, -8], [0, 0]] }
    edge "centre" { line = [[0, 0], [0, 100]] }
    edge "hem"    { line = [[0, 100], [-200, 100]] }
    edge "side"   { line = [[-200, 100], [-200, 5]] }
`

// otherNames calls the lining's edges beside its top otherwise than the shell's.
var otherNames = strings.NewReplacer(`"side"   { line = [[200, 0]`, `"under"  { line = [[200, 0]`,
	`"centre" { line = [[0, 100], [0, 5]`, `"front"  { line = [[0, 100], [0, 5]`)

// The same shape turned end for end is told, and told once, by whatever shows
// which end lies on which.
func TestSharedEdgeTurnedEndForEnd(t *testing.T) {
	noFold := strings.ReplaceAll(turnedTop, "    fold = centre\n", "")
	renamed := otherNames.Replace(noFold)
	for _, c := range []struct{ name, src string }{
		{"on the fold", turnedTop},
		{"on the fold, in an inside", turnedTop + oneInOther},
		{"edges of one name", noFold},
		{"a neighbour that is shared too", renamed + "share \"side\" {\n  outer = [shell.front.side]\n  inner = [lining.front.under]\n  match = \"eased\"\n ease = [-5, 5]\n}\n"},
		{"as the inside lays them", renamed + oneInOther},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, SharedEdge, c.src)
			require.Len(t, result.Findings, 1)
			require.Equal(t, "turned", result.Findings[0].Key)
			require.Greater(t, result.Findings[0].Measured, 1.0)
		})
	}
	t.Run("the message", func(t *testing.T) {
		require.Contains(t, look(t, SharedEdge, turnedTop).Findings[0].Message,
			"lining.front.top is the line of shell.front.top turned end for end: they agree only if lining.front.side meets shell.front.centre "+
				"and lining.front.centre meets shell.front.side.")
	})
}

// Drawn the other way, with the same edges at the same ends, is as good; so is what
// nothing tells, and what the spec says itself.
func TestSharedEdgeDrawnTheOtherWay(t *testing.T) {
	i := strings.LastIndex(turnedTop, "    fold = centre\n")
	j := strings.Index(turnedTop[i:], "  }\n}") + i
	back := turnedTop[:i] + drawnBack + turnedTop[j:]
	noNames := otherNames.Replace(strings.ReplaceAll(turnedTop, "    fold = centre\n", ""))
	for _, c := range []struct{ name, src string }{
		{"drawn from the side to the fold", back},
		{"with other names", strings.ReplaceAll(back, `"side"   { line = [[-`, `"under"  { line = [[-`)},
		{"nothing tells", noNames},
		{"meant so", strings.Replace(turnedTop, "share \"top\" {", "share \"top\" {\n  flip = true", 1)},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, f := range look(t, SharedEdge, c.src).Findings {
				require.NotContains(t, []string{"turned", "shape shell.front.top"}, f.Key, f.Message)
			}
		})
	}
}
