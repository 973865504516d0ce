package fullscale

import (
	"math"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/model/curve"
)

// contents tells what stands on which page: a small map of each board that is
// spread over tiles, with the page of each tile, and under it what stands on
// pages whole.
func (w *writer) contents(pages []*page, x, y, wide, high float64) {
	bottom := y + high
	w.set(x, y+3, style{size: 11, bold: true, ink: black}, "Where to find what")
	y += 8
	const size = 8.5
	for i, p := range pages {
		if p.grid != nil {
			continue
		}
		for k, item := range p.placed {
			if y > bottom {
				return
			}
			if k == 0 {
				w.set(x+5, y, style{size: size, align: right, ink: black}, decimal(i+1))
			}
			w.set(x+7, y, style{size: size, ink: black}, w.fitted(size, wide-7, item.title))
			y += 3.8
		}
	}
	first := map[*grid]int{}
	var grids []*grid
	for i, p := range pages {
		if p.grid == nil {
			continue
		}
		if _, ok := first[p.grid]; !ok {
			first[p.grid] = i + 1
			grids = append(grids, p.grid)
		}
	}
	w.maps(grids, first, x, y+2, wide, bottom)
}

// maps draws the maps as large as there is room for.
func (w *writer) maps(grids []*grid, first map[*grid]int, x, y, wide, bottom float64) {
	scale := 0.14
	for scale > 0.02 && arranged(grids, scale, wide, nil) > bottom-y {
		scale *= 0.95
	}
	arranged(grids, scale, wide, func(g *grid, dx, dy float64) { w.smallMap(g, first[g], scale, x+dx, y+dy) })
}

// Room about a map for its name, in millimetres.
const (
	mapName  = 8.0
	mapSpace = 4.0
	nameWide = 38.0
)

// arranged goes over the maps in rows and returns how high they come.
func arranged(grids []*grid, scale, wide float64, each func(g *grid, x, y float64)) float64 {
	x, y, high := 0.0, 0.0, 0.0
	for _, g := range grids {
		gw, gh := g.extent()
		gw, gh = max(gw*scale, nameWide), gh*scale+mapName
		if gw > wide {
			return math.Inf(1)
		}
		if x+gw > wide {
			x, y, high = 0, y+high+mapSpace, 0
		}
		if each != nil {
			each(g, x, y)
		}
		x, high = x+gw+mapSpace, max(high, gh)
	}
	return y + high
}

// extent is what all tiles of a grid come to.
func (g *grid) extent() (wide, high float64) {
	return float64(g.cols)*g.stepX + Overlap, float64(g.rows)*g.stepY + Overlap
}

// smallMap draws one board with its tiles and the page of each.
func (w *writer) smallMap(g *grid, page int, scale, x, y float64) {
	wide, _ := g.extent()
	const size = 8.0
	w.set(x, y+3, style{size: size, bold: true, ink: black}, w.fitted(size, max(wide*scale, nameWide), g.board.panel.Title))
	y += mapName - 3
	b := g.board
	v := view{
		x: x + scale*(g.left-b.box.Min.X), y: y + scale*(g.top-b.box.Min.Y),
		scale: scale, point: scale, pens: 1,
	}
	for _, m := range b.panel.Marks {
		if m.Line != nil && (m.Kind == drawing.StitchLine || m.Kind == drawing.FoldLine || m.Kind == drawing.TapeLine) {
			w.plain(inkColour(drawing.PenOf(m).Ink), 0.2)
			w.path(m.Line, v, false)
			w.pdf.DrawPath("D")
		}
	}
	w.plain(grey, 0.12)
	for r := range g.rows {
		for c := range g.cols {
			if !g.need[r][c] {
				continue
			}
			box := g.core(r, c)
			tx, ty := x+scale*box.Min.X, y+scale*box.Min.Y
			tw, th := scale*box.Width(), scale*box.Height()
			w.plain(grey, 0.12)
			w.pdf.Rect(tx, ty, tw, th, "D")
			name := min(11, tw/Point/3.2)
			w.set(tx+tw/2, ty+th/2, style{size: name, bold: true, halo: true, align: middle, ink: black}, tileName(r, c))
			w.set(tx+tw/2, ty+th/2+name*1.05*Point, style{size: name * 0.72, halo: true, align: middle, ink: black}, "page "+decimal(page))
			page++
		}
	}
}

// core is what is left of a tile when it is cut along its join lines, in the
// frame of the whole grid.
func (g *grid) core(r, c int) curve.Box {
	wide, high := g.extent()
	box := curve.Box{
		Min: curve.Point{X: float64(c)*g.stepX + Overlap/2, Y: float64(r)*g.stepY + Overlap/2},
		Max: curve.Point{X: float64(c+1)*g.stepX + Overlap/2, Y: float64(r+1)*g.stepY + Overlap/2},
	}
	if c == 0 {
		box.Min.X = 0
	}
	if r == 0 {
		box.Min.Y = 0
	}
	if c == g.cols-1 {
		box.Max.X = wide
	}
	if r == g.rows-1 {
		box.Max.Y = high
	}
	return box
}
