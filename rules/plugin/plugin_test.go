package plugin

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
)

// TestMain lets the tests' own program be the child.
func TestMain(m *testing.M) {
	if len(os.Args) == 2 && os.Args[1] == "serve-plugin" {
		if err := Serve(os.Stdin, os.Stdout); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	status := m.Run()
	if guests.dir != "" {
		_ = os.RemoveAll(guests.dir)
	}
	os.Exit(status)
}

// guests are the modules that were built of Go source, once for all tests, and
// the cache of what they compile to.
var guests struct {
	mu    sync.Mutex
	dir   string
	built map[string][]byte
}

// folder is where modules and caches lie while the tests run.
func folder(t testing.TB) string {
	t.Helper()
	if guests.dir == "" {
		dir, err := os.MkdirTemp("", "plugin-test-*")
		require.NoError(t, err)
		guests.dir, guests.built = dir, map[string][]byte{}
	}
	return guests.dir
}

// guest builds a plugin of Go source. The test is skipped where Go is not at hand.
func guest(t testing.TB, source string) []byte {
	t.Helper()
	guests.mu.Lock()
	defer guests.mu.Unlock()
	dir := folder(t)
	if module := guests.built[source]; module != nil {
		return module
	}
	tool, err := exec.LookPath("go")
	if err != nil {
		t.Skip("there is no Go toolchain here to build a plugin with")
	}
	file := filepath.Join(dir, filepath.Base(source)+".wasm")
	build := exec.Command(tool, "build", "-ldflags=-s -w", "-o", file, "./"+source)
	build.Env = append(os.Environ(), "GOOS=wasip1", "GOARCH=wasm", "GOFLAGS=")
	out, err := build.CombinedOutput()
	require.NoError(t, err, string(out))
	module, err := os.ReadFile(file)
	require.NoError(t, err)
	guests.built[source] = module
	return module
}

// runner runs this program as the child, with a cache that the tests share.
func runner(t testing.TB) *Runner {
	t.Helper()
	program, err := os.Executable()
	require.NoError(t, err)
	guests.mu.Lock()
	defer guests.mu.Unlock()
	return &Runner{Program: program, Args: []string{"understitch", "serve-plugin"}, Cache: filepath.Join(folder(t), "cache")}
}

// named is the declaration of a module.
func named(name string, module []byte) *model.Plugin {
	return &model.Plugin{
		Name: name, File: name + ".wasm", SHA256: sumOf(module),
		Memory: model.PluginMemory, Time: never, Output: model.PluginOutput,
		Place: model.Place{File: "house.hcl", Start: model.Pos{Line: 3, Column: 1}},
	}
}

// files is a folder with a module in it.
func files(p *model.Plugin, module []byte) fstest.MapFS {
	return fstest.MapFS{"wardrobe/" + p.File: {Data: module}}
}

// set is a house of one plugin.
func set(t testing.TB, p *model.Plugin, module []byte) *Set {
	t.Helper()
	s := NewSet(runner(t), BesideIn(files(p, module), "wardrobe/house.hcl"), []*model.Plugin{p}, []*rules.Rule{Rule(p)})
	t.Cleanup(s.Close)
	return s
}

const text = `garment "%s" {
  unit = "cm"
}
body { waist_girth = 70 }
level "top" { y = 0 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top" { line = [[0, 0], [20, 0]] }
    edge "side" {
      line      = [[20, 0], [20, 30]]
      allowance = 1.5
    }
    edge "hem" { line = [[20, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
    dart "waist" {
      on     = top
      at     = 10
      intake = %g
      tip    = [10, 12]
    }
    notch "hip" {
      on = side
      at = 18
    }
  }
}
`

func garment(t testing.TB, name string, intake float64) *model.Garment {
	t.Helper()
	doc, diags := spec.Read(name+".garment.hcl", fmt.Appendf(nil, text, name, intake), nil)
	require.Empty(t, diags)
	g, diags := doc.Garment("")
	require.Empty(t, diags)
	return g
}

func asError(string) rules.Severity { return rules.Error }

// ask asks about one garment and times it.
func ask(s *Set, g *model.Garment) ([]rules.Outcome, []model.Diagnostic, time.Duration) {
	begun := time.Now()
	asking := s.Asking()
	outcomes, failed := asking.Take(asking.Look(0, g, asError))
	return outcomes, failed, time.Since(begun)
}
