package seams_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

func TestEaseSide(t *testing.T) {
	for _, c := range []struct {
		name, first, second, ease, want string
		passed                          int
	}{
		{"eased in", "12.8", "12", "[0.5, 1]", "", 1},
		{"equal, where ease may be none", "12", "12", "[0, 1]", "", 1},
		{"shorter by a pencil line", "11.96", "12", "[0, 1]", "", 1},
		{"shorter", "11.9", "12", "[0, 1]", " # fault ease-side error 1mm", 0},
		{"the second side is to be eased, and is", "12", "12.8", "[-1, 0]", "", 1},
		{"the second side is to be eased, and is shorter", "12.1", "12", "[-1, 0]", " # fault ease-side error 1mm", 0},
		{"from an open end", "11.9", "12", "[0, null]", " # fault ease-side error 1mm", 0},
		{"much shorter", "11.5", "12", "[0, 1]", " # fault ease-side error 5mm", 0},
		{"no ease", "11.9", "12", "0", "", 0},
		{"ease either way", "11.9", "12", "[-0.2, 0.2]", "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &seams.EaseSide, shell(fmt.Sprintf(`piece "back" {
  edge "shoulder" { length = %s }
}
piece "front" {
  edge "shoulder" { length = %s }
}
`, c.first, c.second), fmt.Sprintf(`seam "shoulder" {
  join = [shell.back.shoulder, shell.front.shoulder]%s
  ease = %s
}`, c.want, c.ease)))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
		})
	}
	t.Run("names the side by its ease, not by its place", func(t *testing.T) {
		r := ruletest.Spec(t, &seams.EaseSide, shell(`piece "back" {
  edge "shoulder" { length = 12.1 }
}
piece "front" {
  edge "shoulder" { length = 12 }
}
`, `seam "shoulder" {
  join = [shell.back.shoulder, shell.front.shoulder] # fault ease-side error 1mm
  ease = [-1, 0]
}`))
		require.Equal(t, "shell.front.shoulder is to be eased on to shell.back.shoulder, and is 1 mm shorter (12 cm against 12.1 cm): the ease falls on the wrong side. Let shell.front.shoulder out by 1 mm at least, or shorten shell.back.shoulder. If shell.back.shoulder is to be eased in, turn the two sides round in join instead.", r.Result.Findings[0].Message)
	})
}
