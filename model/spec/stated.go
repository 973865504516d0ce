package spec

import "understitch/model"

// stated are the places of the block's attributes.
func (b *block) stated() model.Attributes {
	out := make(model.Attributes, len(b.attrs))
	for name, a := range b.attrs {
		out[name] = place(a.Expr.Range())
	}
	return out
}
