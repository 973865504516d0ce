package spec

import (
	"math"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
	"understitch/model/sewing"
)

// layer builds a layer and its pieces.
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
	b.g.Layers = append(b.g.Layers, l)
	for _, p := range c.blocks {
		b.piece(p, l)
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

// piece builds a piece. Its points go out of scope with it.
func (b *drafter) piece(c *block, l *model.Layer) {
	p := &model.Piece{Name: c.name, Layer: l, Cut: 1, DrawnOn: model.StitchLine, CutOn: sewing.OnStraight, Place: place(c.header)}
	l.Pieces = append(l.Pieces, p)
	b.scope.piece = p.Address()
	b.takePoints(c.first("points"))
	defer func() { b.points, b.scope.piece = nil, "" }()

	if e := c.attr("cut"); e != nil {
		p.Cut = b.count(e, 1, 100)
	}
	p.Mirrored = p.Cut == 2
	if e := c.attr("mirrored"); e != nil {
		p.Mirrored = b.flag(e)
	}
	if e := c.attr("drawn"); e != nil {
		p.DrawnOn = model.Drawing(b.choice(e, string(model.StitchLine), string(model.CutLine)))
	}
	unstated := model.Allowance{Width: math.NaN()}
	if e := c.attr("allowance"); e != nil {
		unstated = model.Allowance{Width: b.length(e, atLeast0), Place: place(e.Range())}
	}
	if e := c.attr("grain"); e != nil {
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
	for _, x := range c.blocks {
		if x.kind == "edge" {
			b.edge(x, p, unstated)
		}
	}
	if len(p.Edges) == 0 {
		b.fault(c.header, "Write edge \"side\" { … } inside it.", "piece %s has no edges", p.Name)
		return
	}
	if e := c.attr("fold"); e != nil {
		if p.Fold = b.edgeOf(e, p); p.Fold != nil && !p.Fold.Allowance.Own {
			p.Fold.Allowance.Width = math.NaN() // the piece's default is not for its fold
		}
	}
	for _, x := range c.blocks {
		switch x.kind {
		case "dart":
			b.dart(x, p)
		case "notch":
			b.notch(x, p)
		}
	}
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
