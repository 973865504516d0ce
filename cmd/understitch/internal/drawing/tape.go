package drawing

import (
	"fmt"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/sewing"
)

const tapeHigh = 26.0 // points, at least

// tape draws a closure's fastener tape as it has to be cut: the metal, what must
// stay clear of a cut beside it, and both cuts.
func (d *drawer) tape(c *model.Closure) {
	t := c.Tape
	title := "tape." + t.Name + " for " + c.Address()
	whole, err := sewing.WholeClosure(d.g, c, 0)
	length := whole.Length
	if err != nil {
		d.missing(Taped, c.Address(), title, err)
		return
	}
	if !t.CanBeCut() {
		d.missing(Taped, c.Address(), title, fmt.Errorf("tape.%s leaves no gap between its metal in which it could be cut", t.Name))
		return
	}
	b := d.board(Taped, c.Address(), title, curve.Box{Min: curve.Point{X: -t.Pitch}, Max: curve.Point{X: length + t.Pitch}})
	b.room.Max.Y = max(b.points(tapeHigh), 1.7*t.Head)
	b.layer(c.Starts(0).Edge.Piece.Layer.Name)
	w, _ := t.Nearest(length)
	n, fits := w.Fasteners, length >= w.Low && length <= w.High
	first := (length - float64(n-1)*t.Pitch) / 2
	if c.First != nil {
		first = c.First[0]
		w, _ = t.NearestFrom(first, length)
		n, fits = w.Fasteners, length >= w.Low && length <= w.High && t.FirstAt().Beyond(first) == 0
	}
	d.metal(b, c, length, n, first)
	margins := [2]float64{first - t.Head/2, length - first - float64(n-1)*t.Pitch - t.Head/2}
	for i, x := range []float64{0, length} {
		b.put(Mark{Kind: CutEnd, Subject: c.Address(), Line: curve.Polyline(curve.Point{X: x, Y: -b.points(12)}, curve.Point{X: x, Y: b.room.Max.Y + b.points(12)})})
		b.put(Mark{Kind: Figure, Subject: c.Address(), At: curve.Point{X: x, Y: -b.points(26)}, Text: []string{"cut"}, Small: true})
		in := float64(1 - 2*i)
		b.put(Mark{
			Kind: Figure, Subject: c.Address(), At: curve.Point{X: x + in*margins[i]/2, Y: b.room.Max.Y + b.points(22)},
			Text: []string{d.show(margins[i])}, Small: true,
		})
	}
	b.spot(c.Address(), spot{at: curve.Point{X: length, Y: -b.points(12)}, away: curve.Point{X: 1}, reach: 30})
	b.room.Min.Y -= b.points(32) // the words stay off the cuts when the tape is drawn larger
	b.room.Max.Y += b.points(26)
	b.Facts = []string{fmt.Sprintf("cut at %s: %d at a pitch of %s, %s clear of metal at both ends", d.show(length), n, d.show(t.Pitch), d.show(clearOf(t, length, n)))}
	if c.First != nil {
		b.Facts = []string{fmt.Sprintf("cut at %s: %d at a pitch of %s, the first %s from the %s", d.show(length), n, d.show(t.Pitch), d.show(first), sewing.UpperEnd(d.g, c))}
	}
	if !fits {
		b.Facts = []string{fmt.Sprintf("at %s a cut comes too near to metal: it must stay %s clear", d.show(length), d.show(t.Clear))}
	}
}

// clearOf is how far a cut lies from the nearest metal, on the tape or on what
// falls away, when so many fasteners lie in the middle of a length.
func clearOf(t *model.Tape, length float64, n int) float64 {
	on := t.EndMargin(length, n)
	return min(on, t.Pitch-t.Head-on)
}

// metal draws the tape with its fasteners in the middle of it, and those beyond
// the cuts that fall away.
func (d *drawer) metal(b *board, c *model.Closure, length float64, n int, first float64) {
	t := c.Tape
	high := b.room.Max.Y
	b.put(Mark{Kind: TapeLine, Subject: c.Address(), Line: rectangle(-t.Pitch, 0, length+t.Pitch, high), Closed: true})
	for i := -1; i <= n; i++ {
		at := first + float64(i)*t.Pitch
		keep := t.Head/2 + t.Clear
		b.put(Mark{Kind: Clear, Subject: c.Address(), Line: rectangle(at-keep, high*0.14, at+keep, high*0.86), Closed: true})
	}
	for i := -1; i <= n; i++ {
		at := first + float64(i)*t.Pitch
		b.put(Mark{Kind: Metal, Subject: c.Address(), Line: head(t, at, high/2), Closed: true})
	}
}

// head is the outline of one fastener: as long along the tape as it is stated to
// be; a snap is round.
func head(t *model.Tape, x, y float64) *curve.Path {
	r := t.Head / 2
	if t.Kind != "snap" {
		return rectangle(x-r, y-r/2, x+r, y+r/2)
	}
	a, z := curve.Point{X: x - r, Y: y}, curve.Point{X: x + r, Y: y}
	return curve.New(curve.Arc(a, r, r, 0, false, true, z), curve.Arc(z, r, r, 0, false, true, a))
}

func rectangle(x0, y0, x1, y1 float64) *curve.Path {
	return curve.Polyline(curve.Point{X: x0, Y: y0}, curve.Point{X: x1, Y: y0}, curve.Point{X: x1, Y: y1}, curve.Point{X: x0, Y: y1}, curve.Point{X: x0, Y: y0})
}
