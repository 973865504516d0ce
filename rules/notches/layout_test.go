package notches_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules/notches"
	"understitch/rules/ruletest"
)

func TestSpacing(t *testing.T) {
	for _, c := range []struct {
		name, more string
		passed     int
	}{
		{"in the middle", notch("a", "at = 20"), 2},
		{"close to the start", notch("a", "at = 1 # fault notch-spacing warning 10mm"), 1},
		{"at the very corner", notch("a", "at = 40 # fault notch-spacing warning 0mm"), 1},
		{"just clear", notch("a", "at = 1.27"), 2},
		{"two close together", notch("a", "at = 20") + notch("b", "at = 21 # fault notch-spacing warning 10mm"), 4},
		{"a double one is one", notch("a", "at = 20\n    kind = \"double\""), 2},
		{"beside a dart", dart + notch("a", "at = 16.5 # fault notch-spacing warning 5mm"), 2},
		{"in a dart's mouth", dart + notch("a", "at = 18.5 # fault notch-spacing warning 0mm"), 2},
		{"at a dart's leg", dart + notch("a", "at = 17.05"), 2},
		{"off the end, which notch-on-line reports", notch("a", "at = 41"), 0},
		{"on no place, which notch-on-line reports", notch("a", "level = nowhere"), 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := shell(drawn(c.more, ""), "")
			if strings.Contains(src, "nowhere") {
				src += "\nlevel \"nowhere\" { y = 90 }\n"
			}
			r := ruletest.Spec(t, &notches.Spacing, src)
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
		})
	}
	for _, c := range []struct{ name, rest string }{
		{"the fold is no corner", `fold = centre
  edge "hem"    { line = [[20, 40], [0, 40]] }
  edge "centre" { line = [[0, 40], [0, 0]] }
  edge "rest"   { line = [[0, 0], [20, 0], [20, 40]] }`},
		{"nor is a place where the outline runs on", `edge "hem"    { line = [[20, 40], [0, 40]] }
  edge "hem-on" { line = [[0, 40], [-20, 41]] }
  edge "rest"   { line = [[-20, 41], [-20, 0], [20, 0], [20, 40]] }`},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &notches.Spacing, shell(`piece "front" {
  `+c.rest+`
  notch "centre" {
    on = hem
    at = 19.8
  }
}
`, ""))
			require.Equal(t, 1, r.Result.Passed)
		})
	}
	t.Run("known by tape alone", func(t *testing.T) {
		r := ruletest.Spec(t, &notches.Spacing, shell(paper("front", "40", "20", "20.4 # fault notch-spacing warning 4mm"), ""))
		require.Empty(t, r.Result.NotPossible)
	})
}

const dart = `dart "bust" {
  on     = side
  at     = 18.5
  intake = 3
  tip    = [10, 18.5]
}
`

func TestUnique(t *testing.T) {
	// Panels with seams of a length, notched at places.
	seam := func(name, layer, length, kind string, at ...string) (pieces, join string) {
		for _, side := range []string{"a", "b"} {
			pieces += fmt.Sprintf("piece \"%s-%s\" {\n  edge \"seam\" { length = %s }\n", name, side, length)
			for i, s := range at {
				pieces += fmt.Sprintf("  notch \"n%d\" {\n    on   = seam\n    at   = %s\n    kind = %q\n  }\n", i, s, kind)
			}
			pieces += "}\n"
		}
		return pieces, fmt.Sprintf("seam %q { join = [%s.%s-a.seam, %[2]s.%[3]s-b.seam] }", name, layer, name)
	}
	for _, c := range []struct {
		name, layer, length, kind string
		at                        []string
		wanted                    bool
		passed                    int
	}{
		{"alike", "shell", "40.5", "single", []string{"10", "20.5"}, true, 0},
		{"alike from the other end", "shell", "40", "single", []string{"20", "30"}, true, 0},
		{"one notch elsewhere", "shell", "40", "single", []string{"10", "22"}, false, 1},
		{"another kind of notch", "shell", "40", "double", []string{"10", "20"}, false, 1},
		{"more notches", "shell", "40", "single", []string{"10", "20", "30"}, false, 1},
		{"another length", "shell", "42", "single", []string{"10", "20"}, false, 1},
		{"no notches", "shell", "40", "single", nil, false, 0},
		{"another layer", "lining", "40", "single", []string{"10", "20"}, false, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			first, joinFirst := seam("first", "shell", "40", "single", "10", "20")
			second, joinSecond := seam("second", c.layer, c.length, c.kind, c.at...)
			if c.wanted {
				joinSecond += " # fault notch-unique note"
			}
			src := shell(first, "")
			if c.layer == "shell" {
				src = shell(first+second, "")
			} else {
				src += "layer \"lining\" {\n  side = \"inner\"\n" + second + "}\n"
			}
			r := ruletest.Spec(t, &notches.Unique, src+"\n"+joinFirst+"\n"+joinSecond+"\n")
			require.Equal(t, c.passed, r.Result.Passed)
			if c.wanted {
				require.Contains(t, r.Result.Findings[0].Message, "seam.second and seam.first can be mistaken for each other")
			}
		})
	}
}
