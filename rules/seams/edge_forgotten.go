package seams

import (
	"fmt"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/guess"
)

// forgotten says of an edge with which nothing at all is done what may have been
// meant, to see what else is put right by it: the fold, or a list of edges that
// lacks it. It gives a sentence on the fold where that may be meant.
func forgotten(p *rules.Pass, e *model.Edge, say *rules.Say) (fold string) {
	if len(p.Garment.Uses(e)) > 0 {
		return ""
	}
	if foldable(e, p.Limit("straight")) {
		how := fmt.Sprintf("lay %s to the fold: fold = %s", e.Address(), e.Name)
		if e.Piece.Cut > 1 {
			how += fmt.Sprintf(" in place of cut = %d", e.Piece.Cut)
		}
		if foldElsewhere(p.Garment, e) {
			say.Mend = &rules.Mend{Title: how}
		}
		say.Cures = append(say.Cures, rules.Cure{Title: how, Make: onFold(e.Address())})
		fold = how
	}
	for _, l := range guess.Lacks(p.Garment, e, p.Limit("fits")) {
		title := fmt.Sprintf("name %s in %s as well", e.Address(), l.Thing)
		if l.For != "" {
			title = fmt.Sprintf("write %s for %s in %s", e.Address(), l.For, l.Thing)
		}
		say.Cures = append(say.Cures, rules.Cure{Title: title, Make: func(g *model.Garment) { guess.Fill(g, l) }})
	}
	return fold
}

// foldable reports whether the edge may have been meant to lie on the fold.
func foldable(e *model.Edge, straight float64) bool {
	if e.Piece.Fold != nil || e.Piece.Cut > 2 {
		return false
	}
	return !e.Drawn() || e.Path.Straightness() <= straight
}

// foldElsewhere reports whether the edge of that name in the piece of that name of
// another layer lies on the fold.
func foldElsewhere(g *model.Garment, e *model.Edge) bool {
	for _, p := range g.Pieces() {
		if p.Layer != e.Piece.Layer && p.Name == e.Piece.Name && p.Fold != nil && p.Fold.Name == e.Name {
			return true
		}
	}
	return false
}

// onFold lays an edge to the fold and cuts its piece once; pieces that are traced
// from it as a whole follow. An allowance that the house gives an edge of no use is
// not one that was stated.
func onFold(edge string) func(*model.Garment) {
	return func(g *model.Garment) {
		for _, e := range g.Edges() {
			from := e.Piece.TracedFrom
			if e.Address() == edge || from != nil && from.Address()+"."+e.Name == edge {
				e.Piece.Fold, e.Piece.Cut, e.Piece.Mirrored = e, 1, false
				e.Allowance.Own = false
			}
		}
	}
}
