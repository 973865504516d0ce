package spec

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Levels may be stated from each other in any order, over the house's unit as well, and
// draft values and points from levels.
func TestLevelsFromLevels(t *testing.T) {
	h, diags := ReadHouse("house.hcl", []byte(`house "h" { unit = "in" }
level "hip"  { y = level.waist.y + 8 }
level "knee" {
  y    = body.knee_height
  body = body.knee_girth
}
`))
	require.Empty(t, diags)
	d, diags := Read("x.garment.hcl", []byte(`garment "g" { unit = "cm" }
level "tummy" { y = level.waist.y + 9 }
draft { low = level.hip.y + 10 }
level "waist" { y = 17.5 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "a" { line = [[0, 0], [20, 0], [20, draft.low]] }
    edge "b" { line = [[20, draft.low], [0, level.tummy.y], [0, 0]] }
  }
}
`), h)
	require.Empty(t, diags)
	g, diags := d.Garment("")
	require.Empty(t, diags, "a level of the house that is not used asks nothing")
	heights := map[string]float64{}
	for _, l := range g.Levels {
		heights[l.Name] = l.Y
	}
	require.InDeltaMapValues(t, map[string]float64{"tummy": 265, "waist": 175, "hip": 175 + 8*25.4}, heights, 1e-9)
	require.InDelta(t, 175+8*25.4+100, g.Edges()[0].Path.End().Y, 1e-9)
}

// An allowance of the layer, or else of its cloth, stands in for the house's default, and
// for nothing else of the house.
func TestAllowancesOfLayersAndFabrics(t *testing.T) {
	h, diags := ReadHouse("house.hcl", []byte("house \"h\" { unit = \"cm\" }\nallowance \"default\" { width = 1 }\nallowance \"hem\" { width = 4 }\n"))
	require.Empty(t, diags)
	layer := func(name, more string) string {
		return `layer "` + name + `" {
  side   = "outer"
  fabric = fabric.velvet
  ` + more + `
  piece "front" {
    edge "side" { line = [[0, 0], [20, 0], [20, 30]] }
    edge "own" {
      line = [[20, 30], [10, 40]]
      allowance = 2.2
    }
    edge "hem" {
      line = [[10, 40], [0, 40], [0, 0]]
      finish = "hem"
    }
  }
}
`
	}
	for _, c := range []struct {
		name, fabric, layer string
		side                float64
	}{
		{"the house's", "", "", 10},
		{"the cloth's", "allowance = 1.5", "", 15},
		{"the layer's", "allowance = 1.5", "allowance = 0.7", 7},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, diags := Read("x.garment.hcl", []byte("garment \"g\" { unit = \"cm\" }\nfabric \"velvet\" {\n  "+c.fabric+"\n}\n"+layer("shell", c.layer)), h)
			require.Empty(t, diags)
			g, diags := d.Garment("")
			require.Empty(t, diags)
			e := g.Edges()
			require.InDeltaSlice(t, []float64{c.side, 22, 40}, []float64{e[0].Allowance.Width, e[1].Allowance.Width, e[2].Allowance.Width}, 1e-9)
		})
	}
}
