package builtin_test

import (
	"fmt"
	"io/fs"
	"math"
	"path"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/cmd/understitch/demo"
	"understitch/model"
	"understitch/model/curve"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
)

// Where on the paper a garment is drafted, and which way round, says nothing
// about the garment. Every outcome of every rule must be the same after the
// whole draft was moved or mirrored; and after it was turned, where nothing in
// it goes by levels, which are level by definition.
func TestOutcomesDoNotDependOnTheFrame(t *testing.T) {
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	settings, diags := engine.Settings(nil)
	require.Empty(t, diags)
	for name, doc := range documents(t) {
		size := ""
		if sizes := doc.Sizes(); len(sizes) > 0 {
			size = sizes[len(sizes)-1]
		}
		draft := func() *model.Garment {
			g, diags := doc.Garment(size)
			require.False(t, model.Errors(diags))
			return g
		}
		want := outcomes(engine.Check(draft(), settings))
		t.Run(name, func(t *testing.T) {
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
		})
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

// documents are the demo's garments and every rule's examples.
func documents(t *testing.T) map[string]*spec.Document {
	out := map[string]*spec.Document{}
	read := func(name, src string, house *spec.House) {
		doc, diags := spec.Read(name, []byte(src), house)
		require.False(t, model.Errors(diags), "%s: %v", name, diags)
		out[name] = doc
	}
	files := demo.Files()
	text, err := fs.ReadFile(files, "house.hcl")
	require.NoError(t, err)
	house, diags := spec.ReadHouse("house.hcl", text)
	require.False(t, model.Errors(diags))
	require.NoError(t, fs.WalkDir(files, ".", func(p string, d fs.DirEntry, err error) error {
		if strings.HasSuffix(p, ".garment.hcl") {
			text, err := fs.ReadFile(files, p)
			require.NoError(t, err)
			read(path.Base(p), string(text), house)
		}
		return err
	}))
	for _, r := range builtin.Rules() {
		var own *spec.House
		if r.Doc.House != "" {
			own, diags = spec.ReadHouse("house.hcl", []byte(r.Doc.House))
			require.False(t, model.Errors(diags))
		}
		read(r.Name+" bad", r.Doc.Bad, own)
		read(r.Name+" good", r.Doc.Good, own)
	}
	return out
}

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
