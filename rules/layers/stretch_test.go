package layers

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// 64 cm round a waist of 70 (closed form: the way to go is 6/64, 9.375 %).
func TestStretch(t *testing.T) {
	const eased = `side   = "inner"`
	for _, c := range []struct {
		name   string
		change []string
		more   string
		want   map[string]float64 // what it reaches
		reason string
		passed int // the velvet's own look included
	}{
		{"gives too little", nil, "", map[string]float64{"waist": 678.4}, "", 1},
		{"just reaches", []string{"across = 6,", "across = 9.375,"}, "", nil, "", 2},
		{"just does not", []string{"across = 6,", "across = 9.37,"}, "", map[string]float64{"waist": 699.97}, "", 1},
		{"as large as the body", []string{"waist_girth = 70", "waist_girth = 64"}, "", nil, "", 0},
		{"a stretch that is not known", []string{"stretch = { across = 6, along = 5 }", "stretch = { along = 5 }"}, "", nil,
			"fabric.lining does not state how far it stretches across", 1},
		{"no cloth named", []string{"fabric = fabric.lining", ""}, "", nil, "", 1},
		{"a body that is not known", []string{"body { waist_girth = 70 }", ""}, "", nil, "", 0},
		{"a lining that is open", []string{`seam "lining-back"  { join = [lining.back.centre, lining.back.centre] }`, ""}, "", nil, "", 1},
		{"bones that press the body in", nil, "bone \"side\" {\n along = lining.front.side\n length = 28\n}\n", nil, "", 1},
		{"an ease that it keeps", []string{eased, eased + "\n  ease = { waist = [-7, 0] }"}, "", map[string]float64{"waist": 678.4}, "", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, Stretch, change(t, stretchBad, c.change...)+c.more)
			requireKeyed(t, c.want, result.Findings)
			require.Equal(t, c.passed, result.Passed)
			if c.reason == "" {
				require.Empty(t, result.NotPossible)
				return
			}
			require.Equal(t, map[string]string{"waist": c.reason}, reasons(result.NotPossible))
		})
	}
	require.Equal(t, "lining measures 64 cm round at the waist level and stretches by 6 % to 67.84 cm, where the body measures 70 cm. It lacks 2.16 cm: "+
		"let it out by 2.04 cm, or take a cloth that stretches across by 9.4 % at least.", look(t, Stretch, stretchBad).Findings[0].Message)
}

// At the tummy the lining goes round 68.92 cm and reaches 73.06 cm (closed form).
func TestStretchAtSeveralLevels(t *testing.T) {
	result := look(t, Stretch, stretchBad+"level \"tummy\" {\n y = 25\n body = 75\n}\n")
	require.Equal(t, "waist", result.Findings[0].Key, "the worst")
	require.Len(t, result.Findings, 1, "it is one cloth")
	related := result.Findings[0].Related
	require.Equal(t, "it lacks 1.94 cm at the tummy level", related[len(related)-1].Message)
}
