package fullscale

import (
	"fmt"

	"understitch/cmd/understitch/internal/drawing"
)

// How large a list may be on a page, in millimetres: what is printed on A4 and
// on letter paper too, so that lines are never longer than the eye follows.
const textWide, textHigh = 190.0, 269.0

// lists makes the pages of words.
type lists struct {
	w          *writer
	wide, high float64
}

// row is a line of a list.
type row struct {
	high float64
	keep bool // not to be parted from the row under it
	draw func(w *writer, x, y float64)
}

// parted breaks rows into items that fit on a page.
func (l lists) parted(title string, rows []row) []*item {
	var out []*item
	for len(rows) > 0 {
		n, high := 0, 0.0
		for n < len(rows) && (n == 0 || high+rows[n].high <= l.high) {
			high += rows[n].high
			n++
		}
		if n < len(rows) {
			for n > 1 && rows[n-1].keep {
				n--
				high -= rows[n].high
			}
		}
		part := rows[:n]
		rows = rows[n:]
		i := &item{title: title, wide: l.wide, high: high, draw: func(w *writer, x, y float64) {
			for _, r := range part {
				r.draw(w, x, y)
				y += r.high
			}
		}}
		if n := len(out); n > 0 {
			i.after = out[n-1]
		}
		out = append(out, i)
	}
	return out
}

const wordSize = 9.0

// head is a heading with the garment's name under it.
func (l lists) head(j Job, title string) []row {
	return append(
		l.text(16, true, 0, title+": "+j.Ruling),
		append(l.text(10, false, 0, l.w.fitted(10, l.wide, named(j))), space(4, true))...,
	)
}

func space(high float64, keep bool) row {
	return row{high: high, keep: keep, draw: func(*writer, float64, float64) {}}
}

// text is words over the whole width, but for an indent.
func (l lists) text(size float64, bold bool, indent float64, text string) []row {
	var out []row
	step := size * 1.35 * Point
	for _, line := range l.w.wrap(size, l.wide-indent, text) {
		out = append(out, row{high: step, keep: bold, draw: func(w *writer, x, y float64) {
			w.set(x+indent, y+step*0.75, style{size: size, bold: bold, ink: black}, line)
		}})
	}
	return out
}

func (l lists) rule() row {
	return row{high: 1.6, draw: func(w *writer, x, y float64) { w.line(grey, 0.15, x, y+0.8, x+l.wide, y+0.8) }}
}

// column is where words stand in a table, in millimetres.
type column struct{ at, wide float64 }

// cells is a row of a table; long words go on in the lines under it.
func (l lists) cells(columns []column, bold bool, texts ...[]string) []row {
	var broken [][]string
	n := 1
	for i, list := range texts {
		var lines []string
		for _, t := range list {
			lines = append(lines, l.w.wrap(wordSize, columns[i].wide, t)...)
		}
		broken = append(broken, lines)
		n = max(n, len(lines))
	}
	const step = wordSize * 1.35 * Point
	var out []row
	for k := range n {
		out = append(out, row{high: step, keep: bold || k == 0 && n > 1, draw: func(w *writer, x, y float64) {
			for i, lines := range broken {
				if k < len(lines) {
					w.set(x+columns[i].at, y+step*0.75, style{size: wordSize, bold: bold || (i == 0 && k == 0), ink: black}, lines[k])
				}
			}
		}})
	}
	return out
}

// mostListed is how many findings are listed on paper; past it nobody reads.
const mostListed = 300

// findings lists what was found.
func (l lists) findings(j Job) []*item {
	left := j.nowhere()
	if len(j.Findings)+len(j.Trouble)+len(left) == 0 {
		return nil
	}
	rows := l.head(j, "What was found")
	for i, f := range j.Findings {
		if i == mostListed {
			rows = append(rows, l.text(10, true, 0, fmt.Sprintf("and %d more, which the report lists", len(j.Findings)-i))...)
			break
		}
		rows = append(rows, l.finding(f)...)
	}
	for _, t := range j.Trouble {
		rows = append(rows, l.text(wordSize, false, 0, "not read: "+t)...)
		rows = append(rows, space(1.5, false))
	}
	for _, t := range left {
		rows = append(rows, l.text(wordSize, false, 0, t)...)
		rows = append(rows, space(1.5, false))
	}
	return l.parted("what was found", rows)
}

func (l lists) finding(f Finding) []row {
	const high = 7.0
	m := drawing.Mark{Kind: drawing.Found, Sign: drawing.Tag, Severity: f.Severity, Numbers: []string{decimal(f.Number)}}
	head := f.Severity + "  " + f.Subject
	if f.Figure != "" {
		head += "  " + f.Figure
	}
	if f.Sizes != "" {
		head += "  (" + f.Sizes + ")"
	}
	const indent = 15.0
	rows := []row{{high: high, keep: true, draw: func(w *writer, x, y float64) {
		w.tag(m, x+6, y+high/2, view{scale: 1, point: 0.85, pens: finer})
		w.set(x+indent, y+high*0.66, style{size: 10.5, bold: true, ink: black}, w.fitted(10.5, l.wide-indent, head))
	}}}
	rows = append(rows, l.text(wordSize, false, indent, f.Message)...)
	if f.Place != "" {
		rows = append(rows, l.text(7.5, false, indent, f.Place)...)
	}
	return append(rows, space(2, false))
}

// nowhere tells what is not in the drawing.
func (j Job) nowhere() []string {
	var out []string
	for _, p := range j.Full.Panels {
		if p.Missing != "" && !p.Repeats {
			out = append(out, "not drawn: "+p.Title+": "+p.Missing)
		}
	}
	return out
}

// cutSheet is the list that is pinned up beside the cutting table.
func (l lists) cutSheet(j Job) []*item {
	if j.Cut == nil {
		return nil
	}
	rows := l.head(j, "Cut sheet")
	unit := l.wide / 100
	pieces := []column{{0, 17 * unit}, {18 * unit, 18 * unit}, {37 * unit, 29 * unit}, {67 * unit, 33 * unit}}
	for _, layer := range j.Cut.Layers {
		name := layer.Name
		if layer.Cloth != "" {
			name += ": " + layer.Cloth
		}
		rows = append(rows, l.text(12, true, 0, name)...)
		rows = append(rows, l.cells(pieces, true, []string{"piece"}, []string{"cut"}, []string{"allowances"}, []string{"notches"})...)
		for _, p := range layer.Pieces {
			how := []string{p.How}
			if p.Grain != "" {
				how = append(how, p.Grain)
			}
			if p.ByTape {
				how = append(how, "by the tape, there is no drawing")
			}
			rows = append(rows, l.rule())
			rows = append(rows, l.cells(pieces, false, []string{p.Name}, how, p.Allowances, p.Notches)...)
		}
		rows = append(rows, space(5, false))
	}
	if len(j.Cut.Lengths) > 0 {
		lengths := []column{{0, 25 * unit}, {26 * unit, 24 * unit}, {51 * unit, 14 * unit}, {66 * unit, 34 * unit}}
		rows = append(rows, l.text(12, true, 0, "To cut to length")...)
		rows = append(rows, l.cells(lengths, true, []string{"for"}, []string{"what"}, []string{"length"}, []string{"how"})...)
		for _, c := range j.Cut.Lengths {
			rows = append(rows, l.rule())
			rows = append(rows, l.cells(lengths, false, []string{c.Subject}, []string{c.What}, []string{c.Length}, []string{c.How})...)
		}
		rows = append(rows, space(5, false))
	}
	for _, p := range j.Cut.Problems {
		rows = append(rows, l.text(wordSize, false, 0, "not known: "+p)...)
	}
	return l.parted("cut sheet", rows)
}

// seams shows the seams laid along each other and the pieces that are known by
// the tape alone, reduced to fit.
func (l lists) seams(j Job) []*item {
	var rows []row
	for _, p := range j.Reduced.Panels {
		if p.Missing != "" || p.Repeats || !(p.Kind == drawing.Strip || flat(p)) {
			continue
		}
		rows = append(rows, l.text(11, true, 0, p.Title)...)
		if len(p.Facts) > 0 {
			for _, fact := range p.Facts {
				for _, r := range l.text(8.5, false, 0, fact) {
					r.keep = true
					rows = append(rows, r)
				}
			}
		}
		rows = append(rows, l.reduced(p), space(3, false))
	}
	if len(rows) == 0 {
		return nil
	}
	head := l.text(16, true, 0, "Seams and widths, not at full scale")
	head = append(head, l.text(10, false, 0, l.w.fitted(10, l.wide, named(j)))...)
	head = append(head, l.text(9, false, 0, "Here only figures count. Notch stands against notch; what has no other half has a cross.")...)
	return l.parted("seams and widths", append(append(head, space(4, true)), rows...))
}

// reduced is a panel made to fit the width.
func (l lists) reduced(p *drawing.Panel) row {
	const usual = 0.9 // points on paper to a point of the screen
	point := min(usual, l.wide/(p.Box.Width()/p.Point*Point))
	scale := point * Point / p.Point
	return row{high: p.Box.Height() * scale, draw: func(w *writer, x, y float64) {
		w.marks(p.Marks, view{x: x - scale*p.Box.Min.X, y: y - scale*p.Box.Min.Y, scale: scale, point: point, pens: 0.8}, nil)
	}}
}
