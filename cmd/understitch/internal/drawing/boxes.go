package drawing

import (
	"math"

	"understitch/model/curve"
)

// wordSize is the size of a mark's line of words in points, and whether it is bold.
func (m Mark) wordSize(line int) (size float64, bold bool) {
	switch {
	case line > 0 || m.Small:
		return SmallSize, m.Bold && line == 0
	}
	return TextSize, m.Bold
}

// wordBox is about what a mark's words take up in the panel's frame, where a point
// is so many millimetres. A tag's figure counts as words.
func (m Mark) wordBox(point float64) (box curve.Box, ok bool) {
	if len(m.Text) == 0 {
		return curve.Box{}, false
	}
	if m.Sign == Tag {
		at, half := m.tagAt()
		side := 1.0
		if m.Dir.X < -0.3 {
			side = -1
		}
		from := at.X + side*(half+8)
		to := from + side*wordsWide(m.Text[0], TextSize, true)
		return m.inPoints(curve.Box{
			Min: curve.Point{X: min(from, to), Y: at.Y - 0.6*TextSize},
			Max: curve.Point{X: max(from, to), Y: at.Y + 0.6*TextSize},
		}, point), true
	}
	wide := 0.0
	for i, text := range m.Text {
		size, bold := m.wordSize(i)
		wide = max(wide, wordsWide(text, size, bold))
	}
	first, _ := m.wordSize(0)
	at := m.Dir.Scale(m.Reach)
	box = curve.Box{
		Min: curve.Point{X: at.X - wide/2, Y: at.Y - 0.6*first},
		Max: curve.Point{X: at.X + wide/2, Y: at.Y + float64(len(m.Text)-1)*LineStep + 0.6*first},
	}
	switch m.Align {
	case Start:
		box.Min.X, box.Max.X = at.X, at.X+wide
	case End:
		box.Min.X, box.Max.X = at.X-wide, at.X
	}
	return m.inPoints(box, point), true
}

// inPoints is a box given in points from where the mark is, in the panel's frame.
func (m Mark) inPoints(b curve.Box, point float64) curve.Box {
	return curve.Box{Min: m.At.Add(b.Min.Scale(point)), Max: m.At.Add(b.Max.Scale(point))}
}

// tagAt is where the middle of a tag is, in points from the place it is pinned
// to, and half its width.
func (m Mark) tagAt() (at curve.Point, half float64) {
	half = max(TagSize, 3.5*float64(len(tagText(m.Numbers)))+4)
	at = m.Dir.Scale(m.Reach)
	if math.Abs(m.Dir.X) > 0.5 {
		at.X += math.Copysign(half-TagSize, m.Dir.X)
	}
	return at, half
}

// tagBox is what a tag takes up without its figure.
func (m Mark) tagBox(point float64) curve.Box {
	at, half := m.tagAt()
	if m.Severity == "warning" {
		half += 5 // its two points
	}
	out := curve.Point{X: half + 1, Y: TagSize + 1}
	return m.inPoints(curve.Box{Min: at.Sub(out), Max: at.Add(out)}, point)
}

// boxes are what a mark's words and tag take up.
func (m Mark) boxes(point float64) []curve.Box {
	var out []curve.Box
	if m.Sign == Tag {
		out = append(out, m.tagBox(point))
	}
	if words, ok := m.wordBox(point); ok {
		out = append(out, words)
	}
	return out
}

// grown is a box with so much air about it.
func grown(b curve.Box, air float64) curve.Box {
	out := curve.Point{X: air, Y: air}
	return curve.Box{Min: b.Min.Sub(out), Max: b.Max.Add(out)}
}

// shared is the area that two boxes have in common.
func shared(a, b curve.Box) float64 {
	wide := min(a.Max.X, b.Max.X) - max(a.Min.X, b.Min.X)
	high := min(a.Max.Y, b.Max.Y) - max(a.Min.Y, b.Min.Y)
	if wide <= 0 || high <= 0 {
		return 0
	}
	return wide * high
}

// covered is how much of a box others take.
func covered(b curve.Box, by []curve.Box) float64 {
	sum := 0.0
	for _, o := range by {
		sum += shared(b, o)
	}
	return sum
}
