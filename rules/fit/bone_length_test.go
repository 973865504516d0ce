package fit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
)

func TestBoneLength(t *testing.T) {
	for _, c := range []struct {
		name   string
		change []string
		found  float64 // how much shorter the bone is, where that is too little
		passed int
		reason string
	}{
		{"15 mm in all", nil, 0, 1, ""},
		{"6 mm at each end", []string{"length = 28.5", "length = 28.8"}, 0, 1, ""},
		{"a little less", []string{"length = 28.5", "length = 28.9"}, 11, 0, ""},
		{"longer than its channel", []string{"length = 28.5", "length = 31"}, -10, 0, ""},
		{"much too short is not looked for", []string{"length = 28.5", "length = 10"}, 0, 1, ""},
		{"from a level down", []string{"foundation.front.princess", "part(foundation.front.princess, waist, end)", `layer "foundation"`, "level \"waist\" { y = 1 }\nlayer \"foundation\"",
			"length = 28.5", "length = 28"}, 10, 0, ""},
		{"a level that does not cross", []string{"foundation.front.princess", "part(foundation.front.princess, waist, end)", `layer "foundation"`, "level \"waist\" { y = 70 }\nlayer \"foundation\""},
			0, 0, "the waist level does not cross foundation.front.princess"},
		{"a dart closes over the channel", []string{`edge "hem"`, "dart \"bust\" {\n on = princess\n at = 12\n intake = 2\n tip = [4, 12]\n}\nedge \"hem\""}, -5, 0, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := boneLengthGood
			if len(c.change) > 0 {
				src = change(t, src, c.change...)
			}
			result := look(t, BoneLength, src)
			require.Equal(t, c.passed, result.Passed)
			requireReason(t, c.reason, result)
			if c.found == 0 {
				require.Empty(t, result.Findings)
				return
			}
			require.Len(t, result.Findings, 1)
			require.InDelta(t, c.found, result.Findings[0].Measured, 1e-6)
		})
	}
	require.Equal(t, "bone.princess is 28.5 cm long, only 8 mm shorter than its channel along foundation.front.princess (29.3 cm); it is to end 6 mm short of either end. "+
		"Cut it to 28.1 cm at most.", look(t, BoneLength, boneLengthBad).Findings[0].Message)
}

func TestABoneLongerThanItsChannelIsAnError(t *testing.T) {
	require.Equal(t, rules.Warning, look(t, BoneLength, boneLengthBad).Findings[0].Severity)
	long := strings.Replace(boneLengthBad, "length = 28.5", "length = 260", 1)
	require.NotEqual(t, boneLengthBad, long)
	require.Equal(t, rules.Error, look(t, BoneLength, long).Findings[0].Severity)
}
