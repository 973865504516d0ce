package layers

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Closed form: the widths are 18 cm on the one layer and 18 cm and what the
// darts differ by on the other.
func TestInnerWithinOuterNamesTheDarts(t *testing.T) {
	waist := twoPoint("waist", 9, 20, 2, 12, 10)
	for _, c := range []struct{ name, outer, inner, darts, mend string }{
		{"let out", waist, twoPoint("waist", 9, 20, 1.2, 12, 10),
			"The darts differ there: dart waist takes out 2 cm on shell.front and 1.2 cm on lining.front. Put them right; or take the inner piece in, or let the outer one out, by 8 mm.",
			"give lining.front.dart.waist an intake of 2 cm, as shell.front.dart.waist has, or that one 1.2 cm"},
		{"of another name", waist, twoPoint("princess", 9, 20, 1.2, 12, 10),
			"The darts differ there: shell.front.dart.waist takes out 2 cm and lining.front.dart.princess 1.2 cm. Put them right; or take",
			"give lining.front.dart.princess an intake of 2 cm, as shell.front.dart.waist has, or that one 1.2 cm"},
		{"missing", waist, "",
			"The darts differ there: shell.front.dart.waist takes out 2 cm, and no dart of lining.front answers it. Put them right; or take",
			"take out 2 cm of lining.front there, as shell.front.dart.waist does"},
		{"too many", "", waist,
			"The darts differ there: lining.front.dart.waist takes out 2 cm, and no dart of shell.front answers it. Put them right; or let",
			"take out 2 cm of shell.front there, as lining.front.dart.waist does"},
		{"shorter above", waist, twoPoint("waist", 9, 20, 2, 9, 10),
			"The darts differ there: dart waist takes out 5 mm on shell.front and nothing on lining.front. Put them right; or take",
			"draw shell.front.dart.waist and lining.front.dart.waist alike, so that they take out as much there"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := strings.Replace(darted(c.outer, c.inner), "lining.front\n", "lining.front\n  clearance = { waist = [0, 0.3] }\n", 1)
			found := look(t, InnerWithinOuter, src).Findings
			require.Len(t, found, 1)
			require.Contains(t, found[0].Message, c.darts)
			require.Equal(t, c.mend, found[0].Mend.Title)
			darts := 0
			for _, r := range found[0].Related {
				if strings.Contains(r.Message, ".dart.") {
					darts++
				}
			}
			require.Equal(t, strings.Count(c.outer+c.inner, "dart "), darts)
		})
	}
}

// A dart that a seam answers on purpose is not named for a seam that is out.
func TestInnerWithinOuterLeavesOtherDartsOut(t *testing.T) {
	waist := twoPoint("waist", 9, 20, 2, 12, 10)
	seamed := func(side string) string { // the lining takes 2 cm out at its side
		src := darted(waist, "")
		lining := src[strings.Index(src, `layer "lining"`):]
		return strings.Replace(src, lining, strings.Replace(lining, "[[20, -5], [20, 35]]", "[[20, -5], [20, 8], ["+side+", 20], [20, 30], [20, 35]]", 1), 1)
	}
	require.Empty(t, look(t, InnerWithinOuter, seamed("18")).Findings)
	found := look(t, InnerWithinOuter, seamed("18.2")).Findings
	require.Len(t, found, 1)
	require.NotContains(t, found[0].Message, "dart waist")
	require.Nil(t, found[0].Mend)
	t.Run("darts alike", func(t *testing.T) {
		src := strings.Replace(darted(waist, waist), "lining.front\n", "lining.front\n  clearance = { waist = [0.3, 0.5] }\n", 1)
		found := look(t, InnerWithinOuter, src).Findings
		require.Len(t, found, 1)
		require.NotContains(t, found[0].Message, "The darts")
	})
}

// The shell's darts were let out by 7 mm each; the lining has the darts still.
// Nothing is asked of the widths but that the lining be the narrower.
func TestSuppressionNamesTheDarts(t *testing.T) {
	const straight = "[[22.5, -5], [22.5, 0], [19.5, 18], [20.4, 26]]"
	src := strings.NewReplacer("[[22.5, -5], [22.5, 0], [18, 18], [20.4, 26]]", straight,
		"line = [[20.4, 26], [0, 26]] }\n    edge \"centre\" { line = [[0, 26], [0, -5]] }",
		"line = [[20.4, 26], [0, 26]] }\n    edge \"centre\" { line = [[0, 26], [0, -5]] }\n"+twoPoint("waist", 10, 18, 1.5, 12, 7)).Replace(suppressionBad)
	src += "inside \"front\" {\n outer = shell.front\n inner = lining.front\n}\ninside \"back\" {\n outer = shell.back\n inner = lining.back\n}\n"
	result := look(t, Suppression, src)
	requireKeyed(t, map[string]float64{"bust to waist": 28}, result.Findings)
	f := result.Findings[0]
	require.Contains(t, f.Message, "lining from 90 cm to 72 cm. The darts differ at the waist level: dart waist takes out 8 mm on shell.front and 1.5 cm on lining.front; "+
		"dart waist takes out 8 mm on shell.back and 1.5 cm on lining.back. Put them right, or state the clearances that are meant at both levels.")
	require.Equal(t, "give lining.front.dart.waist an intake of 8 mm, as shell.front.dart.waist has, or that one 1.5 cm; "+
		"give lining.back.dart.waist an intake of 8 mm, as shell.back.dart.waist has, or that one 1.5 cm", f.Mend.Title)
	require.Empty(t, look(t, InnerWithinOuter, src).Findings, "it lies within")
}
