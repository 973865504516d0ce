package fullscale

import (
	"understitch/cmd/understitch/internal/drawing"
	"understitch/model/curve"
)

// Sizes on the first page, in millimetres.
const (
	coverHigh  = 250.0
	squaresTop = 30.0
	centimetre = 10.0
	inch       = 25.4
)

// cover draws the first page: whose pattern it is, whether it may be cut, the
// test squares, the legend and where which tile is.
func (w *writer) cover(j Job, pages []*page, wide, x, y float64) {
	const square, rulingWide = 4 * inch, 74.0
	beside := wide - rulingWide - 6
	lines := w.wrap(19, beside, j.Title)
	if len(lines) > 2 {
		lines = []string{lines[0], w.fitted(19, beside, lines[1]+" …")}
	}
	at := y + 7
	for _, line := range lines {
		w.set(x, at, style{size: 19, bold: true, ink: black}, line)
		at += 7.6
	}
	sub := j.Name
	if j.Size != "" {
		sub += ", size " + j.Size
	}
	w.set(x, at-0.6, style{size: 11, ink: black}, w.fitted(11, beside, sub))
	w.ruling(j, x+wide-rulingWide, y+1, rulingWide)

	w.square(x, y+squaresTop, 10*centimetre, "10 cm", func(x, y, wide float64) { w.howTo(x, y, wide, pages) })
	w.square(x, y+squaresTop+10*centimetre+6, square, "4 in", func(x, y, wide float64) { w.legend(j.Full, x, y, wide) })
	w.contents(pages, x+square+8, y+squaresTop, wide-square-8, coverHigh-squaresTop-14)
	w.lines(x, y+squaresTop+10*centimetre+6+square+5, wide, 8, j.Advice)
}

// ruling shows whether the cloth may be cut: white on black where it may not.
func (w *writer) ruling(j Job, x, y, wide float64) {
	ink := black
	w.plain(black, 0.5)
	w.fill(white)
	if j.Forbids {
		ink = white
		w.fill(black)
	}
	w.pdf.Rect(x, y, wide, 17, "FD")
	w.set(x+wide/2, y+7.6, style{size: 16, bold: true, align: middle, ink: ink}, j.Ruling)
	w.set(x+wide/2, y+13.4, style{size: 9.5, align: middle, ink: ink}, w.fitted(9.5, wide-4, j.Reasons))
}

// square draws a test square and what stands in it.
func (w *writer) square(x, y, side float64, name string, within func(x, y, wide float64)) {
	w.plain(black, 0.2)
	w.pdf.SetLineCapStyle("square")
	w.pdf.Rect(x, y, side, side, "D")
	w.set(x+6, y+11, style{size: 18, bold: true, ink: black}, name)
	within(x+6, y+18, side-12)
}

// howTo tells how to print, measure and join.
func (w *writer) howTo(x, y, wide float64, pages []*page) {
	const size = 9.0
	text := []string{
		"Print at 100 % (“actual size”), not fitted to the page.",
		"Measure both squares across and down, from the middle of a line to the middle of the line across, before you use any sheet. " +
			"They must be 10 cm and 4 in, within half a millimetre; else change the printer's scale and print again. Each sheet has a bar of 5 cm at its foot.",
	}
	for _, p := range pages {
		if p.grid != nil {
			text = append(text,
				"Tiles overlap by "+decimal(int(Overlap))+" mm. Cut each tile along its join lines (long dashes) on the left and at the top, "+
					"and lay it on its neighbours so that line lies on line. Where sheets are joined rightly, rings close and the two names in each are those of the two sheets. "+
					"Rows are letters, columns are numbers.")
			break
		}
	}
	for _, t := range text {
		y = w.lines(x, y, wide, size, t) + 1.6
	}
}

// lines writes wrapped words from a first base line; it returns the next.
func (w *writer) lines(x, y, wide, size float64, text string) float64 {
	for _, line := range w.wrap(size, wide, text) {
		w.set(x, y, style{size: size, ink: black}, line)
		y += size * 1.3 * Point
	}
	return y
}

// legend explains lines and tags.
func (w *writer) legend(s *drawing.Sheet, x, y, wide float64) {
	const (
		sample = 46 * Point
		size   = 9.0
		least  = 6.2
	)
	last := y + 72
	for _, e := range s.Legend() {
		if y > last {
			break
		}
		m := e.Mark
		v := view{x: x, y: y - 1.2, scale: Point, point: 1, pens: finer}
		if m.Sign == drawing.Tag {
			v.point = 0.8
			m.At.X, m.Dir.X, m.Reach = 8, 1, 15
		} else {
			m.Line = curve.Polyline(curve.Point{X: 1}, curve.Point{X: 45})
		}
		w.mark(m, v)
		lines := w.wrap(size, wide-sample-4, e.Text)
		for i, line := range lines {
			w.set(x+sample+4, y+float64(i)*3.8, style{size: size, ink: black}, line)
		}
		y += max(least, float64(len(lines))*3.8+1.6)
	}
	w.lines(x, y, wide, 8, "A number on a tag is that of the finding in the list. The thin double-ended arrow is the grain.")
}
