package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var pageBlock = regexp.MustCompile("(?ms)^```(hcl|text)\n(.*?)^```$")

// TestHouseRulesPage goes through docs/house-rules.md as a reader would: it saves
// what is marked as a file, adds to house.hcl what is marked as in a house, and
// types the commands; what they print must stand there. With -update it is put
// there.
func TestHouseRulesPage(t *testing.T) {
	page, err := filepath.Abs("../../docs/house-rules.md")
	require.NoError(t, err)
	src, err := os.ReadFile(page)
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	ran := 0
	now := pageBlock.ReplaceAllFunc(src, func(block []byte) []byte {
		m := pageBlock.FindSubmatch(block)
		first, rest, _ := strings.Cut(string(m[2]), "\n")
		switch {
		case strings.HasPrefix(first, "# file: "):
			save(t, strings.TrimPrefix(first, "# file: "), rest)
		case first == "# in a house":
			house, err := os.ReadFile("house.hcl")
			require.NoError(t, err)
			save(t, "house.hcl", string(house)+"\n"+rest)
		case first == "# in a garment":
			garment, err := os.ReadFile("apron.garment.hcl")
			require.NoError(t, err)
			save(t, "apron.garment.hcl", string(garment)+"\n"+rest)
		case first == "# wrong":
			save(t, "wrong/house.hcl", "house \"wrong\" { unit = \"cm\" }\n"+rest)
		case strings.HasPrefix(first, "$ "):
			ran++
			return []byte("```text\n" + first + "\n" + typed(t, strings.TrimPrefix(first, "$ ")) + "```")
		default:
			t.Errorf("a block that says nothing of what it is: %s", first)
		}
		return block
	})
	require.Greater(t, ran, 5)
	if *update {
		require.NoError(t, os.WriteFile(page, now, 0o644))
		return
	}
	require.Equal(t, string(src), string(now))
}

func save(t *testing.T, name, text string) {
	t.Helper()
	require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o777))
	require.NoError(t, os.WriteFile(name, []byte(text), 0o600))
}

// typed is what a command prints.
func typed(t *testing.T, line string) string {
	t.Helper()
	words := strings.Fields(line)
	if words[0] == "cat" {
		src, err := os.ReadFile(words[1])
		require.NoError(t, err)
		return string(src)
	}
	require.Equal(t, "understitch", words[0])
	var out, said bytes.Buffer
	env := func(name string) string { return map[string]string{"COLUMNS": "80"}[name] }
	w := &world{stdin: strings.NewReader(""), stdout: &out, stderr: &said, now: func() time.Time { return time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC) }, env: env}
	runIn(context.Background(), words[1:], w)
	text := out.String()
	if i := strings.LastIndex(text, "\n\n"); strings.Contains(text, "Advice, not authority") && i >= 0 {
		text = text[:i+1] // the closing lines stand in one place of the docs only
	}
	return text + said.String()
}
