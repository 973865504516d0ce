package drawing

import (
	"understitch/model"
	"understitch/model/curve"
	"understitch/model/layering"
	"understitch/model/measuring"
)

// rows are the heights, in the panel's frame, at which words beside levels stand;
// they are pushed down where levels lie close.
type rows struct {
	last  float64
	least float64
	begun bool
}

// rowHigh is how far rows of so many lines stand apart, in points.
func rowHigh(lines int) float64 { return float64(lines-1)*LineStep + 1.2*TextSize + 2*air }

func (r *rows) next(y float64) float64 {
	if r.begun && y < r.last+r.least {
		y = r.last + r.least
	}
	r.last, r.begun = y, true
	return y
}

// insideLevels draws the levels at which the pieces of an inside are compared, what
// both measure across and the room between them.
func (d *drawer) insideLevels(b *board, n *model.Inside, frame curve.Motion) {
	r := rows{least: b.points(rowHigh(3))}
	for _, l := range layering.Compared(n, d.g) {
		y, ok := n.Outer.LevelY(l)
		if !ok {
			continue
		}
		room, err := layering.ClearanceAt(n, l)
		if err != nil {
			continue
		}
		row := r.next(y)
		d.level(b, l, y, row, []string{l.Name, "room " + d.show(room), d.less(n, l)})
		name := n.Address() + "/" + l.Name
		b.spot(name, spot{at: curve.Point{X: b.room.Max.X, Y: y}, away: curve.Point{X: 1}, line: between(n, l, y, frame), reach: 22, told: true})
	}
}

// less are the widths that the room of an inside is the difference of. Where one
// group is drawn as a half and the other whole, both are taken whole.
func (d *drawer) less(n *model.Inside, l *model.Level) string {
	outer, errO := measuring.GroupWidth(n.Outer, l)
	inner, errI := measuring.GroupWidth(n.Inner, l)
	if errO != nil || errI != nil {
		return ""
	}
	as, bs := n.Outer.Times(), n.Inner.Times()
	half := min(as, bs)
	return d.g.Unit.Bare(outer.Net*as/half) + " less " + d.g.Unit.Bare(inner.Net*bs/half)
}

// between is the stretch of a level between the outlines of an inside's pieces, on
// the side on which they lie furthest apart.
func between(n *model.Inside, l *model.Level, y float64, frame curve.Motion) *curve.Path {
	outer, err := measuring.GroupWidth(n.Outer, l)
	if err != nil || len(outer.Spans) == 0 {
		return nil
	}
	inner, err := measuring.GroupWidth(n.Inner, l)
	if err != nil || len(inner.Spans) == 0 {
		return nil
	}
	at := func(x float64) curve.Point { return curve.Point{X: x, Y: y} }
	yInner, _ := n.Inner.LevelY(l)
	moved := func(x float64) curve.Point { return frame.Apply(curve.Point{X: x, Y: yInner}) }
	lastO, lastI := outer.Spans[len(outer.Spans)-1], inner.Spans[len(inner.Spans)-1]
	left := [2]curve.Point{at(outer.Spans[0].X0), moved(inner.Spans[0].X0)}
	right := [2]curve.Point{at(lastO.X1), moved(lastI.X1)}
	if left[0].Dist(left[1]) > right[0].Dist(right[1]) {
		right = left
	}
	return curve.Polyline(right[0], right[1])
}

// pieceLevels draws the levels that cross one piece, with its width there.
func (d *drawer) pieceLevels(b *board, p *model.Piece) {
	r := rows{least: b.points(rowHigh(2))}
	for _, l := range measuring.LevelsDown(d.g) {
		if !p.Reaches(l) {
			continue
		}
		y, _ := p.LevelY(l)
		w, err := measuring.WidthOf(p, l)
		if err != nil {
			continue
		}
		d.level(b, l, y, r.next(y), []string{l.Name, "across " + d.show(w.Net)})
	}
}

// level draws a level across the panel, with its name and what is measured there
// to the right of the cloth.
func (d *drawer) level(b *board, l *model.Level, y, row float64, figures []string) {
	left, right := b.room.Min.X-b.points(8), b.room.Max.X
	b.put(
		Mark{Kind: LevelLine, Subject: l.Address(), Line: curve.Polyline(curve.Point{X: left, Y: y}, curve.Point{X: right, Y: y})},
		Mark{Kind: LevelWidth, Subject: l.Address(), At: curve.Point{X: right, Y: row}, Dir: curve.Point{X: 1}, Reach: 10, Text: figures, Align: Start, Bold: true},
	)
	here := spot{at: curve.Point{X: b.room.Min.X, Y: y}, away: curve.Point{X: -1}, reach: 22}
	b.spot(l.Address(), here)
	for _, layer := range b.Layers {
		b.spot(layer+"/"+l.Name, here)
	}
}

// show writes a length in the spec's unit, with a minus that is one.
func (d *drawer) show(mm float64) string { return d.g.Show(mm) }
