package layers

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What the shell takes out by a dart the lining takes out by a seam: the shell's
// top, dart closed, has the lining's kink.
func TestSharedEdgeDartAnsweredBySeam(t *testing.T) {
	const src = `
garment "yoke" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [20, 16]] }
    edge "hem"    { line = [[20, 16], [0, 16]] }
    edge "centre" { line = [[0, 16], [0, 0]] }
    dart "bust" {
      on     = top
      at     = 10
      intake = 3
      tip    = [10, 10]
    }
    notch "strap" {
      on = top
      at = 15
    }
  }
}
layer "lining" {
  side = "inner"
  piece "centre" {
    edge "top"    { line = [[0, 0], [8.5, 0]] }
    edge "panel"  { line = [[8.5, 0], [10, 10], [10, 16]] }
    edge "hem"    { line = [[10, 16], [0, 16]] }
    edge "centre" { line = [[0, 16], [0, 0]] }
  }
  piece "side" {
    edge "top"   { line = [[11.5, 0], [20, 0]] }
    edge "side"  { line = [[20, 0], [20, 16]] }
    edge "hem"   { line = [[20, 16], [10, 16]] }
    edge "panel" { line = [[10, 16], [10, 10], [11.5, 0]] }
    notch "strap" {
      on = top
      at = 3.5
    }
  }
}
seam "panel" { join = [lining.centre.panel, lining.side.panel] }
share "top" {
  outer = [shell.front.top]
  inner = [lining.centre.top, lining.side.top]
}
`
	sound := look(t, SharedEdge, src)
	requireKeyed(t, nil, sound.Findings)
	require.Empty(t, sound.NotPossible)
	require.Equal(t, 6, sound.Passed, "length, shape, how often, two corners, one notch")

	t.Run("the dart a little shallower", func(t *testing.T) {
		result := look(t, SharedEdge, change(t, src, "intake = 3", "intake = 2.8"))
		requireKeyed(t, map[string]float64{"length": 2}, result.Findings)
	})
	t.Run("the dart turned to another point", func(t *testing.T) {
		// The same length taken out, but the top turns by more at the dart.
		result := look(t, SharedEdge, change(t, src, "tip    = [10, 10]", "tip    = [10, 5]"))
		require.Len(t, result.Findings, 1)
		require.Equal(t, "shape shell.front.top", result.Findings[0].Key)
		require.Greater(t, result.Findings[0].Measured, 5.0)
	})
}
