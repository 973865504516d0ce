package fullscale

import (
	"math"

	"codeberg.org/go-pdf/fpdf"

	"understitch/model/curve"
)

// page begins a page.
func (w *writer) page(p *page) {
	w.pdf.AddPageFormat("P", fpdf.SizeType{Wd: p.sheet.wide, Ht: p.sheet.high})
}

func (p *page) draw(w *writer, j Job) {
	for _, i := range p.placed {
		i.draw(w, margin+i.x, margin+i.y)
	}
	if p.grid != nil {
		w.tile(p.grid, p.row, p.col)
	}
}

// title is what a page shows, for its foot.
func (p *page) title() string {
	if p.grid != nil {
		return p.grid.board.panel.Title + ", tile " + tileName(p.row, p.col)
	}
	text := ""
	for i, item := range p.placed {
		if i > 0 {
			text += "; "
		}
		text += item.title
	}
	return text
}

const footSize = 8.0

// foot writes the line at the foot of a page, with a bar by which to see whether
// this sheet too came out at full scale.
func (w *writer) foot(j Job, p *page, number, of int) {
	wide, _ := p.sheet.room()
	y := p.sheet.high - margin - 1.5
	const bar = 50.0
	x0 := p.sheet.wide/2 - bar/2
	w.line(black, 0.2, x0, y-1, x0+bar, y-1)
	w.line(black, 0.2, x0, y-2.5, x0, y+0.5)
	w.line(black, 0.2, x0+bar, y-2.5, x0+bar, y+0.5)
	w.set(x0+bar/2, y-1.6, style{size: 6.5, align: middle, ink: black}, "5 cm")
	beside := (wide-bar)/2 - 4
	w.set(margin, y-3.2, style{size: footSize, ink: black}, w.fitted(footSize, beside, named(j)))
	w.set(margin, y, style{size: footSize, bold: p.grid != nil, ink: black}, w.fitted(footSize, beside-3, p.title()))
	w.set(margin+wide, y-3.2, style{size: footSize, bold: true, align: right, ink: black}, j.Ruling)
	w.set(margin+wide, y, style{size: footSize, align: right, ink: black}, "page "+decimal(number)+" of "+decimal(of))
}

// tile draws one tile of a board.
func (w *writer) tile(g *grid, r, c int) {
	wide, high := g.sheet.room()
	x := margin + g.left - float64(c)*g.stepX
	y := margin + g.top - float64(r)*g.stepY
	w.joins(g, r, c)
	w.set(margin+Overlap/2+5, margin+high-Overlap/2-5, style{size: 44, ink: pale}, tileName(r, c))
	if g.first(r, c) {
		g.board.head(w, margin+Overlap/2+4, margin+Overlap/2+4, wide-Overlap-8)
	}
	w.pdf.ClipRect(margin, margin, wide, high, false)
	clip := curve.Box{Min: curve.Point{X: margin, Y: margin}, Max: curve.Point{X: margin + wide, Y: margin + high}}
	g.board.draw(w, x, y, &clip)
	w.pdf.ClipEnd()
}

// joins draws a tile's join lines and the rings on them.
func (w *writer) joins(g *grid, r, c int) {
	wide, high := g.sheet.room()
	west, east := margin+Overlap/2, margin+wide-Overlap/2
	top, bottom := margin+Overlap/2, margin+high-Overlap/2
	here := tileName(r, c)
	// Rings stand on the side's part of this tile alone, so that both tiles have
	// them in the same place.
	for _, share := range []float64{0.2, 0.8} {
		x, y := west+share*(east-west), top+share*(bottom-top)
		if g.has(r, c-1) {
			w.ring(west, y, false, tileName(r, c-1), here)
		}
		if g.has(r, c+1) {
			w.ring(east, y, false, here, tileName(r, c+1))
		}
		if g.has(r-1, c) {
			w.ring(x, top, true, tileName(r-1, c), here)
		}
		if g.has(r+1, c) {
			w.ring(x, bottom, true, here, tileName(r+1, c))
		}
	}
	w.plain(grey, 0.15)
	w.inStep(float64(r) * g.stepY)
	if g.has(r, c-1) {
		w.pdf.Line(west, margin, west, margin+high)
	}
	if g.has(r, c+1) {
		w.pdf.Line(east, margin, east, margin+high)
	}
	w.inStep(float64(c) * g.stepX)
	if g.has(r-1, c) {
		w.pdf.Line(margin, top, margin+wide, top)
	}
	if g.has(r+1, c) {
		w.pdf.Line(margin, bottom, margin+wide, bottom)
	}
}

// inStep sets the dashes of join lines so that those of a tile go on where the
// tile before it ends.
func (w *writer) inStep(before float64) {
	const on, off = 4, 1.5
	w.pdf.SetDashPattern([]float64{on, off}, math.Mod(before, on+off))
}

// ring draws a ring astride a join line, with the names of the tiles on both
// sides of it, and a stroke through it square to the line.
func (w *writer) ring(x, y float64, level bool, before, after string) {
	const radius = 5.0
	w.plain(grey, 0.25)
	w.pdf.Circle(x, y, radius, "D")
	s := style{size: 7, align: middle, ink: grey}
	const down = 0.9 // from the middle of figures to their base line
	if level {
		w.pdf.Line(x, y-radius, x, y-radius+1.2)
		w.pdf.Line(x, y+radius-1.2, x, y+radius)
		w.set(x, y-2+down, s, before)
		w.set(x, y+2.2+down, s, after)
		return
	}
	w.pdf.Line(x-radius, y, x-radius+1, y)
	w.pdf.Line(x+radius-1, y, x+radius, y)
	w.set(x-2.1, y+down, s, before)
	w.set(x+2.1, y+down, s, after)
}
