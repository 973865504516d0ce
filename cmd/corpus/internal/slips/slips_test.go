package slips

import (
	"bytes"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/rules"
)

const skirt = `garment "skirt" { unit = "cm" }
body { hip_girth = 98 }
level "hip" {
  y    = 20
  body = body.hip_girth
}
layer "shell" {
  piece "front" {
    fold = centre
    points { a = [draft.hip - 1.5, -3] }
    edge "side" { curve = [a, [graded(20, 0.5), inch(8)], [21, 30], [22, 60]] }
    edge "centre" { path = "M 22 60 L 0 -3" }
    dart "waist" {
      on     = side
      intake = mm(20)
    }
    notch "hip" {
      on = side
      at = 20 * 2
    }
  }
}
seam "side" { join = [shell.front.side, shell.front.side] }
`

func TestReadsFigures(t *testing.T) {
	spec, err := read([]byte(skirt))
	require.NoError(t, err)
	type found struct {
		kind  string
		value float64
		unit  float64
	}
	var got []found
	for _, f := range spec.figures {
		got = append(got, found{f.kind, f.value, f.unit})
	}
	require.Equal(t, []found{
		{girth, 98, 10}, {level, 20, 10},
		{point, 1.5, 10}, {point, -3, 10},
		{point, 20, 10}, {point, 8, 25.4}, {point, 21, 10}, {point, 30, 10}, {point, 22, 10}, {point, 60, 10},
		{point, 22, 10}, {point, 60, 10}, {point, 0, 10}, {point, -3, 10},
		{intake, 20, 1},
	}, got, "what is multiplied is no figure that slips, and a grade is left alone")
	require.Contains(t, spec.figures[2].of.names, "shell.front.side", "the edge that is drawn through the point")
	require.NotContains(t, spec.figures[2].of.names, "shell.front.centre")

	var names []string
	for _, n := range spec.names {
		names = append(names, n.was)
	}
	require.Equal(t, []string{"centre", "side", "side", "shell.front.side", "shell.front.side"}, names)
}

// A slip changes its own bytes and no others.
func TestSlipsChangeOneFigure(t *testing.T) {
	spec, err := read([]byte(skirt))
	require.NoError(t, err)
	made := map[string]bool{}
	for i := range uint64(400) {
		r := rand.New(rand.NewPCG(1, i))
		s, ok := spec.draw(drawKind(r), r)
		if !ok {
			continue
		}
		made[s.Kind] = true
		now := spec.with(s)
		e := s.edits[0]
		require.NotEqual(t, skirt, string(now))
		require.Equal(t, skirt[:e.from], string(now[:e.from]))
		require.True(t, bytes.HasPrefix(now[e.from:], []byte(e.text)))
		if len(s.edits) == 1 {
			require.Equal(t, skirt[e.to:], string(now[e.from+len(e.text):]))
		}
	}
	for _, kind := range []string{point, level, girth, intake, "unit of one figure", "unit of the file", "name", "two labels"} {
		require.True(t, made[kind], kind)
	}
}

func TestNamesWhatSlipped(t *testing.T) {
	th := thing{names: []string{"shell.front.side", "shell.front"}, keys: []string{"hip"}, lines: [2]int{10, 12}}
	at := func(file string, line int) rules.Outcome {
		return rules.Outcome{Place: model.Place{File: file, Start: model.Pos{Line: line}}}
	}
	for _, c := range []struct {
		what  string
		o     rules.Outcome
		names bool
	}{
		{"by what it is about", rules.Outcome{Subject: "shell.front.side"}, true},
		{"by a thing inside it", rules.Outcome{Subject: "shell.front.neck"}, false},
		{"by another piece", rules.Outcome{Subject: "shell.front-yoke"}, false},
		{"by its words", rules.Outcome{Message: "lining.back stands outside shell.front."}, true},
		{"by its key", rules.Outcome{Key: "hip"}, true},
		{"by another key", rules.Outcome{Key: "high-hip"}, false},
		{"by its place", at("a", 12), true},
		{"by a place in another file", at("b", 12), false},
		{"by a place past it", at("a", 13), false},
		{"by a place it has to do with", rules.Outcome{Related: []rules.Related{{Place: at("a", 10).Place}}}, true},
	} {
		require.Equal(t, c.names, named(&rules.Finding{Outcome: c.o}, th, "a"), c.what)
	}
}

// The same seed makes the same slips; of independent ones both are found.
func TestRunsTheSameAgain(t *testing.T) {
	table := func(seed uint64) string {
		list, err := Run(Size{Slips: 12, Garments: 4, Seed: seed})
		require.NoError(t, err)
		var out bytes.Buffer
		Print(&out, list)
		return out.String()
	}
	first := table(3)
	require.Equal(t, first, table(3))
	require.Contains(t, first, "slips of account                         12\n")

	pairs, err := Pairs(Size{Slips: 2, Garments: 4, Seed: 3})
	require.NoError(t, err)
	require.Len(t, pairs, 2)
	for _, p := range pairs {
		require.True(t, p.Both, "%s: %s; %s", p.File, p.Slips[0].What, p.Slips[1].What)
	}
}
