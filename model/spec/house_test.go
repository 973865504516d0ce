package spec

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestHouse(t *testing.T) {
	m := loadHouse(t).Model()
	require.Equal(t, "harbour-lane", m.Name)
	require.Equal(t, "testdata/house.hcl", m.File)
	require.Equal(t, "closure", m.Allowances[1].Role)
	require.Equal(t, 25.0, m.Allowances[1].Width)
	require.InDelta(t, 7, m.Allowances[3].Width, 1e-12)
	r := m.Rules[0]
	require.Equal(t, "seam-walk", r.Rule)
	require.Equal(t, "error", r.Severity)
	require.Equal(t, "warn", r.Limits[0].Name)
	require.InDelta(t, 1.6, r.Limits[0].Length, 1e-12)
	require.InDelta(t, 0.16, r.Limits[0].Plain, 1e-12, "as written, in a house that works in cm")
}

func TestHouseFaults(t *testing.T) {
	const head = "house \"h\" { unit = \"cm\" }\n"
	for _, c := range []struct{ name, src, want string }{
		{"no house block", "allowance \"hem\" { width = 3 }\n",
			`1:1 the file has no house block | Begin it with house "name" { unit = "cm" }.`},
		{"no width", head + "allowance \"hem\" {}\n", `2:1 allowance "hem" does not state width | Write width = … in it.`},
		{"negative width", head + "allowance \"hem\" { width = -1 }\n", `2:27 this cannot be negative`},
		{"a layer", head + "layer \"shell\" {}\n",
			`2:1 layer "shell" cannot stand in house.hcl | It belongs in a spec.`},
		{"twice", head + "size \"38\" { x = 1 }\nsize \"38\" { x = 1 }\n",
			`3:1 size "38" is there twice | The first stands on line 2.`},
		{"measure of nothing", head + "size \"38\" { waist_girth = 0 }\n", `2:27 this must be more than 0`},
		{"measure from a measure", head + "size \"38\" { a = body.b }\n",
			`2:17 a body measure is a plain figure | It cannot follow from a draft or from another measure.`},
		{"severity", head + "rule \"seam-walk\" { severity = \"bad\" }\n",
			`2:31 "bad" is not known here | Known here: error, warning, note, off.`},
		{"limit", head + "rule \"seam-walk\" { warn = -1 }\n", `2:27 a limit cannot be negative`},
		{"level from a draft", head + "level \"hip\" { y = draft.x }\n",
			`2:19 draft.x is not stated | There is no draft block that states it.`},
		{"require of nothing", head + "require \"x\" {\n has = edge.finish\n}\n", `2:1 require "x" does not state of | Write of = … in it.`},
		{"require of text", head + "require \"x\" {\n of = \"edge\"\n}\n",
			`3:7 a kind of thing is meant here | Write of = edge, without quotes.`},
		{"require with a slip", head + "require \"x\" {\n of = edge\n least_ = 1\n}\n",
			`4:2 least_ is not known in require "x" | The nearest known word is least.`},
		{"styles with a pattern that is none", head + "styles \"a[\" {}\n",
			`2:1 "a[" cannot be read as names with stars | * is any part of a name, ** any folders, {a,b} either.`},
		{"styles above the house", head + "styles \"../x/**\" {}\n",
			`2:1 garments are named from the folder of this file, with / between | For example: styles "archive/**".`},
		{"styles with a limit that is none", head + "styles \"a/**\" {\n rule \"seam-walk\" { warn = -1 }\n}\n",
			`3:28 a limit cannot be negative`},
		{"plugin without a pin", head + "plugin \"x\" {\n file = \"x\"\n}\n", `2:1 plugin "x" does not state sha256 | Write sha256 = … in it.`},
		{"plugin elsewhere", head + pluginOf("x", "../x.wasm", sum), `3:9 "../x.wasm" is no place for a plugin | It lies under the folder of this file, with / between folders: rules/knits.wasm.`},
		{"plugin with half a pin", head + pluginOf("x", "x.wasm", sum[1:]), `4:11 this is not the sha256 of a file | It has 64 digits from 0 to 9 and a to f.`},
		{"plugin with a number", head + pluginOf("x-2", "x.wasm", sum), `2:1 "x-2" cannot be the name of a plugin | Findings are reported under it: small letters, with hyphens between words.`},
		{"plugin for ever", head + pluginOf("x", "x.wasm", sum, "time = 600"), `5:9 from 0.01 to 60 s are meant here`},
		{"plugin without room", head + pluginOf("x", "x.wasm", sum, "memory = 0"), `5:11 from 1 to 1024 MB are meant here`},
		{"plugin without a word", head + pluginOf("x", "x.wasm", sum, "output = -1"), `5:11 from 1 to 16384 kB are meant here`},
	} {
		t.Run(c.name, func(t *testing.T) {
			h, diags := ReadHouse("house.hcl", []byte(c.src))
			require.Nil(t, h)
			require.Equal(t, c.want, told(diags))
		})
	}
}

const sum = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789ABCDEF"

func pluginOf(name, file, sum string, more ...string) string {
	return fmt.Sprintf("plugin %q {\n file = %q\n sha256 = %q\n %s\n}\n", name, file, sum, strings.Join(more, "\n "))
}

func TestPlugins(t *testing.T) {
	h, diags := ReadHouse("house.hcl", []byte("house \"h\" { unit = \"cm\" }\n"+pluginOf("knits", "rules/knits.wasm", sum)+
		pluginOf("darts", "darts.wasm", sum, "memory = 16", "time = 0.5", "output = 64", `good = "a.hcl"`, `bad = ["b.hcl", "c.hcl"]`)))
	require.Empty(t, told(diags))
	p := h.Plugins()[0]
	require.Equal(t, []string{"knits", "rules/knits.wasm", strings.ToLower(sum)}, []string{p.Name, p.File, p.SHA256})
	require.Equal(t, []int64{64 << 20, int64(time.Second), 256 << 10}, []int64{p.Memory, int64(p.Time), p.Output}, "safe where nothing is said")
	require.Equal(t, 4, p.SHA256Place.Start.Line)
	p = h.Plugins()[1]
	require.Equal(t, []int64{16 << 20, int64(time.Second / 2), 64 << 10}, []int64{p.Memory, int64(p.Time), p.Output})
	require.Equal(t, "a.hcl", p.Good[0].Text)
	require.Equal(t, "c.hcl", p.Bad[1].Text)
}

// What a house says of some garments only, and the rules it states itself.
func TestStylesAndRequires(t *testing.T) {
	h, diags := ReadHouse("house.hcl", []byte(`house "h" { unit = "cm" }
styles "archive/**" {
  rule "seam-walk" {
    severity = "warning"
    warn     = 0.3
  }
}
require "hem-depth" {
  of    = edge
  only  = { finish = "hem" }
  has   = [edge.allowance, edge.finish]
  named = ["hem", "hem-*"]
  good  = <<-SPEC
    garment "g" { unit = "cm" }
    SPEC
  bad   = ["a.hcl", "b.hcl"]
  why   = "it hangs"
}
`))
	require.Empty(t, told(diags))
	style := h.Model().Styles[0]
	require.Equal(t, "archive/**", style.Pattern)
	require.Equal(t, "warning", style.Rules[0].Severity)
	require.Equal(t, 4, style.Rules[0].SeverityPlace.Start.Line)
	require.InDelta(t, 3, style.Rules[0].Limits[0].Length, 1e-12)
	r := h.Requires()[0]
	require.Equal(t, []string{"hem-depth", "edge", "it hangs"}, []string{r.Name, r.Of, r.Why})
	require.Equal(t, "finish", r.Only[0].Name)
	require.Len(t, r.Has, 2)
	require.Equal(t, "hem-*", r.Named[1].Text)
	require.Equal(t, "garment \"g\" { unit = \"cm\" }\n", r.Good[0].Text)
	require.Equal(t, "b.hcl", r.Bad[1].Text)
}

// sized is a garment with sizes; %head stands in its garment block.
const sized = `garment "g" {
  unit = "in"
#head
}
#sizes
layer "l" {
  side = "outer"
  piece "p" {
    edge "e" { length = body.waist_girth / 2 + graded(1, 0.5) }
  }
}
`

const houseOfSizes = `house "h" { unit = "cm" }
size "10" { waist_girth = 25.4 }
size "12" { waist_girth = 50.8 }
size "14" { waist_girth = 76.2 }
`

func TestSizes(t *testing.T) {
	house, diags := ReadHouse("house.hcl", []byte(houseOfSizes))
	require.Empty(t, diags)
	for _, c := range []struct {
		name, head, sizes string
		want              map[string]float64 // length of the edge in inches, by size
		base, said        string
	}{
		{name: "from the house", head: `sizes = ["10", "12", "14"]`,
			want: map[string]float64{"10": 6, "12": 11.5, "14": 17}, base: "10"},
		{name: "base in the middle", head: "sizes = [\"10\", \"12\", \"14\"]\nbase_size = \"12\"",
			want: map[string]float64{"10": 5.5, "12": 11, "14": 16.5}, base: "12"},
		{name: "the garment's own wins", head: `sizes = ["10", "12"]`, sizes: `size "12" { waist_girth = 40 }`,
			want: map[string]float64{"10": 6, "12": 21.5}, base: "10"},
		{name: "size blocks alone", sizes: "size \"L\" { waist_girth = 40 }\nsize \"S\" { waist_girth = 20 }",
			want: map[string]float64{"L": 21, "S": 11.5}, base: "L"},
		{name: "unused", head: `sizes = ["10"]`, sizes: `size "12" { waist_girth = 40 }`,
			want: map[string]float64{"10": 6}, base: "10",
			said: `warning 5:1 size "12" is not used | It is not among the garment's sizes.`},
		{name: "no block", head: `sizes = ["10", "13"]`,
			said: `3:16 size "13" has no size block | Write size "13" { … } here or in house.hcl. The nearest known word is 10.`},
		{name: "twice", head: `sizes = ["10", "10"]`, said: `3:16 size "10" is there twice`},
		{name: "numbers", head: `sizes = [10, 12]`,
			said: "3:10 a size's name stands in quotes | Write them in quotes: \"10\", \"12\"."},
		{name: "no list", head: `sizes = "10"`, said: `3:9 a list of sizes is meant here | Write sizes = ["36", "38"].`},
		{name: "empty", head: `sizes = []`, said: `3:9 the list of sizes is empty`},
		{name: "base of none", head: "sizes = [\"10\", \"12\"]\nbase_size = \"14\"",
			said: `4:13 size "14" is not among the sizes | The nearest known word is 10.`},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := strings.Replace(strings.Replace(sized, "#head", c.head, 1), "#sizes", c.sizes, 1)
			d, diags := Read("x", []byte(src), house)
			require.Equal(t, c.said, told(diags))
			if c.want == nil {
				require.Nil(t, d)
				return
			}
			require.Equal(t, c.base, d.BaseSize())
			require.Len(t, d.Sizes(), len(c.want))
			for size, length := range c.want {
				g, diags := d.Garment(size)
				require.Empty(t, diags)
				require.Equal(t, size, g.Size)
				require.InDelta(t, length*25.4, g.Layers[0].Pieces[0].Edges[0].PaperLength, 1e-9)
			}
			g, _ := d.Garment("")
			require.Equal(t, c.base, g.Size)
			g, diags = d.Garment("99")
			require.Nil(t, g)
			require.Len(t, diags, 1)
			require.Equal(t, `size "99" is not in this spec`, diags[0].Summary)
		})
	}
}

func TestWearer(t *testing.T) {
	house, _ := ReadHouse("house.hcl", []byte(houseOfSizes))
	src := strings.Replace(strings.Replace(sized, "#head", `sizes = ["10", "12"]`, 1), "#sizes", "", 1)
	d, _ := Read("x", []byte(src), house)
	body := map[string]float64{"waist_girth": 700}
	g, diags := d.Wearer("Understudy", body)
	require.Empty(t, diags)
	require.Equal(t, "Understudy", g.Size)
	require.InDelta(t, 350+25.4, g.Layers[0].Pieces[0].Edges[0].PaperLength, 1e-9)
	require.Equal(t, map[string]float64{"waist_girth": 700}, body)

	g, diags = d.Wearer("Understudy", map[string]float64{"waist_grith": 700})
	require.Nil(t, g)
	require.Equal(t, `9:25 body.waist_girth is not stated for Understudy | The nearest measure stated is body.waist_grith.`, told(diags))
}

// A garment without sizes takes the only body it has.
func TestNoSizes(t *testing.T) {
	d, _ := Read("x", []byte(sound), nil)
	require.Nil(t, d.Sizes())
	require.Empty(t, d.BaseSize())
	_, diags := d.Garment("38")
	require.Equal(t, `1:1 size "38" is not in this spec | The spec has no sizes.`, told(diags))
}

func TestLoadFaults(t *testing.T) {
	dir := t.TempDir()
	write := func(name string, data []byte) string {
		path := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(path, data, 0o600))
		return path
	}
	require.NoError(t, os.Mkdir(filepath.Join(dir, "folder.garment.hcl"), 0o700))
	for _, c := range []struct{ name, path, want string }{
		{"folder", filepath.Join(dir, "folder.garment.hcl"), "1:1 this is a folder, not a file"},
		{"missing", filepath.Join(dir, "none.garment.hcl"), "1:1 the file cannot be read: no such file or directory"},
		{"empty", write("empty.garment.hcl", nil), "1:1 the file is empty"},
		{"large", write("large.garment.hcl", make([]byte, maxBytes+1)),
			"1:1 the file is larger than 4 MB | A spec of one garment is a few kilobytes."},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, diags := Load(c.path, nil)
			require.Nil(t, d)
			require.Equal(t, c.want, told(diags))
			require.Equal(t, c.path, diags[0].Place.File)
			h, diags := LoadHouse(c.path)
			require.Nil(t, h)
			require.Equal(t, c.want, told(diags))
		})
	}
}

func TestFindHouse(t *testing.T) {
	dir := t.TempDir()
	below := filepath.Join(dir, "a", "b")
	require.NoError(t, os.MkdirAll(below, 0o700))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "a", HouseFile), nil, 0o600))
	path, ok := FindHouse(below)
	require.True(t, ok)
	require.Equal(t, filepath.Join(dir, "a", HouseFile), path)

	t.Chdir(below)
	path, ok = FindHouse(".")
	require.True(t, ok)
	require.Equal(t, filepath.Join("..", HouseFile), path)
	path, ok = FindHouse("")
	require.True(t, ok)
	require.Equal(t, filepath.Join("..", HouseFile), path)
}
