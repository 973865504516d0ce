package draft_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/draft"
	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

// coat is a front and a back with upright sides 40 cm long, and a lining of the
// front.
func coat(rest string) string {
	return `garment "trial" { unit = "cm" }
level "chest" { y = 0 }
level "waist" { y = 18 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { line = [[26, 0], [26, 40]] }
    edge "rest" { line = [[26, 40], [0, 40], [0, 0], [26, 0]] }
  }
  piece "back" {
    cut = 2
    edge "side"   { line = [[26, 0], [26, 40]] }
    edge "hem"    { line = [[26, 40], [0, 40]] }
    edge "centre" { line = [[0, 40], [0, 0]] }
    edge "top"    { line = [[0, 0], [26, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    edge "side" { line = [[26, 0], [26, 40]] }
    edge "rest" { line = [[26, 40], [0, 40], [0, 0], [26, 0]] }
  }
  piece "paper" {
    edge "side" { length = 40 }
  }
}
` + rest
}

func TestAlterationPartner(t *testing.T) {
	const side = "seam \"side\" { join = [shell.front.side, shell.back.side] }\n"
	share := func(match string) string {
		return "share \"side\" {\n  outer = [shell.front.side]\n  inner = [lining.front.side]\n  match = \"" + match + "\"\n}\n"
	}
	alter := func(name, edges, waist, want string) string {
		return "alter \"" + name + "\" {" + want + "\n  edges  = [" + edges + "]\n  inward = { chest = 0, waist = " + waist + " }\n}\n"
	}
	const want = " # want alteration-partner warning"
	for _, c := range []struct {
		name, rest, message string
		passed              int
	}{
		{"answered in the same alteration", side + alter("a", "shell.front.side, shell.back.side", "1", ""), "", 2},
		{"answered in another", side + alter("a", "shell.front.side", "1", "") + alter("b", "shell.back.side", "1", ""), "", 2},
		{"not answered", side + alter("a", "shell.front.side", "0.8", want),
			"alter.a re-drew shell.front.side, and nothing re-drew shell.back.side, which it is sewn to by seam.side; the two sides differed by 0 mm and now differ by 0.2 mm. Alter both, or accept this with the reason.", 0},
		{"altered twice is said once", side + alter("a", "shell.front.side", "0.4", want) + alter("b", "shell.front.side", "0.4", ""), "", 0},
		{"altered and altered back", side + alter("a", "shell.front.side", "0.4", "") + alter("b", "shell.front.side", "-0.4", ""), "", 0},
		{"so much that the seam does not walk any more", side + alter("a", "shell.front.side", "4", ""), "", 0},
		{"a mirrored pair answers itself", "seam \"cb\" { join = [shell.back.centre, shell.back.centre] }\n" + alter("a", "shell.back.centre", "1", ""), "", 0},
		{"one layer of a share", share("eased") + alter("a", "shell.front.side", "1", want),
			"which it shares its line with by share.side", 0},
		{"one layer of a share, in shape not alike any more", share("identical") + alter("a", "shell.front.side", "1", ""), "", 0},
		{"one layer of a share of one length", share("length") + alter("a", "shell.front.side", "0.8", want), "", 0},
		{"both layers of a share", share("identical") + alter("a", "shell.front.side, lining.front.side", "1", ""), "", 2},
		{"a paper piece cannot be re-drawn", "seam \"side\" { join = [shell.front.side, lining.paper.side] }\n" + alter("a", "shell.front.side", "1", ""), "", 0},
		{"an edge that is sewn to nothing", alter("a", "shell.front.side", "1", ""), "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &draft.AlterationPartner, coat(c.rest))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
			}
		})
	}
	t.Run("what seam-walk reports names the alteration", func(t *testing.T) {
		engine, err := rules.New([]*rules.Rule{&seams.Walk, &draft.AlterationPartner})
		require.NoError(t, err)
		r := ruletest.Check(t, engine, "trial.garment.hcl",
			coat("seam \"side\" { join = [shell.front.side, shell.back.side] } # want seam-walk error 5.2mm\n"+alter("a", "shell.front.side", "4", "")))
		require.Len(t, r.Result.Findings[0].Related, 1)
		require.Equal(t, "shell.front.side was re-drawn by alter.a; shell.back.side was not", r.Result.Findings[0].Related[0].Message)
	})
}
