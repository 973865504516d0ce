package drawing

import (
	"fmt"
	"html"
	"io"
	"strings"

	"understitch/model"
	"understitch/model/curve"
)

// Sizes of the picture in pixels.
const (
	pictureWide = 1180.0
	pictureGap  = 28.0
)

// WriteSVG writes the sheet as one picture that stands alone: panels side by
// side, each to its own scale, with a legend. It holds no script and refers to
// nothing outside.
func WriteSVG(w io.Writer, s *Sheet) error {
	body := &svgWriter{point: 1, styled: true, palette: onWhite()}
	y := pictureGap
	for _, line := range folded(s.Title, 22*boldWider, pictureWide-2*pictureGap) {
		body.words(pictureGap, y+10, 22, true, PlainInk, line)
		y += 30
	}
	y += 4
	body.words(pictureGap, y, TextSize+1, false, PlainInk, s.subtitle())
	y = body.legend(s, pictureGap, y+30) + 18
	x, high := pictureGap, 0.0
	for _, p := range s.Panels {
		if p.Repeats || p.Missing != "" {
			continue
		}
		c := captionOf(p)
		if x > pictureGap && x+c.wide > pictureWide-pictureGap {
			x, y, high = pictureGap, y+high+pictureGap, 0
		}
		body.panel(p, c, x, y)
		x, high = x+c.wide+pictureGap, max(high, c.high+p.Box.Height()/p.Point)
	}
	y = body.list(s, y+high+pictureGap)
	head := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" width="%s" height="%s" font-family="%s"><title>%s</title><rect width="100%%" height="100%%" fill="%s"/>`,
		num(pictureWide), num(y), num(pictureWide), num(y), Typeface, html.EscapeString(plain(s.Title)), body.palette.Ground)
	if _, err := io.WriteString(w, head+"\n"); err != nil {
		return err
	}
	_, err := io.WriteString(w, body.String()+"</svg>\n")
	return err
}

// Typeface is the list of typefaces that words are set in, all of them already
// on the reader's machine.
const Typeface = "'Gill Sans Nova','Gill Sans','Gill Sans MT',Optima,Candara,'Noto Sans','DejaVu Sans',sans-serif"

func (s *Sheet) subtitle() string {
	parts := []string{s.Name}
	if s.Size != "" {
		parts = append(parts, "size "+s.Size)
	}
	return strings.Join(parts, ", ")
}

// list writes what was found in words, under the drawing, and what is not in it;
// it returns where that ends.
func (w *svgWriter) list(s *Sheet, y float64) float64 {
	const lineHigh, indent = 18.0, 46.0
	nowhere := map[string]bool{}
	for _, f := range s.Elsewhere {
		nowhere[f.Number] = true
	}
	said := map[string]bool{}
	for _, f := range s.Findings {
		if said[f.Number] {
			continue
		}
		said[f.Number] = true
		text := f.Subject
		if f.Figure != "" {
			text += ", " + f.Figure
		}
		if f.Message != "" {
			text += ": " + f.Message
		}
		if nowhere[f.Number] {
			text += " (At no one place in the drawing.)"
		}
		tag := &svgWriter{point: 1, styled: true, palette: w.palette}
		tag.tag(Mark{Kind: Found, Sign: Tag, Severity: f.Severity, Numbers: []string{f.Number}})
		fmt.Fprintf(w, `<g transform="translate(%s %s)">%s</g>`, num(pictureGap+16), num(y-4), tag.String())
		for _, line := range folded(f.Severity+" "+text, TextSize, pictureWide-2*pictureGap-indent) {
			w.words(pictureGap+indent, y, TextSize, false, PlainInk, line)
			y += lineHigh
		}
		y += 8
	}
	for _, p := range s.Panels {
		if p.Missing == "" || p.Repeats {
			continue
		}
		for _, line := range folded(p.Title+" is not drawn: "+p.Missing, TextSize, pictureWide-2*pictureGap) {
			w.words(pictureGap, y, TextSize, false, PlainInk, line)
			y += lineHigh
		}
	}
	return y
}

func (w *svgWriter) words(x, y, size float64, bold bool, ink Ink, text string) {
	weight := ""
	if bold {
		weight = ` font-weight="700"`
	}
	fmt.Fprintf(w, `<text x="%s" y="%s" font-size="%s"%s fill="%s">%s</text>`, num(x), num(y), num(size), weight, w.palette.Inks[ink], html.EscapeString(plain(text)))
}

// caption is what stands over a panel, broken to lines, and the room it takes.
type caption struct {
	title, facts []string
	wide         float64 // of the panel and its caption
	high         float64
}

const (
	titleSize   = TextSize + 2
	titleStep   = 18.0
	leastColumn = 300.0
)

func captionOf(p *Panel) caption {
	c := caption{wide: max(p.Box.Width()/p.Point, leastColumn)}
	c.title = folded(p.Title, titleSize*boldWider, c.wide)
	for _, fact := range p.Facts {
		c.facts = append(c.facts, folded(fact, SmallSize, c.wide)...)
	}
	c.high = titleStep*float64(len(c.title)) + LineStep*float64(len(c.facts)) + 6
	return c
}

// panel writes a panel with its caption, its top left at x and y.
func (w *svgWriter) panel(p *Panel, c caption, x, y float64) {
	at := y
	for _, line := range c.title {
		at += titleStep
		w.words(x, at-4, titleSize, true, PlainInk, line)
	}
	for _, line := range c.facts {
		at += LineStep
		w.words(x, at-2, SmallSize, false, PlainInk, line)
	}
	y += c.high
	fmt.Fprintf(w, `<g transform="translate(%s %s) scale(%s) translate(%s %s)">`, num(x), num(y), num4(1/p.Point), num4(-p.Box.Min.X), num4(-p.Box.Min.Y))
	marks := &svgWriter{point: p.Point, styled: true, palette: w.palette}
	for _, m := range p.Marks {
		marks.mark(m)
	}
	w.WriteString(marks.String())
	w.WriteString("</g>\n")
}

// Sample is an entry of the legend: a mark drawn as an example, and its words.
type Sample struct {
	Mark Mark
	Text string
}

// Legend explains the lines and signs of the sheet.
func (s *Sheet) Legend() []Sample {
	var out []Sample
	for _, l := range s.Layers {
		name := l.Name
		if l.Cloth != "" {
			name += " (" + l.Cloth + ")"
		}
		out = append(out, Sample{Mark{Kind: StitchLine, Side: l.Side, Layer: l.Name}, name + ", stitch line"})
	}
	if len(s.Layers) > 0 {
		out = append(out,
			Sample{Mark{Kind: CutLine, Side: model.Outer}, "cut line: the same, a hairline"},
			Sample{Mark{Kind: FoldLine, Side: model.Outer}, "on the fold"},
			Sample{Mark{Kind: LevelLine}, "level"},
		)
	}
	if s.altered() {
		out = append(out, Sample{Mark{Kind: DraftedLine, Side: model.Outer}, "before the alterations"})
	}
	for _, severity := range []string{"error", "warning", "note"} {
		out = append(out, Sample{Mark{Kind: Found, Sign: Tag, Severity: severity, Numbers: []string{"1"}}, severity})
	}
	return out
}

// altered reports whether the sheet shows a line as it was drafted.
func (s *Sheet) altered() bool {
	for _, p := range s.Panels {
		for _, m := range p.Marks {
			if m.Kind == DraftedLine {
				return true
			}
		}
	}
	return false
}

// legend writes the legend in rows and returns where it ends.
func (w *svgWriter) legend(s *Sheet, x, y float64) float64 {
	left := x
	for _, e := range s.Legend() {
		wide := 58 + wordsWide(e.Text, TextSize, false) + 18
		if x+wide > pictureWide-pictureGap && x > left {
			x, y = left, y+22
		}
		fmt.Fprintf(w, `<g transform="translate(%s %s)">%s</g>`, num(x), num(y), e.svg(true))
		w.words(x+52, y+4, TextSize, false, PlainInk, e.Text)
		x += wide
	}
	return y + 12
}

// SVG is the sample as an element of a page.
func (e Sample) SVG() string {
	return `<svg viewBox="0 -12 46 24" width="46" height="24" aria-hidden="true">` + e.svg(false) + `</svg>`
}

func (e Sample) svg(styled bool) string {
	w := &svgWriter{point: 1, styled: styled, palette: onWhite()}
	m := e.Mark
	if m.Sign == Tag {
		m.At.X, m.Dir.X, m.Reach = 8, 1, 15
	} else {
		m.Line = line46()
	}
	w.mark(m)
	return w.String()
}

func line46() *curve.Path {
	return curve.Polyline(curve.Point{X: 1}, curve.Point{X: 45})
}
