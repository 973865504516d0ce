package fullscale

import (
	"understitch/cmd/understitch/internal/drawing"
)

// item is something that stands on a page as a whole.
type item struct {
	title      string
	wide, high float64
	draw       func(w *writer, x, y float64)
	board      *board // nil for lists and the like
	after      *item  // what it goes on from, and does not stand before; may be nil
}

// gap is between items on a page, in millimetres.
const gap = 8.0

// page is one page: items, or a tile of a grid.
type page struct {
	sheet    sheet
	placed   []placed
	grid     *grid
	row, col int
}

type placed struct {
	*item
	x, y float64 // from the top left of what may be drawn on
}

// plan settles what stands on which page.
func plan(w *writer, j Job, p Paper) []*page {
	wide, high := p.upright().room()
	l := lists{w: w, wide: min(wide, textWide), high: min(high, textHigh)}
	cover := &item{title: "how to print", wide: l.wide, high: coverHigh}
	items := []*item{cover}
	items = append(items, l.findings(j)...)
	items = append(items, l.cutSheet(j)...)
	items = append(items, l.seams(j)...)
	for _, panel := range j.panels() {
		b := newBoard(w, j, panel)
		items = append(items, &item{
			title: panel.Title, wide: max(b.wide, b.headWide()), high: b.high + b.headHigh(), board: b,
			draw: func(w *writer, x, y float64) {
				b.head(w, x, y, max(b.wide, b.headWide()))
				b.draw(w, x, y+b.headHigh(), nil)
			},
		})
	}
	pages := lay(items, p)
	cover.draw = func(w *writer, x, y float64) { w.cover(j, pages, l.wide, x, y) }
	return pages
}

// panels are those that are printed at full scale.
func (j Job) panels() []*drawing.Panel {
	var out []*drawing.Panel
	for _, p := range j.Full.Panels {
		wanted := p.Kind == drawing.Taped
		if p.Kind <= drawing.Alone {
			wanted = !p.Repeats
			if j.Separate {
				wanted = p.Kind == drawing.Alone
			}
		}
		if wanted && p.Missing == "" && !flat(p) {
			out = append(out, p)
		}
	}
	return out
}

// flat tells panels of pieces that are known by the tape alone: bars that lie
// level, and no outline.
func flat(p *drawing.Panel) bool {
	if p.Kind > drawing.Alone {
		return false
	}
	for _, m := range p.Marks {
		if (m.Kind == drawing.StitchLine || m.Kind == drawing.FoldLine) && m.Line != nil && m.Line.Bounds().Height() > 0 {
			return false
		}
	}
	return true
}

// lay lays items on pages: those that fit on a page beside each other, then
// those that fit only sideways, then the others spread over tiles.
func lay(items []*item, p Paper) []*page {
	var upright, sideways, rest []*item
	for _, i := range items {
		switch {
		case fits(i, p.upright()):
			upright = append(upright, i)
		case fits(i, p.sideways()):
			sideways = append(sideways, i)
		default:
			rest = append(rest, i)
		}
	}
	pages := pack(upright, p.upright())
	if turned := pack(upright, p.sideways()); turned != nil && len(turned) < len(pages) {
		pages = turned
	}
	pages = append(pages, pack(sideways, p.sideways())...)
	for _, i := range rest {
		g := spread(i.board, p)
		for r := range g.rows {
			for c := range g.cols {
				if g.need[r][c] {
					pages = append(pages, &page{sheet: g.sheet, grid: g, row: r, col: c})
				}
			}
		}
	}
	return pages
}

func fits(i *item, s sheet) bool {
	wide, high := s.room()
	return i.board == nil || (i.wide <= wide && i.high <= high)
}

// shelf is a row of items on a page.
type shelf struct {
	page    *page
	number  int // of the page
	y, high float64
	last    bool // nothing stands below it
	x       float64
}

// pack lays items in rows, each in the first row that has room for it; nil where
// one does not fit at all.
func pack(items []*item, s sheet) []*page {
	wide, high := s.room()
	var pages []*page
	var shelves []*shelf
	on := map[*item]int{}
	for _, i := range items {
		if i.wide > wide+1e-9 || i.high > high+1e-9 {
			return nil
		}
		from := on[i.after]
		at := room(shelves, from, i, wide, high)
		if at == nil {
			at = below(shelves, from, i, high)
			if at == nil {
				at = &shelf{page: &page{sheet: s}, number: len(pages)}
				pages = append(pages, at.page)
			}
			at.last = true
			shelves = append(shelves, at)
		}
		on[i] = at.number
		at.page.placed = append(at.page.placed, placed{i, at.x, at.y})
		at.x += i.wide + gap
		at.high = max(at.high, i.high)
	}
	return pages
}

// room finds a row from a page onward that has room for an item. The last row of
// a page may grow.
func room(shelves []*shelf, from int, i *item, wide, high float64) *shelf {
	for _, s := range shelves {
		if s.number >= from && s.x+i.wide <= wide+1e-9 && (i.high <= s.high || (s.last && s.y+i.high <= high+1e-9)) {
			return s
		}
	}
	return nil
}

// below begins a row under the last one of a page, where there is room.
func below(shelves []*shelf, from int, i *item, high float64) *shelf {
	for _, s := range shelves {
		if y := s.y + s.high + gap; s.number >= from && s.last && y+i.high <= high+1e-9 {
			s.last = false
			return &shelf{page: s.page, number: s.number, y: y}
		}
	}
	return nil
}
