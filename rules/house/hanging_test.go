package house

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What hangs on a seam: its edges and notches, all, any or some of which must hold. One
// whose figure is not known makes the rule not possible, never true.
func TestWhatHangsOnASeam(t *testing.T) {
	for _, c := range []struct{ that, want string }{
		{"all([for n in seam.notches : n.at > cm(0)])", "passed"},
		{"all([for e in seam.edges : e.length > cm(100)])", "no"},
		{"any([for e in seam.edges : e.length > cm(100)])", "no"},
		{"any([for e in seam.edges : e.length > cm(0)])", "passed"},
		{"count([for e in seam.edges : e.length > cm(0)]) == 2", "passed"},
		{"all([for e in seam.edges : e.drafted_length > cm(0)])", "cannot"},
		{"any([for e in seam.edges : e.drafted_length > cm(0)])", "cannot"},
		{"count([for e in share.edges : e.length > cm(0)]) == 2", "passed"},
	} {
		t.Run(c.that, func(t *testing.T) {
			of := "seam"
			if c.that == "count([for e in share.edges : e.length > cm(0)]) == 2" {
				of = "share"
			}
			got := outcomes(t, "of = "+of+"\nthat = "+c.that+"\nmessage = \"no\"")
			require.NotEmpty(t, got)
			require.Contains(t, got[0], ": "+c.want)
		})
	}
}
