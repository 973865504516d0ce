package fit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/inspect"
	"understitch/rules/ruletest"
)

func TestExamples(t *testing.T) {
	ruletest.Rule(t, TapeMeasure)
	ruletest.Rule(t, BodyEase)
	ruletest.Rule(t, ElasticRatio)
	ruletest.Rule(t, BoneLength)
	ruletest.Rule(t, BodyPlausible)
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

// change is the good example with some of its text replaced.
func change(t *testing.T, src string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, src, pairs[i])
		src = strings.ReplaceAll(src, pairs[i], pairs[i+1])
	}
	return src
}

func TestTapeMeasureMessage(t *testing.T) {
	result := look(t, TapeMeasure, tapeMeasureBad)
	require.Len(t, result.Findings, 1)
	require.Equal(t, "measure.crotch runs 67.4 cm (brief.front.centre 31 cm, closure.gusset 2.4 cm, brief.back.centre 34 cm) "+
		"against 66 cm of the body's total crotch length: an ease of 1.4 cm, where -3 cm to 0 is asked for. "+
		"It is 1.4 cm too long; shorten one of these parts by as much.", result.Findings[0].Message)
	require.Len(t, result.Findings[0].Related, 3)
}

func TestTapeMeasure(t *testing.T) {
	for _, c := range []struct {
		name   string
		change []string
		want   string // the figure found, "" for none
		reason string // why not possible, "" if it is
	}{
		{"as drafted", nil, "", ""},
		{"half a millimetre past the ease", []string{"[-3, 0]", "[-3, -0.65]"}, "", ""},
		{"a millimetre past it", []string{"[-3, 0]", "[-3, -0.7]"}, "-6mm", ""},
		{"too short", []string{"[-3, 0]", "[-0.5, 0]"}, "-6mm", ""},
		{"no ease stated means none", []string{"ease    = [-3, 0]", ""}, "-6mm", ""},
		{"the second row of eyes", []string{"[mm(24)]", "[mm(24), mm(34)]", "tape.snap-19\n  edges", "tape.snap-19\n  row   = 2\n  edges"}, "4mm", ""},
		{"a lap comes off", []string{"brief.back.gusset]", "brief.back.gusset]\n  lap   = 1.4", "[-3, 0]", "[-1, 0]"}, "-20mm", ""},
		{"from below the waist", []string{"from    = waist\n", "from    = hip\n", `level "waist"`, "level \"hip\" { y = 6 }\nlevel \"waist\""}, "-66mm", ""},
		{"a plain figure", []string{"body.total_crotch_length", "60"}, "54mm", ""},
		{"any ease will do", []string{"[-3, 0]", "[null, null]"}, "", ""},
		{"a body measure nobody states", []string{"body { total_crotch_length = 66 }", ""}, "", "no body states total_crotch_length"},
		{"a tape without closed width", []string{"  width_closed = [mm(24)]\n", ""}, "", "tape.snap-19 states no closed width"},
		{"a level that the run does not cross", []string{"to      = waist", "to      = knee", `level "waist"`, "level \"knee\" { y = 60 }\nlevel \"waist\""},
			"", "the knee level does not cross brief.back.centre"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := change(t, tapeMeasureGood, c.change...)
			if c.want != "" {
				src = strings.Replace(src, `measure "crotch" {`, `measure "crotch" { # fault tape-measure error `+c.want, 1)
			}
			result := ruletest.Spec(t, TapeMeasure, src).Result
			requireReason(t, c.reason, result)
		})
	}
}

func TestTapeMeasureOfASize(t *testing.T) {
	src := change(t, tapeMeasureGood, "body { total_crotch_length = 66 }", "size \"36\" { total_crotch_length = 66 }\nsize \"38\" { waist_girth = 70 }",
		`unit  = "cm"`, "unit  = \"cm\"\n  sizes = [\"36\", \"38\"]\n  base_size = \"36\"")
	requireReason(t, "nothing states total_crotch_length for 38", look(t, TapeMeasure, src))
}

func TestBodyEaseMessage(t *testing.T) {
	result := look(t, BodyEase, bodyEaseBad)
	require.Len(t, result.Findings, 1)
	require.Equal(t, "shell measures 70.6 cm round at the waist level against 70 cm of the body: an ease of 6 mm, "+
		"where -4 cm to 0 is asked for. It is 6 mm too large; take it in by as much in all, or state the ease that is meant.",
		result.Findings[0].Message)
	require.Equal(t, "waist", result.Findings[0].Key)
}

func TestBodyEase(t *testing.T) {
	for _, c := range []struct {
		name   string
		change []string
		want   string
		reason string
	}{
		{"as drafted", nil, "", ""},
		{"too small", []string{"[-4, 0]", "[0, 2]"}, "-6mm", ""},
		{"open below", []string{"[-4, 0]", "[null, 0]"}, "", ""},
		{"within half a millimetre", []string{"[-4, 0]", "[-0.55, 0]"}, "", ""},
		{"a dart that is not taken", []string{"intake = 3", "intake = 0"}, "54mm", ""},
		{"one figure", []string{"[-4, 0]", "-0.6"}, "", ""},
		{"any ease will do", []string{"[-4, 0]", "[null, null]"}, "", ""},
		{"a body measure nobody states", []string{"body { waist_girth = 70 }", ""}, "", "no body states waist_girth"},
		{"a level without body", []string{"  body = body.waist_girth\n", ""}, "", "level.waist does not say what the wearer measures there"},
		{"open where a seam is missing", []string{`seam "back" { join = [shell.back.centre, shell.back.centre] }`, ""},
			"", "shell is open at the waist level: shell.back.centre is not sewn, folded or closed there"},
		{"a paper piece without a width", []string{"line = [[21, 0], [19, 17.5], [21, 28]]", "length = 28"},
			"", "shell.back has no drawing and no width at the waist level (a piece that lies at no level says levels = {})"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := change(t, bodyEaseGood, c.change...)
			if c.want != "" {
				i := strings.Index(src, "\n    waist = ")
				end := i + 1 + strings.Index(src[i+1:], "\n")
				src = src[:end] + " # fault body-ease error " + c.want + src[end:]
			}
			requireReason(t, c.reason, ruletest.Spec(t, BodyEase, src).Result)
		})
	}
}

func TestBodyEaseWithoutEase(t *testing.T) {
	result := look(t, BodyEase, change(t, bodyEaseGood, "waist = [-4, 0]", ""))
	require.Zero(t, result.Passed)
	require.Empty(t, result.NotPossible)
}

func requireReason(t *testing.T, want string, result rules.Result) {
	t.Helper()
	if want == "" {
		require.Empty(t, result.NotPossible)
		return
	}
	require.Len(t, result.NotPossible, 1)
	require.Equal(t, want, result.NotPossible[0].Reason)
}
