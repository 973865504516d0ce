package measuring_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/modeltest"
)

// tubes are two layers of a front and a back on the fold, straight between the
// levels, as wide at each as stated in millimetres; joined says whether the
// inner one is sewn up.
func tubes(outer, inner [2]float64, joined bool, more string) string {
	layer := func(name, side string, w [2]float64) string {
		pieces := ""
		for _, p := range []string{"front", "back"} {
			pieces += fmt.Sprintf(`
  piece %q {
    fold = centre
    edge "top"    { line = [[0, 0], [%v, 0]] }
    edge "side"   { line = [[%v, 0], [%v, 200]] }
    edge "hem"    { line = [[%v, 200], [0, 200]] }
    edge "centre" { line = [[0, 200], [0, 0]] }
  }`, p, w[0], w[0], w[1], w[1])
		}
		return fmt.Sprintf("layer %q {\n  side = %q\n%s\n%s\n}\n", name, side, more, pieces)
	}
	src := "garment \"tubes\" { unit = \"mm\" }\nlevel \"low\" { y = 200 }\nlevel \"top\" { y = 0 }\n" +
		layer("shell", "outer", outer) + layer("lining", "inner", inner) + "seam \"shell\" { join = [shell.front.side, shell.back.side] }\n"
	if joined {
		src += "seam \"lining\" { join = [lining.front.side, lining.back.side] }\n"
	}
	return src
}

func insides(clearance string) string {
	out := ""
	for _, p := range []string{"front", "back"} {
		out += fmt.Sprintf("inside %q {\n  outer = shell.%s\n  inner = lining.%s\n  clearance = %s\n}\n", p, p, p, clearance)
	}
	return out
}

// What the girths show and what insides show piece by piece is one room.
func TestRooms(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		width := rapid.Float64Range(50, 500)
		outer := [2]float64{width.Draw(rt, "outer top"), width.Draw(rt, "outer low")}
		inner := [2]float64{width.Draw(rt, "inner top"), width.Draw(rt, "inner low")}
		for _, joined := range []bool{true, false} {
			g := modeltest.Build(t, tubes(outer, inner, joined, "")+insides("{ top = [null, null] }"))
			rooms := measuring.Rooms(g, g.Layers[0], g.Layers[1])
			require.Len(rt, rooms, 2)
			for i, r := range rooms { // from the top down, however they are listed
				require.Equal(rt, []string{"top", "low"}[i], r.Level.Name)
				require.InDelta(rt, 4*outer[i], r.Outer, 1e-6)
				require.InDelta(rt, 4*(outer[i]-inner[i]), r.Room(), 1e-6)
			}
		}
	})
}

func TestRoomsOfAnOpenLayer(t *testing.T) {
	g := modeltest.Build(t, tubes([2]float64{100, 80}, [2]float64{90, 80}, false, ""))
	require.Empty(t, measuring.Rooms(g, g.Layers[0], g.Layers[1]), "no insides")
	g = modeltest.Build(t, tubes([2]float64{100, 80}, [2]float64{90, 80}, false, "")+"inside \"front\" {\n  outer = shell.front\n  inner = lining.front\n}\n")
	require.Empty(t, measuring.Rooms(g, g.Layers[0], g.Layers[1]), "the backs are in no inside")
}

func TestRoomChange(t *testing.T) {
	for _, c := range []struct {
		name, more, insides string
		want                model.Range
	}{
		{"nothing stated", "", "", model.Exactly(0)},
		{"clearances, twice on the fold, of two pieces", "", insides("{ top = [0, 2], low = [5, 6] }"), model.Range{Low: 0, High: 24}},
		{"clearances that fall", "", insides("{ top = [5, 6], low = [0, 2] }"), model.Range{Low: -24, High: 0}},
		{"clearances at one level", "", insides("{ top = [5, 6] }"), model.Exactly(0)},
		{"eases alike on both layers", "ease = { top = [0, 4], low = [0, 4] }", "", model.Range{Low: -8, High: 8}},
		{"an ease at one level", "ease = { top = [0, 4] }", "", model.Exactly(0)},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := modeltest.Build(t, tubes([2]float64{100, 80}, [2]float64{90, 80}, true, c.more)+c.insides)
			require.Equal(t, c.want, measuring.RoomChange(g, g.Layers[0], g.Layers[1], g.Levels[1], g.Levels[0]))
		})
	}
}

// What is left of one value less another always lies in the ranges' difference.
func TestRangeLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		within := func(name string) (model.Range, float64) {
			low := rapid.Float64Range(-100, 100).Draw(t, name+" low")
			width := rapid.Float64Range(0, 50).Draw(t, name+" width")
			v := low + width*rapid.Float64Range(0, 1).Draw(t, name)
			return model.Range{Low: low, High: low + width}, v
		}
		a, v := within("first")
		b, w := within("second")
		require.LessOrEqual(t, a.Less(b).Low-1e-9, v-w)
		require.GreaterOrEqual(t, a.Less(b).High+1e-9, v-w)
	})
}

func TestLayerOver(t *testing.T) {
	g := modeltest.Build(t, tubes([2]float64{100, 80}, [2]float64{90, 80}, true, ""))
	require.Nil(t, measuring.LayerOver(g, g.Layers[0]))
	require.Equal(t, g.Layers[0], measuring.LayerOver(g, g.Layers[1]))
}
