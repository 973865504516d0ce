package draft_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/draft"
	"understitch/rules/layers"
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
	ease := map[string]string{"eased": "  ease = [-3, 3]\n"}
	share := func(match string) string {
		return "share \"side\" {\n  outer = [shell.front.side]\n  inner = [lining.front.side]\n  match = \"" + match + "\"\n" + ease[match] + "}\n"
	}
	alter := func(name, edges, waist, want string) string {
		return "alter \"" + name + "\" {" + want + "\n  edges  = [" + edges + "]\n  inward = { chest = 0, waist = " + waist + " }\n}\n"
	}
	const want = " # fault alteration-partner warning"
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
		{"a mirrored pair answers itself", "seam \"cb\" { join = [shell.back.centre, shell.back.centre] }\n" + alter("a", "shell.back.centre", "1", ""), "", 0},
		{"one layer of a share", share("eased") + alter("a", "shell.front.side", "1", want),
			"which it shares its line with by share.side", 0},
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
	both, err := rules.New([]*rules.Rule{&seams.Walk, &draft.AlterationPartner})
	require.NoError(t, err)
	t.Run("what comes of it is told with it", func(t *testing.T) {
		r := ruletest.Check(t, both, "trial.garment.hcl",
			coat(side+alter("a", "shell.front.side", "4", " # fault alteration-partner error")))
		require.Len(t, r.Result.Findings[0].Related, 3)
		require.Contains(t, r.Result.Findings[0].Related[2].Message, "from this comes, by seam-walk: shell.front.side is 5.2 mm longer than shell.back.side")
		require.Len(t, r.Result.Findings[0].Follow, 1)
	})
	t.Run("a seam that differs all the same is told by itself", func(t *testing.T) {
		r := ruletest.Check(t, both, "trial.garment.hcl", strings.Replace(
			coat("seam \"side\" { join = [shell.front.side, shell.back.side] } # fault seam-walk error 8.6mm\n"+alter("a", "shell.front.side", "4", "")),
			"[26, 40]] }\n    edge \"rest\" { line = [[26, 40]", "[26, 40.4]] }\n    edge \"rest\" { line = [[26, 40.4]", 1))
		require.Len(t, r.Result.Findings[0].Related, 1)
		require.Equal(t, "shell.front.side was re-drawn by alter.a; shell.back.side was not", r.Result.Findings[0].Related[0].Message)
	})
	t.Run("accepting it does not accept what comes of it", func(t *testing.T) {
		ruletest.Check(t, both, "trial.garment.hcl", coat(
			"seam \"side\" { join = [shell.front.side, shell.back.side] } # fault seam-walk error 5.2mm\n"+alter("a", "shell.front.side", "4", "")+
				"waive \"alteration-partner\" {\n  at     = alter.a\n  reason = \"taken in on one side on purpose\"\n}\n"))
	})
}

// An edge on one layer is answered by the edge that lies along it on the piece
// laidInside with its own.
func TestAlterationPartnerOfInsides(t *testing.T) {
	const fitted = `garment "trial" { unit = "cm" }
level "chest" { y = 0 }
level "waist" { y = 18 }
level "hip" { y = 38 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { line = [[26, 0], [26, 40]] }
    edge "rest" { line = [[26, 40], [0, 40], [0, 0], [26, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    edge "SIDE" { line = [[25.8, 0], [25.8, 36]] }
    edge "rest" { line = [[25.8, 36], [0, 36], [0, 0], [25.8, 0]] }
  }
}
inside "front" {
  outer     = shell.front
  inner     = lining.front
  clearance = { chest = [0, 0.4], waist = [0, 0.4] }
}
`
	alter := func(name, edge, amounts, want string) string {
		return "alter \"" + name + "\" {" + want + "\n  edges  = [" + edge + "]\n  inward = { " + amounts + " }\n}\n"
	}
	const warning, note = " # fault alteration-partner warning", " # fault alteration-partner note"
	for _, c := range []struct {
		name, edge, rest, message string
	}{
		{"both alike", "side", alter("a", "shell.front.side, lining.front.side", "chest = 0, waist = 0.3", ""), ""},
		{"both alike by two alterations", "side", alter("a", "shell.front.side", "chest = 0, waist = 0.3", "") + alter("b", "lining.front.side", "chest = 0, waist = 0.3", ""), ""},
		{"one layer alone, past the room", "side", alter("a", "shell.front.side", "chest = 0, waist = 0.3", warning),
			"alter.a re-drew shell.front.side, and nothing re-drew lining.front.side, which lies under it in inside.front: 3 mm in against nothing at the waist level. Alter both alike, or accept this with the reason."},
		{"one layer alone, within the room", "side", alter("a", "shell.front.side", "chest = 0, waist = 0.2", note),
			"The room between them is still what is asked for: leave it where it is meant so, else alter both alike."},
		{"the inner layer alone", "side", alter("a", "lining.front.side", "chest = 0, waist = 0.3", warning), "which lies over it in inside.front: 3 mm in against nothing"},
		{"by other amounts", "side", alter("a", "shell.front.side", "chest = 0, waist = 0.5", warning) + alter("b", "lining.front.side", "chest = 0, waist = 0.2", ""),
			"lining.front.side, which lies under it in inside.front, was not altered alike: 5 mm in against 2 mm in at the waist level"},
		{"let out on one and taken in on the other", "side", alter("a", "shell.front.side", "chest = 0, waist = 0.2", warning) + alter("b", "lining.front.side", "chest = 0, waist = -0.1", ""),
			"2 mm in against 1 mm out at the waist level"},
		{"made up for by another alteration", "side", alter("a", "shell.front.side", "chest = 0, waist = 0.2", "") + alter("b", "lining.front.side", "chest = 0, waist = 0.1", "") +
			alter("c", "lining.front.side", "chest = 0, waist = 0.1", ""), ""},
		{"below where the other ends", "side", alter("a", "shell.front.side", "chest = 0, waist = 0, hip = 0.5", ""), ""},
		{"by the width of a pencil line", "side", alter("a", "shell.front.side", "chest = 0, waist = 0.05", ""), ""},
		{"the other bears another name", "seam", alter("a", "shell.front.side", "chest = 0, waist = 0.3", warning), "nothing re-drew lining.front.seam"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &draft.AlterationPartner, strings.Replace(fitted, "SIDE", c.edge, 1)+c.rest)
			require.Empty(t, r.Result.NotPossible)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
			}
		})
	}
	t.Run("the width that is wrong by it is told with it", func(t *testing.T) {
		engine, err := rules.New([]*rules.Rule{layers.InnerWithinOuter, &draft.AlterationPartner})
		require.NoError(t, err)
		r := ruletest.Check(t, engine, "trial.garment.hcl", strings.Replace(fitted, "SIDE", "side", 1)+
			alter("a", "shell.front.side", "chest = 0, waist = 0.3", " # fault alteration-partner error"))
		require.NotEmpty(t, r.Result.Findings[0].Follow)
	})
}
