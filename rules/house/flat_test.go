package house

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/spec"
)

// Every figure of every kind that a rule in text can read is told, under the same
// name, if the garment has it.
func TestFiguresLaidFlat(t *testing.T) {
	doc, diags := spec.Read("g.garment.hcl", []byte(`garment "g" {
  unit  = "cm"
  sizes = ["38", "40"]
}
size "38" { waist_girth = 70 }
size "40" { waist_girth = 74 }
level "top" {
  y    = 0
  body = body.waist_girth
}
layer "shell" {
  side = "outer"
  piece "front" {
    edge "top" {
      line   = [[0, 0], [20, 0]]
      finish = "hem"
    }
    edge "side" { line = [[20, 0], [20, 30]] }
    edge "rest" { line = [[20, 30], [0, 30], [0, 0]] }
    dart "waist" {
      on     = top
      at     = 10
      intake = 3
      tip    = [10, 12]
    }
  }
}
`), nil)
	require.Empty(t, diags)
	g, diags := doc.Garment("38")
	require.Empty(t, diags)
	got := map[string]any{}
	Figures(g, func(address, figure string, value any) {
		require.NotContains(t, got, address+" "+figure, "once")
		got[address+" "+figure] = value
	})
	for name, want := range map[string]any{
		"garment name": "g", "garment size": "38", "garment sizes.1": "38", "garment sizes.2": "40",
		"shell side": "outer", "shell.front mirrored": false, "shell.front width.top": 170.0,
		"shell.front.top finish": "hem", "shell.front.top length": 200.0, "shell.front.dart.waist intake": 30.0,
		"level.top y": 0.0,
	} {
		require.Equal(t, want, got[name], name)
	}
	require.InDelta(t, 120.934, got["shell.front.dart.waist legs.2"], 1e-3, "closed form: 15 mm across, 120 mm down")
	for _, none := range []string{"shell.front name", "shell.front address", "shell.front.top piece", "shell fabric", "shell.front.side allowance"} {
		require.NotContains(t, got, none)
	}
}
