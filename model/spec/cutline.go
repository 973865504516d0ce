package spec

import (
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// cutLine reads the cut line that was drawn beside an edge's stitch line:
// cut_line = { line = [...] }, in any of the ways an edge is drawn.
func (b *drafter) cutLine(x hclsyntax.Expression, e *model.Edge) {
	const how = "For example: cut_line = { line = [a, b] }."
	drawn := geometries[:len(geometries)-1] // all but length
	switch {
	case e.Piece.DrawnOn == model.CutLine:
		b.fault(x.Range(), "Take cut_line out, or draw the stitch line and say drawn = \"stitch\".",
			"edge %s is drawn along its cut line already", e.Name)
		return
	case e.Path == nil && e.Traced == nil:
		if model.Known(e.PaperLength) {
			b.fault(x.Range(), "", "edge %s has no drawing that a cut line could lie beside", e.Name)
		}
		return
	}
	if _, ok := x.(*hclsyntax.ObjectConsExpr); !ok {
		b.fault(x.Range(), how, "the cut line's drawing is meant here")
		return
	}
	list := b.entries(x)
	for _, l := range list {
		if !slices.Contains(drawn, l.key) {
			b.fault(l.keyExpr.Range(), hint(l.key, drawn), "%s is not known in a cut line", l.key)
			return
		}
	}
	switch {
	case len(list) == 0:
		b.fault(x.Range(), how, "the cut line has no drawing")
	case len(list) > 1:
		b.fault(list[1].keyExpr.Range(), "A cut line is drawn in one way.", "the cut line has both %s and %s", list[0].key, list[1].key)
	case list[0].key == "path":
		e.CutDrawn = b.pathData(list[0].value)
	default:
		e.CutDrawn = b.through(list[0].key, list[0].value)
	}
	e.CutPlace = place(x.Range())
}
