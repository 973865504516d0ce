package draft_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/draft"
	"understitch/rules/ruletest"
)

func TestSizeStep(t *testing.T) {
	// A seam as long as its sizes say, and a body measure of theirs.
	spec := func(measures []string, seam, head, join string) string {
		var names, blocks []string
		for i, m := range measures {
			names = append(names, fmt.Sprintf("\"s%d\"", i))
			blocks = append(blocks, fmt.Sprintf("size \"s%d\" { bust_girth = %s }", i, m))
		}
		return `garment "trial" {` + head + `
  unit  = "cm"
  sizes = [` + strings.Join(names, ", ") + `]
}
` + strings.Join(blocks, "\n") + `
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { length = ` + seam + ` }
  }
  piece "back" {
    edge "side" { length = 40 }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }` + join + "\n"
	}
	for _, c := range []struct {
		name                      string
		measures                  []string
		seam, head, join, message string
		passed                    int
	}{
		{"steady", []string{"84", "88", "92", "96"}, "body.bust_girth / 2", "", "", "", 3},
		{"one out of step, and what follows from it", []string{"84", "88", "95", "96", "100"}, "body.bust_girth / 2", " # fault size-step note 30mm", "",
			"body.bust_girth is 95 cm in size s2 and falls out of step between 88 cm in size s1 and 96 cm in size s3: its neighbours suggest 92 cm, which is 3 cm off. Look the figure up.", 1},
		{"published grades, ASTM D5585-11e1", []string{"inch(34 + 1/8)", "inch(35 + 1/4)", "inch(36 + 1/4)", "inch(37 + 1/4)", "inch(38 + 3/4)", "inch(40 + 3/8)"}, "body.bust_girth / 2", "", "", "", 3},
		{"a length out of step by itself", []string{"84", "88", "92", "96", "100"}, "body.bust_girth == 92 ? 50 : body.bust_girth / 2", "", " # fault size-step note 40mm",
			"shell.front.side is 50 cm in size s2", 2},
		{"three sizes", []string{"84", "120", "92"}, "40", "", "", "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &draft.SizeStep, spec(c.measures, c.seam, c.head, c.join))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
				require.Equal(t, []string{"s2"}, r.Result.Findings[0].Sizes)
			}
		})
	}
}
