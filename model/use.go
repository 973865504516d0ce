package model

import "fmt"

// UseKind tells what is done with a stretch of edge.
type UseKind string

// What can be done with an edge.
const (
	Sewn     UseKind = "seam"
	Shared   UseKind = "share"
	Closed   UseKind = "closure"
	Folded   UseKind = "fold"
	Finished UseKind = "finish"
	Gathered UseKind = "elastic"
)

// Joining reports whether the cloth goes on past the edge, so that a girth
// measured across it is closed.
func (k UseKind) Joining() bool { return k == Sewn || k == Closed || k == Folded }

// Use is one thing that is done with a stretch of an edge, from one distance to
// another along it as drawn.
type Use struct {
	Kind     UseKind
	Thing    Thing
	From, To float64
	Err      error // the stretch cannot be placed, and why
}

// uses are those of every edge of a garment, once they are listed.
type uses struct {
	of       map[*Edge][]Use
	partners map[*Edge][]*Edge
}

// Uses are everything the garment does with an edge. An edge that is named on
// both sides of a join, as the halves of a mirrored pair are, has two uses by
// that join.
func (g *Garment) Uses(e *Edge) []Use {
	kept := In[uses](&g.Store)
	if kept.of == nil {
		kept.of = g.allUses()
	}
	return kept.of[e]
}

func (g *Garment) allUses() map[*Edge][]Use {
	uses := map[*Edge][]Use{}
	add := func(kind UseKind, thing Thing, stretches ...Stretch) {
		for _, s := range stretches {
			from, to, err := s.Extent()
			uses[s.Edge] = append(uses[s.Edge], Use{kind, thing, from, to, err})
		}
	}
	for _, p := range g.Pieces() {
		for _, e := range p.Edges {
			if p.Fold == e {
				add(Folded, p, Stretch{Edge: e})
			}
			if e.Finish != "" {
				add(Finished, e, Stretch{Edge: e})
			}
		}
	}
	for _, j := range g.Joins() {
		kind := Sewn
		if _, ok := j.Thing.(*Closure); ok {
			kind = Closed
		}
		for _, side := range j.Sides {
			add(kind, j.Thing, side...)
		}
	}
	for _, s := range g.Shares {
		add(Shared, s, s.Outer...)
		add(Shared, s, s.Inner...)
	}
	for _, el := range g.Elastics {
		add(Gathered, el, el.Edges...)
	}
	return uses
}

// Partners are the edges that an edge is joined to.
func (g *Garment) Partners(e *Edge) []*Edge {
	kept := In[uses](&g.Store)
	if kept.partners == nil {
		kept.partners = map[*Edge][]*Edge{}
		for _, j := range g.Joins() {
			for i, side := range j.Sides {
				for _, s := range side {
					for _, other := range j.Sides[1-i] {
						kept.partners[s.Edge] = append(kept.partners[s.Edge], other.Edge)
					}
				}
			}
		}
	}
	return kept.partners[e]
}

// Describe names a use for a message: "seam.side", "the fold of shell.front".
func (u Use) Describe() string {
	switch u.Kind {
	case Folded:
		return fmt.Sprintf("the fold of %s", u.Thing.Address())
	case Finished:
		return "its finish"
	}
	return u.Thing.Address()
}
