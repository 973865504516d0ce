package spec

import (
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// opening reads the two sides of a closure, each an edge or a list of edges that
// lie end to end. It reports whether both sides have one.
func (b *drafter) opening(e hclsyntax.Expression, o *model.Opening) bool {
	list, ok := e.(*hclsyntax.TupleConsExpr)
	if !ok || len(list.Exprs) != 2 {
		b.fault(e.Range(), "Write edges = [A, B]; the same edge twice is both sides of a mirrored pair, and a side of several edges is a list of its own.",
			"a closure has two edges")
		return false
	}
	for i := range o {
		o[i] = b.stretches(list.Exprs[i])
	}
	return len(o[0]) > 0 && len(o[1]) > 0
}

func edgesOf(o model.Opening) []*model.Edge {
	var out []*model.Edge
	for _, side := range o {
		for _, s := range side {
			out = append(out, s.Edge)
		}
	}
	return out
}

// also reads what the same opening closes on other layers: one opening, or a list
// of openings, each on a layer of its own.
func (b *drafter) also(e hclsyntax.Expression) []model.Opening {
	if list, ok := e.(*hclsyntax.TupleConsExpr); ok && severalLayers(list) {
		var out []model.Opening
		for _, x := range list.Exprs {
			var o model.Opening
			if b.opening(x, &o) {
				out = append(out, o)
			}
		}
		return out
	}
	var o model.Opening
	if !b.opening(e, &o) {
		return nil
	}
	return []model.Opening{o}
}

// severalLayers reports whether a list holds lists whose edges are of different
// layers.
func severalLayers(list *hclsyntax.TupleConsExpr) bool {
	layers := map[string]bool{}
	for _, x := range list.Exprs {
		inner, ok := x.(*hclsyntax.TupleConsExpr)
		if !ok || len(inner.Exprs) == 0 {
			return false
		}
		edge := inner.Exprs[0]
		if call, ok := edge.(*hclsyntax.FunctionCallExpr); ok && len(call.Args) > 0 {
			edge = call.Args[0]
		}
		t, ok := edge.(*hclsyntax.ScopeTraversalExpr)
		if !ok {
			return false
		}
		layers[t.Traversal.RootName()] = true
	}
	return len(layers) > 1
}

// half reads on which half of the garment a closure opens.
func (b *drafter) half(c *block, k *model.Closure) {
	e := c.attr("half")
	if e == nil {
		return
	}
	if k.Half = b.choice(e, model.Left, model.Right); k.Half != model.Left && k.Half != model.Right {
		return
	}
	for _, x := range edgesOf(k.Edges) {
		switch p := x.Piece; {
		case model.Has(k.Edges[0], x) && model.Has(k.Edges[1], x):
			b.fault(e.Range(), "Leave half out.", "%s is closed with its own other half, and that opening is there once", x.Address())
			return
		case p.Fold == nil && p.Cut < 2 && c.attr("edges") != nil && p.TracedFrom == nil:
			b.fault(e.Range(), "Leave half out, or cut 2 of the piece, or lay it to the fold.", "%s is cut once and has no other half on which %s could be sewn", p.Address(), x.Address())
			return
		}
	}
}

// lacing reads the gap that a lacing may leave.
func (b *drafter) lacing(c *block, k *model.Closure) {
	e := c.attr("gap")
	if e == nil {
		return
	}
	if k.Kind != "lacing" && k.Kind != "" {
		b.fault(c.attrs["gap"].SrcRange, "Leave it out, or write kind = \"lacing\".", "a gap is what a lacing leaves open, and closure %s is of kind %s", k.Name, k.Kind)
		return
	}
	gap := b.lengthSpan(e)
	if gap.Low < 0 || gap.High < 0 {
		b.fault(e.Range(), "", "a gap cannot be less than 0")
		return
	}
	k.Gap = &gap
}

// first reads where the middle of the first fastener lies: one length for both
// sides, or one for each.
func (b *drafter) first(e hclsyntax.Expression, k *model.Closure) {
	if k.Kind != "tape" && k.Kind != "" {
		b.fault(e.Range(), "Leave it out, or write kind = \"tape\".", "first says where the metal of a tape is, and closure %s is of kind %s", k.Name, k.Kind)
		return
	}
	list, ok := e.(*hclsyntax.TupleConsExpr)
	switch {
	case !ok:
		at := b.length(e, atLeast0)
		k.First = &[2]float64{at, at}
	case len(list.Exprs) == 2:
		k.First = &[2]float64{b.length(list.Exprs[0], atLeast0), b.length(list.Exprs[1], atLeast0)}
	default:
		b.fault(e.Range(), "Write first = mm(12), or first = [mm(12), mm(12)].", "first is one length for both sides, or one for each")
	}
}
