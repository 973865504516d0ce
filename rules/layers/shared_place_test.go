package layers

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The figure of a shape is that of the closest fit; the place is the one a cutter
// finds who lays the ends together, named by what is near it.
func TestSharedShapeNamesThePlace(t *testing.T) {
	rest := []string{"line = [[20, 0], [20, 12]]", "line = [[20, 12], [0, 12]]", "line = [[0, 12], [0, 0]]"}
	bent := func(top string) string {
		return change(t, yoke, liningFront, front(top, rest[0], rest[1], rest[2], strap))
	}
	for _, c := range []struct{ name, src, says string }{
		{"hollowed", bent("line = [[0, 0], [10, 0.3], [20, 0]]"),
			"shell.front.top and lining.front.top are not of one shape: laid on each other as closely as they can be, they still stand 1.5 mm apart; " +
				"no more than 1 mm is allowed. With both ends laid together they part most, by 3 mm, 10 cm along shell.front.top, 2 cm from " +
				"shell.front.notch.strap. Draft both from one line."},
		{"turned off at the end, with the side seam's length kept", change(t, bent("line = [[0, 0], [14, 0], [20, -0.5]]"),
			"line = [[20, 0], [20, 12]] }\n    edge \"hem\" {", "line = [[20, -0.5], [20, 12]] }\n    edge \"hem\" {"),
			"With the starts laid together and as much as goes with them they part most, by 5 mm, at the end of shell.front.top."},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := look(t, SharedEdge, c.src).Findings
			require.Len(t, found, 1)
			require.Contains(t, found[0].Message, c.says)
			require.Len(t, found[0].Related, 2)
			require.Equal(t, "lining.front.top is drawn here", found[0].Related[1].Message)
		})
	}
}

// Where the extra length lies in one part of a share, between two places where
// pieces meet on both layers, the finding says in which.
func TestSharedLengthNamesThePart(t *testing.T) {
	found := look(t, SharedEdge, change(t, yoke, liningFront, front(
		"line = [[-0.4, 0], [20, 0]]", "line = [[20, 0], [20, 12]]", "line = [[20, 12], [-0.4, 12]]", "line = [[-0.4, 12], [-0.4, 0]]",
		"    notch \"strap\" {\n      on = top\n      at = 8.4\n    }\n"))).Findings
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "It lies in one part, shell.front.top of 20 cm against lining.front.top of 20.4 cm.")
	require.Len(t, found[0].Related, 2)
}
