package drawing

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"

	"understitch/model/curve"
)

// Palette is the colour of each ink, of the ground, and of words on a tag.
type Palette struct {
	Inks   map[Ink]string
	Ground string
	OnTag  string
}

// onWhite is the palette for a picture on white. The two layers' colours differ
// in lightness as well as in hue, so that they stay apart for every eye and on a
// printer without colour.
func onWhite() Palette {
	return Palette{
		Inks: map[Ink]string{
			OuterInk: "#14263d", InnerInk: "#b8541a", PlainInk: "#333333", FaintInk: "#6b7280",
			ErrorInk: "#a3123a", WarningInk: "#7a5300", NoteInk: "#2f5d8a", MetalInk: "#4b5563",
		},
		Ground: "#ffffff", OnTag: "#ffffff",
	}
}

// svgWriter writes marks as SVG. Lines keep millimetres; signs and words are in
// points within a group that is scaled by the size of a point, so that a page
// can scale them against its zoom.
type svgWriter struct {
	strings.Builder
	point   float64
	styled  bool // the picture stands alone: its colours and pens are written out
	palette Palette
}

// digits is how finely coordinates are written: a hundredth of a millimetre is
// far below what a line's width hides.
const digits = 2

func num(v float64) string {
	s := strconv.FormatFloat(v, 'f', digits, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// PanelSVG is one panel as an SVG element for a page: colours and pens come from
// the page's style sheet, by class; data-layer, data-subject and data-number say
// what a mark belongs to. The size is that of its points in pixels.
func PanelSVG(p *Panel, label string) string {
	w := &svgWriter{point: p.Point}
	fmt.Fprintf(w, `<svg viewBox="%s %s %s %s" width="%s" height="%s" role="group" aria-label="%s" style="--pt:%s">`,
		num(p.Box.Min.X), num(p.Box.Min.Y), num(p.Box.Width()), num(p.Box.Height()),
		num(p.Box.Width()/p.Point), num(p.Box.Height()/p.Point), html.EscapeString(label), num4(p.Point))
	if p.Kind <= Alone {
		fmt.Fprintf(w, `<rect class="ground" x="%s" y="%s" width="%s" height="%s"/>`, num(p.Box.Min.X), num(p.Box.Min.Y), num(p.Box.Width()), num(p.Box.Height()))
	}
	for _, m := range p.Marks {
		w.mark(m)
	}
	w.WriteString("</svg>")
	return w.String()
}

func (w *svgWriter) mark(m Mark) {
	if m.Line != nil {
		w.line(m)
	}
	if m.Sign == NoSign && len(m.Text) == 0 {
		return
	}
	fmt.Fprintf(w, `<g transform="translate(%s %s)"%s>`, num(m.At.X), num(m.At.Y), w.belongs(m, ""))
	fmt.Fprintf(w, `<g class="at" transform="scale(%s)">`, num4(w.point))
	switch m.Sign {
	case ArrowHead:
		fmt.Fprintf(w, `<path d="M0 0L-9 -3.6L-9 3.6Z" transform="rotate(%s)"%s/>`, num(degrees(m.Dir)), w.fill(InkOf(m)))
	case Dot:
		fmt.Fprintf(w, `<circle r="2.2"%s/>`, w.fill(InkOf(m)))
	case Ring:
		fmt.Fprintf(w, `<circle r="3.2"%s/>`, w.stroke(Pen{Width: 1.2, Ink: InkOf(m)}))
	case Cross:
		fmt.Fprintf(w, `<path d="M-3.5 -3.5L3.5 3.5M-3.5 3.5L3.5 -3.5"%s/>`, w.stroke(Pen{Width: 1.4, Ink: InkOf(m)}))
	case Leader:
		fmt.Fprintf(w, `<path d="M0 0L%s %s"%s/>`, num(m.Dir.X*m.Reach), num(m.Dir.Y*m.Reach), w.stroke(PenOf(m)))
	case Tag:
		w.tag(m)
	}
	if m.Sign != Tag {
		w.text(m, m.Dir.X*m.Reach, m.Dir.Y*m.Reach)
	}
	w.WriteString("</g></g>")
}

// line writes a mark's line. In a page its pen comes by the class of its kind.
func (w *svgWriter) line(m Mark) {
	pen := PenOf(m)
	d := m.Line.Data(digits)
	if m.Closed {
		d += "Z"
	}
	style := ""
	if w.styled {
		pen = pen.scaled(w.point)
		switch {
		case m.Kind == Metal:
			style = w.fill(pen.Ink)
		case m.Kind == Trouble:
			style = w.stroke(pen) + ` opacity="0.3"`
		default:
			style = w.stroke(pen)
		}
	}
	fmt.Fprintf(w, `<path d="%s"%s%s/>`, d, w.belongs(m, kindClass(m)), style)
}

// scaled is the pen in millimetres.
func (p Pen) scaled(point float64) Pen {
	p.Width *= point
	dash := make([]float64, len(p.Dash))
	for i := range p.Dash {
		dash[i] = p.Dash[i] * point
	}
	p.Dash = dash
	return p
}

func (w *svgWriter) belongs(m Mark, class string) string {
	if class == "" {
		class = kindClass(m)
	}
	text := ` class="` + class + `"`
	if w.styled {
		return text
	}
	if m.Layer != "" {
		text += ` data-layer="` + html.EscapeString(m.Layer) + `"`
	}
	if len(m.Numbers) > 0 {
		text += ` data-number="` + html.EscapeString(strings.Join(m.Numbers, " ")) + `"`
	}
	return text
}

func (w *svgWriter) fill(ink Ink) string {
	if !w.styled {
		return ` class="fill"`
	}
	return ` fill="` + w.palette.Inks[ink] + `"`
}

func (w *svgWriter) stroke(p Pen) string {
	if !w.styled {
		return ` class="line"`
	}
	text := fmt.Sprintf(` fill="none" stroke="%s" stroke-width="%s"`, w.palette.Inks[p.Ink], num4(p.Width))
	if len(p.Dash) > 0 {
		dash := make([]string, len(p.Dash))
		for i, v := range p.Dash {
			dash[i] = num4(v)
		}
		text += ` stroke-dasharray="` + strings.Join(dash, " ") + `"`
	}
	if p.Round {
		text += ` stroke-linecap="round"`
	}
	return text
}

func num4(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64) }

func degrees(d curve.Point) float64 { return math.Atan2(d.Y, d.X) * 180 / math.Pi }
