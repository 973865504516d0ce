package drawing

import (
	"fmt"
	"strings"

	"understitch/model"
)

// kindWords are the class names of the kinds of mark.
var kindWords = [...]string{
	"stitch", "cut", "drafted", "fold", "grain", "dart", "dart-tip", "notch", "level", "level-width", "piece-name",
	"edge-name", "pair", "figure", "tape", "metal", "clear", "cut-end", "trouble", "found", "base",
}

func (k Kind) String() string { return kindWords[k] }

// inkWords are the names of the inks, as a style sheet's variables have them.
var inkWords = [...]string{"outer", "inner", "plain", "faint", "error", "warning", "note", "metal"}

func (i Ink) String() string { return inkWords[i] }

// kindClass is the class of a mark: its kind, and where pens differ by it the
// side or the severity.
func kindClass(m Mark) string {
	class := m.Kind.String()
	if m.Side != "" {
		class += " " + string(m.Side)
	}
	if m.Severity != "" {
		class += " " + m.Severity
	}
	return class
}

// StyleSheet gives every class of a panel's SVG its pen. Widths and dashes are
// pixels, whatever the zoom; the colours are the page's variables --ink-outer,
// --ink-inner and so on.
func StyleSheet() string {
	var b strings.Builder
	b.WriteString(".panel path,.panel circle,.panel rect{fill:none;vector-effect:non-scaling-stroke}\n")
	for k := StitchLine; k <= Base; k++ {
		sides := []model.Side{""}
		severities := []string{""}
		switch k {
		case StitchLine, CutLine, DraftedLine, FoldLine, GrainLine, DartLeg, DartTip, NotchMark, PieceName, EdgeName:
			sides = []model.Side{model.Outer, model.Between, model.Inner}
		case Trouble, Found:
			severities = []string{"error", "warning", "note"}
		}
		for _, side := range sides {
			for _, severity := range severities {
				penRule(&b, Mark{Kind: k, Side: side, Severity: severity})
			}
		}
	}
	return b.String()
}

func penRule(b *strings.Builder, m Mark) {
	class := "." + strings.ReplaceAll(kindClass(m), " ", ".")
	pen := PenOf(m)
	fmt.Fprintf(b, ".panel path%s{stroke:var(--ink-%s);stroke-width:%spx", class, pen.Ink, num(pen.Width))
	if len(pen.Dash) > 0 {
		b.WriteString(";stroke-dasharray:")
		for i, v := range pen.Dash {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(num(v))
		}
	}
	if pen.Round {
		b.WriteString(";stroke-linecap:round")
	}
	b.WriteString("}\n")
	fmt.Fprintf(b, ".panel g%s{--ink:var(--ink-%s)}\n", class, InkOf(m))
}
