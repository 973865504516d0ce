package rules_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/layers"
	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

// trial is a rule of the tests: on the garment it finds what finds says.
func trial(name string, under []string, finds func(p *rules.Pass)) *rules.Rule {
	return &rules.Rule{
		Name: name, Family: "trial", Severity: rules.Error, Under: under,
		Doc: rules.Doc{Title: "t", Why: "w", How: "h", Fix: "f", Bad: "b", Good: "g", Since: "0.1"},
		Each: func(g *model.Garment, look func(model.Thing, func(*rules.Pass))) {
			look(g, func(p *rules.Pass) { p.NothingHere(); finds(p) })
		},
	}
}

func fault(key string, mild bool, under ...rules.Under) func(*rules.Pass) {
	return func(p *rules.Pass) {
		p.Fault(rules.Say{Key: key, Mild: mild, Under: under, Message: func() string { return "m" }})
	}
}

// A finding is redundant only under one that was really made, in the same size,
// is as grave, and was not accepted; a chain breaks at its first missing link.
func TestRedundant(t *testing.T) {
	first := rules.Under{Rule: "first", Subject: "garment"}
	second := rules.Under{Rule: "second", Subject: "garment"}
	for _, c := range []struct {
		name   string
		first  func(*rules.Pass)
		mild   bool // the second finding is a warning
		house  string
		accept []string // rules whose findings are accepted
		force  []string
		raw    int
	}{
		{"under one that was made", fault("", false), false, "", nil, []string{"first"}, 3},
		{"nothing was made", func(*rules.Pass) {}, false, "", nil, []string{"second"}, 2},
		{"one that is less grave", fault("", true), false, "", nil, []string{"first", "second"}, 3},
		{"a rule that is off", fault("", false), false, `rule "first" { severity = "off" }`, nil, []string{"second"}, 2},
		{"a rule that is lowered", fault("", false), false, `rule "first" { severity = "note" }`, nil, []string{"first", "second"}, 3},
		{"the first was accepted", fault("", false), false, "", []string{"first"}, []string{"second"}, 2},
		{"the link between was accepted", fault("", false), false, "", []string{"second"}, []string{"first", "third"}, 2},
		{"the last was accepted", fault("", false), false, "", []string{"third"}, []string{"first"}, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			engine, err := rules.New([]*rules.Rule{
				trial("first", nil, c.first),
				trial("second", []string{"first"}, fault("", c.mild, first)),
				trial("third", []string{"second"}, fault("", false, second)),
			})
			require.NoError(t, err)
			settings, diags := engine.Settings(houseOf(t, c.house+"\n"))
			require.Empty(t, diags)
			r := rules.Gather(engine.Check(&model.Garment{Name: "g"}, settings))
			r.Accept(func(f *rules.Finding) *model.Waiver {
				if slices.Contains(c.accept, f.Rule.Name) {
					return &model.Waiver{}
				}
				return nil
			})
			var force []string
			for _, f := range r.Findings {
				force = append(force, f.Rule.Name)
			}
			require.Equal(t, c.force, force)
			require.Len(t, r.Raw(), c.raw)
		})
	}
}

// What is redundant in one size and not in another is in force in that other.
func TestRedundantInOneSize(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{
		trial("first", nil, func(p *rules.Pass) {
			if p.Garment.Size == "38" {
				fault("", false)(p)
			}
		}),
		trial("second", []string{"first"}, fault("", false, rules.Under{Rule: "first", Subject: "garment"})),
	})
	require.NoError(t, err)
	settings, _ := engine.Settings(nil)
	var g rules.Gathering
	for _, size := range []string{"36", "38", "40"} {
		g.Add(engine.Check(&model.Garment{Name: "g", Size: size}, settings))
	}
	r := g.Result()
	require.Len(t, r.Findings, 2)
	for _, f := range r.Findings {
		want := map[string][]string{"first": {"38"}, "second": {"36", "40"}}
		require.Equal(t, want[f.Rule.Name], f.Sizes)
	}
	r.Accept(func(f *rules.Finding) *model.Waiver {
		if f.Rule.Name == "first" {
			return &model.Waiver{}
		}
		return nil
	})
	require.Len(t, r.Findings, 1)
	require.Equal(t, []string{"36", "38", "40"}, r.Findings[0].Sizes)
}

// Rules that would make each other redundant in a circle are refused.
func TestCircles(t *testing.T) {
	_, err := rules.New([]*rules.Rule{
		trial("first", []string{"third"}, func(*rules.Pass) {}),
		trial("second", []string{"first"}, func(*rules.Pass) {}),
		trial("third", []string{"second"}, func(*rules.Pass) {}),
	})
	require.ErrorContains(t, err, "findings of its own would make it redundant")
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

// The shape over a dart with unequal legs is a consequence of the legs; where a
// house has turned dart-legs off, shared-edge reports it.
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
