package drawing

import (
	"fmt"
	"html"
	"math"
	"strings"
	"unicode"
)

// text writes a mark's words, in points about x and y, the first line on y.
func (w *svgWriter) text(m Mark, x, y float64) {
	if len(m.Text) == 0 {
		return
	}
	anchor := map[Align]string{Middle: "middle", Start: "start", End: "end"}[m.Align]
	size := TextSize
	if m.Small {
		size = SmallSize
	}
	y += size * 0.35
	for i, line := range m.Text {
		line = plain(line)
		weight := ""
		if m.Bold && i == 0 {
			weight = ` font-weight="700"`
		}
		at := size
		if i > 0 {
			at = SmallSize
		}
		ink := InkOf(m)
		if m.Kind == Figure || m.Kind == LevelWidth {
			ink = PlainInk
		}
		fmt.Fprintf(w, `<text x="%s" y="%s" text-anchor="%s" font-size="%s"%s%s>%s</text>`,
			num(x), num(y+float64(i)*LineStep), anchor, num(at), weight, w.word(ink), html.EscapeString(line))
	}
}

// word is how words are painted: with an edge of the ground about them, so that
// lines do not run through them.
func (w *svgWriter) word(ink Ink) string {
	if !w.styled {
		return ""
	}
	return fmt.Sprintf(` fill="%s" stroke="%s" stroke-width="3" stroke-linejoin="round" paint-order="stroke"`, w.palette.Inks[ink], w.palette.Ground)
}

// tag writes a finding's tag, hung off its place by a leader. Its shape tells
// the severity: a filled block for an error, an outlined ticket with two points
// for a warning, a ring for a note.
func (w *svgWriter) tag(m Mark) {
	text := tagText(m.Numbers)
	half := max(TagSize, 3.5*float64(len(text))+4)
	x, y := m.Dir.X*m.Reach, m.Dir.Y*m.Reach
	if math.Abs(m.Dir.X) > 0.5 {
		x += math.Copysign(half-TagSize, m.Dir.X)
	}
	fmt.Fprintf(w, `<path d="M0 0L%s %s"%s/><circle r="2.4"%s/>`, num(x), num(y), w.tagLine(m, 1.2, "leader"), w.tagFill(m, "pin"))
	fmt.Fprintf(w, `<g transform="translate(%s %s)">`, num(x), num(y))
	h := TagSize
	if !w.styled { // as much as a finger needs
		fmt.Fprintf(w, `<rect class="hit" x="%s" y="-13" width="%s" height="26"/>`, num(-max(half, 13)), num(2*max(half, 13)))
	}
	switch m.Severity {
	case "error":
		fmt.Fprintf(w, `<rect x="%s" y="%s" width="%s" height="%s" rx="2"%s/>`, num(-half), num(-h), num(2*half), num(2*h), w.tagFill(m, "body"))
	case "warning":
		fmt.Fprintf(w, `<path d="M%s 0L%s %sH%sL%s 0L%s %sH%sZ"%s/>`, num(-half-5), num(-half), num(-h), num(half), num(half+5), num(half), num(h), num(-half), w.tagLine(m, 2, "body"))
	default:
		fmt.Fprintf(w, `<rect x="%s" y="%s" width="%s" height="%s" rx="%s"%s/>`, num(-half), num(-h), num(2*half), num(2*h), num(h), w.tagLine(m, 1.3, "body"))
	}
	fmt.Fprintf(w, `<text class="number" y="4" text-anchor="middle" font-size="11" font-weight="700"%s>%s</text>`, w.tagNumber(m), html.EscapeString(text))
	if len(m.Text) > 0 {
		side, anchor := 1.0, "start"
		if m.Dir.X < -0.3 {
			side, anchor = -1, "end"
		}
		fmt.Fprintf(w, `<text class="figure" x="%s" y="4" text-anchor="%s" font-size="%s" font-weight="700"%s>%s</text>`,
			num(side*(half+8)), anchor, num(TextSize), w.word(severityInk(m.Severity)), html.EscapeString(plain(m.Text[0])))
	}
	w.WriteString("</g>")
}

// tagText is what stands on a tag for several findings.
func tagText(numbers []string) string {
	const most = 3
	if len(numbers) <= most {
		return strings.Join(numbers, ", ")
	}
	return fmt.Sprintf("%s, %s +%d", numbers[0], numbers[1], len(numbers)-2)
}

func (w *svgWriter) tagLine(m Mark, width float64, class string) string {
	if !w.styled {
		return ` class="` + class + `"`
	}
	fill := ""
	if class == "body" {
		fill = ` fill="` + w.palette.Ground + `"`
	}
	return fmt.Sprintf(`%s stroke="%s" stroke-width="%s"`, fill, w.palette.Inks[severityInk(m.Severity)], num(width))
}

func (w *svgWriter) tagFill(m Mark, class string) string {
	if !w.styled {
		return ` class="` + class + `"`
	}
	return ` fill="` + w.palette.Inks[severityInk(m.Severity)] + `"`
}

func (w *svgWriter) tagNumber(m Mark) string {
	if !w.styled {
		return ""
	}
	if m.Severity == "error" {
		return ` fill="` + w.palette.OnTag + `"`
	}
	return ` fill="` + w.palette.Inks[severityInk(m.Severity)] + `"`
}

// plain drops what a drawing cannot hold: control characters, which XML forbids
// or which would turn the direction of writing.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			return ' '
		case unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\uFFFE' || r == '\uFFFF':
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD"))
}
