package fullscale

import (
	"understitch/cmd/understitch/internal/drawing"
)

// colour is red, green and blue, 0 to 255.
type colour struct{ r, g, b int }

var (
	white = colour{255, 255, 255}
	black = colour{0, 0, 0}
	grey  = colour{110, 110, 110}
	pale  = colour{205, 205, 205}
)

// inkColour is what an ink is printed in. All that is fine is dark, for a
// printer without colour makes dots of what is light.
func inkColour(i drawing.Ink) colour {
	switch i {
	case drawing.OuterInk, drawing.PlainInk:
		return black
	case drawing.InnerInk:
		return colour{120, 40, 0}
	case drawing.FaintInk:
		return colour{70, 70, 70}
	case drawing.ErrorInk:
		return colour{150, 10, 45}
	case drawing.WarningInk:
		return colour{105, 65, 0}
	case drawing.NoteInk:
		return colour{20, 65, 115}
	case drawing.MetalInk:
		return colour{75, 75, 80}
	}
	return black
}

// tint is a colour thinned to what lies under lines without hiding them.
func (c colour) tint() colour {
	thin := func(v int) int { return 255 - (255-v)*3/10 }
	return colour{thin(c.r), thin(c.g), thin(c.b)}
}

func (w *writer) stroke(c colour, width float64) {
	w.pdf.SetDrawColor(c.r, c.g, c.b)
	w.pdf.SetLineWidth(width)
}

func (w *writer) fill(c colour) { w.pdf.SetFillColor(c.r, c.g, c.b) }

// plain sets a whole line of a width.
func (w *writer) plain(c colour, width float64) {
	w.stroke(c, width)
	w.pdf.SetDashPattern(nil, 0)
	w.pdf.SetLineCapStyle("butt")
}

// line draws one straight line.
func (w *writer) line(c colour, width, x0, y0, x1, y1 float64) {
	w.plain(c, width)
	w.pdf.Line(x0, y0, x1, y1)
}
