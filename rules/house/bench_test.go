package house

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/spec"
	"understitch/rules"
)

// BenchmarkRequire runs one rule over the largest garment of the demo wardrobe,
// whose figures are there already.
func BenchmarkRequire(b *testing.B) {
	const demo = "../../cmd/understitch/demo"
	src, err := os.ReadFile(filepath.Join(demo, "ball-gown.garment.hcl"))
	require.NoError(b, err)
	text, err := os.ReadFile(filepath.Join(demo, "house.hcl"))
	require.NoError(b, err)
	for _, c := range []struct{ name, body string }{
		{"expression of every edge", "of = edge\nwhere = edge.finish == \"hem\"\nthat = edge.allowance >= cm(3)\nmessage = \"x\""},
		{"ready-made of every edge", "of = edge\nonly = { finish = \"hem\" }\nfigure = edge.allowance\nleast = 3"},
		{"expression of every notch", "of = notch\nthat = notch.depth < 1 && edge.allowance > 0\nmessage = \"x\""},
		{"sum over the pieces", "of = garment\nthat = sum([for p in garment.pieces : p.cut]) < 40\nmessage = \"x\""},
		{"girth of a layer", "of = layer\nthat = layer.girth.waist >= 70\nmessage = \"x\""},
		{"sides of every seam", "of = seam\nthat = abs(seam.difference) <= 40\nmessage = \"x\""},
	} {
		b.Run(c.name, func(b *testing.B) {
			h, diags := spec.ReadHouse("house.hcl", []byte(string(text)+"\nrequire \"trial\" {\n"+c.body+"\n}\n"))
			require.Empty(b, diags)
			doc, diags := spec.Read("ball-gown.garment.hcl", src, h)
			require.Empty(b, diags)
			g, diags := doc.Garment("")
			require.Empty(b, diags)
			own, diags := Compile(h, nil)
			require.Empty(b, diags)
			engine, err := rules.New(own)
			require.NoError(b, err)
			settings, _ := engine.Settings(h.Model())
			for _, o := range engine.Check(g, settings) {
				require.Equal(b, rules.Passed, o.Status, o.Message+o.Reason)
			}
			b.ReportAllocs()
			for b.Loop() {
				engine.Check(g, settings)
			}
		})
	}
}
