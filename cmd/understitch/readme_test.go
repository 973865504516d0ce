package main

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The README shows a garment and what comes back for it. Both are the real ones:
// the garment is the file it names, and the report what the program prints from
// the project's folder, with no terminal to fit into. With -update they are put
// in; the text around them is for a person to read.
func TestReadme(t *testing.T) {
	const file = "testdata/readme/cuff.garment.hcl"
	t.Chdir("../..")
	t.Setenv("COLUMNS", "80")
	garment, err := os.ReadFile(file)
	require.NoError(t, err)
	var report, complaints bytes.Buffer
	require.Equal(t, 1, run(t.Context(), []string{"check", file}, strings.NewReader(""), &report, &complaints))
	require.Empty(t, complaints.String())

	for _, shown := range []struct {
		what  string
		block *regexp.Regexp
		real  string
	}{
		{"the garment", regexp.MustCompile("(?s)```hcl\n(.*?)```"), string(garment)},
		{"the report", regexp.MustCompile("(?s)`go run ./cmd/understitch check " + regexp.QuoteMeta(file) + "`\n\n```\n(.*?)```"), report.String()},
	} {
		t.Run(shown.what, func(t *testing.T) {
			page, err := os.ReadFile("README.md")
			require.NoError(t, err)
			at := shown.block.FindSubmatchIndex(page)
			require.NotNil(t, at, "the README does not show it")
			if *update {
				now := string(page[:at[2]]) + shown.real + string(page[at[3]:])
				require.NoError(t, os.WriteFile("README.md", []byte(now), 0o644))
				return
			}
			require.Equal(t, shown.real, string(page[at[2]:at[3]]))
		})
	}
}
