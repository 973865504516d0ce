package layers

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/inspect"
	"understitch/rules/ruletest"
)

func TestExamples(t *testing.T) {
	ruletest.Rule(t, SharedEdge)
	ruletest.Rule(t, InnerWithinOuter)
	ruletest.Rule(t, DartAnswer)
	ruletest.Rule(t, Girth)
	ruletest.Rule(t, TurnOfCloth)
	ruletest.Rule(t, Suppression)
	ruletest.Rule(t, HemDrop)
	ruletest.Rule(t, Stretch)
	ruletest.Rule(t, ShrinkMatch)
}

// look runs one rule over a spec and gives what it came to.
func look(t *testing.T, rule *rules.Rule, src string) rules.Result {
	t.Helper()
	engine, err := rules.New([]*rules.Rule{rule})
	require.NoError(t, err)
	report := (&inspect.Inspector{Engine: engine}).Source(t.Context(), "no-house-here/test.garment.hcl", []byte(src), inspect.Options{})
	require.Empty(t, report.Diagnostics)
	return report.Result
}

// change replaces some of a spec's text, each exactly where it first stands.
func change(t *testing.T, src string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, src, pairs[i])
		src = strings.Replace(src, pairs[i], pairs[i+1], 1)
	}
	return src
}

// keyed lists findings by their keys, with the figure where there is one.
func keyed(found []rules.Finding) map[string]float64 {
	out := map[string]float64{}
	for _, f := range found {
		out[f.Key] = f.Measured
	}
	return out
}

// reasons lists why looks were not possible, by their keys.
func reasons(found []rules.Finding) map[string]string {
	out := map[string]string{}
	for _, f := range found {
		out[f.Key] = f.Reason
	}
	return out
}

// requireKeyed compares findings with what is expected, figures to a hundredth
// of a millimetre or degree.
func requireKeyed(t *testing.T, want map[string]float64, found []rules.Finding) {
	t.Helper()
	got := keyed(found)
	var messages []string
	for _, f := range found {
		messages = append(messages, f.Key+": "+f.Message)
	}
	require.Len(t, found, len(want), strings.Join(messages, "\n"))
	for key, figure := range want {
		require.Contains(t, got, key)
		require.InDelta(t, figure, got[key], 0.011, key)
	}
}
