package draft_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/draft"
	"understitch/rules/ruletest"
)

func TestMirrorPair(t *testing.T) {
	const self = `seam "centre" { join = [shell.front.centre, shell.front.centre] }`
	for _, c := range []struct {
		name, piece, rest, message string
		passed                     int
	}{
		{"one", "", "", "", 1},
		{"a pair", "cut = 2", "", "", 1},
		{"a pair joined at its centre", "cut = 2", self, "", 2},
		{"two alike", "cut = 2\n    mirrored = false", "", "", 1},
		{"two pairs", "cut = 4\n    mirrored = true", "", "", 1},
		{"two on the fold", "cut = 2\n    fold = centre", "", "", 1},
		{"a tube on the fold, joined to itself", "fold = side", self, "", 2},
		{"one, mirrored", "mirrored = true", "", "there is nothing that could mirror it", 0},
		{"one on the fold, mirrored", "fold = centre\n    mirrored = true", "", "it holds both its halves already", 0},
		{"three, mirrored", "cut = 3\n    mirrored = true", "", "shell.front is cut 3 times and is to be mirrored: one of them has no other half", 0},
		{"one, joined to itself", "", self, "seam.centre joins shell.front.centre to itself, but shell.front is cut once and not on the fold: there is no second half to join.", 1},
		{"one, closed to itself", "", `closure "centre" {
  kind  = "zip"
  edges = [shell.front.centre, shell.front.centre]
}`, "closure.centre joins shell.front.centre to itself", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			want := ""
			if c.message != "" {
				want = " # fault mirror-pair error"
			}
			r := ruletest.Spec(t, &draft.MirrorPair, `garment "trial" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {`+want+`
    `+c.piece+`
    edge "side"   { length = 40 }
    edge "centre" { length = 40 }
  }
}
`+c.rest)
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
			}
		})
	}
}
