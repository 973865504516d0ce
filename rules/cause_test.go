package rules_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/draft"
	"understitch/rules/inspect"
	"understitch/rules/layers"
	"understitch/rules/seams"
)

// tabard is a shell and a lining, drawn alike but where a case changes them.
const tabard = `garment "tabard" {
  unit  = "cm"
  sizes = ["S", "M"]
}
size "S" { bust_girth = 80 }
size "M" { bust_girth = 84 }
level "chest" { y = 0 }
level "waist" { y = 20 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "neck"   { line = [[0, -10], [12, -10]] }
    edge "side"   { line = [[12, -10], [12, 30]] }
    edge "hem"    { line = [[12, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, -10]] }
  }
  piece "back" {
    fold = centre
    edge "neck"   { line = [[0, -10], [12, -10]] }
    edge "side"   { line = [[12, -10], [12, 30]] }
    edge "hem"    { line = [[12, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, -10]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    fold = centre
    edge "neck"   { line = [[0, -10], [12, -10]] }
    edge "side"   { line = [[12, -10], [12, 28]] }
    edge "hem"    { line = [[12, 28], [0, 28]] }
    edge "centre" { line = [[0, 28], [0, -10]] }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
share "neck" {
  outer = [shell.front.neck]
  inner = [lining.front.neck]
  match = "identical"
}
inside "front" {
  outer = shell.front
  inner = lining.front
}
`

// tabardWith is the tabard with the first of each text put in another's place.
func tabardWith(t *testing.T, swap []string) string {
	t.Helper()
	src := tabard
	for i := 0; i < len(swap); i += 2 {
		require.Contains(t, src, swap[i])
		src = strings.Replace(src, swap[i], swap[i+1], 1)
	}
	return src
}

// told are the findings of a spec: their rules, with the rules of what follows, once
// each, in brackets.
func told(t *testing.T, src string) []string {
	t.Helper()
	engine, err := rules.New([]*rules.Rule{layers.SharedEdge, layers.InnerWithinOuter, &seams.Walk, &seams.FoldStraight, &draft.OutlineClosed, &draft.AlterationPartner})
	require.NoError(t, err)
	in := &inspect.Inspector{Engine: engine}
	r := in.Source(t.Context(), "tabard.garment.hcl", []byte(src), inspect.Options{Today: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)})
	require.Empty(t, r.Diagnostics)
	var out []string
	for _, f := range append(r.Result.Findings, r.Result.Waived...) {
		text := f.Rule.Name
		if f.Status == rules.Waived {
			text = "waived " + text
		}
		var follow []string
		for _, o := range f.Follow {
			follow = append(follow, o.Rule.Name)
		}
		follow = slices.Compact(follow)
		if follow != nil {
			text += " [" + strings.Join(follow, " ") + "]"
		}
		out = append(out, text)
	}
	return out
}

func TestWhatFollowsFromAnotherFindingIsToldWithIt(t *testing.T) {
	const neck, centre, side = `edge "neck"   { line = [[0, -10], [12, -10]] }`, `edge "centre" { line = [[0, 30], [0, -10]] }`, `edge "side"   { line = [[12, -10], [12, 30]] }`
	for _, c := range []struct {
		name string
		swap []string // in the shell's front, the first of each
		want []string
	}{
		{"nothing", nil, nil},
		{"the centre ends 4 mm inside", []string{centre, `edge "centre" { line = [[0, 30], [0.4, -10]] }`}, []string{"outline-closed [inner-within-outer]"}},
		{"the neck starts 4 mm inside", []string{neck, `edge "neck"   { line = [[0.4, -10], [12, -10]] }`}, []string{"outline-closed [shared-edge]"}},
		{"the hem ends 4 mm above", []string{`[12, 30], [0, 30]]`, `[12, 30], [0, 29.6]]`}, []string{"outline-closed [fold-straight]"}},
		{"a seam that differs elsewhere", []string{neck, `edge "neck"   { line = [[0.4, -10], [12, -10]] }`, side, `edge "side"   { line = [[12, -10], [12, 0], [13.8, 10], [12, 30]] }`},
			[]string{"outline-closed [shared-edge]", "seam-walk"}},
		{"a gap by which the edge is as long as it must be", []string{neck, `edge "neck"   { line = [[0.4, -10], [12.4, -10]] }`, side, `edge "side"   { line = [[12.4, -10], [12, 30]] }`},
			[]string{"outline-closed"}},
		{"the same edge wrong by much more", []string{neck, `edge "neck"   { line = [[0.4, -10], [6, -8], [12, -10]] }`}, []string{"outline-closed", "shared-edge"}},
		{"the whole side lies 4 mm out", []string{side, `edge "side"   { line = [[12.4, -10], [12.4, 30]] }`}, []string{"outline-closed [outline-closed]"}},
		{"the whole neck lies 4 mm up", []string{neck, `edge "neck"   { line = [[0, -10.4], [12, -10.4]] }`}, []string{"outline-closed [outline-closed]"}},
		{"two gaps", []string{neck, `edge "neck"   { line = [[0.4, -10], [12, -10]] }`, `[12, 30], [0, 30]]`, `[12, 30], [0, 29.6]]`},
			[]string{"outline-closed [shared-edge]", "outline-closed [fold-straight]"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, told(t, tabardWith(t, c.swap)))
		})
	}
}

// A finding that was accepted does not carry with it what follows from it.
func TestWhatFollowsFromAnAcceptedFindingIsToldByItself(t *testing.T) {
	const altered = `alter "fitting" {
  edges  = [shell.front.side, shell.back.side]
  inward = { chest = 0, waist = 0.4 }
}
`
	waived := func(rule, at string) string {
		return "waive \"" + rule + "\" {\n  at     = " + at + "\n  reason = \"tried on\"\n}\n"
	}
	for _, c := range []struct {
		name, rest string
		want       []string
	}{
		{"neither", "", []string{"alteration-partner [inner-within-outer]"}},
		{"the cause", waived("alteration-partner", "alter.fitting"), []string{"inner-within-outer", "waived alteration-partner"}},
		{"what follows", waived("inner-within-outer", "inside.front\n  level  = waist"), []string{"alteration-partner", "waived inner-within-outer"}},
		{"both", waived("alteration-partner", "alter.fitting") + waived("inner-within-outer", "inside.front\n  level  = waist"), []string{"waived inner-within-outer", "waived alteration-partner"}},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, told(t, tabard+altered+c.rest)) })
	}
}

// What follows in one size from another finding, and stands by itself in another
// size, is told by itself.
func TestGatherKeepsApartWhatStandsByItselfInOneSize(t *testing.T) {
	const neck = `edge "neck"   { line = [[0, -10], [12, -10]] }`
	gap := strings.Replace(tabard, neck, `edge "neck"   { line = [[graded(0, 0.4), -10], [12, -10]] }`, 1)
	require.Equal(t, []string{"outline-closed [shared-edge]"}, told(t, gap), "in M alone")
	i := strings.Index(gap, `layer "lining"`)
	lining := strings.Replace(gap[i:], "[12, -10]", "[graded(11.6, 0.4), -10]", -1)
	require.Equal(t, []string{"outline-closed", "shared-edge"}, told(t, gap[:i]+lining), "the lining's neck is short in S")
}

// A gap that nothing follows from is put right several times over, in each size or
// for each wearer; rules that found nothing need not look again each time.
func TestTraceAsksOnlyRulesThatFoundSomething(t *testing.T) {
	const hem, centre = `[12, 30], [0, 30]]`, `edge "centre" { line = [[0, 30], [0, -10]] }`
	for _, c := range []struct {
		name  string
		swap  []string
		again bool
	}{
		{"two gaps of which neither follows", []string{hem, `[12, 30], [0, 29.6]]`, `line = [[0, -10],`, `line = [[0.4, -10],`}, false},
		{"a width follows", []string{centre, `edge "centre" { line = [[0, 30], [0.4, -10]] }`}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			looks := 0
			counted := seams.Walk
			counted.Each = rules.Seams(func(p *rules.Pass, _ *model.Seam) { looks++; p.NothingHere() })
			engine, err := rules.New([]*rules.Rule{layers.InnerWithinOuter, &counted, &draft.OutlineClosed})
			require.NoError(t, err)
			doc, diags := spec.Read("tabard.garment.hcl", []byte(tabardWith(t, c.swap)), nil)
			require.Empty(t, diags)
			g, diags := doc.Garment("S")
			require.Empty(t, diags)
			settings, _ := engine.Settings(&model.House{})
			require.NotEmpty(t, engine.Trace(g, settings))
			require.Equal(t, c.again, looks > 1, "%d looks", looks)
		})
	}
}

// A garment that no spec stands behind is judged all the same.
func TestTraceWithoutASpec(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&draft.OutlineClosed})
	require.NoError(t, err)
	settings, _ := engine.Settings(&model.House{})
	require.Empty(t, engine.Trace(&model.Garment{}, settings))
}
