package model

import "strings"

// Group is one piece, or several pieces of a layer that are sewn to each other
// and compared as one: where two layers have their seams in different places,
// only what lies between the same lines on both can be compared.
type Group []*Piece

// Address names the pieces of the group.
func (g Group) Address() string {
	names := make([]string, len(g))
	for i, p := range g {
		names[i] = p.Address()
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// Where the first piece's block stands.
func (g Group) Where() Place { return g[0].Place }

// Layer is the layer that the pieces belong to.
func (g Group) Layer() *Layer { return g[0].Layer }

// Has reports whether a piece belongs to the group.
func (g Group) Has(p *Piece) bool {
	for _, own := range g {
		if own == p {
			return true
		}
	}
	return false
}

// Reaches reports whether every piece reaches a level.
func (g Group) Reaches(l *Level) bool {
	return g.every(func(p *Piece) bool { return p.Reaches(l) })
}

// Drawn reports whether every piece is drawn.
func (g Group) Drawn() bool { return g.every((*Piece).Drawn) }

// OnFold reports whether every piece is drawn as a half on the fold.
func (g Group) OnFold() bool { return g.every(func(p *Piece) bool { return p.Fold != nil }) }

func (g Group) every(holds func(*Piece) bool) bool {
	for _, p := range g {
		if !holds(p) {
			return false
		}
	}
	return true
}

// LevelY is the height of a level in the frame of the first piece.
func (g Group) LevelY(l *Level) (float64, bool) { return g[0].LevelY(l) }

// Times is how often what is drawn counts in a girth; 1 where the pieces differ
// in that, and each is then measured whole.
func (g Group) Times() float64 {
	times := g[0].Times()
	if g.every(func(p *Piece) bool { return p.Times() == times }) {
		return times
	}
	return 1
}

// Width measures the pieces across at a level, side by side.
func (g Group) Width(l *Level) (Width, error) {
	return g.across(func(p *Piece) (Width, error) { return p.Width(l) })
}

// widthAt measures the pieces across at a height of the common frame.
func (g Group) widthAt(y float64) (Width, error) {
	return g.across(func(p *Piece) (Width, error) { return p.widthAt(y) })
}

func (g Group) across(width func(*Piece) (Width, error)) (Width, error) {
	if len(g) == 1 {
		return width(g[0])
	}
	var sum Width
	for _, p := range g {
		w, err := width(p)
		if err != nil {
			return Width{}, err
		}
		share := p.Times() / g.Times()
		sum.Net += w.Net * share
		sum.Gross += w.Gross * share
	}
	return sum, nil
}
