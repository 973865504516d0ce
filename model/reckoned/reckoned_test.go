package reckoned_test

import (
	"io/fs"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/cmd/understitch/demo"
	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/reckoned"
	"understitch/model/sewing"
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

// What an account lays open adds up: a sum is what the lines before it, set one
// step further in, come to.
func TestAccountsAddUp(t *testing.T) {
	sums := map[string]int{}
	for name, g := range wardrobe(t) {
		for _, thing := range reckoned.Things(g) {
			lines, _ := reckoned.Of(g, thing.Address())
			for i, l := range lines {
				if l.Kind == reckoned.Sum {
					sums[name]++
					require.InDelta(t, math.Abs(lines.Before(i)), math.Abs(l.Figure), 1e-6, "%s: %s: %s", name, thing.Address(), l.Text)
				}
			}
		}
	}
	require.Greater(t, sums["rink-dress"], 10)
	require.Greater(t, sums["frock-coat"], 10)
}

// The figures are those that the rules judge by.
func TestAccountsEndInTheFigure(t *testing.T) {
	garments := wardrobe(t)
	dress, coat := garments["rink-dress"], garments["frock-coat"]
	last := func(g *model.Garment, address, text string) float64 {
		lines, _ := reckoned.Of(g, address)
		for _, l := range lines {
			if strings.HasSuffix(l.Text, text) {
				return l.Figure
			}
		}
		require.Fail(t, "no line for "+text)
		return 0
	}
	run, err := sewing.LayRun(dress, dress.Measures[0])
	require.NoError(t, err)
	require.Equal(t, run.Total, last(dress, dress.Measures[0].Address(), "in all"))
	round, err := measuring.Girth(dress, dress.Layers[0], levelNamed(dress, "waist"))
	require.NoError(t, err)
	require.Equal(t, round, last(dress, "level.waist", dress.Layers[0].Address()+" round at the waist level"))
	waist := reckoned.Find(coat, "shell.forepart.waist").(*model.Edge)
	require.InDelta(t, waist.SewnLength(), last(coat, waist.Address(), "along the stitch line"), 1e-9)
}

func levelNamed(g *model.Garment, name string) *model.Level {
	for _, l := range g.Levels {
		if l.Name == name {
			return l
		}
	}
	return nil
}
