package spec

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestOfTooManyFaultsTheFirstAreListed(t *testing.T) {
	var text strings.Builder
	text.WriteString("garment \"g\" { unit = \"cm\" }\n")
	for i := range 60 {
		fmt.Fprintf(&text, "unknown%d = 1\n", i)
	}
	_, diags := Read("g.garment.hcl", []byte(text.String()), nil)
	require.NotEmpty(t, diags)
	for i, d := range diags[:10] {
		require.Equal(t, i+2, d.Place.Start.Line)
	}
}

func TestMoreNotchesThanAnyPieceHas(t *testing.T) {
	piece := "garment \"g\" { unit = \"cm\" }\nlayer \"shell\" {\n  side = \"outer\"\n  piece \"front\" {\n    edge \"side\" { line = [[0, 0], [0, 50]] }\n%s  }\n}\n"
	notches := func(n int) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, "notch \"n%d\" {\non = side\nat = %g\n}\n", i, float64(i)/10)
		}
		return b.String()
	}
	doc, diags := Read("g.garment.hcl", fmt.Appendf(nil, piece, notches(mostNotches+50)), nil)
	require.Empty(t, diags)
	_, diags = doc.Garment("")
	require.Len(t, diags, 1)
	require.Equal(t, "shell.front has more than 300 notches", diags[0].Summary)
	require.Equal(t, 6+4*mostNotches, diags[0].Place.Start.Line)

	doc, _ = Read("g.garment.hcl", fmt.Appendf(nil, piece, notches(mostNotches)), nil)
	_, diags = doc.Garment("")
	require.Empty(t, diags)
}
