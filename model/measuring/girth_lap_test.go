package measuring_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/modeltest"
)

// A bodice whose fronts button from the neck to 30 cm below the bust and are sewn
// from there on, over a lining that is sewn shut; 24 cm across each front, 1.5 cm
// of it past the centre, and 22 cm across the half back.
const buttonedFront = `
garment "bodice" { unit = "cm" }
level "bust"  { y = 0 }
level "above" { y = 29.9 }
level "stop"  { y = 30 }
level "below" { y = 30.1 }
level "hip"   { y = 40 }
layer "shell" {
  side = "outer"
  piece "front" {
    cut = 2
    edge "neck"   { line = [[-1.5, -12], [16, -20]] }
    edge "side"   { line = [[16, -20], [22.5, 0], [22.5, 50]] }
    edge "hem"    { line = [[22.5, 50], [-1.5, 50]] }
    edge "centre" { line = [[-1.5, 50], [-1.5, -12]] }
  }
  piece "back" {
    fold = centre
    edge "neck"   { line = [[0, -12], [16, -20]] }
    edge "side"   { line = [[16, -20], [22, 0], [22, 50]] }
    edge "hem"    { line = [[22, 50], [0, 50]] }
    edge "centre" { line = [[0, 50], [0, -12]] }
  }
}
layer "lining" {
  side = "inner"
  piece "whole" {
    cut = 2
    edge "top"    { line = [[0, -12], [44, -12]] }
    edge "front"  { line = [[44, -12], [44, 50]] }
    edge "hem"    { line = [[44, 50], [0, 50]] }
    edge "back"   { line = [[0, 50], [0, -12]] }
  }
}
seam "side"   { join = [shell.front.side, shell.back.side] }
seam "centre" { join = [part(shell.front.centre, start, stop), part(shell.front.centre, start, stop)] }
seam "front"  { join = [lining.whole.front, lining.whole.front] }
seam "back"   { join = [lining.whole.back, lining.whole.back] }
closure "front" {
  kind  = "button"
  edges = [shell.front.centre, shell.front.centre]
  from  = end
  to    = stop
  lap   = 3
}
`

func levelNamed(t testing.TB, g *model.Garment, name string) *model.Level {
	t.Helper()
	for _, l := range g.Levels {
		if l.Name == name {
			return l
		}
	}
	require.Fail(t, "no level "+name)
	return nil
}

func layerNamed(t testing.TB, g *model.Garment, name string) *model.Layer {
	t.Helper()
	for _, l := range g.Layers {
		if l.Name == name {
			return l
		}
	}
	require.Fail(t, "no layer "+name)
	return nil
}

// All figures here are closed form.
func TestLapTakenOffAGirth(t *testing.T) {
	type girths = map[string]float64
	open := girths{"bust": 920, "above": 920, "stop": 920, "below": 920, "hip": 920}
	for _, c := range []struct {
		name   string
		change []string
		want   girths
	}{
		{"as far down as the closure reaches", nil, girths{"bust": 890, "above": 890, "stop": 890, "below": 920, "hip": 920}},
		{"edge to edge", []string{"  lap   = 3\n", ""}, open},
		{"closed all the way", []string{"  from  = end\n  to    = stop\n", "", `seam "centre" { join = [part(shell.front.centre, start, stop), part(shell.front.centre, start, stop)] }`, ""},
			girths{"bust": 890, "above": 890, "stop": 890, "below": 890, "hip": 890}},
		{"from the hem up", []string{"part(shell.front.centre, start, stop)", "part(shell.front.centre, stop, end)", "from  = end", "from  = start"},
			girths{"bust": 920, "above": 920, "stop": 890, "below": 890, "hip": 890}},
		{"a part of the edge", []string{"edges = [shell.front.centre, shell.front.centre]\n  from  = end\n  to    = stop",
			"edges = [part(shell.front.centre, end, stop), part(shell.front.centre, end, stop)]"}, girths{"bust": 890, "above": 890, "stop": 890, "below": 920, "hip": 920}},
		{"two fronts, each cut once", []string{"    cut = 2\n    edge \"neck\"", "    edge \"neck\"", "  piece \"back\"", `  piece "left" {
    edge "neck"   { line = [[-1.5, -12], [16, -20]] }
    edge "side"   { line = [[16, -20], [22.5, 0], [22.5, 50]] }
    edge "hem"    { line = [[22.5, 50], [-1.5, 50]] }
    edge "centre" { line = [[-1.5, 50], [-1.5, -12]] }
  }
  piece "back"`, `seam "side"`, `seam "left" { join = [shell.left.side, shell.back.side] }
seam "side"`, "start, stop), part(shell.front.centre", "start, stop), part(shell.left.centre", "edges = [shell.front.centre, shell.front", "edges = [shell.front.centre, shell.left"},
			girths{"bust": 890, "above": 890, "stop": 890, "below": 920, "hip": 920}},
		{"both side seams lap, and the centre is sewn", []string{"[part(shell.front.centre, start, stop), part(shell.front.centre, start, stop)]", "[shell.front.centre, shell.front.centre]",
			"edges = [shell.front.centre, shell.front.centre]\n  from  = end\n  to    = stop", "edges = [shell.front.side, shell.back.side]",
			`seam "side"   { join = [shell.front.side, shell.back.side] }`, ""}, girths{"bust": 860, "above": 860, "stop": 860, "below": 860, "hip": 860}},
		{"one that lies along the level, as a gusset does", []string{"[part(shell.front.centre, start, stop), part(shell.front.centre, start, stop)]", "[shell.front.centre, shell.front.centre]",
			"edges = [shell.front.centre, shell.front.centre]\n  from  = end\n  to    = stop", "edges = [shell.front.hem, shell.back.hem]", "y = 40", "y = 50"}, open},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := buttonedFront
			for i := 0; i < len(c.change); i += 2 {
				require.Contains(t, src, c.change[i])
				src = strings.Replace(src, c.change[i], c.change[i+1], 1)
			}
			if c.name == "from the hem up" {
				src = strings.Replace(src, "part(shell.front.centre, start, stop)", "part(shell.front.centre, stop, end)", 1)
			}
			g := modeltest.Build(t, src)
			for name, want := range c.want {
				girth, err := measuring.Girth(g, layerNamed(t, g, "shell"), levelNamed(t, g, name))
				require.NoError(t, err)
				require.InDelta(t, want, girth, 1e-6, name)
				girth, err = measuring.Girth(g, layerNamed(t, g, "lining"), levelNamed(t, g, name))
				require.NoError(t, err)
				require.InDelta(t, 880, girth, 1e-6, "the lining is not closed by it")
			}
		})
	}
}

// A lining that is turned out with its shell and closes by it laps with it: the
// room between them is that between their pieces.
func TestLapLeavesTheRoomToALiningThatClosesByIt(t *testing.T) {
	src := strings.Replace(buttonedFront, `seam "front"  { join = [lining.whole.front, lining.whole.front] }`, `
share "front" {
  outer = part(shell.front.centre, stop, end)
  inner = part(lining.whole.front, start, stop)
}
inside "all" {
  outer = [shell.front, shell.back]
  inner = lining.whole
}`, 1)
	g := modeltest.Build(t, src)
	rooms := map[string]float64{}
	for _, r := range measuring.Rooms(g, layerNamed(t, g, "shell"), layerNamed(t, g, "lining")) {
		rooms[r.Level.Name] = r.Room()
	}
	require.InDelta(t, 40, rooms["bust"], 1e-6)
	require.InDelta(t, 40, rooms["above"], 1e-6)
}

// Taped pieces show no line that a level could leave them over; only the notch that
// carries its name tells.
func TestLapOfPaperPieces(t *testing.T) {
	for _, c := range []struct {
		name, closure, notch string
		want                 float64
		reason               string
	}{
		{"over the whole edge", "", "", 690, ""},
		{"down to a notch, the level above it", "from = start\n  to = stop", "notch \"waist\" {\n on = front\n at = 20\n}", 690, ""},
		{"down to a notch, the level below it", "from = start\n  to = stop", "notch \"waist\" {\n on = front\n at = 40\n}", 720, ""},
		{"down to a notch, and nobody knows", "from = start\n  to = stop", "", 0,
			"closure.front laps over, and whether it reaches the waist level is not known: shell.front.front has no drawing and no notch called \"waist\" that would mark the level"},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := modeltest.Build(t, `
garment "coat" { unit = "cm" }
level "waist" {}
layer "shell" {
  side = "outer"
  piece "front" {
    cut   = 2
    width = { waist = 19 }
    edge "front" { length = 60 }
    edge "side"  { length = 50 }
    notch "stop" {
      on = front
      at = 30
    }
    `+c.notch+`
  }
  piece "back" {
    cut   = 2
    width = { waist = 17 }
    edge "side"   { length = 50 }
    edge "centre" { length = 60 }
  }
}
closure "front" {
  kind  = "button"
  edges = [shell.front.front, shell.front.front]
  lap   = 3
  `+c.closure+`
}
`)
			girth, err := measuring.Girth(g, g.Layers[0], g.Levels[0])
			if c.reason != "" {
				require.EqualError(t, err, c.reason)
				return
			}
			require.NoError(t, err)
			require.InDelta(t, c.want, girth, 1e-6)
		})
	}
}

// The account names what it takes off, and how often.
func TestGirthSum(t *testing.T) {
	g := modeltest.Build(t, buttonedFront)
	sum, err := measuring.SumGirth(g, layerNamed(t, g, "shell"), levelNamed(t, g, "bust"))
	require.NoError(t, err)
	require.Len(t, sum.Laps, 1)
	require.Equal(t, "closure.front", sum.Laps[0].Closure.Address())
	require.InDelta(t, 30, sum.Laps[0].Length(), 1e-9)
	total := -sum.Laps[0].Length()
	for _, p := range sum.Pieces {
		w, err := measuring.WidthOf(p, levelNamed(t, g, "bust"))
		require.NoError(t, err)
		total += w.Net * p.Times()
	}
	require.InDelta(t, sum.Total, total, 1e-9)
}
