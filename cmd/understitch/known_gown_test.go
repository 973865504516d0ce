package main

import (
	"bytes"
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/cmd/understitch/demo"
)

// gown is the ball gown of the demo wardrobe with faults, in a folder of its
// own. The hem that crosses itself is drawn right, for that cannot be accepted;
// three faults are left.
type gown struct {
	t      *testing.T
	dir    string
	source string
}

func newGown(t *testing.T) *gown {
	t.Helper()
	g := &gown{t: t, dir: t.TempDir()}
	house, err := fs.ReadFile(demo.Files(), "house.hcl")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(g.dir, "house.hcl"), house, 0o600))
	src, err := fs.ReadFile(demo.Files(), "faulty/ball-gown.faulty.garment.hcl")
	require.NoError(t, err)
	g.write(string(src))
	g.edit("[38, 108.6], [4, 106.74], [22, 108.3], [-15, 104]", "[38, 108.6], [22, 108.3], [4, 106.74], [-15, 104]")
	return g
}

func (g *gown) write(source string) {
	g.t.Helper()
	g.source = source
	require.NoError(g.t, os.WriteFile(filepath.Join(g.dir, "ball-gown.garment.hcl"), []byte(source), 0o600))
}

func (g *gown) edit(from, to string) {
	g.t.Helper()
	require.Equal(g.t, 1, strings.Count(g.source, from), "%q is not there once", from)
	g.write(strings.Replace(g.source, from, to, 1))
}

// check gives the exit status and what was printed.
func (g *gown) check(args ...string) (int, string) {
	var out, said bytes.Buffer
	w := &world{stdin: strings.NewReader(""), stdout: &out, stderr: &said, now: func() time.Time { return time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC) }, env: func(string) string { return "" }}
	status := runIn(context.Background(), append(append([]string{"check", "--min-severity", "note"}, args...), g.dir), w)
	return status, out.String() + said.String()
}

// acceptances are the two ways to accept the three faults of the gown, and the one
// that is redundant while the girth is reported.
func acceptances(t *testing.T, g *gown) map[string][]string {
	t.Helper()
	file := filepath.Join(g.dir, "known.jsonl")
	status, said := g.check("--write-known", file)
	require.Equal(t, 0, status, said)
	require.Contains(t, said, "knows 4 findings: 0 taken out, 0 lowered, 4 added")
	return map[string][]string{"known": {"--known", file}, "waived": nil}
}

const waivers = `
waive "layer-girth" {
  at     = level.waist
  figure = "foundation in shell"
  up_to  = mm(5)
  reason = "the satin is cut on the bias and gives"
}
waive "turn-of-cloth" {
  at     = level.waist
  reason = "the satin is cut on the bias and gives"
}
waive "notch-match" {
  at     = seam.foundation-back
  figure = "foundation.back.notch.waist"
  up_to  = mm(6)
  reason = "the panels are matched at the top"
}
waive "notch-depth" {
  at     = shell.side-front.notch.bust
  up_to  = 0.7
  reason = "marked by tacking"
}
`

// The ball gown with three accepted findings: editing an unrelated line keeps
// them accepted, and making one worse brings that one back.
func TestBallGownAccepted(t *testing.T) {
	for _, way := range []string{"known", "waived"} {
		t.Run(way, func(t *testing.T) {
			g := newGown(t)
			status, said := g.check()
			require.Equal(t, 1, status)
			require.Contains(t, said, "DO NOT CUT: 2 errors, 1 warning")

			args := acceptances(t, g)[way]
			if way == "waived" {
				g.write(g.source + waivers)
			}
			accepted := func() {
				t.Helper()
				status, said := g.check(args...)
				require.Equal(t, 0, status, said)
				require.Contains(t, said, "Looked at and accepted")
			}
			accepted()

			g.write("# Looked through at the second fitting.\n\n" + g.source)
			accepted()
			g.edit("grain = [[4, 2], [4, 28]]", "grain = [[4, 3], [4, 27]]")
			accepted()

			// Two millimetres more out of the satin's waist, by the dart.
			g.edit("intake = 4.6", "intake = 4.7")
			status, said = g.check(args...)
			require.Equal(t, 1, status)
			require.Contains(t, said, "DO NOT CUT: 1 error\n")
			require.Contains(t, said, "ERROR     level.waist (layer-girth, foundation in shell)")
			if way == "known" {
				require.Contains(t, strings.Join(strings.Fields(said), " "), "known as 4 mm off, and worse now")
			} else {
				require.Contains(t, said, "this was accepted up to 5 mm")
			}
		})
	}
}
