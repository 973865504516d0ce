package seams_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

// halves is a front and a back whose hems rise by so much, in centimetres, from
// the side seam to the middle of each, 20 cm away. The sides are upright.
func halves(front, back, more string) string {
	return `piece "front" {
  edge "top"    { line = [[0, 0], [20, 0]] }
  edge "side"   { line = [[20, 0], [20, 40]] }
  edge "hem" {
    line = [[20, 40], [0, ` + front + `]]
    ` + more + `
  }
  edge "centre" { line = [[0, ` + front + `], [0, 0]] }
}
piece "back" {
  edge "side" { line = [[40, 40], [40, 0]] }
  edge "top"  { line = [[40, 0], [60, 0]] }
  edge "cb"   { line = [[60, 0], [60, ` + back + `]] }
  edge "hem" {
    line = [[60, ` + back + `], [40, 40]]
    ` + more + `
  }
}
`
}

// The angles are closed forms: atan(1/20) is 2.862°, atan(2/20) 5.711°, atan(4/20)
// 11.310°, atan(15/20) 36.870°, atan(17/20) 40.365° and atan(8/20) 21.801°.
func TestTrue(t *testing.T) {
	const side = `seam "side" { join = [shell.front.side, shell.back.side] }`
	for _, c := range []struct {
		name, pieces, rest string
		passed             int
	}{
		{"one falls as the other rises", halves("42", "38", `finish = "hem"`), side, 1},
		{"both fall a little", halves("40.5", "40.5", `finish = "hem"`), side, 1},
		{"a peak", halves("39", "38", `finish = "hem"`), side + " # fault seam-true error -8.57deg", 0},
		{"a dip", halves("42", "40", `finish = "hem"`), side + " # fault seam-true warning 5.71deg", 0},
		{"a handkerchief point is meant", halves("30", "30", `finish = "hem"`), side, 1},
		{"a hem that rises on one side alone", halves("25", "40", `finish = "hem"`), side + " # fault seam-true error -36.87deg", 0},
		{"a hem that rises on one side alone past what is a slip", halves("23", "40", `finish = "hem"`), side + " # fault seam-true note 40.36deg", 0},
		{"a hem that falls as much", halves("57", "40", `finish = "hem"`), side + " # fault seam-true note 40.36deg", 0},
		{"a hem with a point at the centre", halves("48", "40", `finish = "hem"`), `seam "cf" { join = [shell.front.centre, shell.front.centre] } # fault seam-true note 43.6deg`, 1},
		{"a V at the centre is meant", halves("48", "40", `finish = "bound"`), `seam "cf" { join = [shell.front.centre, shell.front.centre] }`, 2},
		{"finished differently", halves("42", "42", "") + "", side + `
elastic "front" {
  edges  = [shell.front.hem]
  length = 15
}`, 0},
		{"held in by one elastic", halves("42", "42", ""), side + ` # fault seam-true error 11.4deg
elastic "waist" {
  edges  = [shell.front.hem, shell.back.hem]
  length = 30
}`, 0},
		{"the halves of a mirrored pair", halves("40", "40", ""), `seam "cf" { join = [shell.front.centre, shell.front.centre] }`, 2},
		{"the halves of a mirrored pair with a peak at the centre", halves("42", "40", ""), `seam "cf" { join = [shell.front.centre, shell.front.centre] } # fault seam-true error -11.4deg`, 1},
		{"a pointed waist at a centre is meant", halves("44", "40", ""), `seam "cf" { join = [shell.front.centre, shell.front.centre] }`, 2},
		{"on the fold, which fold-straight looks at", `piece "yoke" {
  fold = centre
  edge "lower"  { line = [[20, 10], [0, 12]] }
  edge "centre" { line = [[0, 12], [0, 0]] }
  edge "upper"  { line = [[0, 0], [20, 0], [20, 10]] }
}
piece "skirt" {
  fold = centre
  edge "upper"  { line = [[0, 12], [20, 10]] }
  edge "rest"   { line = [[20, 10], [20, 60], [0, 60]] }
  edge "centre" { line = [[0, 60], [0, 12]] }
}
`, `seam "yoke" { join = [shell.yoke.lower, shell.skirt.upper] }`, 0},
		{"a part that ends in the middle of an edge", halves("42", "40", `finish = "hem"`), `seam "side" { join = [part(shell.front.side, start, waist), part(shell.back.side, waist, end)] }`, 0},
		{"an armhole is sewn to one sleeve", halves("42", "42", "") + sleeve, side + ` # fault seam-true error 11.4deg
seam "armhole" {
  join = [shell.sleeve.cap, [shell.front.hem, shell.back.hem]]
  ease = [null, null]
}`, 0},
		{"a waist at which seams cross on both sides may bend", halves("42", "42", "") + skirts, side + `
seam "waist" {
  join = [[shell.front.hem, shell.back.hem], [shell.skirt-front.waist, shell.skirt-back.waist]]
  ease = [null, null]
}
seam "skirt" { join = [shell.skirt-front.side, shell.skirt-back.side] }`, 0},
		{"paper", `piece "front" {
  edge "side" { length = 40 }
  edge "hem"  { length = 20 }
}
piece "back" {
  edge "side" { length = 40 }
  edge "hem"  { length = 20 }
}
`, side, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &seams.True, shell(c.pieces, c.rest))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
		})
	}
	t.Run("partly drawn", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.True, shell(`piece "front" {
  edge "side" { line = [[20, 0], [20, 40]] }
  edge "hem" {
    length = 20
    finish = "hem"
  }
}
piece "back" {
  edge "side" { line = [[20, 0], [20, 40]] }
  edge "hem" {
    length = 20
    finish = "hem"
  }
}
`, side))
		require.NotEmpty(t, r.Result.NotPossible)
		require.Equal(t, "shell.front.hem has no drawing", r.Result.NotPossible[0].Reason)
	})
	t.Run("says what a corner is that may not be meant", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.True, shell(halves("23", "40", `finish = "hem"`), side+" # fault seam-true note 40.36deg"))
		require.Equal(t, "shell.front.hem and shell.back.hem bend by 40.4° over seam.side: their corners make 49.6° and 90°. More than 40° off a straight line it is taken as a corner that is meant, but nothing else on the pattern shows that it is. "+
			"Look whether a point lies in the wrong place; if the corner is meant, accept it with the reason (waive).", r.Result.Findings[0].Message)
	})
	t.Run("says what to true", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.True, shell(halves("42", "40", `finish = "hem"`), side+" # fault seam-true warning 5.71deg"))
		f := r.Result.Findings[0]
		require.Equal(t, "shell.front.hem and shell.back.hem do not run on across seam.side: their corners make 95.7° and 90°, together 185.7° and not 180°, which is a dip of 5.7° at the seam. Butt the pieces along it and re-draw the line over it as one.", f.Message)
		require.Len(t, f.Related, 2)
		require.Equal(t, "true shell.front.hem and shell.back.hem over seam.side", f.Mend.Title)
	})
}

const sleeve = `piece "sleeve" {
  edge "cap"  { line = [[0, 100], [41, 100]] }
  edge "rest" { line = [[41, 100], [41, 140], [0, 140], [0, 100]] }
}
`

const skirts = `piece "skirt-front" {
  edge "waist" { line = [[0, 50], [20, 50]] }
  edge "side"  { line = [[20, 50], [20, 90]] }
  edge "rest"  { line = [[20, 90], [0, 90], [0, 50]] }
}
piece "skirt-back" {
  edge "waist" { line = [[40, 50], [60, 50]] }
  edge "rest"  { line = [[60, 50], [60, 90], [40, 90]] }
  edge "side"  { line = [[40, 90], [40, 50]] }
}
`

// Of a line that layers share only what both have is judged: where the other
// layer's is true, they differ, and shared-edge reports that. atan(2/20) is
// 5.711° (closed form).
func TestTrueOfSharedLines(t *testing.T) {
	layer := func(name, side, front, back string) string {
		return "layer \"" + name + "\" {\n  side = \"" + side + "\"\n" + halves(front, back, "") + "}\n"
	}
	const rest = `
seam "side" { join = [shell.front.side, shell.back.side] }
share "hem" {
  outer = [shell.front.hem, shell.back.hem]
  inner = [lining.front.hem, lining.back.hem]
}
seam "lining-side" { join = [lining.front.side, lining.back.side] }`
	const found = " # fault seam-true warning 5.71deg"
	for _, c := range []struct{ name, front, shell, lining string }{
		{"the lining alone", "40", "", found},
		{"both layers", "42", found, found},
		{"both layers far from straight, as is meant", "22", "", ""},
		{"where no seam crosses the other layer", "one", "", found},
	} {
		t.Run(c.name, func(t *testing.T) {
			shell, lining := layer("shell", "outer", c.front, "40"), "42"
			if c.front == "22" {
				lining = c.front
			}
			if c.front == "one" {
				shell = `layer "shell" {
  side = "outer"
  piece "front" {
    edge "top" { line = [[0, 0], [40, 0]] }
    edge "cb"  { line = [[40, 0], [40, 40]] }
    edge "hem" { line = [[40, 40], [0, 40]] }
    edge "cf"  { line = [[0, 40], [0, 0]] }
  }
}
`
			}
			src := "garment \"basque\" { unit = \"cm\" }\n" + shell + layer("lining", "inner", lining, "40")
			rest := rest
			if c.front == "one" {
				rest = strings.Replace(rest, `seam "side" { join = [shell.front.side, shell.back.side] }`, "", 1)
				rest = strings.Replace(rest, "[shell.front.hem, shell.back.hem]", "shell.front.hem", 1)
			}
			sides := strings.Replace(rest, "shell.back.side] }", "shell.back.side] }"+c.shell, 1)
			ruletest.Spec(t, &seams.True, src+strings.Replace(sides, "lining.back.side] }", "lining.back.side] }"+c.lining, 1))
		})
	}
}
