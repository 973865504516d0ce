package tables

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/measured"
	"understitch/model/spec"
)

const skirt = `garment "skirt" {
  title = "Skirt"
  unit  = "cm"
  sizes = ["36", "38", "40", "a-wearer-with-a-long-name"]
}
size "36" { waist_girth = 66 }
size "38" { waist_girth = 70 }
size "40" { waist_girth = 74 }
size "a-wearer-with-a-long-name" { waist_girth = 90 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side"                                       { length = 60 }
    edge "waist-with-a-name-longer-than-any-other-has" { length = body.waist_girth / 4 }
  }
}
`

// models is the skirt in its first size, and its figures in all of them.
func models(t *testing.T) (*model.Garment, []measured.Size) {
	t.Helper()
	doc, diags := spec.Read("skirt.garment.hcl", []byte(skirt), nil)
	require.Empty(t, diags)
	var first *model.Garment
	var out []measured.Size
	for _, size := range doc.Sizes() {
		g, diags := doc.Garment(size)
		require.Empty(t, diags)
		if first == nil {
			first = g
		}
		out = append(out, measured.Of(g))
	}
	return first, out
}

func TestSideBySide(t *testing.T) {
	var b bytes.Buffer
	g, sizes := models(t)
	require.NoError(t, Write(&b, g, sizes[:3], 100, true))
	require.Equal(t, `skirt.garment.hcl: Skirt
lengths in cm, on the stitch line

                                                          36      38      40
shell
  front
    edge side                                          60.00   60.00   60.00
    edge waist-with-a-name-longer-than-any-other-has   16.50   17.50   18.50
    round the outline                                  76.50   77.50   78.50
`, b.String())
}

// Where the sizes do not fit beside one another they are set in blocks, and a
// name that does not fit has a line to itself; no line is too long.
func TestBlocks(t *testing.T) {
	var b bytes.Buffer
	g, sizes := models(t)
	require.NoError(t, Write(&b, g, sizes, 60, true))
	for line := range strings.Lines(b.String()) {
		require.LessOrEqual(t, len(strings.TrimRight(line, "\n")), 60, line)
	}
	require.Equal(t, 4, strings.Count(b.String(), "edge side"), "a block a size")
	require.Contains(t, b.String(), "a-wearer-with-a-long-name\n")
	require.Contains(t, b.String(), "22.50\n")
}

// Headings with nothing beneath them are left out.
func TestNoEmptyHeadings(t *testing.T) {
	var b bytes.Buffer
	g, sizes := models(t)
	require.NoError(t, Write(&b, g, sizes[:1], 80, false))
	require.NotContains(t, b.String(), "seams")
	require.NotContains(t, b.String(), "bones")
	require.True(t, strings.HasPrefix(b.String(), "\n"), "set off from the garment before")
}

// Of a girth that is missing because a width was not measured the reason stands
// below; of a layer that is open at a level nothing does.
func TestGirthsThatAreNotKnown(t *testing.T) {
	const src = `garment "skirt" { unit = "cm" }
level "waist" {}
level "hip"   {}
layer "shell" {
  side = "outer"
  piece "front" {
    fold  = centre
    width = { waist = 18 }
    edge "side"   { length = 60 }
    edge "centre" { length = 60 }
  }
  piece "back" {
    fold  = centre
    width = { waist = 18, hip = 24 }
    edge "side"   { length = 60 }
    edge "centre" { length = 60 }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`
	text := func(src string) string {
		doc, diags := spec.Read("skirt.garment.hcl", []byte(src), nil)
		require.Empty(t, diags)
		g, diags := doc.Garment("")
		require.Empty(t, diags)
		var b bytes.Buffer
		require.NoError(t, Write(&b, g, []measured.Size{measured.Of(g)}, 60, true))
		return b.String()
	}
	got := text(src)
	require.Contains(t, got, "girth at waist")
	require.NotContains(t, got, "girth at hip")
	require.Contains(t, got, `
girth of shell at hip not known: shell.front has no drawing
and no width at the hip level, which shell.back reaches
beside it (seam.side): state its width there, or levels = {}
if it reaches only those it has a width at
`)
	require.NotContains(t, text(strings.Replace(src, "waist = 18 }", "waist = 18 }\n    levels = {}", 1)), "not known")
}
