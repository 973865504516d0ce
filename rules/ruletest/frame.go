package ruletest

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/model/curve"
	"understitch/rules"
)

// SameInEveryFrame checks that the rules say the same of a garment wherever on
// the paper it is drafted, and which way round: after the whole draft was moved
// or mirrored, and after it was turned, where nothing in it goes by levels,
// which are level by definition. draft builds the garment anew.
func SameInEveryFrame(t *testing.T, engine *rules.Engine, settings *rules.Settings, draft func() *model.Garment) {
	t.Helper()
	want := outcomes(engine.Check(draft(), settings))
	for seed := range frames {
		f := drawn.Example(seed)
		g := draft()
		move := f.move
		if !goesByLevels(g) {
			move = curve.Rotate(curve.Point{}, f.turn).Then(move)
		}
		redraft(g, move)
		same(t, want, outcomes(engine.Check(g, settings)))
	}
}

// frames is how many frames every garment is drafted in.
const frames = 12

type frame struct {
	move curve.Motion
	turn float64
}

// drawn is any frame: moved, and every other one mirrored.
var drawn = rapid.Custom(func(t *rapid.T) frame {
	f := frame{turn: rapid.Float64Range(0, 6.3).Draw(t, "turn"), move: curve.Translate(curve.Point{
		X: rapid.Float64Range(-2000, 2000).Draw(t, "x"),
		Y: rapid.Float64Range(-2000, 2000).Draw(t, "y"),
	})}
	if rapid.Bool().Draw(t, "mirrored") {
		f.move = curve.Mirror(curve.Point{}, curve.Point{Y: 1}).Then(f.move)
	}
	return f
})

func goesByLevels(g *model.Garment) bool {
	for _, d := range g.Darts() {
		if d.On == nil {
			return true // its line is upright by definition
		}
	}
	return len(g.Levels) > 0
}

// redraft moves everything that is drawn.
func redraft(g *model.Garment, m curve.Motion) {
	down := m.Apply(curve.Point{}).Y
	for _, l := range g.Levels {
		l.Y += down
	}
	for _, p := range g.Pieces() {
		for i := range p.LevelsAt {
			p.LevelsAt[i].Value += down
		}
		for i := range p.Grain {
			p.Grain[i] = m.Apply(p.Grain[i])
		}
		for _, e := range p.Edges {
			for _, line := range []**curve.Path{&e.Path, &e.Cut, &e.CutDrawn, &e.Drafted} {
				if *line != nil {
					*line = (*line).Move(m)
				}
			}
		}
		for _, d := range p.Darts {
			d.Tip, d.Centre = m.Apply(d.Tip), m.Apply(d.Centre)
		}
		for _, n := range p.Notches {
			n.Point = m.Apply(n.Point)
		}
	}
}

func outcomes(list []rules.Outcome) map[string]rules.Outcome {
	out := map[string]rules.Outcome{}
	for _, o := range list {
		out[fmt.Sprintf("%s %s %s", o.Rule.Name, o.Subject, o.Key)] = o
	}
	return out
}

// closeEnough is how far a figure may differ by the arithmetic and by how
// closely bounds are enclosed.
const closeEnough = 0.02

func same(t require.TestingT, want, got map[string]rules.Outcome) {
	for key, w := range want {
		g, ok := got[key]
		require.True(t, ok, "%s is gone", key)
		require.Equal(t, w.Status, g.Status, "%s: %s%s, was %s%s", key, g.Message, g.Reason, w.Message, w.Reason)
		require.Equal(t, w.Severity, g.Severity, key)
		if w.Numeric && math.Abs(w.Measured-g.Measured) > closeEnough {
			require.InDelta(t, w.Measured, g.Measured, closeEnough, key)
		}
	}
	require.Len(t, got, len(want))
}
