package drawing

import (
	"math"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/sewing"
)

// Heights in a strip, in points.
const (
	stripGap   = 40.0 // between the two sides
	stripTick  = 11.0 // how far a notch reaches in
	stripNames = 13.0 // from a side to the names of its edges
	stripRow   = 14.0 // from one row of names to the next
)

// strip draws the two sides of a seam, a closure or a share laid along each
// other, made straight: notch lies against notch where they meet.
func (d *drawer) strip(thing model.Thing, a, b *sewing.Walk, err error) {
	title := thing.Address()
	if err != nil {
		d.missing(Strip, thing.Address(), title, err)
		return
	}
	long := max(a.Length, b.Length)
	board := d.board(Strip, thing.Address(), title, curve.Box{Max: curve.Point{X: long}})
	board.room.Max.Y = board.points(stripGap)
	board.Facts = []string{d.sides(a, b)}
	d.side(board, a, 0, -1)
	d.side(board, b, board.room.Max.Y, 1)
	d.ends(board, a, b, thing)
	d.pairs(board, a, b)
}

// sides tells how long both sides are.
func (d *drawer) sides(a, b *sewing.Walk) string {
	text := d.show(a.Length) + " along " + d.show(b.Length)
	if diff := a.Length - b.Length; math.Abs(diff) >= least {
		text += ", the upper " + d.show(math.Abs(diff)) + " " + longer(diff)
	}
	return text
}

func longer(diff float64) string {
	if diff > 0 {
		return "longer"
	}
	return "shorter"
}

// least is a difference that is shown, in millimetres; below it a figure would
// read as nothing.
const least = 0.05

// side draws one side of a strip at height y, its names on the outer side of it.
func (d *drawer) side(b *board, w *sewing.Walk, y, out float64) {
	for i, r := range w.Runs {
		p := r.Edge.Piece
		b.layer(p.Layer.Name)
		from, to := curve.Point{X: r.Start, Y: y}, curve.Point{X: r.Start + r.Length, Y: y}
		line := curve.Polyline(from, to)
		b.put(own(p, Mark{Kind: StitchLine, Subject: r.Edge.Address(), Line: line}))
		b.spot(r.Edge.Address(), spot{at: from.Lerp(to, 0.5), away: curve.Point{Y: -out}, line: line})
		if i > 0 {
			b.put(Mark{Kind: Base, Line: curve.Polyline(from.Add(curve.Point{Y: -b.points(7)}), from.Add(curve.Point{Y: b.points(7)}))})
		}
	}
	d.edgeNames(b, w, y, out)
	for _, n := range w.Notches {
		at := curve.Point{X: n.At, Y: y}
		b.put(own(n.Notch.Piece, Mark{Kind: NotchMark, Subject: n.Notch.Address(), Line: ticks(n, at, -out, b)}))
		b.spot(n.Notch.Address(), spot{at: at, away: curve.Point{Y: out}, reach: 24})
	}
}

// edgeNames writes the names of a side's edges, each at the middle of its edge;
// where edges are shorter than their names, in further rows, with a hairline back.
func (d *drawer) edgeNames(b *board, w *sewing.Walk, y, out float64) {
	var taken []curve.Box
	var names []Mark
	for _, r := range w.Runs {
		middle := r.Start + r.Length/2
		m := own(r.Edge.Piece, Mark{
			Kind: EdgeName, Subject: r.Edge.Address(), At: curve.Point{X: middle, Y: y}, Dir: curve.Point{Y: out}, Reach: stripNames,
			Text: []string{r.Edge.Address()}, Small: true,
		})
		box, _ := m.wordBox(b.Point)
		half := box.Width() / 2
		if half < b.room.Width()/2 { // not past the ends, where there is room within
			m.At.X = min(max(middle, b.room.Min.X+half), b.room.Max.X-half)
		}
		row := 0
		for ; ; row++ {
			box, _ = m.wordBox(b.Point)
			if covered(box, taken) == 0 {
				break
			}
			m.Reach += stripRow
		}
		if row > 0 {
			b.put(Mark{Kind: Base, Subject: r.Edge.Address(), At: curve.Point{X: middle, Y: y}, Dir: m.Dir, Reach: m.Reach - 7, Sign: Leader})
		}
		taken = append(taken, grown(box, b.points(air)))
		names = append(names, m)
	}
	b.put(names...) // over the hairlines
}

// ticks are a notch's cuts in a strip: one, or two beside each other.
func ticks(n sewing.WalkNotch, at curve.Point, in float64, b *board) *curve.Path {
	var out []*curve.Path
	for _, x := range notchCuts(n.Notch, 0) {
		x = x / notchApart * b.points(5)
		from := at.Add(curve.Point{X: x})
		out = append(out, curve.Polyline(from, from.Add(curve.Point{Y: in * b.points(stripTick)})))
	}
	return curve.Join(out...)
}

// ends draws where both sides end.
func (d *drawer) ends(b *board, a, w *sewing.Walk, thing model.Thing) {
	top, bottom := -b.points(6), b.room.Max.Y+b.points(6)
	end := func(x, from, to float64) {
		b.put(Mark{Kind: Base, Subject: thing.Address(), Line: curve.Polyline(curve.Point{X: x, Y: from}, curve.Point{X: x, Y: to})})
	}
	end(0, top, bottom)
	end(a.Length, top, b.points(14))
	end(w.Length, b.room.Max.Y-b.points(14), bottom)
	short, long := min(a.Length, w.Length), max(a.Length, w.Length)
	y, middle := b.room.Max.Y, b.room.Max.Y/2
	if a.Length >= w.Length {
		y = 0
	}
	s := spot{at: curve.Point{X: long, Y: middle}, away: curve.Point{X: 1}, reach: 16}
	if long-short >= least {
		s.line = curve.Polyline(curve.Point{X: short, Y: y}, curve.Point{X: long, Y: y})
	}
	b.spot(thing.Address(), s)
}

// pairs draws a line from each notch to the one it is laid on, and by how much
// they miss each other.
func (d *drawer) pairs(b *board, a, w *sewing.Walk) {
	pairs, onlyA, onlyB := sewing.PairNotches(a, w)
	tick, foot := b.points(stripTick), b.room.Max.Y-b.points(stripTick)
	for _, p := range pairs {
		from, to := curve.Point{X: p.A.At, Y: tick}, curve.Point{X: p.B.At, Y: foot}
		m := Mark{Kind: PairLine, Subject: p.A.Notch.Address(), Line: curve.Polyline(from, to)}
		b.put(m)
		if math.Abs(p.Off()) >= least {
			b.put(Mark{
				Kind: Figure, Subject: p.A.Notch.Address(), At: from.Lerp(to, 0.5).Add(curve.Point{X: b.points(7)}), Align: Start, Small: true,
				Text: []string{d.show(math.Abs(p.Off())) + " off"},
			})
		}
	}
	alone := func(list []sewing.WalkNotch, y float64) {
		for _, n := range list {
			b.put(Mark{
				Kind: Figure, Subject: n.Notch.Address(), At: curve.Point{X: n.At, Y: y}, Sign: Cross,
			})
		}
	}
	alone(onlyA, tick+b.points(5))
	alone(onlyB, foot-b.points(5))
}
