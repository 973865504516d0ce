package slips

import (
	"math"
	"strconv"
)

// The kinds of figure that slip, and the limit that each touches.
const (
	point     = "a point"
	length    = "a length on paper"
	width     = "a width on paper"
	level     = "a level"
	girth     = "a measure of the body"
	allowance = "an allowance"
	intake    = "a dart's intake"
	notch     = "a notch"
)

// limits are in mm. Each is the narrowest of the rules that look at such a figure.
var limits = map[string]float64{
	point:     1,   // shared-edge, shape
	length:    1.6, // seam-walk, warn
	width:     1,   // layer-girth
	level:     1.6, // seam-walk, between two notches
	girth:     5,   // size-step
	allowance: 0.5, // allowance-match
	intake:    1,   // dart-legs
	notch:     1.5, // notch-match, warn
}

// figure is a number in a spec that may slip.
type figure struct {
	kind     string
	from, to int     // its bytes
	value    float64 // as it stands there
	unit     float64 // in so many mm
	of       thing
}

// thing is what holds a figure or a name: what a finding is to point at.
type thing struct {
	piece string   // the piece it belongs to, or the block of its own: "shell.front", "seam.side"
	names []string // addresses that stand for it in a message
	keys  []string // what a finding's key may be: a level's name
	lines [2]int   // its block in the file
}

// edit puts a text in the place of some bytes.
type edit struct {
	from, to int
	text     string
}

// digits is how finely figures in a unit are written.
func digits(unit float64) int {
	switch {
	case unit > 20: // inches
		return 4
	case unit > 5: // centimetres
		return 3
	}
	return 2
}

// written is a figure as it is written, in its own unit.
func (f figure) written(value float64) string {
	k := math.Pow10(digits(f.unit))
	return strconv.FormatFloat(math.Round(value*k)/k, 'f', -1, 64)
}

// moved is the figure so many mm further on.
func (f figure) moved(mm float64) edit {
	return edit{f.from, f.to, f.written(f.value + mm/f.unit)}
}

// scaled is the figure so many times as large.
func (f figure) scaled(times float64) edit {
	return edit{f.from, f.to, f.written(f.value * times)}
}
