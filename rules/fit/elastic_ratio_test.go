package fit

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestElasticRatio(t *testing.T) {
	// Each leg edge falls 20 cm while it goes 15 cm in: 25 cm long (closed form).
	waist := []string{"brief.front.leg, brief.back.leg", "brief.front.waist, brief.back.waist", `"leg" {` + "\n  edges", `"waist" {` + "\n  edges"}
	cutTwice := []string{"fold = centre", "cut = 2", `seam "gusset"`, "seam \"cf\" { join = [brief.front.centre, brief.front.centre] }\n" +
		"seam \"cb\" { join = [brief.back.centre, brief.back.centre] }\nseam \"gusset\""}
	for _, c := range []struct {
		name   string
		change []string
		found  bool
		passed int
		reason string
	}{
		{"round one leg, 44 cm for 50", nil, false, 1, ""},
		{"38 cm for 50", []string{"length = 44", "length = 38"}, true, 0, ""},
		{"48 cm for 50", []string{"length = 44", "length = 48"}, true, 0, ""},
		{"half a millimetre over", []string{"length = 44", "length = 47.55"}, false, 1, ""},
		{"round the waist, drawn by its half: 62 cm for 72", append(waist, "length = 44", "length = 62"), false, 1, ""},
		{"no more than the half for it", append(waist, "length = 44", "length = 31"), true, 0, ""},
		{"round a waist of mirrored pairs", append(append(waist, cutTwice...), "length = 44", "length = 62"), false, 1, ""},
		{"along a part of an edge", []string{"[brief.front.leg, brief.back.leg]", "part(brief.front.side, waist, end)", "length = 44", "length = 8",
			`layer "brief" {`, "level \"waist\" { y = 5 }\nlayer \"brief\" {"}, false, 1, ""},
		{"no ratio stated", []string{"  ratio  = [0.8, 0.95]\n", ""}, false, 0, ""},
		{"open above", []string{"[0.8, 0.95]", "[0.9, null]"}, true, 0, ""},
		{"one figure", []string{"[0.8, 0.95]", "0.88"}, false, 1, ""},
		{"a level that does not cross", []string{"[brief.front.leg, brief.back.leg]", "part(brief.front.side, knee, end)", `layer "brief" {`, "level \"knee\" { y = 80 }\nlayer \"brief\" {"},
			false, 0, "the knee level does not cross brief.front.side"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := elasticRatioGood
			if len(c.change) > 0 {
				src = change(t, src, c.change...)
			}
			result := look(t, ElasticRatio, src)
			require.Equal(t, c.found, len(result.Findings) == 1)
			require.Equal(t, c.passed, result.Passed)
			requireReason(t, c.reason, result)
		})
	}
	require.Equal(t, "elastic.leg is 38 cm long on an edge of 50 cm (brief.front.leg and brief.back.leg), 0.76 of it, where 0.8 to 0.95 is asked for. "+
		"It is 2 cm too short; lengthen it (40 cm to 47.5 cm), or state the ratio that is meant.", look(t, ElasticRatio, elasticRatioBad).Findings[0].Message)
}
