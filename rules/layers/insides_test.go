package layers

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A shell front on the fold, 20 cm across at the bust, 18 at the waist and 20 at
// the hip, with a lining cut from the same drawing.
const bodice = `
garment "bodice" { unit = "cm" }
level "bust"  { y = 0 }
level "waist" { y = 20 }
level "hip"   { y = 40 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, -5], [20, -5]] }
    edge "side"   { line = [[20, -5], [20, 0], [18, 20], [20, 40]] }
    edge "hem"    { line = [[20, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, -5]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, -5], [20, -5]] }
    edge "side"   { line = [[20, -5], [20, 0], [18, 20], [20, 40]] }
    edge "hem"    { line = [[20, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, -5]] }
  }
}
inside "front" {
  outer = shell.front
  inner = lining.front
}
`

func TestInnerWithinOuter(t *testing.T) {
	const (
		inner  = "layer \"lining\" {\n  side = \"inner\"\n  piece \"front\" {\n    fold = centre\n    edge \"top\"    { line = [[0, -5], [20, -5]] }\n"
		side   = inner + "    edge \"side\"   { line = [[20, -5], [20, 0], [18, 20], [20, 40]] }\n"
		wanted = "inner = lining.front\n"
	)
	drawn := func(points string) []string {
		return []string{side, inner + "    edge \"side\"   { line = " + points + " }\n"}
	}
	dart := func(piece, intake, up, down string) []string {
		mark := "    edge \"centre\" { line = [[0, 40], [0, -5]] }\n  }\n}\n" + piece
		return []string{mark, "    edge \"centre\" { line = [[0, 40], [0, -5]] }\n    dart \"waist\" {\n      centre = [9, 20]\n      intake = " + intake +
			"\n      up     = " + up + "\n      down   = " + down + "\n    }\n  }\n}\n" + piece}
	}
	asks := func(clearance string) []string {
		return []string{wanted, wanted + "  clearance = { " + clearance + " }\n"}
	}
	join := func(lists ...[]string) []string {
		var out []string
		for _, l := range lists {
			out = append(out, l...)
		}
		return out
	}
	across := 4 * math.Cos(math.Atan(2.0/20))
	for _, c := range []struct {
		name    string
		change  []string
		want    map[string]float64
		reasons map[string]string
	}{
		{"one drawing", nil, nil, nil},
		{"wider at the waist", drawn("[[20, -5], [20, 0], [18.3, 20], [20, 40]]"), map[string]float64{"waist": -3}, nil},
		{"wider within half a millimetre", drawn("[[20, -5], [20, 0], [18.04, 20], [20, 40]]"), nil, nil},
		{"too much room", join(drawn("[[20, -5], [20, 0], [15, 20], [20, 40]]"), asks("waist = [0, 2]")), map[string]float64{"waist": 30}, nil},
		{"not enough room", asks("waist = [0.5, 2]"), map[string]float64{"waist": 0}, nil},
		{"meant larger, and is", join(drawn("[[20, -5], [21, 0], [20, 20], [22, 40]]"), asks("bust = [-2, 0], waist = [-3, -1], hip = [-3, -1]")), nil, nil},
		{"meant larger, and is not", asks("waist = [-3, -1]"), map[string]float64{"waist": 0}, nil},
		// 3 mm out halfway between bust and waist, where both levels agree.
		{"a bulge between two levels", drawn("[[20, -5], [20, 0], [19.3, 10], [18, 20], [20, 40]]"), map[string]float64{"bust to waist": -3}, nil},
		{"a bulge that the level below tells of", drawn("[[20, -5], [20, 0], [19.1, 10], [18.3, 20], [20, 40]]"), map[string]float64{"waist": -3}, nil},
		// 4 mm along the level are a little less square to the slanting side.
		{"the same width, moved over",
			join(drawn("[[20, -5], [20, 0], [18.4, 20], [20, 40]]"),
				[]string{`edge "centre" { line = [[0, 40], [0, -5]] }
  }
}
inside`, `edge "centre" { line = [[0, 40], [0.4, 20], [0, -5]] }
  }
}
inside`}), map[string]float64{"outline bust to waist": across, "outline waist to hip": across}, nil},
		{"a dart on the lining for the shell's side seam",
			join(drawn("[[20, -5], [20, 0], [20, 20], [20, 40]]"), dart("inside", "2", "20", "20")), nil, nil},
		// The dart ends 8 cm below the bust and 10 cm above the hip.
		{"a dart on the lining that ends too soon",
			join(drawn("[[20, -5], [20, 0], [20, 20], [20, 40]]"), dart("inside", "2", "12", "10")),
			map[string]float64{"bust to waist": -8, "waist to hip": -10}, nil},
		{"a dart on the shell alone", dart("layer", "2", "12", "10"), map[string]float64{"waist": -20}, nil},
		{"a dart on both", join(dart("layer", "2", "12", "10"), dart("inside", "2", "12", "10")), nil, nil},
		{"drawn beside each other", []string{inner, "layer \"lining\" {\n  side = \"inner\"\n  piece \"front\" {\n    fold = centre\n    edge \"top\"    { line = [[30, -5], [50, -5]] }\n",
			`[[20, -5], [20, 0], [18, 20], [20, 40]] }
    edge "hem"    { line = [[20, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, -5]] }
  }
}
inside`, `[[50, -5], [50, 0], [48, 20], [50, 40]] }
    edge "hem"    { line = [[50, 40], [30, 40]] }
    edge "centre" { line = [[30, 40], [30, -5]] }
  }
}
inside`}, nil, map[string]string{"outline": "shell.front and lining.front are drawn beside each other; only a share named by align tells how one lies in the other"}},
		{"laid together by a share", []string{inner, "layer \"lining\" {\n  side = \"inner\"\n  piece \"front\" {\n    fold = centre\n    levels = { bust = 5, waist = 25, hip = 45 }\n    edge \"top\"    { line = [[0, 0], [20, 0]] }\n",
			`[[20, -5], [20, 0], [18, 20], [20, 40]] }
    edge "hem"    { line = [[20, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, -5]] }
  }
}
inside`, `[[20, 0], [20, 5], [18, 25], [20, 45]] }
    edge "hem"    { line = [[20, 45], [0, 45]] }
    edge "centre" { line = [[0, 45], [0, 0]] }
  }
}
share "top" {
  outer = [shell.front.top]
  inner = [lining.front.top]
}
inside`, wanted, wanted + "  align = \"top\"\n"}, nil, nil},
		{"its own levels, and no share", []string{inner, change(t, inner, "fold = centre\n", "fold = centre\n    levels = { bust = 1, waist = 20, hip = 40 }\n")},
			nil, map[string]string{"outline": "shell.front and lining.front are not drawn in one frame: they have the bust level at different heights, and the inside names no share to lay them together by"}},
		{"paper", []string{side, change(t, inner, "line = [[0, -5], [20, -5]]", "length = 20", "fold = centre\n", "fold = centre\n    width = { bust = 20, waist = 18.4 }\n") +
			"    edge \"side\" { length = 46 }\n"}, map[string]float64{"waist": -4},
			map[string]string{"outline": "lining.front.top has no drawing"}},
		{"paper without widths", []string{side, change(t, inner, "line = [[0, -5], [20, -5]]", "length = 20") + "    edge \"side\" { length = 46 }\n"},
			nil, map[string]string{"": "no level is reached by both shell.front and lining.front"}},
		{"a clearance where the lining ends above", join(asks("knee = [0, 1]"), []string{`level "hip"`, "level \"knee\" { y = 60 }\nlevel \"hip\""}),
			nil, map[string]string{"knee": "shell.front does not reach the knee level"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, InnerWithinOuter, change(t, bodice, c.change...))
			requireKeyed(t, c.want, result.Findings)
			if c.reasons == nil {
				require.Empty(t, result.NotPossible)
			} else {
				require.Equal(t, c.reasons, reasons(result.NotPossible))
			}
		})
	}
}

func TestInnerWithinOuterMessages(t *testing.T) {
	const last = "[20, 40]] }\n    edge \"hem\"    { line = [[20, 40], [0, 40]] }\n    edge \"centre\" { line = [[0, 40], [0, -5]] }\n  }\n}\ninside"
	drawn := func(points, clearance string) string {
		return change(t, bodice, "[[20, -5], [20, 0], [18, 20], "+last, points+", "+last, "inner = lining.front\n", "inner = lining.front\n"+clearance)
	}
	for _, c := range []struct{ name, src, want string }{
		{"wider", drawn("[[20, -5], [20, 0], [18.3, 20]", ""),
			"lining.front is 3 mm wider than shell.front at the waist level (18.3 cm across against 18 cm, darts closed, from the fold); " +
				"inside.front asks for it to be no wider. Take the inner piece in, or let the outer one out, by 3 mm."},
		{"too narrow", drawn("[[20, -5], [20, 0], [15, 20]", "  clearance = { waist = [0, 2] }\n"),
			"lining.front is 3 cm narrower than shell.front at the waist level (15 cm across against 18 cm, darts closed, from the fold); " +
				"inside.front asks for it to be narrower by 0 to 2 cm. Let the inner piece out, or take the outer one in, by 1 cm."},
		{"not as large as meant", drawn("[[20, -5], [20, 0], [18, 20]", "  clearance = { waist = [-3, -1] }\n"),
			"lining.front is as wide as shell.front at the waist level (18 cm across against 18 cm, darts closed, from the fold); " +
				"inside.front asks for it to be wider by 1 cm to 3 cm. Let the inner piece out, or take the outer one in, by 1 cm."},
		{"between two levels", drawn("[[20, -5], [20, 0], [19.3, 10], [18, 20]", ""),
			"lining.front is 3 mm wider than shell.front between the levels bust and waist, 10 cm below the first (darts closed, from the fold); " +
				"from the one to the other inside.front asks for it to be no wider. Take the inner piece in, or let the outer one out, by 3 mm."},
		{"a whole lining in a shell on the fold", change(t, drawn("[[20, -5], [20, 0], [18.3, 20]", ""), "piece \"front\" {\n    fold = centre\n    edge \"top\"    { line = [[0, -5], [20, -5]] }\n"+
			"    edge \"side\"   { line = [[20, -5], [20, 0], [18.3", "piece \"front\" {\n    edge \"top\"    { line = [[-20, -5], [20, -5]] }\n    edge \"side\"   { line = [[20, -5], [20, 0], [18.3",
			"[20, 40], [0, 40]] }\n    edge \"centre\" { line = [[0, 40], [0, -5]] }\n  }\n}\ninside", "[20, 40], [-20, 40]] }\n    edge \"other\" { line = [[-20, 40], [-18.3, 20], [-20, 0], [-20, -5]] }\n  }\n}\ninside"),
			"lining.front is 6 mm wider than shell.front at the waist level (36.6 cm across against 36 cm, darts closed); " +
				"inside.front asks for it to be no wider. Take the inner piece in, or let the outer one out, by 6 mm."},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, InnerWithinOuter, c.src)
			require.Len(t, result.Findings, 1)
			require.Equal(t, c.want, result.Findings[0].Message)
		})
	}
}

// What the two lines of a share differ by may turn the pieces against each other:
// it counts twice over the share's length, and more the further off a place lies.
// Where they differ by more than shared-edge allows the pieces are not laid together.
func TestOutlinesLaidByAShareThatDiffers(t *testing.T) {
	src := change(t, bodice, "inner = lining.front\n", "inner = lining.front\n  align = \"top\"\n") + `
share "top" {
  outer = shell.front.top
  inner = lining.front.top
}
`
	turned := func(by string) string { // the lining's top rises towards the side, and the whole lining with it
		lining := src[strings.Index(src, `layer "lining"`):]
		return strings.Replace(src, lining, strings.Replace(lining, "[[0, -5], [20, -5]]", "[[0, -5], [10, "+by+"], [20, -5]]", 1), 1)
	}
	require.Empty(t, look(t, InnerWithinOuter, src).Findings)
	result := look(t, InnerWithinOuter, turned("-5.1"))
	require.Empty(t, result.Findings)
	require.Empty(t, result.NotPossible)
	result = look(t, InnerWithinOuter, turned("-5.5"))
	require.Empty(t, result.Findings)
	require.Equal(t, "share.top, by which they are laid together, differs by 2.5 mm on the two layers", reasons(result.NotPossible)["outline"])
}
