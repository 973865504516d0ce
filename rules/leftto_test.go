package rules_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/layers"
	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

// TestLeftToAnotherRule: what one rule leaves to another goes by the figure that
// the house has for that other rule, and nothing is left to a rule that is off.
func TestLeftToAnotherRule(t *testing.T) {
	var left, held float64
	asks := rules.Rule{
		Name: "asks", Family: "trial", Severity: rules.Warning,
		Doc: rules.Doc{Title: "t", Why: "w", How: "h", Fix: "f", Bad: "b", Good: "g", Since: "0.1"},
		Each: func(g *model.Garment, look func(model.Thing, func(*rules.Pass))) {
			look(g, func(p *rules.Pass) {
				left, held = p.LeftTo(seams.UnequalLegs), p.InForce(seams.UnequalLegs)
				p.Good(rules.Say{})
			})
		},
	}
	for _, c := range []struct {
		name, house string
		with        []*rules.Rule
		left, held  float64
	}{
		{"as built in", "", []*rules.Rule{&seams.DartLegs}, 1, 1},
		{"as the house has it", `rule "dart-legs" { legs = mm(2.5) }`, []*rules.Rule{&seams.DartLegs}, 2.5, 2.5},
		{"turned off", `rule "dart-legs" { severity = "off" }`, []*rules.Rule{&seams.DartLegs}, math.Inf(1), 1},
		{"a rule alone", "", nil, 1, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			engine, err := rules.New(append(c.with, &asks))
			require.NoError(t, err)
			settings, diags := engine.Settings(houseOf(t, c.house+"\n"))
			require.Empty(t, diags)
			engine.Check(&model.Garment{Name: "g"}, settings)
			require.Equal(t, c.left, left)
			require.Equal(t, c.held, held)
		})
	}
}

// What the shell takes out by a dart with unequal legs the lining takes out by a
// true one: their tops, darts closed, are not of one shape.
const lameDart = `garment "yoke" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [20, 16]] }
    edge "hem"    { line = [[20, 16], [0, 16]] }
    edge "centre" { line = [[0, 16], [0, 0]] }
    dart "bust" {
      on     = top
      at     = 11
      intake = 3
      tip    = [10, 10]
    }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [20, 16]] }
    edge "hem"    { line = [[20, 16], [0, 16]] }
    edge "centre" { line = [[0, 16], [0, 0]] }
    dart "bust" {
      on     = top
      at     = 10
      intake = 3
      tip    = [10, 10]
    }
  }
}
share "top" {
  outer = [shell.front.top]
  inner = [lining.front.top]
}
`

// TestALameDartWithDartLegsOff: shapes over a dart with unequal legs are left to
// dart-legs; where a house has turned that off, shared-edge tells them.
func TestALameDartWithDartLegsOff(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{layers.SharedEdge, &seams.DartLegs})
	require.NoError(t, err)
	found := func(house string) (told []string) {
		for _, f := range ruletest.Found(t, engine, "house \"h\" { unit = \"cm\" }\n"+house+"\n", lameDart) {
			told = append(told, f.Rule.Name)
		}
		return told
	}
	require.Equal(t, []string{"dart-legs"}, slices.Compact(found("")))
	require.Equal(t, []string{"shared-edge"}, slices.Compact(found(`rule "dart-legs" { severity = "off" }`)))
}
