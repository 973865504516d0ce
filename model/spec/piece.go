package spec

import (
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
	"understitch/model/sewing"
)

// layer builds a layer. Its pieces are drafted when all are known.
func (b *drafter) layer(c *block) {
	l := &model.Layer{Name: c.name, Place: place(c.header), Order: len(b.g.Layers)}
	l.Side = model.Side(b.choice(c.attr("side"), string(model.Outer), string(model.Inner), string(model.Between)))
	switch e := c.attr("order"); {
	case e != nil:
		l.Order = b.count(e, 0, 99)
	case l.Side == model.Outer:
		l.Order = 0
	default:
		l.Order = max(1, len(b.g.Layers))
	}
	if e := c.attr("fabric"); e != nil {
		l.Fabric = b.fabricAt(e)
	}
	if e := c.attr("ease"); e != nil {
		l.Ease = b.levelRanges(e)
	}
	if e := c.attr("allowance"); e != nil {
		l.Standard = &model.Standard{Of: l.Address(), Role: model.RoleDefault, Width: b.length(e, atLeast0), Place: place(e.Range())}
	}
	b.g.Layers = append(b.g.Layers, l)
	for _, x := range c.blocks {
		p := &model.Piece{Name: x.name, Layer: l, Cut: 1, DrawnOn: model.StitchLine, CutOn: sewing.OnStraight, Place: place(x.header)}
		l.Pieces = append(l.Pieces, p)
		b.pieces = append(b.pieces, &pieceDraft{block: x, layer: c, piece: p})
	}
	if len(l.Pieces) == 0 {
		b.fault(c.header, "Write piece \"front\" { … } inside it.", "layer %s has no pieces", l.Name)
	}
}

// levelRanges reads ranges of lengths by level.
func (b *drafter) levelRanges(e hclsyntax.Expression) []model.LevelRange {
	var list []model.LevelRange
	for _, x := range b.entries(e) {
		r := model.LevelRange{Level: b.levelNamed(x.keyExpr, x.key), Range: b.lengthSpan(x.value)}
		r.Place = place(between(x.keyExpr, x.value))
		if r.Level != nil {
			list = append(list, r)
		}
	}
	return list
}

// levelValues reads lengths by level.
func (b *drafter) levelValues(e hclsyntax.Expression, want sense) []model.LevelValue {
	var list []model.LevelValue
	for _, x := range b.entries(e) {
		v := model.LevelValue{Level: b.levelNamed(x.keyExpr, x.key), Value: b.length(x.value, want)}
		v.Place = place(between(x.keyExpr, x.value))
		if v.Level != nil {
			list = append(list, v)
		}
	}
	return list
}

func (b *drafter) grain(e hclsyntax.Expression, p *model.Piece) {
	list, ok := e.(*hclsyntax.TupleConsExpr)
	if !ok || len(list.Exprs) != 2 {
		b.fault(e.Range(), "Write grain = [[x, y], [x, y]].", "the grain line has two points")
		return
	}
	from, okF := b.point(list.Exprs[0])
	to, okT := b.point(list.Exprs[1])
	if !okF || !okT {
		return
	}
	if from == to {
		b.fault(e.Range(), "", "the grain line's two points are one")
		return
	}
	p.Grain = append(p.Grain, from, to)
}
