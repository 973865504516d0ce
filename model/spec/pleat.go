package spec

import (
	"math"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// pleat builds a pleat or a tuck: cloth folded away along an edge.
func (b *drafter) pleat(c *block, p *model.Piece) {
	f := &model.Pleat{Kind: model.Knife}
	d := &model.Dart{Name: c.name, Piece: p, Pleat: f, Place: place(c.header)}
	p.Darts = append(p.Darts, d)
	if e := c.attr("kind"); e != nil {
		f.Kind = b.choice(e, model.Knife, model.Box, model.Inverted, model.Tuck)
	}
	f.Depth = b.length(c.attr("depth"), above0)
	d.Intake = f.TakesUp()
	if e := c.attr("towards"); e != nil {
		f.Towards = b.choice(e, model.Left, model.Right)
		if f.Kind == model.Box || f.Kind == model.Inverted {
			b.fault(c.attrs["towards"].SrcRange, "Leave it out.", "towards says to which side one fold lies, and a pleat of kind %s has two", f.Kind)
		}
	}
	d.On = b.edgeOf(c.attr("on"), p)
	b.pleatMiddle(c.attr("at"), d)
	if e := c.attr("to"); e != nil {
		b.pleatReach(e, d)
	}
}

// pleatMiddle reads where the middle of a pleat lies along its edge: a length, or
// one of the edge's ends.
func (b *drafter) pleatMiddle(e hclsyntax.Expression, d *model.Dart) {
	switch word := bareWord(e); word {
	case "":
		d.At = b.length(e, atLeast0)
	case "start":
	case "end":
		d.Pleat.AtEnd = true
	default:
		b.fault(e.Range(), "Write start, end, or a length along the edge.", "%s is not a place for the middle of a pleat", word)
	}
}

// pleatReach reads how far a pleat is folded: to a level, for a length, or
// through to the other end of the piece.
func (b *drafter) pleatReach(e hclsyntax.Expression, d *model.Dart) {
	word := bareWord(e)
	switch t, _ := e.(*hclsyntax.ScopeTraversalExpr); {
	case word == "end":
		d.Pleat.Reach = math.Inf(1)
	case word != "":
		d.Pleat.To = b.levelNamed(e, word)
	case t != nil && t.Traversal.RootName() == "level" && len(t.Traversal) == 2:
		d.Pleat.To = b.levelAt(e)
	default:
		d.Pleat.Reach = b.length(e, above0)
	}
	if to := d.Pleat.To; to != nil && d.On != nil {
		if _, ok := d.Piece.LevelY(to); !ok && drawn(d.On) {
			b.fault(e.Range(), "State its height in levels of the piece, or write a length.", "%s has no %s level of its own to which a pleat could be folded", d.Piece.Address(), to.Name)
		}
	}
}

// bareWord is the only word of an expression; "" where it is anything else.
func bareWord(e hclsyntax.Expression) string {
	if t, ok := e.(*hclsyntax.ScopeTraversalExpr); ok && len(t.Traversal) == 1 {
		return t.Traversal.RootName()
	}
	return ""
}
