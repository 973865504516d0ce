package model

import "slices"

// The roles of an edge that decide which of the house's allowances it follows.
const (
	RoleFold     = "fold"
	RoleClosure  = "closure"
	RoleEnclosed = "enclosed"
	RoleDefault  = "default"
)

// RoleOf tells which of the house's allowances an edge follows: its own role
// where it states one; none on a fold; the closure's where a fastener is sewn to
// it, or to an edge that it shares its line with; its finish's (a hem, a facing) where the house has one of that
// name; the enclosed one where layers share it, so that it is turned in
// between them; else the default.
func (g *Garment) RoleOf(e *Edge) string {
	switch {
	case e.Role != "":
		return e.Role
	case e.Piece.Fold == e:
		return RoleFold
	case g.closes(e):
		return RoleClosure
	case e.Finish != "" && g.Standard(e.Finish) != nil:
		return e.Finish
	case g.shares(e) && g.Standard(RoleEnclosed) != nil:
		return RoleEnclosed
	}
	return RoleDefault
}

// Standard finds the house's allowance for a role, or nil.
func (g *Garment) Standard(role string) *Standard {
	for _, s := range g.Standards {
		if s.Role == role {
			return s
		}
	}
	return nil
}

// StandardOf is the allowance that an edge follows by its role, or nil. In the place of
// the house's default stands that of the edge's layer, or else of its fabric.
func (g *Garment) StandardOf(e *Edge) *Standard {
	if role := g.RoleOf(e); role != RoleDefault {
		return g.Standard(role)
	}
	return g.DefaultOf(e)
}

// DefaultOf is the allowance of an edge that has no role of its own, or nil.
func (g *Garment) DefaultOf(e *Edge) *Standard {
	switch l := e.Piece.Layer; {
	case l.Standard != nil:
		return l.Standard
	case l.Fabric != nil && l.Fabric.Standard != nil:
		return l.Fabric.Standard
	}
	return g.Standard(RoleDefault)
}

func (g *Garment) closes(e *Edge) bool {
	takes := func(e *Edge) bool {
		return slices.ContainsFunc(g.Closures, func(c *Closure) bool { return c.Takes(e) })
	}
	if takes(e) {
		return true
	}
	for _, s := range g.Shares {
		side, other := s.Outer, s.Inner
		if !Has(side, e) {
			side, other = other, side
		}
		// Edges that meet by their order along the share, as most do, are one line.
		if len(side) != len(other) || !Has(side, e) {
			continue
		}
		for i := range side {
			if side[i].Edge == e && takes(other[i].Edge) {
				return true
			}
		}
	}
	return false
}

func (g *Garment) shares(e *Edge) bool {
	for _, s := range g.Shares {
		for _, side := range [][]Stretch{s.Outer, s.Inner} {
			for _, st := range side {
				if st.Edge == e {
					return true
				}
			}
		}
	}
	return false
}
