package layers

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// beyondLevels is a shell front on the fold with a lining from the same draft,
// and levels at the bust and the waist alone: above the bust lie armhole,
// shoulder and neck, below the waist the side runs on to the hem.
const beyondLevels = `
garment "beyond" { unit = "cm" }
level "bust"  { y = 0 }
level "waist" { y = 18 }
layer "shell" {
  side = "outer"
%s%s}
layer "lining" {
  side = "inner"
%s%s}
inside "front" {
  outer = shell.front
  inner = lining.front
}
seam "shell-side"      { join = [shell.front.side, shell.back.side] }
seam "shell-shoulder"  { join = [shell.front.shoulder, shell.back.shoulder] }
seam "lining-side"     { join = [lining.front.side, lining.back.side] }
seam "lining-shoulder" { join = [lining.front.shoulder, lining.back.shoulder] }
`

// draftOf is a front or a back, whose edges stand in a table so that a case can
// draw one anew.
func draftOf(piece string, edges map[string]string) string {
	out := "  piece \"" + piece + "\" {\n    fold = centre\n"
	for _, e := range []struct{ name, drawn string }{
		{"neck", "line = [[0, -10], [7, -20]]"},
		{"shoulder", "line = [[7, -20], [17, -18]]"},
		{"armhole", "curve = [[17, -18], [16, -6], [19, -3], [23, -3]]"},
		{"side", "line = [[23, -3], [22.5, 0], [20, 18], [22, 30]]"},
		{"hem", "line = [[22, 30], [0, 32]]\n      finish = \"hem\""},
		{"centre", "line = [[0, 32], [0, -10]]"},
	} {
		if other, ok := edges[e.name]; ok {
			e.drawn = other
		}
		out += "    edge \"" + e.name + "\" {\n      " + e.drawn + "\n    }\n"
	}
	return out + edges["more"] + "  }\n"
}

func TestInnerBeyondTheLevels(t *testing.T) {
	drawn := func(pairs ...string) map[string]string {
		out := map[string]string{}
		for i := 0; i < len(pairs); i += 2 {
			out[pairs[i]] = pairs[i+1]
		}
		return out
	}
	const (
		oneLevel = "level \"waist\" { y = 18 }\n"
		inside   = "inner = lining.front\n"
	)
	shared := func(edge string) string {
		return fmt.Sprintf("share %q {\n  outer = shell.front.%[1]s\n  inner = lining.front.%[1]s\n  match = \"eased\"\n ease = [-5, 5]\n}\n", edge)
	}
	// The lining's neck begins 2 cm higher at the fold; square to the neckline that is 2·cos(35°).
	higher := drawn("neck", "line = [[0, -12], [7, -20]]", "centre", "line = [[0, 32], [0, -12]]")
	// Its armhole is raised by 1.5 cm at the side and wider there by 2.5 mm, as room for a sleeve's allowances asks.
	raised := drawn("armhole", "curve = [[17, -18], [16, -6], [19, -4.5], [23.25, -4.5]]", "side", "line = [[23.25, -4.5], [22.5, 0], [20, 18], [22, 30]]")
	lower := drawn("hem", "line = [[22, 30], [0, 35]]\n      finish = \"hem\"", "centre", "line = [[0, 35], [0, -10]]")
	for _, c := range []struct {
		name    string
		lining  map[string]string
		change  []string // of the whole spec
		more    string
		want    map[string]float64
		reasons map[string]string
	}{
		{"one drawing", nil, nil, "", nil, nil},
		{"a bulge below the last level", drawn("side", "line = [[23, -3], [22.5, 0], [20, 18], [24, 24], [22, 30]]"), nil, "",
			map[string]float64{"below waist": -30}, nil},
		{"a bulge above the first level", drawn("side", "line = [[23, -3], [23.75, -1.5], [22.5, 0], [20, 18], [22, 30]]"), nil, "",
			map[string]float64{"above bust": -10}, nil},
		{"one common level, a bulge below it", drawn("side", "line = [[23, -3], [22.5, 0], [20.7, 18], [22, 30]]"), []string{oneLevel, ""}, "",
			map[string]float64{"below bust": -7}, nil},
		{"one common level, a bulge above it", drawn("side", "line = [[23, -3], [23.75, -1.5], [22.5, 0], [20, 18], [22, 30]]"), []string{oneLevel, ""}, "",
			map[string]float64{"above bust": -10}, nil},
		{"out at the side and in at the fold", drawn("side", "line = [[23, -3], [22.5, 0], [20, 18], [22, 24], [22, 30]]", "centre", "line = [[0, 32], [1, 24], [0, 18], [0, -10]]"), nil, "",
			map[string]float64{"outline below waist": 10 * math.Cos(math.Atan(2.0/12))}, nil},
		{"a side that a negative clearance lets out", drawn("side", "line = [[23, -3], [22.5, 0], [20, 18], [22, 24], [22, 30]]"),
			[]string{inside, inside + "  clearance = { waist = [-1.2, null] }\n"}, "", nil, nil},
		{"room that is asked for at the level alone", drawn("side", "line = [[23, -3], [22.5, 0], [19.8, 18], [22, 30]]"),
			[]string{inside, inside + "  clearance = { waist = [0.2, null] }\n"}, "", nil, nil},
		{"a shoulder higher than the shell's", drawn("shoulder", "line = [[7, -20], [17, -19]]", "armhole", "curve = [[17, -19], [16, -6], [19, -3], [23, -3]]"), nil, "",
			map[string]float64{"outline above bust": 10 * math.Cos(math.Atan(2.0/10))}, nil},
		{"a neck that lies higher", higher, nil, "", nil,
			map[string]string{"outline above bust": "above the bust level, lining.front stands 1.15 cm out over shell.front.neck, which no share lays on it: whether it is meant to lie so is not known"}},
		{"a neck that lies higher and is shared", higher, nil, shared("neck"), nil, nil},
		{"an armhole raised under the arm", raised, nil, "", nil,
			map[string]string{"outline above bust": "above the bust level, lining.front stands 1.52 cm out over shell.front.armhole, which no share lays on it: whether it is meant to lie so is not known"}},
		{"an armhole raised under the arm and shared", raised, nil, shared("armhole"), nil, nil},
		{"a side that swells where a shared armhole begins", drawn("armhole", "curve = [[17, -18], [16, -6], [19, -3], [23, -3]]", "side", "line = [[23, -3], [25, -8], [25.5, -3], [22.5, 0], [20, 18], [22, 30]]"), nil, shared("armhole"),
			map[string]float64{"above bust": -25}, nil},
		{"a hem that hangs lower", lower, nil, "", nil, nil},
		{"a lining that ends above the shell's hem", drawn("side", "line = [[23, -3], [22.5, 0], [20, 18], [21, 24]]", "hem", "line = [[21, 24], [0, 25]]\n      finish = \"hem\"", "centre", "line = [[0, 25], [0, -10]]"), nil, "", nil, nil},
		{"a leg that hangs below the shell", drawn("side", "line = [[23, -3], [22.5, 0], [20, 18], [21, 24]]", "hem", "curve = [[21, 24], [12, 25], [6, 36], [4, 44]]\n      finish = \"bound\"",
			"centre", "line = [[4, 44], [0, 44], [0, -10]]"), nil, "", nil, nil},
		{"a dart whose legs differ", drawn("hem", "line = [[22, 30], [0, 30]]", "centre", "line = [[0, 30], [0, -10]]",
			"more", "    dart \"waist\" {\n      on = hem\n      at = 11\n      intake = 2\n      tip = [14, 24]\n    }\n"), nil, "", nil,
			map[string]string{"below waist": "the legs of lining.front.dart.waist differ, so what it takes out below the waist level is not known"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := fmt.Sprintf(beyondLevels, draftOf("front", nil), draftOf("back", nil), draftOf("front", c.lining), draftOf("back", nil))
			for i := 0; i < len(c.change); i += 2 {
				require.Contains(t, src, c.change[i])
				src = strings.Replace(src, c.change[i], c.change[i+1], 1)
			}
			result := look(t, InnerWithinOuter, src+c.more)
			requireKeyed(t, c.want, result.Findings)
			if c.reasons == nil {
				require.Empty(t, reasons(result.NotPossible))
			} else {
				require.Equal(t, c.reasons, reasons(result.NotPossible))
			}
		})
	}
}
