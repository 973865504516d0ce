package layers

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The way round grows by 2π for each millimetre (closed form: circles with one
// middle; figures to a hundredth of a millimetre).
func TestTurn(t *testing.T) {
	for apart, want := range map[float64]float64{0.3: 1.88, 0.5: 3.14, 1: 6.28, 1.5: 9.42, 2: 12.57, 3: 18.85} {
		require.InDelta(t, want, turn(apart), 0.005)
	}
}

func TestTurnOfCloth(t *testing.T) {
	seam := `seam "lining-side" { join = [lining.front.side, lining.back.side] }`
	inside := func(low string) string {
		out := ""
		for _, piece := range []string{"front", "back"} {
			out += "inside \"" + piece + "\" {\n outer = shell." + piece + "\n inner = lining." + piece + "\n clearance = { chest = [" + low + ", null] }\n}\n"
		}
		return out
	}
	const found = "lining in shell"
	share := "share \"top\" {\n outer = [shell.front.top, shell.back.top]\n inner = [lining.front.top, lining.back.top]\n match = \"eased\"\n ease = [-5, 5]\n}\n"
	for _, c := range []struct {
		name   string
		change []string
		more   string
		want   map[string]float64
		passed int
	}{
		{"12 mm of 22", nil, "", map[string]float64{found: 12}, 0},
		{"thinner cloths", []string{"mm(3)", "mm(1.5)", "mm(4)", "mm(2)"}, "", nil, 1},
		{"a millimetre short of it is let pass", []string{"mm(3)", "mm(2)", "mm(4)", "mm(2)"}, "", nil, 1},
		{"more is not", []string{"mm(3)", "mm(2.2)", "mm(4)", "mm(2)"}, "", map[string]float64{found: 12}, 0},
		{"a cloth that gives", []string{"across = 3", "across = 10"}, "", nil, 0},
		{"a lining that gives", []string{"across = 2", "across = 25"}, "", nil, 0},
		{"a thickness that nobody stated", []string{"thickness = mm(4)\n", ""}, "", nil, 0},
		{"a stretch that nobody stated", []string{"stretch   = { across = 2, along = 2 }\n", ""}, "", nil, 0},
		{"no cloth named", []string{"fabric = fabric.quilting\n", ""}, "", nil, 0},
		{"an open lining", []string{seam, ""}, "", nil, 0},
		{"an inside that lets it be larger", nil, inside("-0.5"), nil, 0},
		{"an inside that asks for no more", nil, inside("0"), map[string]float64{found: 12}, 0},
		{"a shared edge along the level", []string{"chest\" { y = 0", "chest\" { y = -3"}, share, nil, 0},
		{"a shared edge above it", nil, share, map[string]float64{found: 12}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, TurnOfCloth, change(t, turnOfClothBad, c.change...)+c.more)
			requireKeyed(t, c.want, result.Findings)
			require.Empty(t, result.NotPossible)
			require.Equal(t, c.passed, result.Passed)
		})
	}
	require.Equal(t, "shell goes round lining at the chest level with 1.2 cm to spare (105.2 cm against 104 cm). Its cloth lies 3.5 mm further out, "+
		"middle to middle, and takes 2.2 cm more to go round. Let shell out or take lining in by 10 mm.",
		look(t, TurnOfCloth, turnOfClothBad).Findings[0].Message)
}

// Whatever the cloths, what is found is exactly a room short of the turn by
// more than a millimetre.
func TestTurnOfClothFindsWhatIsShort(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		outer := rapid.Float64Range(0.1, 5).Draw(rt, "outer thickness")
		inner := rapid.Float64Range(0.1, 5).Draw(rt, "inner thickness")
		src := change(t, turnOfClothBad, "mm(3)", fmt.Sprintf("mm(%v)", outer), "mm(4)", fmt.Sprintf("mm(%v)", inner))
		found := len(look(t, TurnOfCloth, src).Findings) > 0
		require.Equal(rt, 12 < turn((outer+inner)/2)-1, found)
	})
}
