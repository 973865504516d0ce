package allowances

import (
	"fmt"
	"slices"

	"understitch/model"
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
		if !e.Allowance.Own && e.Allowance.Place == from.Place && p.Garment.AllowanceApart(e) > p.Limit("match") {
			out = append(out, e)
		}
	}
	return out
}

// figureOfPiece makes one finding of all the edges of a piece for which its one
// figure is wrong.
func figureOfPiece(p *rules.Pass, say *rules.Say, d doubt, edges []*model.Edge) {
	piece, width := d.wrong.Piece.Address(), p.Show(d.wrong.Allowance.Width)
	say.Place = d.wrong.Allowance.Place
	first := say.Message
	more := len(edges) - 1
	say.Message = func() string {
		return fmt.Sprintf("%s %s takes its %s from %s, and so %s on: correct it there, or take it out so that the house's hold.",
			first(), d.wrong.Address(), width, piece, count(more))
	}
	say.Mend = &rules.Mend{Title: fmt.Sprintf("take the allowance of %s out of %s, or correct it there", width, piece)}
	for _, e := range edges {
		if want := askedOf(p.Garment, e); !want.known() || !same(p, want.width, d.meant) {
			return
		}
	}
	say.Mend = &rules.Mend{
		Title: fmt.Sprintf("set the allowance of %s to %s", piece, p.Show(d.meant)),
		Edits: []rules.Edit{{Place: say.Place, Text: p.Garment.Unit.Bare(d.meant)}},
	}
}

func count(more int) string {
	if more == 1 {
		return "does one more edge that differs from what it lies"
	}
	return fmt.Sprintf("do %d more edges that differ from what they lie", more)
}
