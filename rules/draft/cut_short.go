package draft

import (
	"fmt"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
	"understitch/rules/guess"
)

// cutShort judges whether a piece is cut as often as what it is sewn to. Where that
// cannot be told for certain, but the piece that lies on it is cut half or twice as
// often, it is only told when more is put right by it.
func cutShort(p *rules.Pass, piece *model.Piece) {
	say := rules.Say{Key: "count", Account: cutAccount(piece)}
	for _, e := range piece.Edges {
		if len(p.Garment.Uses(e)) == 0 { // a fold may be forgotten
			say.Under = append(say.Under, rules.Under{Rule: "edge-unused", Subject: e.Address()})
		}
	}
	if to := guess.CutShort(p.Garment, piece); to != nil {
		say.Message = func() string {
			return fmt.Sprintf("%s is cut once, and all that it is sewn to is there twice (%s): one side of the garment would be without it. Cut 2.",
				piece.Address(), sewing.Listed(addresses(to)))
		}
		say.Mend = &rules.Mend{Title: fmt.Sprintf("cut 2 of %s", piece.Address())}
		say.Cures = []rules.Cure{cutting(piece, 2)}
		for _, e := range to {
			say.Related = append(say.Related, rules.Related{Message: e.Address() + " is there twice", Place: e.Place})
		}
		p.Fault(say)
		return
	}
	other := guess.CutApart(p.Garment, piece)
	n := 0
	switch {
	case other == nil:
	case piece.Times() < other.Times() && piece.Cut == 1 && piece.Fold == nil:
		n = 2
	case piece.Times() > other.Times() && piece.Cut == 2:
		n = 1
	}
	if n == 0 {
		return
	}
	say.Only = true
	say.Cures = []rules.Cure{cutting(piece, n)}
	say.Related = []rules.Related{{Message: other.Address() + " lies on it", Place: other.Place}}
	say.Message = func() string {
		return fmt.Sprintf("%s is there %s when all is cut, and %s, which lies on it, %s. Cut %d of it.",
			piece.Address(), times(piece), other.Address(), times(other), n)
	}
	p.Fault(say)
}

// times says how often a piece is there, its halves on the fold counted.
func times(piece *model.Piece) string {
	switch n := piece.Times(); n {
	case 1:
		return "once"
	case 2:
		return "twice"
	default:
		return model.Decimal(n, 0) + " times"
	}
}

// cutting cuts a piece as often as is said, and mirrored where it is a pair.
func cutting(piece *model.Piece, n int) rules.Cure {
	address := piece.Address()
	return rules.Cure{Title: fmt.Sprintf("cut %d of %s", n, address), Make: func(g *model.Garment) {
		for _, q := range g.Pieces() {
			if q.Address() == address {
				q.Cut, q.Mirrored = n, n == 2 && q.Fold == nil
			}
		}
	}}
}

func addresses(edges []*model.Edge) []string {
	var out []string
	for _, e := range edges {
		out = append(out, e.Address())
	}
	return out
}
