package allowances_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/allowances"
	"understitch/rules/ruletest"
)

// An edge on the fold has no allowance by right. Where it is laid on one that is
// sewn or closed, the fold is wrong, and an allowance would only make it worse.
func TestAnEdgeOnTheFoldLaidOnOneThatIsNot(t *testing.T) {
	back := func(fold string) string {
		return piece("back", fold+"\n  allowance = 2\n"+paper("side", "40", "")+paper("hem", "20", "")+paper("centre", "40", ""))
	}
	layers := func(lining string) string {
		return "garment \"trial\" { unit = \"cm\" }\nlayer \"shell\" {\n  side = \"outer\"\n" + back("cut = 2") + "}\nlayer \"lining\" {\n  side = \"inner\"\n" +
			lining + "}\n" + `share "back" {
  outer = shell.back.centre
  inner = lining.back.centre
}
`
	}
	ruletest.Spec(t, &allowances.Match, layers(back("cut = 2")))
	folded := piece("back", "fold = centre\n"+paper("side", "40", "")+paper("hem", "20", "")+"edge \"centre\" { length = 40 } # fault allowance-match error 20mm\n")
	found := ruletest.Spec(t, &allowances.Match, layers(folded)).Result.Findings
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "lining.back.centre lies on the fold and has no allowance, and shell.back.centre, which it is laid on, is cut with one of 2 cm.")
	require.Equal(t, "take lining.back.centre off the fold: cut = 2 in place of fold = centre", found[0].Mend.Title)
}
