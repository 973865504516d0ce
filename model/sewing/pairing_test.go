package sewing_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/curve"
	"understitch/model/modeltest"
	"understitch/model/sewing"
)

// A sleeve known by tape has a notch more than the armhole: its top one meets
// the shoulder seam. The others still tell which way it is laid.
func TestNotchesTellTheWayThoughOneHasNoPartner(t *testing.T) {
	for _, c := range []struct {
		name             string
		front, top, rear int // along the cap, in centimetres
		backward         bool
	}{
		{"the cap runs as the armhole does", 9, 21, 35, false},
		{"the cap runs against it", 35, 23, 9, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := modeltest.Build(t, fmt.Sprintf(`
garment "trial" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "body" {
    edge "armhole" { length = 44 }
    notch "front" {
      on = armhole
      at = 9
    }
    notch "back" {
      on   = armhole
      at   = 35
      kind = "double"
    }
  }
  piece "sleeve" {
    edge "cap" { length = 44 }
    notch "front" {
      on = cap
      at = %d
    }
    notch "top" {
      on = cap
      at = %d
    }
    notch "back" {
      on   = cap
      at   = %d
      kind = "double"
    }
  }
}
seam "armhole" { join = [shell.body.armhole, shell.sleeve.cap] }
`, c.front, c.top, c.rear))
			j := g.Joins()[0]
			_, sleeve, err := sewing.Walks(g, j)
			require.NoError(t, err)
			require.Equal(t, sewing.ByNotches, sewing.Way(j))
			require.Equal(t, c.backward, sleeve.Runs[0].Backward())
		})
	}
}

// Two sides of two edges each, known by tape: whoever lists them begins at the
// same end.
func TestListedSidesRunAsListed(t *testing.T) {
	g := modeltest.Build(t, `
garment "trial" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "upper" { length = 15 }
    edge "lower" { length = 25 }
  }
  piece "back" {
    edge "lower" { length = 25 }
    edge "upper" { length = 15 }
  }
}
seam "side" { join = [[shell.front.upper, shell.front.lower], [shell.back.upper, shell.back.lower]] }
`)
	j := g.Joins()[0]
	a, b, err := sewing.Walks(g, j)
	require.NoError(t, err)
	require.Equal(t, sewing.ByListing, sewing.Way(j))
	require.Equal(t, "upper", a.Runs[0].Edge.Name)
	require.Equal(t, "upper", b.Runs[0].Edge.Name)
}

// Pieces with levels of their own are drawn upright: down goes with down, though
// the notches would fit the other way round as well.
func TestOwnLevelsTellTheWay(t *testing.T) {
	for _, c := range []struct{ levels, way string }{
		{"levels = { hip = 50 }", sewing.ByLevels},
		{"levels = {}", sewing.ByOutlines}, // may lie any way round
	} {
		t.Run(c.levels, func(t *testing.T) {
			piece := func(name, levels, top string) string {
				return `piece "` + name + `" {
    ` + levels + `
    edge "top"  { line = [[0, ` + top + `], [20, ` + top + `]] }
    edge "side" { line = [[20, ` + top + `], [20, ` + top + ` + 60]] }
    edge "hem"  { line = [[20, ` + top + ` + 60], [0, ` + top + ` + 60], [0, ` + top + `]] }
    notch "hip" {
      on = side
      at = 20
    }
    notch "low" {
      on = side
      at = 40
    }
  }
`
			}
			g := modeltest.Build(t, "garment \"skirt\" { unit = \"cm\" }\nlevel \"hip\" { y = 20 }\nlayer \"shell\" {\n  side = \"outer\"\n"+
				piece("front", "", "0")+piece("back", c.levels, "30")+"}\nseam \"side\" { join = [shell.front.side, shell.back.side] }\n")
			j := g.Joins()[0]
			_, back, err := sewing.Walks(g, j)
			require.NoError(t, err)
			require.Equal(t, c.way, sewing.Way(j))
			require.Equal(t, c.way == sewing.ByOutlines, back.Runs[0].Backward())
		})
	}
}

// A draft without levels may lie any way round: that two sides go down, or one up
// and one down, says nothing there. Where they are drawn does.
func TestTheWayDoesNotTurnWithADraftWithoutLevels(t *testing.T) {
	const src = `
garment "trial" { unit = "cm" }
%s
layer "shell" {
  side = "outer"
  piece "front" {
    edge "shoulder" { line = [[6, 0], [18, 5]] }
    edge "rest"     { line = [[18, 5], [18, 30], [6, 0]] }
  }
  piece "back" {
    edge "shoulder" { line = [[5, -2], [16.8, -6]] }
    edge "rest"     { line = [[16.8, -6], [18, -30], [5, -2]] }
  }
}
seam "shoulder" { join = [shell.front.shoulder, shell.back.shoulder] }
`
	ways := func(levels string) map[string]int {
		out := map[string]int{}
		for degrees := 0.0; degrees < 360; degrees += 7 {
			g := modeltest.Build(t, fmt.Sprintf(src, levels))
			turn := curve.Rotate(curve.Point{X: 30}, degrees*math.Pi/180)
			for _, e := range g.Edges() {
				e.Path = e.Path.Move(turn)
			}
			j := g.JoinOf(g.Seams[0])
			_, b, err := sewing.Walks(g, j)
			require.NoError(t, err)
			out[fmt.Sprintf("%s, backward: %v", sewing.Way(j), b.Runs[0].Backward())]++
		}
		return out
	}
	require.Equal(t, map[string]int{"the drawing, backward: false": 52}, ways(""))
	require.Contains(t, ways("level \"bust\" { y = 20 }"), "levels, backward: true", "with levels down is down, and the sides tell by that")
}
