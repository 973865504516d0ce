package sewing_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/modeltest"
	"understitch/model/sewing"
)

// An armhole of two edges that both begin at the shoulder, as high at its end as
// at its start, on two layers; the lining's shoulder a little lower.
const armholes = `
garment "vest" { unit = "cm" }
level "bust" { y = 0 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "armhole" { smooth = [[12, -8], [16, 0], [22, 4]] }
    edge "rest"    { line = [[22, 4], [0, 20], [12, -8]] }
  }
  piece "back" {
    edge "armhole" { smooth = [[12, -8], [17, 0], [22, 4]] }
    edge "rest"    { line = [[22, 4], [0, 20], [12, -8]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    edge "armhole" { smooth = [[12, -8], [16, 0], [22, 4]] }
    edge "rest"    { line = [[22, 4], [0, 20], [12, -8]] }
  }
  piece "back" {
    edge "armhole" { smooth = [[12, -7.4], [17, 0], [22, 4]] }
    edge "rest"    { line = [[22, 4], [0, 20], [12, -7.4]] }
  }
}
share "armhole" {
  outer = [shell.front.armhole, shell.back.armhole]
  inner = [lining.front.armhole, lining.back.armhole]
}
`

func TestShareWalksRunTheSameWay(t *testing.T) {
	for _, c := range []struct {
		name   string
		change [2]string
		first  string // the inner edge that lies first
		way    string
	}{
		{"several edges, as listed", [2]string{"", ""}, "lining.front.armhole", sewing.ByOrder},
		{"flipped by hand", [2]string{"share \"armhole\" {", "share \"armhole\" {\n  flip = true"}, "lining.back.armhole", sewing.ByOrder},
		{"on paper", [2]string{"smooth = [[12, -7.4], [17, 0], [22, 4]]", "length = 16"}, "lining.front.armhole", sewing.ByOrder},
		{"one edge each, by levels", [2]string{"[shell.front.armhole, shell.back.armhole]\n  inner = [lining.front.armhole, lining.back.armhole]",
			"[shell.back.armhole]\n  inner = [lining.back.armhole]"}, "lining.back.armhole", sewing.ByLevels},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := modeltest.Build(t, strings.Replace(armholes, c.change[0], c.change[1], 1))
			outer, inner, way, err := sewing.ShareWalks(g, g.Shares[0])
			require.NoError(t, err)
			require.Equal(t, c.way, way)
			require.Equal(t, c.first, inner.Runs[0].Edge.Address())
			require.Equal(t, "armhole", outer.Runs[0].Edge.Name)
		})
	}
}

// Two paper edges have nothing that shows a direction: layers are drafted the
// same way round.
func TestShareWalksOnPaper(t *testing.T) {
	src := strings.ReplaceAll(armholes, "smooth = [[12, -8], [16, 0], [22, 4]]", "length = 16")
	src = strings.Replace(src, "[shell.front.armhole, shell.back.armhole]\n  inner = [lining.front.armhole, lining.back.armhole]",
		"[shell.front.armhole]\n  inner = [lining.front.armhole]", 1)
	g := modeltest.Build(t, src)
	outer, inner, way, err := sewing.ShareWalks(g, g.Shares[0])
	require.NoError(t, err)
	require.Equal(t, sewing.ByOrder, way)
	require.False(t, outer.Runs[0].Backward())
	require.False(t, inner.Runs[0].Backward())
}

// The edges at the ends tell before the levels which end lies on which.
func TestShareWalksByTheirEnds(t *testing.T) {
	const fronts = `
garment "bodice" { unit = "mm" }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [200, 5]] }
    edge "side"   { line = [[200, 5], [200, 100]] }
    edge "hem"    { line = [[200, 100], [0, 100]] }
    edge "centre" { line = [[0, 100], [0, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 5], [200, 0]] }
    edge "under"  { line = [[200, 0], [200, 100]] }
    edge "hem"    { line = [[200, 100], [0, 100]] }
    edge "centre" { line = [[0, 100], [0, 5]] }
  }
}
share "top" {
  outer = [shell.front.top]
  inner = [lining.front.top]
}
`
	const inside = "inside \"front\" {\n  outer = shell.front\n  inner = lining.front\n}\n"
	unnamed := strings.NewReplacer("    fold = centre\n", "", "\"centre\" { line = [[0, 100], [0, 5]] }", "\"front\" { line = [[0, 100], [0, 5]] }").Replace(fronts)
	for _, c := range []struct {
		name, src, way string
		backward       bool
	}{
		{"fold on fold", fronts, sewing.ByEnds, false},
		{"by the side that is shared", unnamed + "share \"side\" {\n  outer = [shell.front.side]\n  inner = [lining.front.under]\n}\n", sewing.ByEnds, false},
		{"as an inside lays them", unnamed + inside, sewing.ByDrawing, false},
		{"by levels, where nothing else tells", unnamed + "level \"bust\" { y = 50 }\n", sewing.ByLevels, true},
		{"by the drawing, which may lie any way round without levels", unnamed, sewing.ByDrawing, false},
		{"the lining drawn face down, from side to fold", strings.NewReplacer("[[0, 5], [200, 0]]", "[[-200, 5], [0, 0]]",
			"\"under\"  { line = [[200, 0], [200, 100]]", "\"centre\" { line = [[0, 0], [0, 100]]", "[[0, 100], [0, 5]]", "[[-200, 100], [-200, 5]]",
			"\"hem\"    { line = [[200, 100], [0, 100]] }\n    edge \"centre\" { line = [[0, 100], [0, 5]]",
			"\"hem\"    { line = [[0, 100], [-200, 100]] }\n    edge \"under\" { line = [[-200, 100], [-200, 5]]").Replace(fronts), sewing.ByEnds, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := modeltest.Build(t, c.src)
			_, inner, way, err := sewing.ShareWalks(g, g.Shares[0])
			require.NoError(t, err)
			require.Equal(t, c.way, way)
			require.Equal(t, c.backward, inner.Runs[0].Backward())
		})
	}
}
