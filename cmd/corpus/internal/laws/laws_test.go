package laws

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Each kind of fault in one garment, at a few amounts, and some garments under a few
// changes of the house: the command with --laws does so with thousands.
func TestLawsHold(t *testing.T) {
	grown, breaks, err := Faults(Size{Garments: 1, Times: []float64{0.8, 1.6, 6}, Seed: 5})
	require.NoError(t, err)
	require.Greater(t, grown, 130)
	judged, more, err := House(24, 3, 5)
	require.NoError(t, err)
	require.Equal(t, 24, judged)
	for _, b := range append(breaks, more...) {
		if !broken[b.Kind] {
			t.Errorf("%s, %s: %s: %s", b.File, b.Law, b.Kind, b.What)
		}
	}
}

// broken are the kinds of which it is known that they do not keep to the laws yet.
var broken = map[string]bool{"an alteration of one layer alone": true}
