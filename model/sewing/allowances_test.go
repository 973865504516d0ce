package sewing_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/modeltest"
	"understitch/model/sewing"
)

// twoByTwo is a seam of two edges on each side, known by tape; the places where
// they meet lie 15 cm along the back and at along the front.
func twoByTwo(t testing.TB, at float64, allowances ...float64) *model.Garment {
	t.Helper()
	return modeltest.Build(t, fmt.Sprintf(`
garment "trial" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "upper" {
      length    = %f
      allowance = %f
    }
    edge "lower" {
      length    = %f
      allowance = %f
    }
    notch "step" {
      on = upper
      at = %[1]f
    }
  }
  piece "back" {
    edge "upper" {
      length    = 15
      allowance = %[5]f
    }
    edge "lower" {
      length    = 25
      allowance = %[6]f
    }
  }
}
seam "side" { join = [[shell.front.upper, shell.front.lower], [shell.back.upper, shell.back.lower]] }
`, at, allowances[0], 40-at, allowances[1], allowances[2], allowances[3]))
}

func TestAllowancesAlong(t *testing.T) {
	for _, c := range []struct {
		name  string
		at    float64
		spans [][2]float64
	}{
		{"one place", 15, [][2]float64{{0, 150}, {150, 400}}},
		{"as good as one place", 15.2, [][2]float64{{0, 150}, {152, 400}}},
		{"two places", 18, [][2]float64{{0, 150}, {150, 180}, {180, 400}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := twoByTwo(t, c.at, 1, 1, 1, 1)
			a, b, err := sewing.Walks(g, g.Joins()[0])
			require.NoError(t, err)
			var got [][2]float64
			for _, s := range sewing.AllowancesAlong(a, b) {
				got = append(got, [2]float64{s.From, s.To})
			}
			require.InDeltaSlice(t, flat(c.spans), flat(got), 1e-9)
		})
	}
}

func flat(pairs [][2]float64) []float64 {
	var out []float64
	for _, p := range pairs {
		out = append(out, p[0], p[1])
	}
	return out
}

func TestAllowanceSteps(t *testing.T) {
	g := twoByTwo(t, 15, 2, 1, 2, 1)
	a, b, err := sewing.Walks(g, g.Joins()[0])
	require.NoError(t, err)
	require.Len(t, a.AllowanceSteps(0.5), 1)
	require.True(t, a.AllowanceSteps(0.5)[0].Notched)
	require.Len(t, b.AllowanceSteps(0.5), 1)
	require.False(t, b.AllowanceSteps(0.5)[0].Notched)
	require.InDelta(t, 150, b.AllowanceSteps(0.5)[0].At, 1e-9)
	require.Empty(t, a.AllowanceSteps(10)) // the step is 10 mm
}

func TestAllowanceApart(t *testing.T) {
	g := twoByTwo(t, 18, 1, 2, 1.2, 2)
	for address, want := range map[string]float64{
		"shell.front.upper": 10, // its last 3 cm lie on the back's lower edge
		"shell.front.lower": 0,
		"shell.back.upper":  2,
		"shell.back.lower":  10,
	} {
		require.InDelta(t, want, sewing.AllowanceApart(g, modeltest.Edge(t, g, address)), 1e-9, address)
	}
}
