package layers

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A yoke of two layers, front and back joined at the side, 40 cm along the top.
const yoke = `
garment "yoke" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [20, 12]] }
    edge "hem"    { line = [[20, 12], [0, 12]] }
    edge "centre" { line = [[0, 12], [0, 0]] }
    notch "strap" {
      on = top
      at = 8
    }
  }
  piece "back" {
    edge "top"    { line = [[20, 0], [40, 0]] }
    edge "centre" { line = [[40, 0], [40, 12]] }
    edge "hem"    { line = [[40, 12], [20, 12]] }
    edge "side"   { line = [[20, 12], [20, 0]] }
    notch "strap" {
      on = top
      at = 9
    }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [20, 12]] }
    edge "hem"    { line = [[20, 12], [0, 12]] }
    edge "centre" { line = [[0, 12], [0, 0]] }
    notch "strap" {
      on = top
      at = 8
    }
  }
  piece "back" {
    edge "top"    { line = [[20, 0], [40, 0]] }
    edge "centre" { line = [[40, 0], [40, 12]] }
    edge "hem"    { line = [[40, 12], [20, 12]] }
    edge "side"   { line = [[20, 12], [20, 0]] }
    notch "strap" {
      on = top
      at = 9
    }
  }
}
seam "side"   { join = [shell.front.side, shell.back.side] }
seam "lining" { join = [lining.front.side, lining.back.side] }
share "top" {
  outer = [shell.front.top, shell.back.top]
  inner = [lining.front.top, lining.back.top]
  match = "identical"
}
`

// The lining's front, for changes to it alone.
const (
	liningFront = `layer "lining" {
  side = "inner"
  piece "front" {
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [20, 12]] }
    edge "hem"    { line = [[20, 12], [0, 12]] }
    edge "centre" { line = [[0, 12], [0, 0]] }
    notch "strap" {
      on = top
      at = 8
    }
  }
`
	liningHead = "layer \"lining\" {\n  side = \"inner\"\n  piece \"front\" {\n"
	strapAt8   = "    notch \"strap\" {\n      on = top\n      at = 8\n    }\n  }\n"
)

func front(top, side, hem, centre, more string) string {
	return liningHead + "    edge \"top\" { " + top + " }\n    edge \"side\" { " + side + " }\n    edge \"hem\" { " + hem +
		" }\n    edge \"centre\" { " + centre + " }\n" + more + "  }\n"
}

const strap = "    notch \"strap\" {\n      on = top\n      at = 8\n    }\n"

func TestSharedEdge(t *testing.T) {
	const length, identical = `match = "length"`, `match = "identical"`
	for _, c := range []struct {
		name   string
		change []string
		want   map[string]float64
	}{
		{"alike", nil, nil},
		{"the lining's front drawn turned over, by itself", []string{liningFront, front(
			"line = [[100, 50], [80, 50]]", "line = [[80, 50], [80, 62]]", "line = [[80, 62], [100, 62]]", "line = [[100, 62], [100, 50]]",
			"    levels = {}\n"+strap)}, nil},
		{"the lining's front drawn the other way round", []string{liningFront, front(
			"line = [[20, 0], [0, 0]]", "line = [[0, 0], [0, 12]]", "line = [[0, 12], [20, 12]]", "line = [[20, 12], [20, 0]]",
			"    notch \"strap\" {\n      on = top\n      at = 12\n    }\n"),
			"join = [lining.front.side,", "join = [lining.front.centre,"}, nil},
		{"the lining's front turned on the paper", []string{liningFront, front(
			"line = [[0, 0], [0, 20]]", "line = [[0, 20], [-12, 20]]", "line = [[-12, 20], [-12, 0]]", "line = [[-12, 0], [0, 0]]",
			"    levels = {}\n"+strap)}, nil},
		{"longer at the centre", []string{liningFront, front(
			"line = [[-0.4, 0], [20, 0]]", "line = [[20, 0], [20, 12]]", "line = [[20, 12], [-0.4, 12]]", "line = [[-0.4, 12], [-0.4, 0]]",
			"    notch \"strap\" {\n      on = top\n      at = 8.4\n    }\n")},
			map[string]float64{"length": 4}},
		{"longer within a millimetre", []string{liningFront, front(
			"line = [[-0.09, 0], [20, 0]]", "line = [[20, 0], [20, 12]]", "line = [[20, 12], [-0.09, 12]]", "line = [[-0.09, 12], [-0.09, 0]]", strap)},
			nil},
		// Laid with their middles together, half of the 3 mm stands out in the middle
		// and half at the ends (closed form).
		{"hollowed", []string{liningFront, front(
			"line = [[0, 0], [10, 0.3], [20, 0]]", "line = [[20, 0], [20, 12]]", "line = [[20, 12], [0, 12]]", "line = [[0, 12], [0, 0]]", strap)},
			map[string]float64{"shape shell.front.top": 1.5}},
		{"the side seam slants", []string{liningFront, front(
			"line = [[0, 0], [20, 0]]", "line = [[20, 0], [21, 12]]", "line = [[21, 12], [0, 12]]", "line = [[0, 12], [0, 0]]", strap)},
			map[string]float64{"corner shell.back.top": 4.7636}},
		{"the centre slants", []string{liningFront, front(
			"line = [[0, 0], [20, 0]]", "line = [[20, 0], [20, 12]]", "line = [[20, 12], [1, 12]]", "line = [[1, 12], [0, 0]]", strap)},
			map[string]float64{"corner shell.front.top centre": 4.7636}},
		{"the side seam moved over", []string{liningFront, front(
			"line = [[0, 0], [20.3, 0]]", "line = [[20.3, 0], [20.3, 12]]", "line = [[20.3, 12], [0, 12]]", "line = [[0, 12], [0, 0]]", strap),
			`line = [[20, 0], [40, 0]] }
    edge "centre" { line = [[40, 0], [40, 12]] }
    edge "hem"    { line = [[40, 12], [20, 12]] }
    edge "side"   { line = [[20, 12], [20, 0]] }
    notch "strap" {
      on = top
      at = 9
    }
  }
}
seam`, `line = [[20.3, 0], [40, 0]] }
    edge "centre" { line = [[40, 0], [40, 12]] }
    edge "hem"    { line = [[40, 12], [20.3, 12]] }
    edge "side"   { line = [[20.3, 12], [20.3, 0]] }
    notch "strap" {
      on = top
      at = 8.7
    }
  }
}
seam`},
			map[string]float64{"join shell.back.top": 3}},
		{"only the length is meant", []string{liningFront, front(
			"smooth = [[0, 0], [10, 0.3], [20, 0]]", "line = [[20, 0], [21, 12]]", "line = [[21, 12], [0, 12]]", "line = [[0, 12], [0, 0]]", strap),
			identical, length}, nil},
		{"a notch moved", []string{liningFront, change(t, liningFront, "at = 8", "at = 8.5")},
			map[string]float64{"notch shell.front.notch.strap": 5}},
		{"a notch forgotten", []string{liningFront, front(
			"line = [[0, 0], [20, 0]]", "line = [[20, 0], [20, 12]]", "line = [[20, 12], [0, 12]]", "line = [[0, 12], [0, 0]]", "")},
			map[string]float64{"missing shell.front.notch.strap": 0}},
		{"one notch too many, and eased", []string{strapAt8, strapAt8[:len(strapAt8)-4] + "    notch \"extra\" {\n      on = top\n      at = 15\n    }\n  }\n",
			identical, "match = \"eased\"\n  ease  = [-3, 3]"}, map[string]float64{"missing shell.front.notch.extra": 0}},
		{"a double on a single", []string{liningHead, liningHead + "    notch \"second\" {\n      on   = top\n      at   = 15\n      kind = \"double\"\n    }\n",
			strapAt8, strapAt8[:len(strapAt8)-4] + "    notch \"second\" {\n      on = top\n      at = 15\n    }\n  }\n"},
			map[string]float64{"kind shell.front.notch.second": 0}},
		{"eased in, notches with some of the ease before them", []string{liningFront, front(
			"line = [[-2, 0], [20, 0]]", "line = [[20, 0], [20, 12]]", "line = [[20, 12], [-2, 12]]", "line = [[-2, 12], [-2, 0]]",
			"    notch \"strap\" {\n      on = top\n      at = 8.4\n    }\n"),
			"      at = 9\n    }\n  }\n}\nseam", "      at = 8.45\n    }\n  }\n}\nseam", identical, "match = \"eased\"\n  ease  = [-3, 3]"}, nil},
		{"eased in, a notch out of its place", []string{liningFront, front(
			"line = [[-2, 0], [20, 0]]", "line = [[20, 0], [20, 12]]", "line = [[20, 12], [-2, 12]]", "line = [[-2, 12], [-2, 0]]",
			"    notch \"strap\" {\n      on = top\n      at = 11.05\n    }\n"),
			"      at = 9\n    }\n  }\n}\nseam", "      at = 8.45\n    }\n  }\n}\nseam", identical, "match = \"eased\"\n  ease  = [-3, 3]"},
			map[string]float64{"notch shell.front.notch.strap": 10.5}},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, SharedEdge, change(t, yoke, c.change...))
			requireKeyed(t, c.want, result.Findings)
			require.Empty(t, result.NotPossible)
			require.Positive(t, result.Passed)
		})
	}
}

// Where two shares meet at a corner, one of them tells of it; where the edge of
// one is of another shape on the lining, that is all there is to say.
func TestSharedEdgesThatMeet(t *testing.T) {
	const shares = `
share "side" {
  outer = shell.front.side
  inner = lining.front.side
}
share "top" {
  outer = shell.front.top
  inner = lining.front.top
}
`
	lining := func(from, to string) string {
		i := strings.Index(bodice, `layer "lining"`)
		return bodice[:i] + change(t, bodice[i:], from, to) + shares
	}
	subjects := func(src string) (out []string) {
		for _, f := range look(t, SharedEdge, src).Findings {
			out = append(out, f.Subject)
		}
		return out
	}
	require.Empty(t, subjects(bodice+shares))
	require.Equal(t, []string{"share.top"}, subjects(lining("[[0, -5], [20, -5]]", "[[0, -5], [10, -5.5], [20, -5]]")), "a bent top")
}
