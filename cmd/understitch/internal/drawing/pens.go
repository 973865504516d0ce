package drawing

import "understitch/model"

// Ink is what a line is drawn with; each renderer has its own colours for it,
// on light and on dark ground. Nothing is told by ink alone.
type Ink uint8

// The inks.
const (
	OuterInk Ink = iota // the outermost layer
	InnerInk            // the layers inside it
	PlainInk            // words, grain, folds
	FaintInk            // levels, what only helps the eye
	ErrorInk            // findings by severity
	WarningInk
	NoteInk
	MetalInk
)

// Pen is how a line is drawn. Widths and dashes are in points.
type Pen struct {
	Width float64
	Dash  []float64 // on, off, …; none for a whole line
	Round bool      // ends are round
	Ink   Ink
}

// PenOf is the pen for a mark's line.
func PenOf(m Mark) Pen {
	switch m.Kind {
	case StitchLine, DartLeg, NotchMark:
		return layerPen(m)
	case CutLine:
		p := layerPen(m)
		p.Width = 0.7
		return p
	case DraftedLine:
		return Pen{Width: 0.9, Dash: []float64{9, 3, 1.5, 3, 1.5, 3}, Ink: inkOf(m.Side)}
	case FoldLine:
		return Pen{Width: 1.1, Dash: []float64{14, 3, 2, 3}, Ink: inkOf(m.Side)}
	case GrainLine:
		return Pen{Width: 1.1, Ink: inkOf(m.Side)}
	case LevelLine:
		return Pen{Width: 0.8, Dash: []float64{1, 4}, Ink: FaintInk}
	case PairLine, TapeLine, Base:
		return Pen{Width: 0.9, Ink: PlainInk}
	case Metal:
		return Pen{Width: 0.8, Ink: MetalInk}
	case Clear:
		return Pen{Width: 0.8, Dash: []float64{2, 2}, Ink: FaintInk}
	case CutEnd:
		return Pen{Width: 1.6, Dash: []float64{5, 2.5}, Ink: PlainInk}
	case Trouble:
		return Pen{Width: 7, Ink: severityInk(m.Severity), Round: true}
	case Found:
		return Pen{Width: 1.2, Ink: severityInk(m.Severity)}
	}
	return Pen{Width: 0.8, Ink: PlainInk}
}

// layerPen tells layers apart by the line itself.
func layerPen(m Mark) Pen {
	width := 1.5
	if m.Kind == DartLeg {
		width = 1.1
	}
	switch m.Side {
	case model.Inner:
		p := Pen{Width: 3.2, Dash: []float64{7, 6}, Ink: InnerInk}
		if m.Kind != StitchLine {
			p = Pen{Width: width + 0.3, Dash: []float64{4, 3}, Ink: InnerInk}
		}
		if m.Kind == NotchMark {
			p = Pen{Width: 3, Ink: InnerInk}
		}
		return p
	case model.Between:
		p := Pen{Width: 3, Dash: []float64{0.1, 6}, Round: true, Ink: InnerInk}
		if m.Kind == NotchMark {
			p.Dash = []float64{0.1, 3.5}
		}
		return p
	}
	return Pen{Width: width, Ink: OuterInk}
}

func inkOf(side model.Side) Ink {
	if side == model.Outer || side == "" {
		return OuterInk
	}
	return InnerInk
}

func severityInk(severity string) Ink {
	switch severity {
	case "error":
		return ErrorInk
	case "warning":
		return WarningInk
	}
	return NoteInk
}

// InkOf is the ink of a mark's sign and words.
func InkOf(m Mark) Ink {
	switch m.Kind {
	case PieceName, EdgeName:
		return inkOf(m.Side)
	}
	return PenOf(m).Ink
}
