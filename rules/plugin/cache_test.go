package plugin

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// compiledFiles are the files of compiled code under a cache.
func compiledFiles(t *testing.T, dir string) []string {
	t.Helper()
	list, err := filepath.Glob(filepath.Join(dir, "*", "wazero-*", "*"))
	require.NoError(t, err)
	return list
}

// A cache that cannot be read is a miss: the module is compiled all the same, and
// what was damaged is written anew.
func TestDamagedCache(t *testing.T) {
	dir := t.TempDir()
	own := filepath.Join(dir, sumOf(widening))
	compiles := func(t *testing.T) {
		t.Helper()
		box, _, err := compile(t.Context(), settings{Memory: 1 << 20, Cache: own}, widening)
		require.NoError(t, err)
		require.NoError(t, box.Close(t.Context()))
	}
	compiles(t)
	files := compiledFiles(t, dir)
	require.Len(t, files, 1)
	sound, err := os.ReadFile(files[0])
	require.NoError(t, err)

	for name, damage := range map[string]func(text []byte) []byte{
		"empty":          func([]byte) []byte { return nil },
		"cut off":        func(b []byte) []byte { return b[:len(b)/2] },
		"another offset": func(b []byte) []byte { b[20] ^= 0xff; return b }, // the runtime itself does not see this one
		"a bit":          func(b []byte) []byte { b[len(b)/2] ^= 1; return b },
	} {
		t.Run(name, func(t *testing.T) {
			require.NoError(t, os.WriteFile(files[0], damage(append([]byte{}, sound...)), 0o600))
			compiles(t)
			anew, err := os.ReadFile(files[0])
			require.NoError(t, err)
			require.Equal(t, sound, anew)
		})
	}
	t.Run("no sums", func(t *testing.T) {
		require.NoError(t, os.Remove(filepath.Join(own, sumsFile)))
		compiles(t)
	})
	t.Run("a file in its place", func(t *testing.T) {
		require.NoError(t, os.RemoveAll(own))
		require.NoError(t, os.WriteFile(own, nil, 0o600))
		compiles(t)
		require.Len(t, compiledFiles(t, dir), 1)
	})
	t.Run("no place for one", func(t *testing.T) {
		require.NoError(t, os.RemoveAll(dir))
		require.NoError(t, os.WriteFile(dir, nil, 0o600))
		compiles(t)
	})
}
