package house_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/house"
	"understitch/rules/inspect"
)

const (
	tenRules = "../../testdata/house-rules"
	demo     = "../../cmd/understitch/demo"
)

func read(t *testing.T, name string) string {
	t.Helper()
	src, err := os.ReadFile(name)
	require.NoError(t, err)
	return string(src)
}

// The ten rules of a pattern room are sound, carry their examples, and the
// examples come out as they must.
func TestTenRules(t *testing.T) {
	h, diags := spec.LoadHouse(filepath.Join(tenRules, spec.HouseFile))
	require.Empty(t, diags)
	require.Len(t, h.Requires(), 10)
	require.Empty(t, house.Untried(h))
	own, diags := house.Compile(h, builtin.Rules())
	require.Empty(t, diags)
	for i, stated := range h.Requires() {
		trials := house.Try(h, stated, own[i], func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(tenRules, name)) })
		require.GreaterOrEqual(t, len(trials), 2)
		for _, trial := range trials {
			require.Empty(t, trial.Fault, trial.Name)
		}
	}
}

// wardrobe is the demo wardrobe with the ten rules put into its house file, and
// edits to one garment.
func wardrobe(t *testing.T, file string, edits ...string) map[string]*inspect.Report {
	t.Helper()
	_, rulesOnly, ok := strings.Cut(read(t, filepath.Join(tenRules, spec.HouseFile)), "house \"harbour-lane\" { unit = \"cm\" }\n")
	require.True(t, ok)
	files := fstest.MapFS{spec.HouseFile: {Data: []byte(read(t, filepath.Join(demo, spec.HouseFile)) + rulesOnly)}}
	specs, err := filepath.Glob(filepath.Join(demo, "*.garment.hcl"))
	require.NoError(t, err)
	var names []string
	for _, name := range specs {
		src := read(t, name)
		if filepath.Base(name) == file {
			for i := 0; i < len(edits); i += 2 {
				require.Contains(t, src, edits[i])
				src = strings.Replace(src, edits[i], edits[i+1], 1)
			}
		}
		files[filepath.Base(name)] = &fstest.MapFile{Data: []byte(src)}
		names = append(names, filepath.Base(name))
	}
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	in := &inspect.Inspector{Engine: engine, FS: files}
	reports, err := in.Files(t.Context(), names, inspect.Options{Today: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)})
	require.NoError(t, err)
	out := map[string]*inspect.Report{}
	for _, r := range reports {
		require.Empty(t, r.Diagnostics)
		out[r.File] = r
	}
	return out
}

// On the demo wardrobe the ten rules run, can judge all they look at, and find
// nothing.
func TestTenRulesOnTheWardrobe(t *testing.T) {
	for file, r := range wardrobe(t, "") {
		for _, f := range append(r.Result.Findings, r.Result.NotPossible...) {
			require.NotEqual(t, house.Family, f.Rule.Family, "%s: %s at %s: %s%s", file, f.Rule.Name, f.Subject, f.Message, f.Reason)
		}
	}
}

// With a fault put into a garment each rule that can see it finds it.
func TestTenRulesFind(t *testing.T) {
	for _, c := range []struct{ rule, file, from, to, want string }{
		{"hem-depth", "ball-gown.garment.hcl", "finish = \"hem\"", "finish = \"hem\"\n      allowance = 2", "the allowance of shell.skirt-front.hem is 2 cm; at least 3 cm is asked for"},
		{"grain-stated", "ball-gown.garment.hcl", "    grain = [[4, 2], [4, 28]]\n", "", "shell.centre-front states no grain"},
		{"notch-cut", "ball-gown.garment.hcl", "depth = mm(4)", "depth = mm(7)", "the depth of shell.centre-front.notch.bust is 7 mm; at most 6 mm is asked for"},
		{"dart-intake", "ball-gown.garment.hcl", "intake = 3", "intake = 5.2", "waist takes in 5.2 cm; past 5 cm it bulges at its tip: make two of it"},
		{"cloth-stated", "ball-gown.garment.hcl", "  fabric = fabric.coutil\n", "", "foundation states no fabric"},
		{"ruler-allowances", "ball-gown.garment.hcl", "finish = \"hem\"", "finish = \"hem\"\n      allowance = 3.3", "hem has 3.3 cm, which is on no ruler of the room"},
		{"waist-room", "ball-gown.garment.hcl", "waist_girth     = 70", "waist_girth     = 72.6", "shell has 2 mm of room at the waist; give it 5 mm"},
		{"pieces-to-cut", "ball-gown.garment.hcl", "cut   = 2", "cut   = 40", "ball-gown has 53 pieces to cut; plan two days"},
	} {
		t.Run(c.rule, func(t *testing.T) {
			var said []string
			for _, f := range wardrobe(t, c.file, c.from, c.to)[c.file].Result.Findings {
				if f.Rule.Name == c.rule {
					said = append(said, f.Message)
				}
			}
			require.Contains(t, said, c.want)
		})
	}
}

// The page lists the ten rules as they are.
func TestTenRulesAreListed(t *testing.T) {
	h, _ := spec.LoadHouse(filepath.Join(tenRules, spec.HouseFile))
	page := read(t, "../../docs/house-rules.md")
	_, table, ok := strings.Cut(page, "## Ten rules of a pattern room")
	require.True(t, ok)
	table, _, ok = strings.Cut(table, "\n## ")
	require.True(t, ok)
	var listed, stated []string
	for _, m := range regexp.MustCompile("(?m)^\\| `([a-z-]+)` \\|").FindAllStringSubmatch(table, -1) {
		listed = append(listed, m[1])
	}
	for _, r := range h.Requires() {
		stated = append(stated, r.Name)
	}
	require.Equal(t, stated, listed)
}
