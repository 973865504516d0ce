package notches_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/notches"
	"understitch/rules/ruletest"
)

// sides are two panels 40 cm long, the front's side slanting by 2 cm over its
// upper half, with notches.
func sides(front, back, rest string) string {
	return shell(`piece "front" {
  edge "side" { line = [[20, 0], [18, 20], [20, 40]] }
  edge "rest" { line = [[20, 40], [0, 40], [0, 0], [20, 0]] }
`+front+`}
piece "back" {
  edge "side" { line = [[42, 40], [40, 20], [42, 0]] }
  edge "rest" { line = [[42, 0], [60, 0], [60, 40], [42, 40]] }
`+back+`}
`, rest)
}

// judged are the findings of all rules over notches.
func judged(t *testing.T, src string) []rules.Finding {
	t.Helper()
	engine, err := rules.New([]*rules.Rule{&notches.Match, &notches.OnLine, &notches.Spacing})
	require.NoError(t, err)
	return ruletest.Found(t, engine, "", src)
}

// One notch off its line is one finding over the whole family, and what it
// proposes puts it right: at the level it marks, else where it meets its
// partner, else the nearest place that is clear of corners.
func TestProposal(t *testing.T) {
	for _, c := range []struct{ name, front, back, says, edit string }{
		{"at a level", notch("a", "point = [20.5, 20]"), notch("a", "level = waist"),
			"The waist level, which it marks, crosses the line 20.1 cm along it, at [18, 20].", "[18, 20]"},
		{"named for a level", notch("waist", "point = [20.5, 18.7]"), notch("a", "level = waist"),
			"The waist level, which it marks, crosses the line 20.1 cm along it, at [18, 20].", "[18, 20]"},
		{"at its partner", notch("a", "point = [20.5, 10]"), notch("a", "at = 28.6"),
			"It meets shell.back.notch.a 11.6 cm along it, at [18.85, 11.54].", "[18.85, 11.54]"},
		{"past the end, by its name's partner", notch("a", "at = 45"), notch("a", "at = 28.6"),
			"It meets shell.back.notch.a 11.6 cm along it", "11.6"},
		{"without a partner, at the corner", notch("a", "point = [21, 0.2]"), "",
			"The nearest place on the line that keeps 1.27 cm clear of corners, darts and other notches is 1.3 cm along it, at [19.87, 1.29].", "[19.87, 1.29]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := sides(c.front, c.back, sideSeam)
			if c.back == "" {
				src = sides(c.front, c.back, "")
			}
			list := judged(t, src)
			require.Len(t, list, 1)
			require.Equal(t, "notch-on-line", list[0].Rule.Name)
			require.Contains(t, list[0].Message, c.says)
			require.Equal(t, c.edit, list[0].Mend.Edits[0].Text)
			require.Empty(t, judged(t, ruletest.Mended(src, list[0].Mend)))
		})
	}
}

// A notch that misses its partner because it lies at a corner is the one to move,
// and nothing else is said of it.
func TestMisplacedAtACorner(t *testing.T) {
	for _, c := range []struct{ name, front, back, address string }{
		{"the first", "at = 1.1", "at = 29.2", "shell.front.notch.a"},
		{"the second", "at = 11", "at = 39.1", "shell.back.notch.a"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := sides(notch("a", c.front), notch("a", c.back), sideSeam)
			list := judged(t, src)
			require.Len(t, list, 1)
			require.Equal(t, "notch-match", list[0].Rule.Name)
			require.Contains(t, list[0].Message, c.address+" does not meet ")
			require.Empty(t, judged(t, ruletest.Mended(src, list[0].Mend)))
		})
	}
}

// Only a notch that has a partner is moved with it.
func TestSpacingNamesPartners(t *testing.T) {
	const near = "at = 1"
	list := judged(t, sides(notch("a", near), "", ""))
	require.Len(t, list, 1)
	require.Contains(t, list[0].Message, "it must be 1.27 cm clear of it. Move it.")
	list = judged(t, sides(notch("a", near), notch("a", "at = 39.2"), sideSeam))
	require.Len(t, list, 1, "both lie too close, and are moved together")
	require.Contains(t, list[0].Message, "Move it, and shell.back.notch.a with it.")
	list = judged(t, sides(notch("a", "at = 1.3"), notch("a", "at = 38.95"), sideSeam))
	require.Len(t, list, 1, "only the second lies too close")
	require.Equal(t, "shell.back.notch.a", list[0].Subject)
	require.Contains(t, list[0].Message, "Move it, and shell.front.notch.a with it.")
}
