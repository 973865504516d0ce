package fit

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestBodyPlausible(t *testing.T) {
	// A stature of 168 and a hip of 96 cm let expect a crotch of 61.05 cm and a trunk
	// of 154.33 cm (closed form of the stated relations).
	for _, c := range []struct {
		name   string
		change []string
		found  []string
		passed int
	}{
		{"as most bodies", nil, nil, 1},
		{"just within 2.5 standard deviations", []string{"= 62", "= 68.79"}, nil, 1},
		{"just past them", []string{"= 62", "= 68.81"}, []string{"total_crotch_length"}, 0},
		{"too short by as much", []string{"= 62", "= 53.29"}, []string{"total_crotch_length"}, 0},
		{"a trunk in inches", []string{"= 62", "= 62\n  total_vertical_trunk_length = 60.8"}, []string{"total_vertical_trunk_length"}, 1},
		{"a trunk as it should be", []string{"= 62", "= 62\n  total_vertical_trunk_length = 154.4"}, nil, 2},
		{"no hip", []string{"  hip_girth           = 96\n", ""}, nil, 0},
		{"no lengths", []string{"  total_crotch_length = 62\n", ""}, nil, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := bodyPlausibleGood
			if len(c.change) > 0 {
				src = change(t, src, c.change...)
			}
			result := look(t, BodyPlausible, src)
			require.Empty(t, result.NotPossible)
			require.Equal(t, c.passed, result.Passed)
			var keys []string
			for _, f := range result.Findings {
				keys = append(keys, f.Key)
				require.Equal(t, "note", f.Severity.String())
			}
			require.Equal(t, c.found, keys)
		})
	}
	require.Equal(t, "the wearer's total crotch length of 74 cm is unusually long for a height of 168 cm and a hip of 96 cm: about 61.05 cm would be usual, give or take 7.75 cm. "+
		"Take it again, or look whether it was written down in the right place and unit.", look(t, BodyPlausible, bodyPlausibleBad).Findings[0].Message)
}

// One size that was mistyped is named.
func TestBodyPlausibleOfSizes(t *testing.T) {
	src := change(t, bodyPlausibleGood, "body {\n  height              = 168\n  hip_girth           = 96\n  total_crotch_length = 62\n}",
		"size \"38\" {\n  height = 168\n  hip_girth = 96\n  total_crotch_length = 62\n}\nsize \"40\" {\n  height = 170\n  hip_girth = 100\n  total_crotch_length = 36.1\n}",
		"unit  = \"cm\"", "unit = \"cm\"\n  sizes = [\"38\", \"40\"]\n  base_size = \"38\"")
	result := look(t, BodyPlausible, src)
	require.Len(t, result.Findings, 1)
	require.Equal(t, []string{"40"}, result.Findings[0].Sizes)
	require.Contains(t, result.Findings[0].Message, "in 40 the total crotch length of 36.1 cm is unusually short")
}
