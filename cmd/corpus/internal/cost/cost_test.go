package cost

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestMedianIsTheRunWhoseRatioLiesInTheMiddle(t *testing.T) {
	runs := []Run{{9 * time.Second, time.Second}, {2 * time.Second, time.Second}, {12 * time.Second, 3 * time.Second}}
	require.Equal(t, 4.0, Median(runs).Ratio())
}

func TestDigestTellsOneCorpusFromAnother(t *testing.T) {
	digest := func(name, text string) string {
		dir := t.TempDir()
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
		d, err := Digest(dir)
		require.NoError(t, err)
		return d
	}
	require.Equal(t, digest("a.hcl", "a = 1\n"), digest("a.hcl", "a = 1\n"))
	require.NotEqual(t, digest("a.hcl", "a = 1\n"), digest("a.hcl", "a = 2\n"))
	require.NotEqual(t, digest("a.hcl", "a = 1\n"), digest("b.hcl", "a = 1\n"))
}

func TestAFolderWithoutSpecsOrWithABrokenOneIsNoComparison(t *testing.T) {
	dir := t.TempDir()
	require.ErrorContains(t, Parse(dir), "no spec")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "a.hcl"), []byte("a = {\n"), 0o644))
	require.Error(t, Parse(dir))
}
