package allowances_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/allowances"
	"understitch/rules/ruletest"
)

// matchIn are the findings of allowance-match in a spec, under a house.
func matchIn(t *testing.T, house, src string) []rules.Finding {
	t.Helper()
	engine, err := rules.New([]*rules.Rule{&allowances.Match})
	require.NoError(t, err)
	return ruletest.Found(t, engine, house, src)
}

// Which of two edges is to change, and to what, goes by the house and the
// closures first, then by what else the two are laid on.
func TestMatchNamesTheEdgeThatIsOff(t *testing.T) {
	const house = `house "trial" { unit = "cm" }
allowance "default" { width = 1.2 }
allowance "closure" { width = 2 }
allowance "hem" { width = 3 }
`
	layers := func(front, back, lining, rest string) string {
		return shell(piece("front", paper("side", "40", front))+piece("back", paper("side", "40", back)), "") +
			"layer \"lining\" {\n  side = \"inner\"\n" + piece("back", paper("side", "40", lining)) + "}\n" + rest
	}
	const shared = sideSeam + `
share "back" {
  outer = shell.back.side
  inner = lining.back.side
}`
	const closed = "closure \"zip\" {\n  kind  = \"zip\"\n  edges = [shell.front.side, shell.back.side]\n  allowance = 3\n}"
	for _, c := range []struct {
		name, house, src, first string
		says, mend              string
		edits                   []string
	}{
		{"the first is off the house's", house, layers("allowance = 1.5", "allowance = 1.2", "", sideSeam), "shell.front.side carries",
			"Give shell.front.side 1.2 cm too, as shell.back.side has: the house's for other edges is 1.2 cm.", "give shell.front.side an allowance of 1.2 cm", []string{"1.2"}},
		{"the second is", house, layers("allowance = 1.2", "allowance = 1.5", "", sideSeam), "shell.back.side carries",
			"Give shell.back.side 1.2 cm too", "give shell.back.side an allowance of 1.2 cm", []string{"1.2"}},
		{"both are, and carry two figures", house, layers("allowance = 1.5", "allowance = 1", "", sideSeam), "shell.front.side carries an allowance of 1.5 cm and shell.back.side, which it is laid on, 1 cm",
			"Give both 1.2 cm: the house's for other edges is 1.2 cm.", "give shell.front.side and shell.back.side an allowance of 1.2 cm", []string{"1.2", "1.2"}},
		{"one is not what the closure needs", house, layers("allowance = 3", "allowance = 4", "", closed), "shell.back.side carries",
			"Give shell.back.side 3 cm too, as shell.front.side has: closure.zip needs 3 cm.", "give shell.back.side an allowance of 3 cm", []string{"3"}},
		{"one lacks the role of the other", house, layers("allowance = 1.2", "role = \"hem\"", "", sideSeam), "shell.front.side carries",
			"Give shell.front.side the role hem too, so that it carries 3 cm: the house's for the role hem is 3 cm, and the house's for other edges is 1.2 cm.",
			"give shell.front.side the role hem, and so an allowance of 3 cm", nil},
		{"two roles that are stated", house, layers("role = \"closure\"", "role = \"hem\"", "", sideSeam), "shell.back.side carries",
			"Choose one for both, and say by role what it is", "give shell.back.side and shell.front.side one allowance: 3 cm or 2 cm", nil},
		{"no house: the other layer has the first's", "", layers("allowance = 1", "allowance = 2", "allowance = 1", shared), "shell.back.side carries",
			"lining.back.side, which is laid on one of them too, carries 1 cm.", "give shell.back.side an allowance of 1 cm", []string{"1"}},
		{"no house: the other layer has the second's", "", layers("allowance = 1", "allowance = 2", "allowance = 2", shared), "shell.front.side carries",
			"lining.back.side, which is laid on one of them too, carries 2 cm.", "give shell.front.side an allowance of 2 cm", []string{"2"}},
		{"nothing tells", "", layers("allowance = 1", "allowance = 2", "", sideSeam), "shell.back.side carries",
			"Nothing here tells which of them is meant: choose one, and give it to both.", "give shell.back.side and shell.front.side one allowance: 2 cm or 1 cm", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := matchIn(t, c.house, c.src)
			require.Len(t, found, 1)
			require.True(t, strings.HasPrefix(found[0].Message, c.first), found[0].Message)
			require.Contains(t, found[0].Message, c.says)
			require.Equal(t, c.mend, found[0].Mend.Title)
			var edits []string
			for _, e := range found[0].Mend.Edits {
				edits = append(edits, e.Text)
			}
			require.Equal(t, c.edits, edits)
			if edits == nil {
				return
			}
			require.Empty(t, matchIn(t, c.house, ruletest.Mended(c.src, found[0].Mend)), "what it proposes puts it right")
		})
	}
}

// A figure that a piece states for all its edges is one finding.
func TestMatchFigureOfAPiece(t *testing.T) {
	edges := func(name, own string) string {
		return piece(name, own+"\n"+paper("side", "40", "")+paper("top", "20", "")+paper("shoulder", "9", ""))
	}
	const seams = sideSeam + `
seam "top" { join = [shell.front.top, shell.back.top] }
seam "shoulder" { join = [shell.front.shoulder, shell.back.shoulder] }`
	src := shell(edges("front", "")+edges("back", "allowance = 1.5"), seams)
	found := matchIn(t, "house \"trial\" { unit = \"cm\" }\nallowance \"default\" { width = 1.2 }\n", src)
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "shell.back.side takes the figure from shell.back, and so do 2 more edges that differ from what they are laid on: "+
		"correct it there (the house's for other edges is 1.2 cm), or take it out so that the house's hold.")
	require.Equal(t, "set the allowance of shell.back to 1.2 cm", found[0].Mend.Title)
	require.Equal(t, "1.2", found[0].Mend.Edits[0].Text)
	require.Empty(t, matchIn(t, "house \"trial\" { unit = \"cm\" }\nallowance \"default\" { width = 1.2 }\n", ruletest.Mended(src, found[0].Mend)))
}
