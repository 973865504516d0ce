package sewing

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
)

// walkWith makes a walk of a length with notches on it, named by their places.
// A place given as negative is a double notch.
func walkWith(length float64, at ...float64) *Walk {
	w := &Walk{Length: length}
	for _, s := range at {
		n := &model.Notch{Name: fmt.Sprint(math.Abs(s)), Kind: "single"}
		if s < 0 {
			n.Kind = "double"
		}
		w.Notches = append(w.Notches, WalkNotch{n, math.Abs(s)})
	}
	return w
}

func TestPairNotches(t *testing.T) {
	for _, c := range []struct {
		name         string
		a, b         *Walk
		pairs        [][2]float64
		onlyA, onlyB []float64
	}{
		{"none", walkWith(300), walkWith(300), nil, nil, nil},
		{"alike", walkWith(300, 100, 200), walkWith(300, 100, 200), [][2]float64{{100, 100}, {200, 200}}, nil, nil},
		{"the middle one is missing", walkWith(300, 50, 100, 200), walkWith(300, 50, 200), [][2]float64{{50, 50}, {200, 200}}, []float64{100}, nil},
		{"the first is missing on the other side", walkWith(300, 100), walkWith(300, 30, 102), [][2]float64{{100, 102}}, nil, []float64{30}},
		{"one lies far off", walkWith(300, 50, 100, 250), walkWith(300, 50, 180, 250), [][2]float64{{50, 50}, {100, 180}, {250, 250}}, nil, nil},
		{"only one each, far apart", walkWith(300, 40), walkWith(300, 260), [][2]float64{{40, 260}}, nil, nil},
		{"shifted by one", walkWith(400, 100, 200, 300), walkWith(400, 200, 300, 390), [][2]float64{{200, 200}, {300, 300}}, []float64{100}, []float64{390}},
		{"a longer side carries its notches further on", walkWith(330, 50, 130, 230), walkWith(300, 50, 100, 200), [][2]float64{{50, 50}, {130, 100}, {230, 200}}, nil, nil},
		{"a double keeps to the double", walkWith(300, 100, -106), walkWith(300, -104), [][2]float64{{106, 104}}, []float64{100}, nil},
		{"kinds differ in one place", walkWith(300, 100), walkWith(300, -100), [][2]float64{{100, 100}}, nil, nil},
		{"all on one side", walkWith(300, 100, 200), walkWith(300), nil, []float64{100, 200}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			pairs, onlyA, onlyB := PairNotches(c.a, c.b)
			var got [][2]float64
			for _, p := range pairs {
				got = append(got, [2]float64{p.A.At, p.B.At})
			}
			require.Equal(t, c.pairs, got)
			require.Equal(t, c.onlyA, places(onlyA))
			require.Equal(t, c.onlyB, places(onlyB))
		})
	}
}

func places(list []WalkNotch) []float64 {
	var out []float64
	for _, n := range list {
		out = append(out, n.At)
	}
	return out
}

func TestMisplaced(t *testing.T) {
	for _, c := range []struct {
		name              string
		off, longer, want float64
	}{
		{"equal lengths", 3, 0, 3},
		{"equal lengths, the other way", -3, 0, -3},
		{"before the length comes in", 0, 8, 0},
		{"after it", 8, 8, 0},
		{"in the middle of it", 5, 8, 0},
		{"further than the length explains", 10, 8, 2},
		{"the wrong way", -1, 8, -1},
		{"shorter", -9, -8, -1},
	} {
		t.Run(c.name, func(t *testing.T) { require.InDelta(t, c.want, Misplaced(c.off, c.longer), 1e-12) })
	}
}

// Every notch ends up in exactly one place, pairs run in order on both sides,
// and a walk laid on itself pairs every notch with itself.
func TestPairNotchesKeepsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := func(name string) *Walk {
			w := &Walk{Length: 500}
			at := 0.0
			for range rapid.IntRange(0, 6).Draw(t, name) {
				at += rapid.Float64Range(1, 80).Draw(t, name+" step")
				kind := rapid.SampledFrom([]string{"", "single", "double"}).Draw(t, name+" kind")
				w.Notches = append(w.Notches, WalkNotch{&model.Notch{Kind: kind}, at})
			}
			return w
		}
		a, b := side("first"), side("second")
		pairs, onlyA, onlyB := PairNotches(a, b)
		require.Len(t, a.Notches, len(pairs)+len(onlyA))
		require.Len(t, b.Notches, len(pairs)+len(onlyB))
		for i := 1; i < len(pairs); i++ {
			require.Greater(t, pairs[i].A.At, pairs[i-1].A.At)
			require.Greater(t, pairs[i].B.At, pairs[i-1].B.At)
		}
		same, none, nothing := PairNotches(a, a)
		require.Len(t, same, len(a.Notches))
		require.Empty(t, none)
		require.Empty(t, nothing)
		for _, p := range same {
			require.Zero(t, p.Off())
		}
	})
}
