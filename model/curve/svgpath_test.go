package curve

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestParsePath(t *testing.T) {
	// Expected data written by hand from W3C SVG 2, chapter 9.3.
	tests := []struct {
		name, data, want string
	}{
		{"lines", "M10 20L30 40", "M10 20L30 40"},
		{"further pairs are lines", "M0,0 10,0 10,10", "M0 0L10 0L10 10"},
		{"relative", "m5 5 10 0 0 10", "M5 5L15 5L15 15"},
		{"relative start", "m5 5l1 1", "M5 5L6 6"},
		{"level and upright", "M1 1H5V6h-2v-3", "M1 1L5 1L5 6L3 6L3 3"},
		{"several levels", "M0 0H1 2 3", "M0 0L1 0L2 0L3 0"},
		{"numbers run together", "M.5.5-1-2", "M0.5 0.5L-1 -2"},
		{"exponents", "M1e1 1E-1L+2.5e+1-1.", "M10 0.1L25 -1"},
		{"cubic and smooth", "M0 0C0 1 1 2 2 2S4 3 5 5", "M0 0C0 1 1 2 2 2C3 2 4 3 5 5"},
		{"smooth after a line", "M0 0L1 1S4 3 5 5", "M0 0L1 1C1 1 4 3 5 5"},
		{"relative cubics", "M1 1c0 1 1 2 2 2s2 1 3 3", "M1 1C1 2 2 3 3 3C4 3 5 4 6 6"},
		{"quadratic raised", "M0 0Q3 6 6 0", "M0 0C2 4 4 4 6 0"},
		{"quadratic and smooth", "M0 0Q3 6 6 0T12 0", "M0 0C2 4 4 4 6 0C8 -4 10 -4 12 0"},
		{"smooth quadratic after a cubic", "M0 0C0 0 1 5 3 0T6 3", "M0 0C0 0 1 5 3 0C3 0 4 1 6 3"},
		{"relative quadratic", "M1 1q3 6 6 0t6 0", "M1 1C3 5 5 5 7 1C9 -3 11 -3 13 1"},
		{"closed", "M0 0H5V5z", "M0 0L5 0L5 5L0 0"},
		{"line after closing", "M1 1H5V5ZL9 9", "M1 1L5 1L5 5L1 1L9 9"},
		{"arc flags run together", "M0 0a5 5 0 0110 0", "M0 0A5 5 0 0 1 10 0"},
		{"arc with commas", "M0,0 A 5,7,30,1,0,4,4", "M0 0A5 7 30 1 0 4 4"},
		{"arc with no radius", "M0 0A0 7 30 1 0 4 4", "M0 0L4 4"},
		{"commas and space", " M 1 , 2\n L\t3 ,4 ", "M1 2L3 4"},
		{"only a point", "M3 4", "M3 4L3 4"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p, err := ParsePath(tt.data, 1)
			require.NoError(t, err)
			require.Equal(t, tt.want, p.Data(9))
			scaled, err := ParsePath(tt.data, 25.4)
			require.NoError(t, err)
			require.InDelta(t, p.Length()*25.4, scaled.Length(), 1e-9*p.Length()*25.4)
		})
	}
}

func TestParsePathErrors(t *testing.T) {
	tests := []struct {
		name, data string
		offset     int
		message    string
	}{
		{"empty", "  ", 2, "path data is empty"},
		{"no M", "L1 2", 0, `path data must begin with M, not "L"`},
		{"number first", "1 2", 0, `"1" is not a path command`},
		{"not a command", "M1 2X", 4, `"X" is not a path command`},
		{"a letter beyond ASCII", "M1 2é", 4, `"é" is not a path command`},
		{"second M", "M0 0L1 1 M2 2", 9, "a second M starts another line; one edge is one unbroken line"},
		{"too few numbers", "M0 0C1 2 3", 10, "C needs 6 numbers a set; found the end"},
		{"half a pair", "M0 0L1 2 3", 10, "L needs 2 numbers a set; found the end"},
		{"missing number", "M0 0L,1", 5, `L needs 2 numbers a set; found ","`},
		{"comma at the end", "M0 0L1 1,", 9, "a number must follow the comma"},
		{"two commas", "M0,,0", 3, `M needs 2 numbers a set; found ","`},
		{"flag", "M0 0A1 1 0 2 0 5 5", 11, `an arc flag must be 0 or 1, not "2"`},
		{"lone sign", "M0 0L- 1", 5, `L needs 2 numbers a set; found "-"`},
		{"infinite", "M0 0L1e999 0", 5, "the number is too large"},
		{"beyond all paper", "M0 0C1e200 0 1 1 2 2", 5, "the number is too large"},
		{"too far by adding", "M8e5 0l8e5 0", 7, "a coordinate is too large"},
		{"not a number", "M0 0LNaN 0", 5, `L needs 2 numbers a set; found "N"`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := ParsePath(tt.data, 1)
			var bad *PathError
			require.ErrorAs(t, err, &bad)
			require.Equal(t, tt.message, bad.Message)
			require.Equal(t, tt.offset, bad.Offset)
		})
	}
}

func TestDataRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genPath(t, 4)
		q, err := ParsePath(p.Data(-1), 1)
		require.NoError(t, err)
		require.InDelta(t, p.Length(), q.Length(), 1e-3) // half turns of arcs lose a few digits
		require.Less(t, Deviation(p, q, 1e-4).Low, 1e-3)
	})
}

func FuzzParsePath(f *testing.F) {
	for _, seed := range []string{
		"M0 0L1 1", "m.5.5-1-2", "M0,0C1 2 3 4 5 6s1 2 3 4", "M0 0q1 1 2 0t2 0z", "M0 0a5 5 0 0110 0",
		"M1e3 1E-3h5v5H0V0Z", "M0 0M1 1", "M0 0L1e400 0", "", ",", "M0 0A1e-200 1e200 7 1 1 1 1", "M0 0L\x00", "M1e300 0L-1e300 0",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, data string) {
		p, err := ParsePath(data, 1)
		if err != nil {
			var bad *PathError
			require.ErrorAs(t, err, &bad)
			require.GreaterOrEqual(t, bad.Offset, 0)
			require.LessOrEqual(t, bad.Offset, len(data))
			return
		}
		b := p.Bounds()
		if max(b.Width(), b.Height(), b.Max.Len(), b.Min.Len()) > 1e9 || len(data) > 2000 {
			return // no paper is that large
		}
		l := p.Length()
		for _, s := range []float64{0, l / 3, l} {
			require.True(t, p.At(s).finite())
			require.True(t, p.Direction(s).finite())
		}
		_, d := p.Nearest(Point{1, 2})
		require.GreaterOrEqual(t, d, 0.0)
		_, err = ParsePath(p.Data(-1), 1)
		require.NoError(t, err)
	})
}
