package closures

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
)

// change replaces some of a spec's text wherever it stands.
func change(t *testing.T, src string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, src, pairs[i])
		src = strings.ReplaceAll(src, pairs[i], pairs[i+1])
	}
	return src
}

// requireFound compares findings by key and figure, and leaves nothing
// unchecked.
func requireFound(t *testing.T, want map[string]float64, result rules.Result) {
	t.Helper()
	require.Empty(t, result.NotPossible)
	require.Len(t, result.Findings, len(want))
	for _, f := range result.Findings {
		require.Contains(t, want, f.Key, f.Message)
		require.InDelta(t, want[f.Key], f.Measured, 0.01, f.Message)
	}
}

func TestButtonSpacing(t *testing.T) {
	const row = "[1.6, 10.2, 18.9, 27.6, 36.4]"
	for _, c := range []struct {
		name   string
		change []string
		found  map[string]float64
		passed int
	}{
		{"in order", nil, nil, 5},
		{"listed in any order", []string{row, "[10.2, 1.6, 27.6, 36.4, 18.9]"}, nil, 5},
		{"uneven", []string{row, "[1.6, 10.2, 18.5, 27.6, 36.4]"}, map[string]float64{"even": 8}, 4},
		{"none at the bust", []string{row, "[2.8, 14.3, 25.8, 37.3]"}, map[string]float64{"bust": 43, "waist": 22}, 2},
		{"the last near the hem", []string{row, "[1.6, 10.95, 20.3, 29.6, 38.9]"}, map[string]float64{"waist": 16, "room": 11}, 2},
		{"the first near the neck", []string{row, "[1, 9.9, 18.8, 27.7, 36.6]"}, map[string]float64{"room": 10}, 4},
		{"past the end", []string{row, "[10, 20.5, 31, 41.5]"}, map[string]float64{"waist": 30, "room": -15}, 2},
		{"three quarters of the diameter", []string{"extension = 1.5", "extension = 1.49"}, map[string]float64{"extension": 14.9}, 4},
		{"a diameter that nobody stated", []string{"  diameter  = 2\n", ""}, nil, 4},
		{"two buttons are even by themselves", []string{row, "[10, 28]"}, nil, 4},
		{"no buttons, only what they need", []string{"  buttons   = " + row + "\n", ""}, nil, 1},
		{"nothing stated", []string{"  buttons   = " + row + "\n", "", "  diameter  = 2\n  thickness = 0.4\n  extension = 1.5\n", ""}, nil, 0},
		{"a body that is not known", []string{"  bust_girth  = 88\n", ""}, nil, 4},
		{"levels without strain", []string{"bust_girth", "knee_girth", "waist_girth", "hip_girth"}, nil, 3},
		{"closed from the waist up only", []string{"edges     = ", "to        = waist\n  edges     = ", row, "[1.6, 10.2, 18.9, 26.4]"}, map[string]float64{"waist": 16}, 3},
		{"drawn from the hem up", []string{"[[0, 12], [0, 52]]", "[[0, 52], [0, 12]]", "[[0, 52], [24, 48]]", "[[24, 48], [0, 52]]", "[[24, 48], [24, 24]]", "[[24, 24], [24, 48]]",
			"[[24, 24], [18, 0]]", "[[18, 0], [24, 24]]", "[[18, 0], [0, 12]]", "[[0, 12], [18, 0]]"}, map[string]float64{"bust": 24, "waist": 18}, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, ButtonSpacing, change(t, buttonSpacingGood, c.change...))
			requireFound(t, c.found, result)
			require.Equal(t, c.passed, result.Passed)
		})
	}
}

func TestButtonSpacingMessages(t *testing.T) {
	messages := map[string]string{}
	for _, f := range look(t, ButtonSpacing, buttonSpacingBad).Findings {
		messages[f.Key] = f.Message
	}
	require.Equal(t, map[string]string{
		"waist": "no button of closure.front lies at the waist level, which crosses it at 28 cm: the nearest lies at 26.7 cm, 1.3 cm away, where no more than 1 cm is allowed. " +
			"Move it there and divide the rest anew.",
		"extension": "the edge of closure.front runs on by 1.2 cm past the centre of its buttons; a button of 2 cm takes 1.5 cm, and its buttonhole is 2.4 cm long. " +
			"Widen the extension, or take a smaller button.",
	}, messages)
	uneven := change(t, buttonSpacingGood, "18.9", "18.5")
	require.Equal(t, "the buttons of closure.front are not even: 9.1 cm between those at 18.5 cm and 27.6 cm, but 8.3 cm between those at 10.2 cm and 18.5 cm; "+
		"the gaps may differ by no more than 3 mm. Evenly they stand 8.7 cm apart.", look(t, ButtonSpacing, uneven).Findings[0].Message)
}

// A finding points at what is to be corrected, and is an error only where a button
// cannot be sewn on at all.
func TestButtonSpacingPlaces(t *testing.T) {
	const row = "[1.6, 10.2, 18.9, 27.6, 36.4]"
	for _, c := range []struct {
		name     string
		change   []string
		key, at  string
		severity rules.Severity
		message  string
	}{
		{"uneven", []string{row, "[1.6, 10.2, 18.5, 27.6, 36.4]"}, "even", "buttons", rules.Warning, ""},
		{"none at the bust", []string{row, "[2.8, 14.3, 25.8, 37.3]"}, "bust", "buttons", rules.Warning, ""},
		{"the last near the hem", []string{row, "[1.6, 10.95, 20.3, 29.6, 38.9]"}, "room", "buttons", rules.Warning, "lies 1.1 cm from its end"},
		{"on the end", []string{row, "[1.6, 10.2, 18.9, 27.6, 40]"}, "room", "buttons", rules.Warning, "the last button of closure.front lies 0 mm from its end"},
		{"beyond the end", []string{row, "[1.6, 10.2, 18.9, 27.6, 41.2]"}, "room", "buttons", rules.Error,
			"the last button of closure.front lies 1.2 cm beyond the end of the edge, which is 40 cm long. Move it in, or lengthen the edge."},
		{"beyond the end, whatever its size", []string{row, "[1.6, 10.2, 18.9, 27.6, 41.2]", "  diameter  = 2\n", ""}, "room", "buttons", rules.Error,
			"the last button of closure.front lies 1.2 cm beyond the end of the edge, which is 40 cm long. Move it in, or lengthen the edge."},
		{"beyond where it is closed", []string{"edges     = ", "to        = waist\n  edges     = ", row, "[1.6, 10.2, 18.9, 28.9]"}, "room", "buttons", rules.Error,
			"the last button of closure.front lies 9 mm beyond the end of the closure, which is 28 cm long. Move it in, or lengthen the closure."},
		{"too little past the centre", []string{"extension = 1.5", "extension = 1.2"}, "extension", "extension", rules.Warning, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := change(t, buttonSpacingGood, c.change...)
			for _, f := range look(t, ButtonSpacing, src).Findings {
				if f.Key != c.key {
					require.Equal(t, rules.Warning, f.Severity)
					continue
				}
				require.Equal(t, c.severity, f.Severity)
				require.Contains(t, f.Message, c.message)
				line := strings.Split(src, "\n")[f.Place.Start.Line-1]
				require.True(t, strings.HasPrefix(strings.TrimSpace(line), c.at+" "), line)
				require.Equal(t, strings.Index(line, "= ")+3, f.Place.Start.Column)
				return
			}
			require.Fail(t, "nothing found")
		})
	}
}

// Published: a button of 1 inch, a quarter of an inch thick, takes a buttonhole
// of 1 1/4 inch (Buttonholes, 1999).
func TestButtonhole(t *testing.T) {
	src := change(t, buttonSpacingGood, "diameter  = 2\n", "diameter = inch(1)\n", "thickness = 0.4", "thickness = inch(0.25)", "extension = 1.5", "extension = inch(0.5)")
	result := look(t, ButtonSpacing, src)
	var message string
	for _, f := range result.Findings {
		if f.Key == "extension" {
			message = f.Message
		}
	}
	require.Contains(t, message, "its buttonhole is 3.17 cm long") // 31.75 mm
}
