package fullscale

import (
	"math"
	"slices"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/model/curve"
)

// On a screen words and tags stand beside the cloth. At full scale that would
// take paper by the metre, and there is room within.

// within moves the words of levels and the tags of findings in over the cloth.
func (b *board) within(marks []drawing.Mark) []drawing.Mark {
	out := slices.Clone(marks)
	cloth := b.extent(marks, false)
	for i := range out {
		m := &out[i]
		switch {
		case m.Kind == drawing.LevelWidth:
			m.Dir, m.Reach, m.Align = curve.Point{}, 0, drawing.End
			m.At.X = b.rightAt(m.At.Y, m.At.X) - 4
			m.At.Y += 10 * Point // under the line
		case m.Sign == drawing.Tag && !holds(cloth, b.extents(*m)):
			b.turn(m, cloth, out)
		}
	}
	b.clear(out)
	return out
}

// turn hangs a tag the other way, in over the cloth, as far as it takes to stand
// clear of words; where that cannot be it stays outside.
func (b *board) turn(m *drawing.Mark, cloth curve.Box, marks []drawing.Mark) {
	const further, tries = 12, 8
	turned := *m
	turned.Dir = m.Dir.Scale(-1)
	for range tries {
		at := b.extents(turned)
		if holds(cloth, at) && !slices.ContainsFunc(marks, func(o drawing.Mark) bool { return b.hides(turned, at, o) }) {
			*m = turned
			return
		}
		turned.Reach += further
	}
}

// hides tells whether a tag, its leader left out, would lie on the words of
// another mark that stay where they are.
func (b *board) hides(tag drawing.Mark, at []curve.Box, o drawing.Mark) bool {
	if len(o.Text) == 0 || o.Kind == drawing.LevelWidth || o.Sign == drawing.Tag {
		return false
	}
	const air = 1
	own := at[len(at)-1]
	reach := tag.At.Add(tag.Dir.Scale((tag.Reach - 2*drawing.TagSize) * Point))
	switch {
	case tag.Dir.X > 0.5:
		own.Min.X = reach.X
	case tag.Dir.X < -0.5:
		own.Max.X = reach.X
	}
	words := b.extents(o)
	w := words[len(words)-1]
	return w.Min.X < own.Max.X+air && own.Min.X < w.Max.X+air && w.Min.Y < own.Max.Y+air && own.Min.Y < w.Max.Y+air
}

// clear moves the words of levels off the tags that they would lie on, to the
// left.
func (b *board) clear(marks []drawing.Mark) {
	const air = 2
	for i := range marks {
		if marks[i].Kind != drawing.LevelWidth {
			continue
		}
		for _, m := range marks {
			if m.Sign != drawing.Tag {
				continue
			}
			tag, words := b.extents(m)[0], b.extents(marks[i])[0]
			if tag.Min.X < words.Max.X && words.Min.X < tag.Max.X && tag.Min.Y < words.Max.Y && words.Min.Y < tag.Max.Y {
				marks[i].At.X = tag.Min.X - air
			}
		}
	}
}

func holds(room curve.Box, boxes []curve.Box) bool {
	for _, b := range boxes {
		if b.Min.X < room.Min.X || b.Min.Y < room.Min.Y || b.Max.X > room.Max.X || b.Max.Y > room.Max.Y {
			return false
		}
	}
	return true
}

// rightAt is how far to the right all the pieces that are met there reach, about
// a height and as far under it as a level's words go; otherwise where none is.
func (b *board) rightAt(y, otherwise float64) float64 {
	const words, step = 16.0, 2.0
	x := math.Inf(1)
	for down := 0.0; down <= words; down += step {
		for _, lines := range b.around {
			if right, ok := lastCrossing(lines, y+down); ok {
				x = min(x, right)
			}
		}
	}
	if math.IsInf(x, 1) {
		return otherwise
	}
	return x
}

// lastCrossing is how far to the right lines cross a height.
func lastCrossing(lines [][]curve.Point, y float64) (x float64, ok bool) {
	x = math.Inf(-1)
	for _, line := range lines {
		for i := 1; i < len(line); i++ {
			a, b := line[i-1], line[i]
			if (a.Y > y) != (b.Y > y) {
				x = max(x, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
			}
		}
	}
	return x, !math.IsInf(x, -1)
}
