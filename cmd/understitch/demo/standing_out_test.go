package demo

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
)

// The brief of the rink dress is drawn too far out at the hip, 4 cm below the
// tummy, which is the lowest level at which it can be compared with the shell. The
// shell flares there, so that 8 mm more are still within it.
func TestABriefThatStandsOutBelowTheLastLevel(t *testing.T) {
	for _, by := range []float64{0, 0.8, 4, 9} {
		t.Run(fmt.Sprintf("%g cm", by), func(t *testing.T) {
			found := map[string]int{}
			for _, f := range rink(t,
				"[draft.tummy + 0.9, 31]", fmt.Sprintf("[draft.tummy + %g, 31]", 0.9+by),
				"[draft.tummy - 0.1, 31]", fmt.Sprintf("[draft.tummy + %g, 31]", by-0.1),
			) {
				if f.Rule.Name == "inner-within-outer" {
					require.Equal(t, rules.Error, f.Severity)
					found[f.Subject]++
				}
			}
			want := map[string]int{}
			if by > 2 {
				want = map[string]int{"inside.front": 1, "inside.back": 1}
			}
			require.Equal(t, want, found)
		})
	}
}
