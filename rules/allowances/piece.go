package allowances

import (
	"fmt"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

// ofPiece are the edges that carry the doubtful edge's allowance by a figure of
// their piece, and differ by it from what they are laid on; none where that edge
// states its own or the house's holds for it.
func ofPiece(p *rules.Pass, d doubt) []*model.Edge {
	from := d.wrong.Allowance
	house := func(s *model.Standard) bool { return s.Place == from.Place }
	if from.Own || d.both || !model.Known(d.meant) || slices.ContainsFunc(p.Garment.Standards, house) {
		return nil
	}
	var out []*model.Edge
	for _, e := range d.wrong.Piece.Edges {
		if !e.Allowance.Own && e.Allowance.Place == from.Place && sewing.AllowanceApart(p.Garment, e) > p.Limit("match") {
			out = append(out, e)
		}
	}
	return out
}

// takenFromPiece says that a figure of a piece is wrong for several of its edges.
func takenFromPiece(d doubt, more int) string {
	others := fmt.Sprintf("so do %d more edges that differ", more)
	if more == 1 {
		others = "so does one more edge that differs"
	}
	return fmt.Sprintf("%s takes the figure from %s, and %s from what they are laid on: correct it there (%s), or take it out so that the house's hold.",
		d.wrong.Address(), d.wrong.Piece.Address(), others, d.why)
}

// mendPiece sets a piece's figure to what all those edges are to carry; where
// they are to carry several it is taken out.
func mendPiece(p *rules.Pass, d doubt, edges []*model.Edge) *rules.Mend {
	piece := d.wrong.Piece.Address()
	for _, e := range edges {
		if want := askedOf(p.Garment, e); !want.known() || !same(p, want.width, d.meant) {
			return &rules.Mend{Title: fmt.Sprintf("take the allowance of %s out of %s, or correct it there", p.Show(d.wrong.Allowance.Width), piece)}
		}
	}
	return &rules.Mend{
		Title: fmt.Sprintf("set the allowance of %s to %s", piece, p.Show(d.meant)),
		Edits: []rules.Edit{{Place: d.wrong.Allowance.Place, Text: p.Garment.Unit.Bare(d.meant)}},
	}
}
