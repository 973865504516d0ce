package drawing

import (
	"fmt"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/layering"
	"understitch/model/measuring"
)

// Pieces that are known by the tape alone have no outline; what was measured
// across them at each level is drawn as bars to scale, those of an inside one under
// the other from the same line.

const barStep = 48.0 // points from level to level; not less than rowHigh(3)

// paper draws an inside of which a piece has no drawing.
func (d *drawer) paper(n *model.Inside, title string) {
	var levels []*model.Level
	long := 0.0
	for _, l := range layering.Compared(n, d.g) {
		o, errO := measuring.GroupWidth(n.Outer, l)
		i, errI := measuring.GroupWidth(n.Inner, l)
		if errO == nil && errI == nil {
			levels = append(levels, l)
			long = max(long, o.Net, i.Net)
		}
	}
	if len(levels) == 0 {
		d.missing(Laid, n.Address(), title, fmt.Errorf("there is no drawing, and no level at which both are measured across"))
		return
	}
	b := d.bars(Laid, n.Address(), title, long, len(levels))
	for i, l := range levels {
		y := float64(i) * b.points(barStep)
		room, err := layering.ClearanceAt(n, l)
		if err != nil {
			continue
		}
		var spare *curve.Path
		ends := [2]float64{}
		for k, group := range []model.Group{n.Outer, n.Inner} {
			w, _ := measuring.GroupWidth(group, l)
			ends[k] = w.Net
			d.bar(b, group[0], w.Net, y+float64(k)*b.points(9))
		}
		spare = curve.Polyline(curve.Point{X: ends[0], Y: y + b.points(4.5)}, curve.Point{X: ends[1], Y: y + b.points(4.5)})
		d.level(b, l, y, y, []string{l.Name, "room " + d.show(room), d.less(n, l)})
		b.spot(n.Address()+"/"+l.Name, spot{at: curve.Point{X: b.room.Max.X, Y: y}, away: curve.Point{X: 1}, line: spare, reach: 18, told: true})
	}
	b.spot(n.Address(), spot{at: curve.Point{X: long, Y: -b.points(18)}, away: curve.Point{X: 1}})
	d.paperEdges(b, n.Outer...)
	d.paperEdges(b, n.Inner...)
}

// paperPiece draws a piece of which there is no drawing.
func (d *drawer) paperPiece(p *model.Piece) {
	var levels []*model.Level
	long := 0.0
	for _, l := range measuring.LevelsDown(d.g) {
		if w, err := measuring.WidthOf(p, l); err == nil {
			levels = append(levels, l)
			long = max(long, w.Net)
		}
	}
	b := d.bars(Alone, p.Address(), p.Address(), max(long, 100), len(levels))
	for i, l := range levels {
		y := float64(i) * b.points(barStep)
		w, _ := measuring.WidthOf(p, l)
		d.bar(b, p, w.Net, y)
		d.level(b, l, y, y, []string{l.Name, "across " + d.show(w.Net)})
	}
	d.paperEdges(b, p)
}

func (d *drawer) bars(kind PanelKind, subject, title string, long float64, n int) *board {
	b := d.board(kind, subject, title, curve.Box{Max: curve.Point{X: long}})
	b.room.Max.Y = b.points(float64(n) * barStep)
	b.Facts = append(b.Facts, "known by the tape alone: widths to scale, no shape")
	return b
}

func (d *drawer) bar(b *board, p *model.Piece, width, y float64) {
	b.layer(p.Layer.Name)
	b.put(own(p, Mark{Kind: StitchLine, Line: curve.Polyline(curve.Point{Y: y}, curve.Point{X: width, Y: y})}))
	for _, x := range []float64{0, width} {
		b.put(own(p, Mark{Kind: Base, Line: curve.Polyline(curve.Point{X: x, Y: y - b.points(4)}, curve.Point{X: x, Y: y + b.points(4)})}))
	}
	b.spot(p.Address(), spot{at: curve.Point{X: width / 2, Y: y}, away: curve.Point{Y: -1}})
	b.spot(p.Layer.Address(), spot{at: curve.Point{X: width / 2, Y: y}, away: curve.Point{Y: -1}})
}

// paperEdges lists how long the edges of paper pieces are.
func (d *drawer) paperEdges(b *board, pieces ...*model.Piece) {
	for _, p := range pieces {
		b.layer(p.Layer.Name)
		text := p.Address() + " (" + CutText(p) + ")"
		for i, e := range p.Edges {
			sep := ", "
			if i == 0 {
				sep = ": "
			}
			text += sep + e.Name + " " + d.show(e.SewnLength())
		}
		b.Facts = append(b.Facts, text)
	}
}
