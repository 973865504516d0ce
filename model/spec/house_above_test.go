package spec

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// A house inherits from those above it up to the top of the repository, or to one that
// says root = true.
func TestHousesInherit(t *testing.T) {
	top := t.TempDir()
	write := func(path, text string) {
		t.Helper()
		file := filepath.Join(top, path)
		require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
		require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	}
	write("house.hcl", "house \"outside\" { unit = \"cm\" }\nallowance \"outside\" { width = 9 }\n")
	write("repo/.git/HEAD", "")
	write("repo/house.hcl", `house "room" { unit = "in" }
allowance "default" { width = 1 }
allowance "hem" { width = 2 }
level "hip" { y = 8 }
size "38" { bust_girth = 34 }
size "40" { bust_girth = 36 }
rule "seam-walk" {
  severity = "warning"
  warn     = mm(1)
}
styles "dresses/archive/**" {
  rule "seam-walk" { severity = "off" }
}
require "deep" {
  of       = edge
  that     = edge.length > cm(1)
  severity = "note"
  message  = "short"
}
`)
	write("repo/dresses/house.hcl", `house "dresses" {
  unit  = "cm"
  sizes = "sizes.csv"
}
allowance "hem" { width = 4 }
rule "seam-walk" { warn = mm(2) }
`)
	write("repo/dresses/sizes.csv", "name,bust_girth\n36,84\n38,88\n")
	write("repo/own/house.hcl", "house \"own\" {\n  unit = \"cm\"\n  root = true\n}\n")

	h, diags := LoadHouse(filepath.Join(top, "repo/dresses/house.hcl"))
	require.Empty(t, diags)
	require.Len(t, h.model.Files, 2, "the one outside the repository does not count")
	widths := map[string]float64{}
	for _, s := range h.model.Allowances {
		widths[s.Role] = s.Width
	}
	require.Equal(t, map[string]float64{"default": 25.4, "hem": 40}, widths)
	require.Equal(t, "deep", h.requires[0].Name)
	require.InDelta(t, 880, h.size("38").body["bust_girth"], 1e-9)
	require.Nil(t, h.size("40"), "a size table is taken as a whole")
	require.Equal(t, 3, h.size("38").at["bust_girth"].Start.Line)
	require.Equal(t, "dresses", h.model.Styles[0].Under)
	last := h.model.Rules[len(h.model.Rules)-1]
	require.Equal(t, "", last.Severity, "the severity stays that of the house above")
	require.Equal(t, "warning", h.model.Rules[len(h.model.Rules)-2].Severity)
	require.InDelta(t, 2, last.Limits[0].Length, 1e-9)

	own, diags := LoadHouse(filepath.Join(top, "repo/own/house.hcl"))
	require.Empty(t, diags)
	require.Len(t, own.model.Files, 1)

	d, diags := Read(filepath.Join(top, "repo/dresses/x.garment.hcl"), []byte("garment \"g\" { unit = \"cm\" }\nlayer \"shell\" {\n  side = \"outer\"\n  piece \"front\" {\n    width = { hip = 20 }\n    edge \"a\" { length = 20 }\n  }\n}\n"), h)
	require.Empty(t, diags)
	g, diags := d.Garment("")
	require.Empty(t, diags)
	require.InDelta(t, 8*25.4, g.Levels[0].Y, 1e-9, "a level keeps the unit of its own house")
	require.InDelta(t, 25.4, g.Edges()[0].Allowance.Width, 1e-9)
}

func TestSizeTablesOfAHouse(t *testing.T) {
	for _, c := range []struct{ name, house, table, want string }{
		{"outside", "house \"h\" {\n  unit = \"cm\"\n  sizes = \"../sizes.csv\"\n}\n", "name,bust_girth\n36,84\n", "is outside the folder of the house"},
		{"not there", "house \"h\" {\n  unit = \"cm\"\n  sizes = \"other.csv\"\n}\n", "name,bust_girth\n36,84\n", "the table of sizes cannot be read"},
		{"both", "house \"h\" {\n  unit = \"cm\"\n  sizes = \"sizes.csv\"\n}\nsize \"38\" { bust_girth = 88 }\n", "name,bust_girth\n36,84\n", "keep one of them"},
		{"a bad cell", "house \"h\" {\n  unit = \"cm\"\n  sizes = \"sizes.csv\"\n}\n", "name,bust_girth\n36,wide\n", "wide"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			require.NoError(t, os.WriteFile(filepath.Join(dir, "house.hcl"), []byte(c.house), 0o644))
			require.NoError(t, os.WriteFile(filepath.Join(dir, "sizes.csv"), []byte(c.table), 0o644))
			h, diags := LoadHouse(filepath.Join(dir, "house.hcl"))
			require.Nil(t, h)
			require.Contains(t, told(diags), c.want)
		})
	}
}
