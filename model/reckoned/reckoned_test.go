package reckoned_test

import (
	"io/fs"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/cmd/understitch/demo"
	"understitch/model"
	"understitch/model/reckoned"
	"understitch/model/spec"
)

func wardrobe(t *testing.T) map[string]*model.Garment {
	t.Helper()
	files := demo.Files()
	text, err := fs.ReadFile(files, "house.hcl")
	require.NoError(t, err)
	house, diags := spec.ReadHouse("house.hcl", text)
	require.False(t, model.Errors(diags))
	out := map[string]*model.Garment{}
	entries, err := fs.Glob(files, "*.garment.hcl")
	require.NoError(t, err)
	for _, name := range entries {
		text, err := fs.ReadFile(files, name)
		require.NoError(t, err)
		doc, diags := spec.Read(name, text, house)
		require.False(t, model.Errors(diags))
		g, diags := doc.Garment(doc.BaseSize())
		require.False(t, model.Errors(diags))
		out[strings.TrimSuffix(name, ".garment.hcl")] = g
	}
	return out
}

// Everything with an address can be accounted for.
func TestEveryThingHasAnAccount(t *testing.T) {
	for name, g := range wardrobe(t) {
		for _, thing := range reckoned.Things(g) {
			lines, ok := reckoned.Of(g, thing.Address())
			require.True(t, ok, "%s: %s", name, thing.Address())
			for _, l := range lines {
				require.NotEmpty(t, l.Text)
				require.False(t, math.IsInf(l.Figure, 0), "%s: %s: %s", name, thing.Address(), l.Text)
			}
		}
		_, ok := reckoned.Of(g, "seam.nowhere")
		require.False(t, ok)
	}
}

// What an account lays open adds up to the figure that the rules judge by.
func TestAccountsAddUp(t *testing.T) {
	garments := wardrobe(t)

	t.Run("a run", func(t *testing.T) {
		lines, _ := reckoned.Of(garments["rink-dress"], "measure.crotch")
		sum := 0.0
		for _, l := range lines {
			if l.Depth == 1 {
				sum += l.Figure
			}
			if strings.HasSuffix(l.Text, "in all") {
				require.InDelta(t, sum, l.Figure, 1e-9)
				return
			}
		}
		require.Fail(t, "no total")
	})

	t.Run("a girth", func(t *testing.T) {
		sum, totals := 0.0, 0
		lines, _ := reckoned.Of(garments["rink-dress"], "level.waist")
		for _, l := range lines {
			if l.Depth == 1 && l.Sum {
				sum += l.Figure
			}
			if strings.HasSuffix(l.Text, "round at the waist level") {
				require.InDelta(t, sum, l.Figure, 1e-9, l.Text)
				sum = 0
				totals++
			}
		}
		require.Equal(t, 2, totals, "shell and brief")
	})

	t.Run("an edge with a dart", func(t *testing.T) {
		lines, _ := reckoned.Of(garments["frock-coat"], "shell.forepart.waist")
		sum, darts := 0.0, 0
		for _, l := range lines {
			if l.Depth == 1 {
				sum += l.Figure
				darts++
			}
			if l.Sum && l.Depth == 0 {
				require.InDelta(t, sum, l.Figure, 1e-9)
				break
			}
		}
		require.Equal(t, 2, darts, "the edge on the paper and its dart")
	})
}
