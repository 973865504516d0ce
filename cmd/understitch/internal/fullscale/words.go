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
func (w *writer) width(size float64, text string) float64 {
	return float64(w.pdf.GetStringSymbolWidth(shown(text))) / 1000 * size * Point
}

// wrap breaks words into lines of at most a width. What has no spaces is broken
// where it must be.
func (w *writer) wrap(size, wide float64, text string) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(shown(text)) {
		for _, part := range w.breakUp(size, wide, word) {
			switch {
			case line == "":
				line = part
			case w.width(size, line+" "+part) <= wide:
				line += " " + part
			default:
				lines = append(lines, line)
				line = part
			}
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

func (w *writer) breakUp(size, wide float64, word string) []string {
	var parts []string
	for w.width(size, word) > wide {
		cut, sum := 0, 0.0
		for i, r := range word {
			sum += w.width(size, string(r))
			if sum > wide && i > 0 {
				break
			}
			cut = i + len(string(r))
		}
		if cut == len(word) {
			break
		}
		parts = append(parts, word[:cut])
		word = word[cut:]
	}
	return append(parts, word)
}

// fitted shortens words to a width.
func (w *writer) fitted(size, wide float64, text string) string {
	text = shown(text)
	if w.width(size, text) <= wide {
		return text
	}
	runes := []rune(text)
	for len(runes) > 1 && w.width(size, string(runes)+"…") > wide {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
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
