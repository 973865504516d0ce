package spec

import (
	"maps"
	"math"
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/sewing"
)

// pieceDraft is a piece while it is drafted. A piece may be traced from one that
// is further down in the file, so that all are begun before any is finished.
type pieceDraft struct {
	block, layer *block
	piece        *model.Piece
	points       map[string]*pointValue
	unstated     model.Allowance // of an edge that states none
	from         *pieceDraft     // the piece that it is traced from as a whole
	mirror       bool            // turned over
	traces       []*edgeTrace    // its traced edges
	fresh        []*model.Edge   // edges that the traced piece does not have
	left         []*leaving      // what it does not take over
	outlined     state
	taken        state // what comes along with its edges
}

// draftPieces drafts all pieces: their outlines first, each after the piece that
// it is traced from, then what lies on the outlines, then what comes along with
// traced edges.
func (b *drafter) draftPieces() {
	for _, d := range b.pieces {
		b.outline(d, nil)
	}
	b.sources()
	for _, d := range b.pieces {
		b.marks(d)
	}
	for _, d := range b.pieces {
		b.comeAlong(d)
	}
	b.points, b.scope.piece = nil, ""
}

// at takes up a piece again, with its points.
func (b *drafter) at(d *pieceDraft) { b.points, b.scope.piece = d.points, d.piece.Address() }

func (b *drafter) draftOf(p *model.Piece) *pieceDraft {
	i := slices.IndexFunc(b.pieces, func(d *pieceDraft) bool { return d.piece == p })
	return b.pieces[i]
}

// outline drafts a piece's attributes and edges. way are the pieces that wait for
// this one.
func (b *drafter) outline(d *pieceDraft, way []*pieceDraft) {
	switch d.outlined {
	case underWay:
		names := []string{}
		for _, w := range way[slices.Index(way, d):] {
			names = append(names, w.piece.Address())
			w.outlined = bad
		}
		b.fault(d.block.attrs["trace"].Expr.Range(), "Draw one of the pieces by itself.",
			"these pieces are each traced from the next, in a circle: %s", strings.Join(append(names, d.piece.Address()), " → "))
		return
	case good, bad:
		return
	}
	d.outlined = underWay
	c, p := d.block, d.piece
	if e := c.attr("trace"); e != nil {
		if source := b.pieceAt(e); source == p {
			b.fault(e.Range(), "Name another piece.", "%s is traced from itself", p.Address())
		} else if source != nil {
			d.from = b.draftOf(source)
			b.outline(d.from, append(way, d))
			p.TracedFrom = source
		}
		if d.from == nil || d.from.outlined == bad {
			d.from, p.TracedFrom, d.outlined = nil, nil, bad
		}
	}
	if e := c.attr("mirror"); e != nil {
		if d.mirror = b.flag(e); c.attr("trace") == nil {
			b.fault(e.Range(), "Write trace = LAYER.PIECE beside it.", "mirror turns over what is traced, and piece %s is not", p.Name)
		}
	}
	b.takePoints(d)
	b.attributes(d)
	if d.outlined == bad { // what it would have been traced from is not known
		b.failed = true
		return
	}
	d.outlined = good
	b.edges(d)
	if e := c.attr("fold"); e != nil && len(p.Edges) > 0 {
		b.fold(e, d)
	}
	if p.Fold != nil && !p.Fold.Allowance.Own {
		p.Fold.Allowance.Width = math.NaN() // the piece's default is not for its fold
	}
}

// attributes reads what a piece states of itself; the rest is as in the piece that
// it is traced from.
func (b *drafter) attributes(d *pieceDraft) {
	c, p := d.block, d.piece
	d.unstated = model.Allowance{Width: math.NaN()}
	if d.from != nil {
		b.inherit(d)
	}
	if e := c.attr("cut"); e != nil {
		p.Cut = b.count(e, 1, 100)
		p.Mirrored = p.Cut == 2
	}
	if e := c.attr("mirrored"); e != nil {
		p.Mirrored = b.flag(e)
	}
	if e := c.attr("drawn"); e != nil {
		p.DrawnOn = model.Drawing(b.choice(e, string(model.StitchLine), string(model.CutLine)))
	}
	if e := c.attr("allowance"); e != nil {
		d.unstated = model.Allowance{Width: b.length(e, atLeast0), Place: place(e.Range())}
	}
	if e := c.attr("grain"); e != nil {
		p.Grain = nil
		b.grain(e, p)
	}
	if e := c.attr("cut_on"); e != nil {
		p.CutOn = b.choice(e, sewing.OnStraight, sewing.OnCross, sewing.OnBias)
	}
	if e := c.attr("levels"); e != nil {
		p.OwnLevels = true
		p.LevelsAt = b.levelValues(e, signed)
	}
	if e := c.attr("width"); e != nil {
		p.Widths = b.levelValues(e, atLeast0)
	}
	if e := c.attr("without"); e != nil {
		d.left = b.leavings(e)
	}
}

// inherit takes over what a traced piece has of itself.
func (b *drafter) inherit(d *pieceDraft) {
	p, s := d.piece, d.from.piece
	p.Cut, p.Mirrored, p.CutOn = s.Cut, s.Mirrored, s.CutOn
	p.Grain = slices.Clone(s.Grain)
	if d.mirror {
		for i := range p.Grain {
			p.Grain[i].X = -p.Grain[i].X
		}
	}
	p.OwnLevels, p.LevelsAt, p.Widths = s.OwnLevels, slices.Clone(s.LevelsAt), slices.Clone(s.Widths)
	if d.layer.attr("allowance") == nil {
		d.unstated = d.from.unstated
	}
}

// takenPoints are the points of the piece that another is traced from, which it
// may use as they are.
func (b *drafter) takenPoints(d *pieceDraft) map[string]*pointValue {
	if d.from == nil {
		return map[string]*pointValue{}
	}
	taken := maps.Clone(d.from.points)
	for name, p := range taken {
		if d.mirror {
			turned := *p
			turned.x.v = -turned.x.v
			taken[name] = &turned
		}
	}
	return taken
}

// marks drafts the darts, pleats and notches that a piece states.
func (b *drafter) marks(d *pieceDraft) {
	if d.outlined != good || len(d.piece.Edges) == 0 {
		return
	}
	b.at(d)
	for _, x := range d.block.blocks {
		switch x.kind {
		case "dart":
			b.dart(x, d.piece)
		case "pleat":
			b.pleat(x, d.piece)
		case "notch":
			b.notch(x, d.piece)
		}
	}
}
