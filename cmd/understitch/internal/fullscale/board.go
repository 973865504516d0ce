package fullscale

import (
	"strconv"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/model/curve"
)

// board is a panel at full scale. Its frame has its origin at the top left of
// what is drawn, in millimetres.
type board struct {
	w          *writer
	panel      *drawing.Panel
	marks      []drawing.Mark
	heading    []string
	box        curve.Box // of all that is drawn, in the panel's frame
	wide, high float64
	label      func(drawing.Mark) []string
	around     map[string][][]curve.Point // the outlines of its pieces
}

// Sizes of a heading, in points and millimetres.
const (
	headSize  = 13.0
	factSize  = 9.5
	headStep  = 5.5
	factStep  = 4.2
	headSpace = 3.0
)

func newBoard(w *writer, j Job, p *drawing.Panel) *board {
	b := &board{w: w, panel: p, label: labels(j), around: outlines(p), heading: append([]string{p.Title, named(j)}, p.Facts...)}
	b.marks = b.within(p.Marks)
	const air = 3
	b.box = b.extent(b.marks, true)
	b.box.Min = b.box.Min.Sub(curve.Point{X: air, Y: air})
	b.box.Max = b.box.Max.Add(curve.Point{X: air, Y: air})
	b.wide, b.high = b.box.Width(), b.box.Height()
	return b
}

// extent is what marks take up, with their signs and words or their lines alone.
func (b *board) extent(marks []drawing.Mark, words bool) curve.Box {
	var out curve.Box
	first := true
	for _, m := range marks {
		boxes := b.extents(m)
		if !words && m.Line == nil {
			continue
		} else if !words {
			boxes = boxes[:1]
		}
		for _, box := range boxes {
			if first {
				out, first = box, false
			}
			out = out.Union(box)
		}
	}
	return out
}

func sizeAt(line int) float64 {
	if line == 0 {
		return headSize
	}
	return factSize
}

func (b *board) headHigh() float64 {
	return headStep + float64(len(b.heading)-1)*factStep + headSpace
}

// labels says what more stands on a piece: the size, and the cloth.
func labels(j Job) func(drawing.Mark) []string {
	return func(m drawing.Mark) []string {
		var out []string
		if j.Size != "" {
			out = append(out, "size "+j.Size)
		}
		for _, l := range j.Full.Layers {
			if l.Name == m.Layer && l.Cloth != "" {
				out = append(out, l.Cloth)
			}
		}
		return out
	}
}

// head draws the heading, not wider than there is room for.
func (b *board) head(w *writer, x, y, wide float64) {
	at := y + headStep - 1
	for i, line := range b.heading {
		s := style{size: sizeAt(i), bold: i == 0, halo: true, ink: black}
		w.set(x, at, s, w.fitted(s.size, wide, line))
		at += factStep
	}
}

// headWide is how much room the heading asks for.
func (b *board) headWide() float64 {
	const widest = 180
	wide := 0.0
	for i, line := range b.heading {
		wide = max(wide, min(b.w.width(sizeAt(i), line), widest))
	}
	return wide
}

// draw draws the board with its top left at a place on the page. Marks that do
// not come into the clip are left out.
func (b *board) draw(w *writer, x, y float64, clip *curve.Box) {
	v := b.view(x, y)
	var keep func(drawing.Mark) bool
	if clip != nil {
		keep = func(m drawing.Mark) bool { return b.comesInto(m, v, *clip) }
	}
	w.marks(b.marks, v, keep)
}

// view is how the panel lies on the page when the board's top left is at a
// place of it.
func (b *board) view(x, y float64) view {
	return view{x: x - b.box.Min.X, y: y - b.box.Min.Y, scale: 1, point: 1, pens: finer, label: b.label}
}

// extents are about what a mark takes up in the panel's frame: its line, and its
// sign and words.
func (b *board) extents(m drawing.Mark) []curve.Box {
	var out []curve.Box
	if m.Line != nil {
		out = append(out, m.Line.Bounds())
	}
	if m.Sign == drawing.NoSign && len(m.Text) == 0 {
		return out
	}
	at := m.At.Add(m.Dir.Scale(m.Reach * Point))
	box := curve.Box{Min: m.At, Max: m.At}.Union(curve.Box{Min: at, Max: at})
	if m.Sign == drawing.Tag {
		const half = drawing.TagSize * Point
		wide := max(half, b.w.width(drawing.TextSize, tagText(m.Numbers))/2+2)
		tag := curve.Point{X: 2 * wide, Y: half}
		box = box.Union(curve.Box{Min: at.Sub(tag), Max: at.Add(tag)})
	}
	if words := b.words(m); words > 0 {
		from, to := at.X-words/2, at.X+words/2
		switch {
		case m.Align == drawing.Start || (m.Sign == drawing.Tag && m.Dir.X >= -0.3):
			from, to = at.X, at.X+words
		case m.Align == drawing.End || m.Sign == drawing.Tag:
			from, to = at.X-words, at.X
		}
		if m.Sign == drawing.Tag { // beyond the tag
			const beyond = 2 * drawing.TagSize * Point
			from, to = from-beyond, to+beyond
		}
		const line = drawing.LineStep * Point
		box = box.Union(curve.Box{
			Min: curve.Point{X: from, Y: at.Y - line/2},
			Max: curve.Point{X: to, Y: at.Y + line*(float64(len(m.Text))-0.5)},
		})
	}
	return append(out, box)
}

// words is how wide a mark's words are.
func (b *board) words(m drawing.Mark) float64 {
	wide := 0.0
	for _, line := range m.Text {
		wide = max(wide, b.w.width(drawing.TextSize, line))
	}
	return wide
}

// comesInto tells whether any of a mark may be seen in a part of the page.
func (b *board) comesInto(m drawing.Mark, v view, clip curve.Box) bool {
	const slack = 12 // for pens, arrowheads and what is added to names
	for _, box := range b.extents(m) {
		x0, y0 := v.at(box.Min)
		x1, y1 := v.at(box.Max)
		if x1 > clip.Min.X-slack && x0 < clip.Max.X+slack && y1 > clip.Min.Y-slack && y0 < clip.Max.Y+slack {
			return true
		}
	}
	return false
}

// inked calls for places all over what is drawn, in the board's frame, close
// enough together to tell which tiles are drawn on.
func (b *board) inked(touch func(curve.Point)) {
	v := b.view(0, 0)
	put := func(p curve.Point) {
		x, y := v.at(p)
		touch(curve.Point{X: x, Y: y})
	}
	for _, m := range b.marks {
		boxes := b.extents(m)
		if m.Line != nil {
			for _, p := range points(m.Line) {
				put(p)
			}
			boxes = boxes[1:]
		}
		for _, box := range boxes {
			for _, x := range []float64{0, 0.5, 1} {
				put(curve.Point{X: box.Min.X + x*box.Width(), Y: box.Min.Y})
				put(curve.Point{X: box.Min.X + x*box.Width(), Y: box.Max.Y})
			}
		}
	}
}

// covers tells whether a place on the board lies on cloth.
func (b *board) covers(q curve.Point) bool {
	v := b.view(0, 0)
	q = curve.Point{X: q.X - v.x, Y: q.Y - v.y}
	for _, lines := range b.around {
		if within(lines, q) {
			return true
		}
	}
	return false
}

func decimal(n int) string { return strconv.Itoa(n) }
