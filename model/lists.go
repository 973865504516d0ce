package model

// Pieces are the pieces of every layer, in the spec's order.
func (g *Garment) Pieces() []*Piece {
	var out []*Piece
	for _, l := range g.Layers {
		out = append(out, l.Pieces...)
	}
	return out
}

// Edges are the edges of every piece.
func (g *Garment) Edges() []*Edge { return ofPieces(g, func(p *Piece) []*Edge { return p.Edges }) }

// Darts are the darts of every piece.
func (g *Garment) Darts() []*Dart { return ofPieces(g, (*Piece).OnlyDarts) }

// Pleats are the pleats and tucks of every piece.
func (g *Garment) Pleats() []*Dart { return ofPieces(g, (*Piece).Pleats) }

// Notches are the notches of every piece.
func (g *Garment) Notches() []*Notch {
	return ofPieces(g, func(p *Piece) []*Notch { return p.Notches })
}

func ofPieces[T any](g *Garment, list func(*Piece) []T) []T {
	var out []T
	for _, p := range g.Pieces() {
		out = append(out, list(p)...)
	}
	return out
}

// Join is a pair of sides that come together: a seam, or a closure done up.
type Join struct {
	Thing
	Name  string
	Sides [2][]Stretch
	Ease  Range
	Flip  *bool  // which way round, where it is stated
	Half  string // the half of the garment that it joins; "" for both
	Also  bool   // edges of another layer that a closure opens too

	Store Store // what is computed of it
}

// joins are those of a garment, once they are listed.
type joins struct {
	all []*Join
	of  map[Thing]*Join
}

// Joins are the seams and the closures.
func (g *Garment) Joins() []*Join {
	kept := In[joins](&g.Store)
	if kept.all == nil {
		kept.all = make([]*Join, 0, len(g.Seams)+len(g.Closures))
		for _, s := range g.Seams {
			kept.all = append(kept.all, &Join{Thing: s, Name: s.Name, Sides: s.Sides, Ease: s.Ease, Flip: s.Flip})
		}
		for _, c := range g.Closures {
			for i, o := range c.openings() {
				sides := [2][]Stretch{g.between(c, o[0], i > 0), g.between(c, o[1], i > 0)}
				kept.all = append(kept.all, &Join{Thing: c, Name: c.Name, Sides: sides, Half: c.Half, Also: i > 0})
			}
		}
	}
	return kept.all
}

// JoinOf finds the join of a seam or closure; of a closure the one by its own
// edges.
func (g *Garment) JoinOf(thing Thing) *Join {
	kept := In[joins](&g.Store)
	if kept.of == nil {
		kept.of = make(map[Thing]*Join, len(g.Joins()))
		for _, j := range g.Joins() {
			if !j.Also {
				kept.of[j.Thing] = j
			}
		}
	}
	return kept.of[thing]
}
