// Package docs_test keeps the examples of the documentation alive: whatever
// stands in a block marked as hcl is read by the program itself.
//
// The first line of a block tells what it is:
//
//	# file: NAME.garment.hcl      a whole garment, built in all its sizes
//	# file: house.hcl             a house file; it holds for the garments that follow on the page
//	# in a garment                some blocks of a garment; likewise in a layer, in a piece, in a house
//	# refused in a garment: TEXT  the same, which must be refused with that text
//
// A snippet is put into a small garment that gives it the layers, pieces, edges
// and levels that it does not state itself.
package docs_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/spec"
)

// example is one block of a page.
type example struct {
	page string
	line int // where its text begins
	text string
}

var fence = regexp.MustCompile("(?ms)^```hcl\n(.*?)^```$")

// examples are the hcl blocks of a page, in order.
func examples(t *testing.T, page string) []example {
	t.Helper()
	src, err := os.ReadFile(page)
	require.NoError(t, err)
	var out []example
	for _, at := range fence.FindAllSubmatchIndex(src, -1) {
		out = append(out, example{page, 1 + strings.Count(string(src[:at[2]]), "\n"), string(src[at[2]:at[3]])})
	}
	return out
}

func pages(t *testing.T) []string {
	t.Helper()
	list, err := filepath.Glob("*.md")
	require.NoError(t, err)
	require.NotEmpty(t, list)
	return list
}

var (
	fileMark    = regexp.MustCompile(`^# file: (\S+)\n`)
	snippetMark = regexp.MustCompile(`^# (?:(refused) )?in a (garment|layer|piece|house)(?:: (.+))?\n`)
)

func TestExamples(t *testing.T) {
	for _, page := range pages(t) {
		var house *spec.House
		for _, x := range examples(t, page) {
			t.Run(fmt.Sprintf("%s:%d", x.page, x.line), func(t *testing.T) {
				if m := fileMark.FindStringSubmatch(x.text); m != nil {
					if m[1] == spec.HouseFile {
						house = readHouse(t, m[1], x.text)
						return
					}
					require.True(t, strings.HasSuffix(m[1], ".garment.hcl"), "a garment's file is called NAME.garment.hcl")
					buildAll(t, m[1], x.text, house)
					return
				}
				m := snippetMark.FindStringSubmatch(x.text)
				require.NotNil(t, m, "the first line does not say what the example is")
				if m[1] == "" {
					require.Empty(t, m[3])
					if m[2] == "house" {
						readHouse(t, "house.hcl", framed(t, m[2], x.text))
						return
					}
					buildAll(t, "snippet.garment.hcl", framed(t, m[2], x.text), frameHouse(t))
					return
				}
				require.Equal(t, m[3], refusal(t, m[2], framed(t, m[2], x.text)))
			})
		}
	}
}

func readHouse(t *testing.T, name, src string) *spec.House {
	t.Helper()
	h, diags := spec.ReadHouse(name, []byte(src))
	require.Empty(t, diags, src)
	return h
}

// buildAll reads a garment and builds it in every size.
func buildAll(t *testing.T, name, src string, h *spec.House) []*model.Garment {
	t.Helper()
	doc, diags := spec.Read(name, []byte(src), h)
	require.Empty(t, diags, src)
	sizes := doc.Sizes()
	if len(sizes) == 0 {
		sizes = []string{""}
	}
	var out []*model.Garment
	for _, size := range sizes {
		g, diags := doc.Garment(size)
		require.Empty(t, diags, src)
		out = append(out, g)
	}
	return out
}

// refusal is what the first diagnostic says of a spec that must be refused.
func refusal(t *testing.T, kind, src string) string {
	t.Helper()
	if kind == "house" {
		_, diags := spec.ReadHouse("house.hcl", []byte(src))
		require.NotEmpty(t, diags)
		return diags[0].Summary
	}
	doc, diags := spec.Read("snippet.garment.hcl", []byte(src), frameHouse(t))
	if len(diags) == 0 {
		_, diags = doc.Garment("")
	}
	require.NotEmpty(t, diags, "this is not refused")
	return diags[0].Summary
}

// frameHouse is the house that snippets stand below.
func frameHouse(t *testing.T) *spec.House {
	return readHouse(t, "house.hcl", `
house "harbour-lane" { unit = "cm" }
size "38" { waist_girth = 70 }
size "40" { waist_girth = 74 }
`)
}

// part is a line or block of the frame, left out where the snippet states the
// same word and name itself, or does not speak of what it is for.
type part struct {
	word, name, text string
	spokenOf         string // the address under which snippets use it; "" for a part that is always there
}
