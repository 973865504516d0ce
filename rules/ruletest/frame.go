package ruletest

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/rules"
)

// Garment is one that can be drafted anew as often as wanted.
type Garment struct {
	Name  string
	Draft func() *model.Garment
}

// SameInEveryFrame checks that the rules say the same of garments wherever on the
// paper they are drafted, and which way round: every outcome of every rule, with
// its figure, before and after the draft was moved, mirrored or turned.
//
// A level is level by definition: y runs downward. So a draft with levels can be
// moved, mirrored about the upright and stood on its head together with its levels,
// and is; by any angle it is turned without what goes by levels, for which the rest
// stands as they had it (see withoutLevels). Pieces drafted in a frame of their own
// are each moved by themselves, in all of these, and then again all pieces, each
// having been given a frame of its own.
//
// So that none of this can be said of nothing, every garment is moved at least once
// in each way, and outcomes of every rule must be among those compared, at least so
// many in each way; but for rules that are absent from the garments, or have nothing
// to go by, or go by what was reversed. All of those are listed, with the reason.
func SameInEveryFrame(t *testing.T, engine *rules.Engine, settings *rules.Settings, garments []Garment, least int, absent map[string]string) {
	t.Helper()
	for _, w := range ways() {
		t.Run(w.name, func(t *testing.T) {
			t.Parallel()
			compared := map[string]int{}
			drafts := make([]drafted, len(garments))
			for i, g := range garments {
				drafts[i] = w.draft(g, engine, settings)
				drafts[i].moved(t, drafts[i].frames.Example(i))
				for name, n := range drafts[i].was.rules(w) {
					compared[name] += n
				}
			}
			w.require(t, engine, compared, least, absent)
			for some := range slices.Chunk(drafts, together) {
				rapid.Check(t, func(t *rapid.T) {
					d := some[rapid.IntRange(0, len(some)-1).Draw(t, "garment")]
					d.moved(t, d.frames.Draw(t, d.Name))
				})
			}
		})
	}
}

// together is how many garments one property draws from.
const together = 20

// drafted is a garment as it is before it is moved in some way, and what the rules
// say of it there.
type drafted struct {
	Garment
	way    way
	frames *rapid.Generator[frames]
	was    judged
	judge  func(*model.Garment) judged
}

func (w way) draft(g Garment, engine *rules.Engine, settings *rules.Settings) drafted {
	asDrawn := g.Draft
	g.Draft = func() *model.Garment {
		out := asDrawn()
		w.first(out)
		return out
	}
	d := drafted{Garment: g, way: w, judge: func(g *model.Garment) judged { return about(engine.Check(g, settings)) }}
	draft := g.Draft()
	d.frames, d.was = w.frames(draft), d.judge(draft).named(func(key string) string { return w.key(draft, key) })
	return d
}

// moved drafts the garment in some frame and compares what is said of it.
func (d drafted) moved(t interface{ Fatalf(string, ...any) }, f frames) {
	g := d.Draft()
	f.redraft(g)
	if other := d.was.differences(d.judge(g), d.way); len(other) > 0 {
		t.Fatalf("%s, drafted elsewhere:\n%s", d.Name, strings.Join(other, "\n"))
	}
}

// require checks that outcomes of all rules were compared.
func (w way) require(t *testing.T, engine *rules.Engine, compared map[string]int, least int, absent map[string]string) {
	t.Helper()
	var names, counts []string
	sum := 0
	for _, r := range engine.Rules() {
		if r.Each == nil {
			continue // it looks across sizes, and is not run here
		}
		n := compared[r.Name]
		sum += n
		counts = append(counts, fmt.Sprintf("%s %d", r.Name, n))
		_, isAbsent := absent[r.Name]
		_, hasNothing := w.nothing[r.Name]
		if _, either := atNoLevel[r.Name]; either && hasNothing {
			continue
		}
		left := isAbsent || hasNothing || w.reversed[r.Name].why != "" && w.reversed[r.Name].of == nil
		if left {
			require.Zero(t, n, "%s: outcomes of %s were compared after all", w.name, r.Name)
		} else if n == 0 {
			names = append(names, r.Name)
		}
	}
	t.Logf("%d outcomes of %d rules compared: %s", sum, len(compared), strings.Join(counts, ", "))
	require.Empty(t, names, "%s: no outcomes of these rules were compared", w.name)
	require.GreaterOrEqual(t, sum, least, w.name)
	require.Subset(t, ruleNames(engine), slices.Collect(maps.Keys(absent)))
}

func ruleNames(engine *rules.Engine) []string {
	var out []string
	for _, r := range engine.Rules() {
		out = append(out, r.Name)
	}
	return out
}
