package demo

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

// The rink dress has a fitting's alterations on both layers. Where one of them
// is forgotten or slips, the finding names the alteration or what it left
// behind.
func TestABrokenAlterationIsFoundByName(t *testing.T) {
	const edges = "edges  = [shell.front.side, shell.back.side, brief.front.side, brief.back.side]"
	for _, c := range []struct{ name, with, rule, says string }{
		{"forgotten on one side of a seam", "edges  = [shell.front.side, brief.front.side, brief.back.side]",
			"seam-walk", "shell.front.side was re-drawn by alter.second-fitting; shell.back.side was not"},
		{"forgotten on the inner layer", "edges  = [shell.front.side, shell.back.side]",
			"inner-within-outer", "brief.front is"},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := fstest.MapFS{}
			for _, name := range []string{"house.hcl", "rink-dress.garment.hcl"} {
				src, err := fs.ReadFile(Files(), name)
				require.NoError(t, err)
				files[name] = &fstest.MapFile{Data: []byte(strings.Replace(string(src), edges, c.with, 1))}
			}
			require.Contains(t, string(files["rink-dress.garment.hcl"].Data), c.with)
			engine, err := rules.New(builtin.Rules())
			require.NoError(t, err)
			in := &inspect.Inspector{Engine: engine, FS: files}
			report := in.File(t.Context(), "rink-dress.garment.hcl", inspect.Options{Today: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)})
			var said []string
			for _, f := range report.Result.Findings {
				if f.Rule.Name == c.rule {
					said = append(said, f.Message)
					for _, r := range f.Related {
						said = append(said, r.Message)
					}
				}
			}
			require.Contains(t, strings.Join(said, "\n"), c.says)
		})
	}
}
