package closures

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestZipLength(t *testing.T) {
	// The zip runs from the notch up to the end of an edge of 60 cm.
	for _, c := range []struct {
		name   string
		change []string
		found  map[string]float64
		passed int
	}{
		{"21.6 cm and no zip near below", nil, map[string]float64{"": 200}, 0},
		{"three percent longer than a zip", []string{"at = 38.4", "at = 39.39"}, nil, 1},
		{"a little more", []string{"at = 38.4", "at = 39.37"}, map[string]float64{"": 200}, 0},
		{"exactly a zip", []string{"at = 38.4", "at = 38"}, nil, 1},
		{"longer than all, by little", []string{"at = 38.4", "at = 34.5"}, nil, 1},
		{"far longer than all", []string{"at = 38.4", "at = 30"}, map[string]float64{"": 250}, 0},
		{"shorter than all", []string{"at = 38.4", "at = 44"}, map[string]float64{"": 180}, 0},
		{"stock in any order", []string{"[18, 20, 22, 25]", "[25, 21.5, 18]"}, nil, 1},
		{"no stock stated", []string{"  stock = [18, 20, 22, 25]\n", ""}, nil, 0},
		{"buttons have no zip", []string{`"zip"` + "\n  edges", `"button"` + "\n  edges"}, nil, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, ZipLength, change(t, zipLengthBad, c.change...))
			requireFound(t, c.found, result)
			require.Equal(t, c.passed, result.Passed)
		})
	}
}

// Published: a zip of 61.5 cm for an opening of 63 cm (Zipper measurement,
// 2012). It goes into 63 cm, and 61 cm, 3.2 % shorter, does not.
func TestZipLengthPublished(t *testing.T) {
	opening := []string{"0, 60", "0, 100", "at = 38.4", "at = 37"}
	require.Empty(t, look(t, ZipLength, change(t, zipLengthBad, append(opening, "[18, 20, 22, 25]", "[61.5]")...)).Findings)
	require.Len(t, look(t, ZipLength, change(t, zipLengthBad, append(opening, "[18, 20, 22, 25]", "[61]")...)).Findings, 1)
}

func TestZipLengthMessage(t *testing.T) {
	for _, c := range []struct{ name, at, want string }{
		{"between two", "38.4", "closure.zip is 21.6 cm long, and the longest zip in stock that goes into it, 20 cm, is 1.6 cm shorter; no more than 3 % (6.5 mm) is allowed. " +
			"Shorten the opening to between 20 cm and 20.62 cm, lengthen it to 22 cm, or shorten a zip of 22 cm to go into it."},
		{"past the longest", "30", "closure.zip is 30 cm long, and the longest zip in stock that goes into it, 25 cm, is 5 cm shorter; no more than 3 % (9 mm) is allowed. " +
			"Shorten the opening to between 25 cm and 25.77 cm."},
		{"under the shortest", "44", "closure.zip is 16 cm long, and the shortest zip in stock, 18 cm, is 2 cm too long for it. Lengthen the opening to 18 cm, or shorten the zip."},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, ZipLength, change(t, zipLengthBad, "at = 38.4", "at = "+c.at))
			require.Len(t, result.Findings, 1)
			require.Equal(t, c.want, result.Findings[0].Message)
		})
	}
}
