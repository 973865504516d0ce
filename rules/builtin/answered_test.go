package builtin_test

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/waivers"
)

// looked is one thing that a rule looked at.
type looked struct{ rule, subject string }

// answers runs each rule by itself and tells how many outcomes it had of each
// thing that it looked at.
func answers(t *testing.T, g *model.Garment) map[looked]int {
	t.Helper()
	out := map[looked]int{}
	for _, r := range builtin.Rules() {
		if r.Each == nil {
			continue
		}
		r.Each(g, func(thing model.Thing, _ func(*rules.Pass)) { out[looked{r.Name, thing.Address()}] += 0 })
		engine, err := rules.New([]*rules.Rule{r})
		require.NoError(t, err)
		settings, diags := engine.Settings(nil)
		require.Empty(t, diags)
		for _, o := range engine.Check(g, settings) {
			out[looked{r.Name, o.Subject}]++
		}
	}
	return out
}

// eachGarment drafts the demo's garments and all rules' examples in their last size.
func eachGarment(t *testing.T, judge func(t *testing.T, draft func() *model.Garment)) {
	docs := documents(t)
	for _, name := range slices.Sorted(maps.Keys(docs)) {
		t.Run(name, func(t *testing.T) { judge(t, func() *model.Garment { return lastSize(t, docs[name]) }) })
	}
}

func lastSize(t *testing.T, doc *spec.Document) *model.Garment {
	t.Helper()
	size := ""
	if sizes := doc.Sizes(); len(sizes) > 0 {
		size = sizes[len(sizes)-1]
	}
	g, diags := doc.Garment(size)
	require.False(t, model.Errors(diags))
	return g
}

// A rule that has nothing to say of a thing it looks at tells in its documentation
// when that is so.
func TestWhereARuleIsSilentItsPageSaysWhy(t *testing.T) {
	silent := map[string]string{}
	for _, r := range builtin.Rules() {
		silent[r.Name] = r.Doc.Nothing
	}
	needed := map[string]bool{}
	eachGarment(t, func(t *testing.T, draft func() *model.Garment) {
		for look, outcomes := range answers(t, draft()) {
			if outcomes == 0 {
				needed[look.rule] = true
				require.NotEmpty(t, silent[look.rule], "%s says nothing of %s", look.rule, look.subject)
			}
		}
	})
	for _, rule := range []string{"outline-closed", "outline-crossing", "dart-legs", "seam-walk", "notch-on-line", "edge-unused", "inner-within-outer", "tape-measure", "mirror-pair"} {
		require.False(t, needed[rule], rule) // these have something to say of everything
	}
	require.True(t, needed["fold-straight"], "the test sees when a rule is silent")
}

// Without its drawing a garment is known by the tape alone. Whatever a rule told
// of the drawing it must then tell by the tape, or say that it cannot.
func TestWithoutADrawingNothingIsLeftOutInSilence(t *testing.T) {
	beside := map[string]string{ // what goes with the drawing
		"unit-slip":          "without points none can lie far from the others",
		"allowance-drawn":    "a cut line is part of the drawing",
		"alteration-partner": "only what is drawn is re-drawn",
	}
	compared := map[string]int{}
	eachGarment(t, func(t *testing.T, draft func() *model.Garment) {
		drawn, taped := answers(t, draft()), answers(t, taped(draft))
		var left []string
		for look, outcomes := range drawn {
			if _, ok := beside[look.rule]; ok || outcomes == 0 {
				continue
			}
			compared[look.rule]++
			if taped[look] == 0 {
				left = append(left, fmt.Sprintf("%s of %s", look.rule, look.subject))
			}
		}
		slices.Sort(left)
		require.Empty(t, left, "left out in silence")
	})
	for _, r := range builtin.Rules() {
		if _, ok := beside[r.Name]; !ok && r.Each != nil && r != &waivers.Current {
			require.Positive(t, compared[r.Name], r.Name)
		}
	}
}

// taped is a garment as a tape would know it: the lengths of its edges with the
// darts closed, the widths at its levels, and where its notches lie.
func taped(draft func() *model.Garment) *model.Garment {
	drawn, out := draft(), draft()
	from := drawn.Pieces()
	for n, p := range out.Pieces() {
		was := from[n]
		for i, e := range p.Edges {
			if e.Drawn() {
				e.PaperLength = was.Edges[i].SewnLength()
			}
		}
		for i, mark := range p.Notches {
			if at, _, err := was.Notches[i].Position(); err == nil {
				mark.At, mark.Level, mark.ByPoint = was.Notches[i].On.Net(at), nil, false
			}
		}
		for i, d := range p.Darts {
			if d.On != nil {
				d.At, d.HasTip = was.Darts[i].On.Net(d.At), false
			}
		}
		p.Widths = nil
		for i, l := range out.Levels {
			if w, err := measuring.WidthOf(was, drawn.Levels[i]); err == nil {
				p.Widths = append(p.Widths, model.LevelValue{Level: l, Value: w.Net, Place: l.Place})
			}
		}
		if len(p.Widths) == 0 {
			p.OwnLevels, p.LevelsAt = true, nil
		}
	}
	for _, e := range out.Edges() {
		e.Path, e.Cut, e.CutDrawn, e.Drafted = nil, nil, nil, nil
	}
	return out
}
