package builtin_test

import (
	"maps"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/rules"
	"understitch/rules/builtin"
)

// Rules that judge no figure and have nothing of their own to lay open: what is
// reckoned about the thing is told instead.
var withoutAccount = []string{"alteration-partner", "waiver-current"}

// Every figure that a rule judges stands at the end of its account with its unit,
// after what it was reached by, and every sum in an account adds up. It holds for
// all rules on all their examples and on the demo's garments, in every size.
func TestFiguresHaveAccounts(t *testing.T) {
	docs := documents(t)
	told := map[string]bool{}
	for _, name := range slices.Sorted(maps.Keys(docs)) {
		t.Run(name, func(t *testing.T) {
			sizes := docs[name].Sizes()
			if len(sizes) == 0 {
				sizes = []string{""}
			}
			var models []*model.Garment
			for _, size := range sizes {
				g, diags := docs[name].Garment(size)
				require.False(t, model.Errors(diags))
				models = append(models, g)
			}
			engine, err := rules.New(builtin.Rules())
			require.NoError(t, err)
			settings, diags := engine.Settings(nil)
			require.Empty(t, diags)
			outcomes := engine.CheckAcross(models, settings)
			for _, g := range models {
				outcomes = append(outcomes, engine.Check(g, settings)...)
			}
			for _, o := range outcomes {
				lines := o.Account()
				told[o.Rule.Name] = told[o.Rule.Name] || len(lines) > 0
				requireAddsUp(t, o, lines)
				if o.Numeric {
					requireEndsIn(t, o, lines)
				}
			}
		})
	}
	for _, r := range builtin.Rules() {
		require.Equal(t, !slices.Contains(withoutAccount, r.Name), told[r.Name], r.Name)
	}
}

// requireEndsIn asks that the figure judged is the last of the account, in its unit,
// and that it does not stand alone.
func requireEndsIn(t *testing.T, o rules.Outcome, lines reckoned.Lines) {
	t.Helper()
	last := -1
	for i, l := range lines {
		if !math.IsNaN(l.Figure) && l.Kind != reckoned.Beside {
			last = i
		}
	}
	require.GreaterOrEqual(t, last, 0, "%s of %s, %s, has no account", o.Rule.Name, o.Subject, o.Key)
	require.Equal(t, o.Unit, lines[last].Unit, "%s of %s, %s", o.Rule.Name, o.Subject, o.Key)
	require.InDelta(t, math.Abs(o.Measured), math.Abs(lines[last].Figure), 1e-6, "%s of %s, %s: %v", o.Rule.Name, o.Subject, o.Key, lines)
	require.NotEqual(t, 1, len(lines), "%s of %s, %s, tells nothing but the figure", o.Rule.Name, o.Subject, o.Key)
}

func requireAddsUp(t *testing.T, o rules.Outcome, lines reckoned.Lines) {
	t.Helper()
	for i, l := range lines {
		require.NotEmpty(t, l.Text)
		require.False(t, math.IsInf(l.Figure, 0), "%s of %s, %s: %s", o.Rule.Name, o.Subject, o.Key, l.Text)
		require.NotContains(t, l.Text, "%!", "%s of %s, %s", o.Rule.Name, o.Subject, o.Key)
		require.Equal(t, math.IsNaN(l.Figure), l.Unit == "", l.Text)
		if l.Kind == reckoned.Sum {
			require.InDelta(t, math.Abs(lines.Before(i)), math.Abs(l.Figure), 1e-6, "%s of %s, %s: %v", o.Rule.Name, o.Subject, o.Key, lines)
		}
	}
}
