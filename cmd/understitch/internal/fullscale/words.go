package fullscale

import (
	_ "embed"
	"strings"
	"unicode"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/text/unicode/norm"

	"understitch/cmd/understitch/internal/drawing"
)

//go:embed font/DejaVuSansCondensed.ttf
var typeface []byte

const family = "letters"

func newWriter(p Paper) *writer {
	pdf := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: p.Wide, Ht: p.High}})
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.AddUTF8FontFromBytes(family, "", typeface)
	pdf.SetFont(family, "", 10)
	return &writer{pdf: pdf, paper: p, optional: map[string]int{}}
}

// style is how words are set.
type style struct {
	size  float64 // points
	bold  bool
	halo  bool // with white about them, where lines run through
	align side
	ink   colour
}

// side tells where a place is on words that are set at it.
type side uint8

const (
	left side = iota
	middle
	right
)

func sideOf(a drawing.Align) side {
	switch a {
	case drawing.Start:
		return left
	case drawing.End:
		return right
	}
	return middle
}

// set writes one line of words with its base line at y, and says how wide it is.
func (w *writer) set(x, y float64, s style, text string) float64 {
	text = shown(text)
	wide := w.width(s.size, text)
	switch s.align {
	case middle:
		x -= wide / 2
	case right:
		x -= wide
	}
	w.pdf.SetDashPattern(nil, 0)
	if s.halo {
		w.pdf.SetTextRenderingMode(1)
		w.stroke(white, 0.22*s.size*Point)
		w.letters(x, y, s.size, white, text)
	}
	if s.bold { // the typeface comes in one weight, which is made heavier by its outline
		w.pdf.SetTextRenderingMode(2)
		w.stroke(s.ink, 0.035*s.size*Point)
	} else {
		w.pdf.SetTextRenderingMode(0)
	}
	w.letters(x, y, s.size, s.ink, text)
	w.pdf.SetTextRenderingMode(0)
	return wide
}

func (w *writer) letters(x, y, size float64, c colour, text string) {
	// Said anew each time, for the end of a clipped stretch takes back what was
	// said in it.
	w.pdf.SetFontSize(size)
	w.pdf.SetFillColor(c.r, c.g, c.b)
	w.pdf.SetTextColor(c.r, c.g, c.b)
	w.pdf.Text(x, y, text)
}

// width is how wide words are, in millimetres.
func (w *writer) width(size float64, text string) float64 { return w.widthShown(size, shown(text)) }

// widthShown is the same of words that are fit to be set already.
func (w *writer) widthShown(size float64, text string) float64 {
	const em = 1000
	return float64(w.pdf.GetStringSymbolWidth(text)) / em * size * Point
}

// wrap breaks words into lines of at most a width. What has no spaces is broken
// where it must be.
func (w *writer) wrap(size, wide float64, text string) []string {
	var lines []string
	line, used := "", 0.0
	space := w.width(size, " ")
	for _, word := range strings.Fields(shown(text)) {
		for word != "" {
			part, takes := w.start(size, wide, word)
			word = word[len(part):]
			switch {
			case line == "":
				line, used = part, takes
			case used+space+takes <= wide:
				line, used = line+" "+part, used+space+takes
			default:
				lines = append(lines, line)
				line, used = part, takes
			}
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// start is as much of a text's beginning as goes into a width, one sign at
// least, and how wide it is.
func (w *writer) start(size, wide float64, text string) (part string, takes float64) {
	for i, r := range text {
		one := w.widthShown(size, string(r))
		if i > 0 && takes+one > wide {
			return text[:i], takes
		}
		takes += one
	}
	return text, takes
}

// fitted shortens words to a width.
func (w *writer) fitted(size, wide float64, text string) string {
	const more = "…"
	text = shown(text)
	if part, _ := w.start(size, wide, text); part == text {
		return text
	}
	part, _ := w.start(size, wide-w.width(size, more), text)
	return part + more
}

// shown makes a text fit to be set: letters with their accents as one sign where
// there is one, and no control characters nor any that turn the direction of
// writing. Signs beyond the first 65,536, of which the typeface has hardly any,
// are replaced.
func shown(text string) string {
	text = norm.NFC.String(strings.ToValidUTF8(text, "\uFFFD"))
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			return ' '
		case unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Zl, r) || unicode.Is(unicode.Zp, r):
			return -1
		case r > 0xFFFD:
			return '\uFFFD'
		}
		return r
	}, text)
}
