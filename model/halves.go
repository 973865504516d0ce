package model

// JoinedToItself is the seam or closure that joins an edge of a piece to the same
// edge of its other half, or nil.
func (g *Garment) JoinedToItself(e *Edge) *Join {
	for _, j := range g.Joins() {
		first, second := j.Sides[0], j.Sides[1]
		if len(first) == 1 && len(second) == 1 && first[0].Edge == e && second[0].Edge == e {
			return j
		}
	}
	return nil
}
