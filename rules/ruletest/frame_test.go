package ruletest

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
)

const skirt = `
garment "skirt" { unit = "mm" }
level "waist" { y = 0 }
level "hip" { y = 200 }
layer "shell" {
  side = "outer"
  ease = { hip = 20 }
  piece "front" {
    grain = [[60, 50], [60, 400]]
    edge "waist"  { line = [[0, 0], [180, 0]] }
    edge "side"   { line = [[180, 0], [230, 200], [240, 600]] }
    edge "hem"    { line = [[240, 600], [0, 600]] }
    edge "centre" { line = [[0, 600], [0, 0]] }
    dart "waist" {
      centre = [90, 60]
      intake = 10
      up     = 50
      down   = 70
    }
    notch "hip" {
      on    = side
      level = hip
    }
    notch "nowhere" {
      on    = waist
      level = hip
    }
  }
  piece "pocket" {
    levels = {}
    edge "top"  { line = [[0, 0], [100, 0]] }
    edge "rest" { line = [[100, 0], [50, 120], [0, 0]] }
  }
}
closure "side" {
  kind  = "zip"
  edges = [shell.front.side, shell.front.side]
  to    = hip
  stock = [200]
}
`

func drafter(t *testing.T) Garment {
	doc, diags := spec.Read("skirt", []byte(skirt), nil)
	require.False(t, model.Errors(diags), "%v", diags)
	return Garment{"skirt", func() *model.Garment {
		g, diags := doc.Garment("")
		require.False(t, model.Errors(diags), "%v", diags)
		return g
	}}
}

// A rule that goes by where something is drawn is found out, in every way in which a
// draft is moved; and so is one that goes by down where that is turned.
func TestARuleThatDependsOnTheFrameIsFoundOut(t *testing.T) {
	doc := rules.Doc{Title: "t", Why: "w", How: "h", Fix: "f", Bad: "b", Good: "g", Since: "0.1"}
	figure := func(name string, of func(p *model.Piece) float64) *rules.Rule {
		return &rules.Rule{Name: name, Family: "f", Severity: rules.Note, Doc: doc, Each: rules.Pieces(func(p *rules.Pass, piece *model.Piece) {
			p.Verdict(true, rules.Figure{Unit: rules.Millimetres, Measured: of(piece)}, rules.Say{})
		})}
	}
	start := func(p *model.Piece) (x, y, down float64) {
		at, end := p.Edges[0].Path.Start(), p.Edges[1].Path.End()
		return at.X, at.Y, end.Y - at.Y
	}
	byX := figure("x", func(p *model.Piece) float64 { x, _, _ := start(p); return x })
	byY := figure("y", func(p *model.Piece) float64 { _, y, _ := start(p); return y })
	byFall := figure("fall", func(p *model.Piece) float64 { _, _, down := start(p); return down })
	byLength := figure("length", func(p *model.Piece) float64 { return p.Edges[1].Length() })
	for _, w := range ways() {
		for _, c := range []struct {
			rule  *rules.Rule
			found bool
		}{{byX, true}, {byY, true}, {byFall, w.name != "moved and mirrored" && w.name != "piece by piece"}, {byLength, false}} {
			t.Run(w.name+" by "+c.rule.Name, func(t *testing.T) {
				engine, err := rules.New([]*rules.Rule{c.rule})
				require.NoError(t, err)
				settings, diags := engine.Settings(nil)
				require.Empty(t, diags)
				d := w.draft(drafter(t), engine, settings)
				require.Equal(t, map[string]int{c.rule.Name: 2}, d.was.rules(w))
				differs := 0
				for seed := range 20 {
					g := d.Draft()
					d.frames.Example(seed).redraft(g)
					if len(d.was.differences(d.judge(g), w)) > 0 {
						differs++
					}
				}
				if c.found {
					require.Greater(t, differs, 10)
				} else {
					require.Zero(t, differs)
				}
			})
		}
	}
}

func TestWithoutLevels(t *testing.T) {
	g := drafter(t).Draft()
	withoutLevels(g)
	require.Empty(t, g.Levels)
	require.Empty(t, g.Layers[0].Ease)
	require.Empty(t, g.Darts())
	at, _, err := g.Notches()[0].Position()
	require.NoError(t, err)
	require.InDelta(t, math.Hypot(50, 200), at, 1e-9) // closed form
	_, _, err = g.Notches()[1].Position()
	require.Error(t, err)
	length, err := g.JoinOf(g.Closures[0]).Sides[1][0].SewnLength()
	require.NoError(t, err)
	require.InDelta(t, math.Hypot(50, 200), length, 1e-9)
	require.Equal(t, model.AtNotch, g.Closures[0].Edges[0][0].To.Kind)
}

func TestKeysOnTheirHead(t *testing.T) {
	g := drafter(t).Draft()
	for key, want := range map[string]string{
		"waist to hip":                  "hip to waist",
		"outline waist to hip":          "outline hip to waist",
		"outline below hip":             "outline above hip",
		"upper point of lining.f.dart":  "lower point of lining.f.dart",
		"waist to side":                 "waist to side",
		"corner with hip":               "corner with hip",
		"lower point of shell.f.dart.w": "upper point of shell.f.dart.w",
	} {
		require.Equal(t, want, keyOnItsHead(g, key))
	}
}
