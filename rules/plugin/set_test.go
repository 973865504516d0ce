package plugin

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/rules"
)

// Sizes are looked at side by side; what comes of a garment whose plugin fails
// in the middle is the same every time.
func TestFailingInTheMiddle(t *testing.T) {
	module := guest(t, "testdata/hostile")
	p := named("knits", module)
	p.Time = 4 * time.Second // in which the fine ones answer however busy the machine
	s := set(t, p, module)
	var sizes []*model.Garment
	for i := range 8 {
		name := "fine"
		if i >= 3 && i%2 == 1 {
			name = "endless-loop"
		}
		g := garment(t, name, 3)
		g.Size = fmt.Sprint(36 + 2*i)
		sizes = append(sizes, g)
	}
	var first string
	for range 2 {
		asking := s.Asking()
		looks := make([]Look, len(sizes))
		var all sync.WaitGroup
		for i, g := range sizes {
			all.Go(func() { looks[i] = asking.Look(i, g, asError) })
		}
		all.Wait()
		said := ""
		for _, l := range looks {
			outcomes, failed := asking.Take(l)
			for _, o := range outcomes {
				said += o.Size + " " + o.Message + "\n"
			}
			for _, f := range failed {
				said += f.Error() + "\n"
			}
		}
		if first == "" {
			first = said
			require.Equal(t, 4, strings.Count(said, "\n"), said)
			require.Contains(t, said, "is not known of this garment in 42: it was stopped")
		}
		require.Equal(t, first, said)
	}
}

func TestSwitchedOffAndNoneAtAll(t *testing.T) {
	p := named("knits", falling)
	asking := set(t, p, falling).Asking()
	outcomes, failed := asking.Take(asking.Look(0, garment(t, "one", 3), func(string) rules.Severity { return rules.Off }))
	require.Empty(t, outcomes)
	require.Empty(t, failed, "it is not even started")

	var none *Set
	require.Nil(t, none.Asking())
	outcomes, failed = none.Asking().Take(none.Asking().Look(0, nil, asError))
	require.Empty(t, outcomes)
	require.Empty(t, failed)
	none.Close()
}

// Where no child can be started, garments are not checked in full.
func TestNoRunner(t *testing.T) {
	p := named("knits", silent)
	for _, r := range []*Runner{nil, {Program: "/nowhere/understitch", Args: []string{"understitch"}}} {
		s := NewSet(r, BesideIn(files(p, silent), "wardrobe/house.hcl"), []*model.Plugin{p}, []*rules.Rule{Rule(p)})
		_, failed, _ := ask(s, garment(t, "one", 3))
		require.Len(t, failed, 1)
		require.Contains(t, failed[0].Summary, `the plugin "knits" cannot be used: `)
	}
}

// A plugin's file lies under the house's folder, whatever a link says.
func TestAFileOutside(t *testing.T) {
	dir := t.TempDir()
	house := filepath.Join(dir, "house")
	require.NoError(t, os.Mkdir(house, 0o700))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "secret.wasm"), silent, 0o600))
	require.NoError(t, os.Symlink("../secret.wasm", filepath.Join(house, "knits.wasm")))
	p := named("knits", silent)
	for _, file := range []string{"knits.wasm", "../secret.wasm"} {
		p.File = file
		module, refused := load(Beside(filepath.Join(house, "house.hcl")), p)
		require.Nil(t, module)
		require.Contains(t, refused.Summary, "cannot be opened")
	}
	p.File = "."
	_, refused := load(Beside(filepath.Join(house, "house.hcl")), p)
	require.Contains(t, refused.Summary, "is not a file")
}

// A plugin that hoards memory over many garments is begun anew, and no garment
// is lost by it.
func TestManyGarments(t *testing.T) {
	module := guest(t, "testdata/hostile")
	p := named("knits", module)
	s := set(t, p, module)
	hoards := garment(t, "hoard", 3)
	for range 100 {
		_, failed, _ := ask(s, hoards)
		require.Empty(t, failed)
	}
}
