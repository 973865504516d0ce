package fullscale

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/model"
	"understitch/model/curve"
)

// view is how a panel lies on a page: the page's millimetres are the panel's
// times scale, moved by x and y. A point of the panel's pens, signs and words is
// so many points on the page.
type view struct {
	x, y  float64
	scale float64
	point float64                     // points on the page to a point of the panel
	pens  float64                     // what the width of lines is taken by, over and above
	label func(drawing.Mark) []string // what more is said under a piece's name; may be nil
}

// finer is what pens are taken by at full scale.
const finer = 0.65

func (v view) at(p curve.Point) (float64, float64) { return v.x + v.scale*p.X, v.y + v.scale*p.Y }

// marks draws marks in their order, each on its layer of the PDF. Those that keep
// tells to leave out are.
func (w *writer) marks(marks []drawing.Mark, v view, keep func(drawing.Mark) bool) {
	for _, m := range marks {
		if keep != nil && !keep(m) {
			continue
		}
		w.begin(m)
		w.mark(m, v)
		w.pdf.EndLayer()
	}
}

func (w *writer) mark(m drawing.Mark, v view) {
	if m.Line != nil {
		w.markLine(m, v)
	}
	c := inkColour(drawing.InkOf(m))
	x, y := v.at(m.At)
	pt := v.point * Point
	switch m.Sign {
	case drawing.ArrowHead:
		w.arrow(x, y, m.Dir, 9*pt, c)
	case drawing.Dot:
		w.fill(c)
		w.pdf.Circle(x, y, 2.2*pt*math.Sqrt(v.pens), "F")
	case drawing.Ring:
		w.plain(c, 1.2*pt*v.pens)
		w.pdf.Circle(x, y, 3.2*pt, "D")
	case drawing.Cross:
		w.plain(c, 1.4*pt*v.pens)
		w.pdf.Line(x-3.5*pt, y-3.5*pt, x+3.5*pt, y+3.5*pt)
		w.pdf.Line(x-3.5*pt, y+3.5*pt, x+3.5*pt, y-3.5*pt)
	case drawing.Leader:
		w.line(c, drawing.PenOf(m).Width*pt*v.pens, x, y, x+m.Dir.X*m.Reach*pt, y+m.Dir.Y*m.Reach*pt)
	case drawing.Tag:
		w.tag(m, x, y, v)
		return
	}
	w.markText(m, x+m.Dir.X*m.Reach*pt, y+m.Dir.Y*m.Reach*pt, v)
}

func (w *writer) markLine(m drawing.Mark, v view) {
	pen := drawing.PenOf(m)
	c := inkColour(pen.Ink)
	pt := v.point * Point
	width := pen.Width * pt
	if m.Kind == drawing.Trouble {
		c = c.tint()
	} else {
		width *= v.pens
	}
	const hairline = 0.12 // millimetres; less does not come out of every printer
	w.stroke(c, max(width, hairline))
	dash := make([]float64, len(pen.Dash))
	for i, d := range pen.Dash {
		dash[i] = d * pt
	}
	w.pdf.SetDashPattern(dash, 0)
	w.pdf.SetLineCapStyle("butt")
	if pen.Round {
		w.pdf.SetLineCapStyle("round")
	}
	w.path(m.Line, v, m.Closed)
	if m.Kind == drawing.Metal {
		w.fill(c)
		w.pdf.DrawPath("F")
		return
	}
	w.pdf.DrawPath("D")
}

// path lays a line as it is: straight stretches and cubic curves; elliptic arcs
// as cubics that are off by less than a millionth of their half axis.
func (w *writer) path(p *curve.Path, v view, closed bool) {
	var last curve.Point
	for i, s := range p.Segments() {
		if i == 0 || s.Start() != last {
			w.pdf.MoveTo(v.at(s.Start()))
		}
		last = s.End()
		if s.Kind() == curve.Straight {
			w.pdf.LineTo(v.at(s.End()))
			continue
		}
		for _, c := range s.Cubics() {
			b, d := c.Controls()
			x0, y0 := v.at(b)
			x1, y1 := v.at(d)
			x2, y2 := v.at(c.End())
			w.pdf.CurveBezierCubicTo(x0, y0, x1, y1, x2, y2)
		}
	}
	if closed {
		w.pdf.ClosePath()
	}
}

// arrow draws an arrowhead with its point at a place.
func (w *writer) arrow(x, y float64, dir curve.Point, long float64, c colour) {
	w.fill(c)
	side := dir.Perp().Scale(0.4 * long)
	bx, by := x-dir.X*long, y-dir.Y*long
	w.pdf.MoveTo(x, y)
	w.pdf.LineTo(bx+side.X, by+side.Y)
	w.pdf.LineTo(bx-side.X, by-side.Y)
	w.pdf.ClosePath()
	w.pdf.DrawPath("F")
}

func (w *writer) markText(m drawing.Mark, x, y float64, v view) {
	if len(m.Text) == 0 {
		return
	}
	ink := inkColour(drawing.InkOf(m))
	if m.Kind == drawing.Figure || m.Kind == drawing.LevelWidth {
		ink = black
	}
	size := drawing.TextSize * v.point
	if m.Small {
		size = drawing.SmallSize * v.point
	}
	y += size * 0.35 * Point
	lines := m.Text
	if m.Kind == drawing.PieceName && v.label != nil {
		lines = append(slices.Clone(lines), v.label(m)...)
	}
	for i, line := range lines {
		s := style{size: size, bold: m.Bold && i == 0, halo: true, align: sideOf(m.Align), ink: ink}
		if i > 0 {
			s.size = drawing.SmallSize * v.point
		}
		w.set(x, y+float64(i)*drawing.LineStep*v.point*Point, s, line)
	}
}

// tag draws a finding's tag, hung off its place by a leader. A block is an
// error, a ticket with two points a warning, a tag with round ends a note.
func (w *writer) tag(m drawing.Mark, x, y float64, v view) {
	pt := v.point * Point
	c := inkColour(drawing.InkOf(m))
	text := tagText(m.Numbers)
	const number = 11.0
	half := max(drawing.TagSize*pt, w.width(number*v.point, text)/2+4*pt)
	high := drawing.TagSize * pt
	tx, ty := x+m.Dir.X*m.Reach*pt, y+m.Dir.Y*m.Reach*pt
	if math.Abs(m.Dir.X) > 0.5 {
		tx += math.Copysign(half-high, m.Dir.X)
	}
	w.line(c, 1.2*pt*v.pens, x, y, tx, ty)
	w.fill(c)
	w.pdf.Circle(x, y, 2*pt*v.pens, "F")
	onTag := c
	switch m.Severity {
	case "error":
		onTag = white
		w.fill(c)
		w.pdf.Rect(tx-half, ty-high, 2*half, 2*high, "F")
	case "warning":
		w.fill(white)
		w.plain(c, 1.6*pt)
		out := half + 5*pt
		w.pdf.MoveTo(tx-out, ty)
		for _, p := range [][2]float64{{-half, -high}, {half, -high}, {out, 0}, {half, high}, {-half, high}} {
			w.pdf.LineTo(tx+p[0], ty+p[1])
		}
		w.pdf.ClosePath()
		w.pdf.DrawPath("FD")
	default:
		w.fill(white)
		w.plain(c, 1.1*pt)
		w.pdf.RoundedRect(tx-half, ty-high, 2*half, 2*high, high, "1234", "FD")
	}
	w.set(tx, ty+0.36*number*pt, style{size: number * v.point, bold: true, align: middle, ink: onTag}, text)
	if len(m.Text) > 0 {
		s := style{size: drawing.TextSize * v.point, bold: true, halo: true, ink: c}
		off := 1.0
		if m.Dir.X < -0.3 {
			s.align, off = right, -1
		}
		w.set(tx+off*(half+8*pt), ty+0.35*drawing.TextSize*pt, s, m.Text[0])
	}
}

// tagText is what stands on a tag for several findings.
func tagText(numbers []string) string {
	const most = 3
	if len(numbers) <= most {
		return strings.Join(numbers, ", ")
	}
	return fmt.Sprintf("%s, %s +%d", numbers[0], numbers[1], len(numbers)-2)
}

// Layers of the PDF beside those of the garment.
const (
	levelLayer   = "levels"
	findingLayer = "findings"
)

// layers makes the layers of the PDF.
func (w *writer) layers(s *drawing.Sheet) {
	for _, l := range s.Layers {
		name := l.Name
		switch l.Side {
		case model.Outer:
			name += " (outer)"
		case model.Inner:
			name += " (inner)"
		case model.Between:
			name += " (between)"
		}
		w.optional[l.Name] = w.pdf.AddLayer(shown(name), true)
	}
	for _, name := range []string{levelLayer, findingLayer} {
		w.optional["/"+name] = w.pdf.AddLayer(name, true)
	}
}

// begin begins the layer of the PDF that a mark lies on.
func (w *writer) begin(m drawing.Mark) {
	name := m.Layer
	switch m.Kind {
	case drawing.LevelLine, drawing.LevelWidth:
		name = "/" + levelLayer
	case drawing.Trouble, drawing.Found:
		name = "/" + findingLayer
	}
	if id, ok := w.optional[name]; ok {
		w.pdf.BeginLayer(id)
	}
}
