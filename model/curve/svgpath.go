package curve

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// PathError says what is wrong with path data and where.
type PathError struct {
	Offset  int    // bytes from the start of the data
	Message string // one line, no full stop
}

func (e *PathError) Error() string {
	return fmt.Sprintf("path data, byte %d: %s", e.Offset, e.Message)
}

// ParsePath reads path data as W3C SVG 2 (chapter 9.3) describes it: all
// commands, absolute and relative. Every coordinate is multiplied by scale to
// make millimetres. The data must be one subpath: it begins with M or m and
// no second one follows. The error is always a *PathError.
func ParsePath(data string, scale float64) (*Path, error) {
	r := pathReader{data: data, scale: scale}
	if err := r.read(); err != nil {
		return nil, err
	}
	return New(r.segs...), nil
}

// pathReader walks over path data; at holds the current point.
type pathReader struct {
	data   string
	pos    int
	scale  float64
	segs   []Segment
	start  Point
	at     Point
	last   byte  // the command before, in upper case
	handle Point // the last control point, for S and T
	err    *PathError
}

// operands returns how many numbers a command takes at a time, −1 if there is
// no such command.
func operands(command byte) int {
	switch command {
	case 'Z':
		return 0
	case 'H', 'V':
		return 1
	case 'M', 'L', 'T':
		return 2
	case 'S', 'Q':
		return 4
	case 'C':
		return 6
	case 'A':
		return 7
	}
	return -1
}

func (r *pathReader) read() error {
	for {
		r.space()
		if r.pos == len(r.data) {
			break
		}
		begin, letter := r.pos, r.data[r.pos]
		command := letter &^ 0x20
		count := operands(command)
		switch {
		case count < 0 || letter < 'A':
			r.fail(begin, "%s is not a path command", quoteAt(r.data, begin))
		case r.last == 0 && command != 'M':
			r.fail(begin, "path data must begin with M, not %s", quoteAt(r.data, begin))
		case r.last != 0 && command == 'M':
			r.fail(begin, "a second M starts another line; one edge is one unbroken line")
		default:
			r.pos++
			r.run(command, letter != command, count)
		}
		if r.err != nil {
			return r.err
		}
	}
	if r.last == 0 {
		r.fail(len(r.data), "path data is empty")
		return r.err
	}
	if len(r.segs) == 0 {
		r.segs = append(r.segs, Line(r.start, r.start))
	}
	return nil
}

// run carries out a command once for every set of operands that follows.
func (r *pathReader) run(command byte, relative bool, count int) {
	if count == 0 {
		r.line(r.start)
		r.last = 'Z'
		return
	}
	for first := true; ; first = false {
		mark := r.pos
		comma := r.separator(!first)
		if !first && !r.numberAhead() {
			if comma {
				r.fail(r.pos, "a number must follow the comma")
			} else {
				r.pos = mark
			}
			return
		}
		begin := r.pos
		var n [7]float64
		for i := range count {
			if i > 0 {
				r.separator(true)
			}
			if command == 'A' && (i == 3 || i == 4) {
				n[i] = r.flag()
			} else {
				n[i] = r.number(command)
			}
			if r.err != nil {
				return
			}
		}
		r.draw(command, relative, n)
		if !onPaper(r.at) || !onPaper(r.handle) {
			r.fail(begin, "a coordinate is too large")
			return
		}
		if command == 'M' { // further pairs after M are lines
			command = 'L'
		}
	}
}

// draw adds what one command with one set of operands draws.
func (r *pathReader) draw(command byte, relative bool, n [7]float64) {
	base := Point{}
	if relative {
		base = r.at
	}
	pt := func(i int) Point { return base.Add(Point{n[i] * r.scale, n[i+1] * r.scale}) }
	from, previous := r.at, r.last
	r.last = command
	switch command {
	case 'M':
		r.start = pt(0)
		r.at, r.handle = r.start, r.start
	case 'L':
		r.line(pt(0))
	case 'H':
		r.line(Point{base.X + n[0]*r.scale, from.Y})
	case 'V':
		r.line(Point{from.X, base.Y + n[0]*r.scale})
	case 'C':
		r.curve(pt(0), pt(2), pt(4))
	case 'S':
		r.curve(r.reflected(previous, 'C', 'S'), pt(0), pt(2))
	case 'Q':
		r.quadratic(pt(0), pt(2))
	case 'T':
		r.quadratic(r.reflected(previous, 'Q', 'T'), pt(0))
	case 'A':
		to := pt(5)
		r.segs = append(r.segs, Arc(from, n[0]*r.scale, n[1]*r.scale, n[2], n[3] == 1, n[4] == 1, to))
		r.at, r.handle = to, to
	}
}

func (r *pathReader) line(to Point) {
	r.segs = append(r.segs, Line(r.at, to))
	r.at, r.handle = to, to
}

func (r *pathReader) curve(b, c, d Point) {
	r.segs = append(r.segs, Cubic(r.at, b, c, d))
	r.at, r.handle = d, c
}

// quadratic raises a quadratic Bézier curve to the cubic that is the same.
func (r *pathReader) quadratic(b, d Point) {
	r.segs = append(r.segs, Cubic(r.at, r.at.Lerp(b, 2.0/3), d.Lerp(b, 2.0/3), d))
	r.at, r.handle = d, b
}

// reflected returns the last control point mirrored in the current point if
// the command before was of the same family, and the current point if not.
func (r *pathReader) reflected(previous, a, b byte) Point {
	if previous == a || previous == b {
		return r.at.Scale(2).Sub(r.handle)
	}
	return r.at
}

func (r *pathReader) space() {
	for r.pos < len(r.data) && strings.IndexByte(" \t\n\r\f", r.data[r.pos]) >= 0 {
		r.pos++
	}
}

// separator skips white space and, where one may stand, a single comma.
func (r *pathReader) separator(comma bool) bool {
	r.space()
	if comma && r.pos < len(r.data) && r.data[r.pos] == ',' {
		r.pos++
		r.space()
		return true
	}
	return false
}

func (r *pathReader) numberAhead() bool {
	return r.pos < len(r.data) && strings.IndexByte("+-.0123456789", r.data[r.pos]) >= 0
}

func (r *pathReader) flag() float64 {
	if r.pos < len(r.data) && (r.data[r.pos] == '0' || r.data[r.pos] == '1') {
		r.pos++
		return float64(r.data[r.pos-1] - '0')
	}
	r.fail(r.pos, "an arc flag must be 0 or 1, not %s", quoteAt(r.data, r.pos))
	return 0
}

// number reads sign? (digits | digits? "." digits | digits ".") exponent?
func (r *pathReader) number(command byte) float64 {
	begin, digits := r.pos, 0
	if r.pos < len(r.data) && (r.data[r.pos] == '+' || r.data[r.pos] == '-') {
		r.pos++
	}
	digits += r.digits()
	if r.pos < len(r.data) && r.data[r.pos] == '.' {
		r.pos++
		digits += r.digits()
	}
	if digits == 0 {
		r.pos = begin
		r.fail(begin, "%c needs %d numbers a set; found %s", command, operands(command), quoteAt(r.data, begin))
		return 0
	}
	if mark := r.pos; r.pos < len(r.data) && r.data[r.pos]&^0x20 == 'E' {
		r.pos++
		if r.pos < len(r.data) && (r.data[r.pos] == '+' || r.data[r.pos] == '-') {
			r.pos++
		}
		if r.digits() == 0 {
			r.pos = mark
		}
	}
	v, err := strconv.ParseFloat(r.data[begin:r.pos], 64)
	if err != nil || !onPaper(Point{v, v * r.scale}) {
		r.fail(begin, "the number is too large")
	}
	return v
}

// widest is the largest coordinate read, in millimetres: a kilometre. Lines of
// no sensible size would cost as much to measure as their numbers are wrong.
const widest = 1e6

func onPaper(p Point) bool { return math.Abs(p.X) <= widest && math.Abs(p.Y) <= widest }

func (r *pathReader) digits() int {
	begin := r.pos
	for r.pos < len(r.data) && r.data[r.pos] >= '0' && r.data[r.pos] <= '9' {
		r.pos++
	}
	return r.pos - begin
}

func (r *pathReader) fail(offset int, format string, args ...any) {
	if r.err == nil {
		r.err = &PathError{Offset: offset, Message: fmt.Sprintf(format, args...)}
	}
}

// quoteAt quotes the character at a place in the data.
func quoteAt(data string, pos int) string {
	if pos >= len(data) {
		return "the end"
	}
	for _, c := range data[pos:] {
		return strconv.Quote(string(c))
	}
	return ""
}
