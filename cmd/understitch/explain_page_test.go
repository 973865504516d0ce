package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// explained is a command that the page about figures shows, with what it prints.
var explained = regexp.MustCompile("(?ms)^```\n\\$ understitch (explain [^\n]*)\n(.*?)^```$")

// The accounts that docs/how-figures-are-computed.md shows are those that the
// program gives of the demo's garments. With -update they are put in.
func TestExplainedFiguresPage(t *testing.T) {
	page, err := filepath.Abs("../../docs/how-figures-are-computed.md")
	require.NoError(t, err)
	src, err := os.ReadFile(page)
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	t.Setenv("COLUMNS", "80")
	command := func(line string) string {
		var said, complaints bytes.Buffer
		require.Equal(t, 0, run(t.Context(), strings.Fields(line), strings.NewReader(""), &said, &complaints), complaints.String())
		return said.String()
	}
	command("demo wardrobe")
	shown := 0
	now := explained.ReplaceAllFunc(src, func(block []byte) []byte {
		shown++
		line := string(explained.FindSubmatch(block)[1])
		return []byte("```\n$ understitch " + line + "\n" + strings.TrimRight(command(line), "\n") + "\n```")
	})
	require.Positive(t, shown)
	if *update {
		require.NoError(t, os.WriteFile(page, now, 0o644))
		return
	}
	require.Equal(t, string(src), string(now))
}
