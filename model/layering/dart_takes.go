package layering

import (
	"slices"

	"understitch/model"
	"understitch/model/measuring"
)

// DartAcross is a dart that takes something out of its piece's width at a level,
// in millimetres.
type DartAcross struct {
	Dart  *model.Dart
	Takes float64
}

// DartsAcross are the darts that take something out of the width at a level; all
// together they make the difference between gross and net.
func DartsAcross(p *model.Piece, l *model.Level) []DartAcross {
	y, ok := p.LevelY(l)
	if !ok {
		return nil
	}
	var out []DartAcross
	for _, d := range p.Darts {
		if by := measuring.Takes(d, y); by != 0 {
			out = append(out, DartAcross{d, by})
		}
	}
	return out
}

// DartTakes is what two darts of an inside that bear one name, or otherwise answer
// each other, take out of the widths of their pieces at one height, in
// millimetres. Outer or Inner is nil where a dart has none to answer it.
type DartTakes struct {
	Outer, Inner           *model.Dart
	ByOuter, ByInner       float64 // as drawn
	OuterTimes, InnerTimes float64 // how often the pieces count in a girth
}

// More is how much more the outer dart takes out of the width than the inner,
// counted as the inside's clearance is.
func (d DartTakes) More(n *model.Inside) float64 {
	return d.Round() / min(n.Outer.Times(), n.Inner.Times())
}

// Round is how much more the outer dart takes out of the girth than the inner.
func (d DartTakes) Round() float64 { return d.ByOuter*d.OuterTimes - d.ByInner*d.InnerTimes }

// DartsAt lists what the darts of an inside's pieces take out at a level, those
// that take out something there; paper pieces, whose widths were measured with
// the darts closed, have none.
func DartsAt(n *model.Inside, l *model.Level) []DartTakes {
	return dartsAt(n, func(p *model.Piece) (float64, bool) { return p.LevelY(l) })
}

// DartsAtHeight does so at a height of the common frame.
func DartsAtHeight(n *model.Inside, y float64) []DartTakes {
	return dartsAt(n, func(*model.Piece) (float64, bool) { return y, true })
}

func dartsAt(n *model.Inside, height func(*model.Piece) (float64, bool)) []DartTakes {
	taken := func(d *model.Dart) (by, times float64) {
		if y, ok := height(d.Piece); ok {
			by = measuring.Takes(d, y)
		}
		return by, d.Piece.Times()
	}
	var all []DartTakes
	for _, p := range n.Outer {
		for _, d := range p.Darts {
			t := DartTakes{Outer: d}
			t.ByOuter, t.OuterTimes = taken(d)
			all = append(all, t)
		}
	}
	outer := len(all)
	for _, p := range n.Inner {
		for _, d := range p.Darts {
			var t *DartTakes
			if i := answered(n, all[:outer], d); i >= 0 {
				t = &all[i]
			} else {
				all = append(all, DartTakes{})
				t = &all[len(all)-1]
			}
			t.Inner = d
			t.ByInner, t.InnerTimes = taken(d)
		}
	}
	return slices.DeleteFunc(all, func(t DartTakes) bool { return t.ByOuter == 0 && t.ByInner == 0 })
}

// answered tells which outer dart an inner one answers: that of its name, or the
// only one where the inner piece has but one as well; -1 where there is none.
func answered(n *model.Inside, outer []DartTakes, d *model.Dart) int {
	for i, t := range outer {
		if t.Inner == nil && t.Outer.Name == d.Name && (t.Outer.On == nil) == (d.On == nil) {
			return i
		}
	}
	if len(outer) == 1 && outer[0].Inner == nil && len(d.Piece.Darts) == 1 && len(n.Inner) == 1 {
		return 0
	}
	return -1
}
