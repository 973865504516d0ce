package measuring

import (
	"math"
	"slices"

	"understitch/model"
)

// A piece known by tape reaches the levels at which its width is stated. Where a
// width is left out it is either a piece that ends above or below the level, as a
// yoke does, or a figure that somebody forgot; and a girth that passes over a
// forgotten one is wrong by half the body. So the pattern must show that the piece
// ends: by what it says, or by the way it is sewn.

// Unmeasured is the reason why it is not known what a paper piece measures across
// at a level; nil where its width is stated or it can be seen to end above or
// below. It ends where its levels say so, and where all that it is sewn to and
// that does reach the level is sewn on along a line that runs across.
func Unmeasured(g *model.Garment, p *model.Piece, l *model.Level) error {
	if p.Drawn() || p.PaperWidth(l) != nil {
		return nil
	}
	if p.OwnLevels {
		if _, lies := p.LevelY(l); lies {
			return model.Missingf("%s says that it reaches the %s level, and has no drawing and no width there: state what it measures across", p.Address(), l.Name)
		}
		return nil
	}
	if len(p.Widths) == 0 {
		return model.Missingf("%s has no drawing and no width at the %s level (a piece that lies at no level says levels = {})", p.Address(), l.Name)
	}
	const remedy = ": state its width there, or levels = {} if it reaches only those it has a width at"
	for _, n := range p.Notches {
		if n.Name == l.Name && model.Known(n.At) {
			return model.Missingf("%s has no drawing and no width at the %s level, which %s marks on it"+remedy, p.Address(), l.Name, n.Address())
		}
	}
	for _, q := range p.Layer.Pieces {
		if q == p || q.Drawn() || q.PaperWidth(l) == nil {
			continue // where a drawn piece is left over an edge is known: see goesOn
		}
		if by := sewnBeside(g, p, q, l); by != nil {
			return model.Missingf("%s has no drawing and no width at the %s level, which %s reaches beside it (%s)"+remedy, p.Address(), l.Name, q.Address(), by.Address())
		}
	}
	if unplaced(g, p, l) {
		return model.Missingf("%s has no drawing and no width at the %s level, and is sewn to nothing that would show whether it ends above or below"+remedy, p.Address(), l.Name)
	}
	return nil
}

// sewnBeside is what joins a piece that has no width at a level to one that has,
// so that the level would run on from this into that; nil where there is nothing.
func sewnBeside(g *model.Garment, p, q *model.Piece, l *model.Level) model.Thing {
	for _, e := range q.Edges {
		uses := g.Uses(e)
		if at, err := e.LevelAt(l); err == nil {
			uses = usesAt(g, e, at)
		}
		var by model.Thing
		goesOn := false
		for _, u := range uses {
			if u.Err != nil {
				continue
			}
			for _, s := range laidOn(g, u.Thing, e) {
				switch {
				case s.Edge.Piece.Reaches(l):
					goesOn = true
				case s.Edge.Piece == p && !sewnAcross(g, e, s.Edge):
					by = u.Thing
				}
			}
		}
		if by != nil && !goesOn {
			return by
		}
	}
	return nil
}

// unplaced reports whether nothing shows where a piece lies in its layer: it is sewn
// to no other piece, or only to such as do not reach the level either while one
// that does goes round the body with it at another level.
func unplaced(g *model.Garment, p *model.Piece, l *model.Level) bool {
	sewn := []*model.Piece{p}
	for i := 0; i < len(sewn); i++ {
		for _, e := range sewn[i].Edges {
			for _, partner := range g.Partners(e) {
				if q := partner.Piece; q.Layer == p.Layer && !slices.Contains(sewn, q) {
					sewn = append(sewn, q)
				}
			}
		}
	}
	if slices.ContainsFunc(sewn, func(q *model.Piece) bool { return q.Reaches(l) }) {
		return false
	}
	for _, q := range p.Layer.Pieces {
		if !q.Reaches(l) {
			continue
		}
		if len(sewn) == 1 || slices.ContainsFunc(p.Widths, func(w model.LevelValue) bool { return q.Reaches(w.Level) }) {
			return true
		}
	}
	return false
}

// lie is the way that an edge runs on the body.
type lie uint8

const (
	lieUnknown lie = iota
	LieDown
	lieAcross
)

// sewnAcross reports whether a seam that joins two edges can be seen to run across
// the body, so that one piece lies above it and the other below.
func sewnAcross(g *model.Garment, a, b *model.Edge) bool {
	first, second := LieOf(g, a), LieOf(g, b)
	return first != LieDown && second != LieDown && (first == lieAcross || second == lieAcross)
}

// LieOf is the way an edge runs, as far as can be seen. Of an edge on paper that
// does not show it itself, its piece may: of four edges every second one runs down,
// and one that meets a centre runs across.
func LieOf(g *model.Garment, e *model.Edge) lie {
	own := ownLie(g, e)
	if n := len(e.Piece.Edges); own != lieUnknown || n < 4 {
		return own
	} else if n == 4 {
		return lieAmongFour(g, e)
	}
	for _, atEnd := range []bool{false, true} {
		if next := e.Neighbour(atEnd); e.Piece.Fold == next || g.JoinedToItself(next) != nil {
			return lieAcross
		}
	}
	return lieUnknown
}

func lieAmongFour(g *model.Garment, e *model.Edge) lie {
	found := lieUnknown
	for _, other := range e.Piece.Edges {
		is := ownLie(g, other)
		if is == lieUnknown {
			continue
		}
		if (other.Index-e.Index)%2 != 0 {
			is = LieDown + lieAcross - is
		}
		if found != lieUnknown && found != is {
			return lieUnknown // they contradict each other
		}
		found = is
	}
	return found
}

// ownLie is what the edge itself shows: it is drawn, it is called after a level, it
// is the fold or the centre, or a level is marked on it.
func ownLie(g *model.Garment, e *model.Edge) lie {
	if e.Drawn() {
		chord := e.Path.End().Sub(e.Path.Start())
		if math.Abs(chord.X) > math.Abs(chord.Y) {
			return lieAcross
		}
		return LieDown
	}
	for _, l := range g.Levels {
		if liesAlong(e, l, 0) {
			return lieAcross
		}
	}
	if e.Piece.Fold == e || g.JoinedToItself(e) != nil {
		return LieDown
	}
	for _, l := range g.Levels {
		if _, err := e.PaperLevel(l); err == nil {
			return LieDown
		}
	}
	return lieUnknown
}
