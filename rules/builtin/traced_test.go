package builtin_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/measured"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
)

// tracedHouse is the folder in which one dress is written twice: every line typed,
// and each line drawn once and traced.
const tracedHouse = "../../testdata/traced"

func readTraced(t *testing.T, name string) string {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(tracedHouse, name))
	require.NoError(t, err)
	return string(src)
}

// judgeTraced builds a garment and gives what is found of it; nil where the spec
// is refused.
func judgeTraced(t *testing.T, src string) (*model.Garment, *rules.Result) {
	t.Helper()
	house, diags := spec.ReadHouse(spec.HouseFile, []byte(readTraced(t, "house.hcl")))
	require.Empty(t, diags)
	doc, diags := spec.Read("dress.garment.hcl", []byte(src), house)
	if model.Errors(diags) {
		return nil, nil
	}
	g, diags := doc.Garment("")
	if model.Errors(diags) {
		return nil, nil
	}
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	settings, diags := engine.Settings(nil)
	require.Empty(t, diags)
	result := rules.Gather(engine.Trace(g, settings))
	return g, &result
}

var traced = regexp.MustCompile(`(?:^|[^\w.-])(-?\d+(?:\.\d+)?)`)

// figuresOf are the places of the figures that somebody typed in a spec, words in
// quotes and remarks left out.
func figuresOf(src string) [][2]int {
	blank := regexp.MustCompile(`"[^"]*"|#[^\n]*`).ReplaceAllStringFunc(src, func(s string) string { return strings.Repeat("_", len(s)) })
	var out [][2]int
	for _, m := range traced.FindAllStringSubmatchIndex(blank, -1) {
		out = append(out, [2]int{m[2], m[3]})
	}
	return out
}

// A dress over a foundation, written with traces, needs at most 60 % of the figures,
// and comes to the same in every figure that is computed of it.
func TestTracedDressIsTheTypedDress(t *testing.T) {
	typed, short := readTraced(t, "typed-dress.garment.hcl"), readTraced(t, "traced-dress.garment.hcl")
	require.LessOrEqual(t, float64(len(figuresOf(short))), 0.6*float64(len(figuresOf(typed))))
	a, found := judgeTraced(t, typed)
	require.Empty(t, found.Findings)
	b, found := judgeTraced(t, short)
	require.Empty(t, found.Findings)
	requireAlike(t, "", plain(t, measured.Of(a)), plain(t, measured.Of(b)))
}

func plain(t *testing.T, v any) any {
	t.Helper()
	text, err := json.Marshal(v)
	require.NoError(t, err)
	var out any
	require.NoError(t, json.Unmarshal(text, &out))
	return out
}

// requireAlike holds the figures of two documents against each other, to 0.001 mm.
func requireAlike(t *testing.T, at string, a, b any) {
	t.Helper()
	switch a := a.(type) {
	case map[string]any:
		b := b.(map[string]any)
		delete(b, "traced_from")
		require.Len(t, b, len(a), at)
		for k := range a {
			requireAlike(t, at+"."+k, a[k], b[k])
		}
	case []any:
		require.Len(t, b, len(a), at)
		for i := range a {
			requireAlike(t, fmt.Sprintf("%s[%d]", at, i), a[i], b.([]any)[i])
		}
	case float64:
		require.InDelta(t, a, b, 1e-3, at)
	default:
		require.Equal(t, a, b, at)
	}
}

// What is wrong in a line that was traced is reported once, where the line is drawn.
// A slip that leaves all lines of the dress and the foundation in keeping is none.
func TestSlipsAreReportedAtTheSource(t *testing.T) {
	src := readTraced(t, "traced-dress.garment.hcl")
	from, to := strings.Index(src, `layer "dress"`), strings.Index(src, `layer "foundation"`)
	once := 0
	for _, at := range figuresOf(src) {
		line := src[strings.LastIndex(src[:at[0]], "\n")+1 : at[1]]
		if at[0] < from || at[1] > to || strings.Contains(line, "ease ") || strings.Contains(line, "grain") || strings.Contains(line, "cut ") {
			continue
		}
		v, err := strconv.ParseFloat(src[at[0]:at[1]], 64)
		require.NoError(t, err)
		slip := fmt.Sprintf("%s + 0.9", strings.TrimSpace(line))
		_, found := judgeTraced(t, src[:at[0]]+strconv.FormatFloat(v+0.9, 'f', -1, 64)+src[at[1]:])
		require.NotNil(t, found, slip)
		if len(found.Findings) == 1 {
			once++
		}
		for _, f := range found.Findings {
			require.False(t, isTracing(f), "%s: %s of %s, %s: %s", slip, f.Rule.Name, f.Subject, f.Key, f.Message)
		}
	}
	require.GreaterOrEqual(t, once, 50)
}

// isTracing reports whether a finding is about lines of the foundation that were
// all traced.
func isTracing(f rules.Finding) bool {
	if !strings.Contains(f.Subject, "foundation") {
		return false
	}
	for _, own := range []string{"leg", "gusset", "centre"} {
		if strings.Contains(f.Subject+f.Key, own) {
			return false
		}
	}
	return true
}
