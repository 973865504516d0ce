package rulepages

import (
	"flag"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/builtin"
)

var update = flag.Bool("update", false, "write docs/rules anew")

const folder = "../../../../docs/rules"

// docs/rules is what the rules themselves say; -update writes it anew.
func TestPagesAreNotStale(t *testing.T) {
	want, err := Files(builtin.Rules())
	require.NoError(t, err)
	if *update {
		require.NoError(t, os.RemoveAll(folder))
		for name, text := range want {
			to := filepath.Join(folder, name)
			require.NoError(t, os.MkdirAll(filepath.Dir(to), 0o755))
			require.NoError(t, os.WriteFile(to, text, 0o644))
		}
	}
	var found []string
	require.NoError(t, fs.WalkDir(os.DirFS(folder), ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			found = append(found, name)
		}
		return err
	}))
	require.ElementsMatch(t, slices.Collect(maps.Keys(want)), found, "run: go test ./cmd/understitch/internal/rulepages -update")
	for name, text := range want {
		got, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		require.True(t, string(text) == string(got), "%s is stale; run: go test ./cmd/understitch/internal/rulepages -update", name)
	}
}
