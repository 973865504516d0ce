package drawing

import (
	"understitch/model"
	"understitch/model/curve"
	"understitch/model/drafting"
	"understitch/model/layering"
)

// inside draws the inner pieces of an inside laid on the outer ones.
func (d *drawer) inside(n *model.Inside) {
	title := n.Inner.Address() + " in " + n.Outer.Address()
	for _, group := range []model.Group{n.Outer, n.Inner} {
		for _, p := range group {
			if !p.Drawn() {
				d.paper(n, title)
				return
			}
		}
	}
	frame, err := layering.Frame(n, d.g)
	if err != nil {
		d.missing(Laid, n.Address(), title, err)
		return
	}
	var room curve.Box
	first := true
	lay := func(p *model.Piece, m curve.Motion) {
		box := extent(p, m)
		if first {
			room, first = box, false
		}
		room = room.Union(box)
	}
	for _, p := range n.Outer {
		lay(p, curve.Identity())
	}
	for _, p := range n.Inner {
		lay(p, frame)
	}
	b := d.board(Laid, n.Address(), title, room)
	for _, p := range n.Outer {
		d.piece(b, p, curve.Identity(), 0.34)
	}
	for _, p := range n.Inner {
		d.piece(b, p, frame, 0.62)
	}
	d.insideLevels(b, n, frame)
	b.spot(n.Address(), spot{at: curve.Point{X: room.Max.X, Y: room.Min.Y}, away: curve.Point{X: 1}})
}

// alone draws one piece by itself. Repeats tells that an inside shows it too.
func (d *drawer) alone(p *model.Piece, repeats bool) {
	if !p.Drawn() {
		if !repeats {
			d.paperPiece(p)
		}
		return
	}
	b := d.board(Alone, p.Address(), p.Address(), extent(p, curve.Identity()))
	b.Repeats = repeats
	d.piece(b, p, curve.Identity(), 0.45)
	d.pieceLevels(b, p)
}

// extent is what a drawn piece takes up, its allowances included.
func extent(p *model.Piece, m curve.Motion) curve.Box {
	box := p.Edges[0].Path.Move(m).Bounds()
	for _, e := range p.Edges[1:] {
		box = box.Union(e.Path.Move(m).Bounds())
	}
	if cut, err := drafting.CutLine(p); err == nil {
		for _, line := range cut {
			box = box.Union(line.Move(m).Bounds())
		}
	}
	return box
}
