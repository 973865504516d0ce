package house

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The page tells of every kind of thing with all its figures, and of every
// function.
func TestPageTellsAll(t *testing.T) {
	src, err := os.ReadFile("../../docs/house-rules.md")
	require.NoError(t, err)
	_, page, ok := strings.Cut(string(src), "\n## Figures\n")
	require.True(t, ok)
	figures, functions, ok := strings.Cut(page, "\n## Functions\n")
	require.True(t, ok)
	rows := map[string]string{}
	for line := range strings.Lines(figures) {
		if cells := strings.Split(line, "|"); len(cells) == 5 {
			rows[strings.Trim(cells[1], " `")] = cells[3]
		}
	}
	for _, k := range kinds {
		for _, name := range k.names() {
			require.Contains(t, rows[k.name], "`"+name+"`", "%s.%s is not on the page", k.name, name)
		}
		require.Equal(t, len(k.figures), strings.Count(rows[k.name], "`")/2, "the page tells of figures that a %s does not have", k.name)
	}
	for _, name := range functionNames {
		require.Contains(t, functions, "`"+name, "%s is not on the page", name)
	}
}
