package model

// SewnLength of the closure along one of its edges as drawn, darts closed.
func (c *Closure) SewnLength(side int) (float64, error) { return c.stretch(side).SewnLength() }

// FullLength is how long the closure is when made up; see Stretch.FullLength.
func (c *Closure) FullLength() (length float64, halves bool, err error) {
	return c.stretch(0).FullLength()
}

// FullLength is the length of the stretch when the piece is cut, darts closed.
// An edge that runs up to the fold is drawn by its half: the cloth on the other
// side of the fold continues it, so it counts twice, and halves says so.
func (s Stretch) FullLength() (length float64, halves bool, err error) {
	from, to, err := s.Extent()
	if err != nil {
		return 0, false, err
	}
	e, fold := s.Edge, s.Edge.Piece.Fold
	length = e.Net(to) - e.Net(from)
	if fold == nil || fold == e {
		return length, false, nil
	}
	atStart := from < nearEnd && e.Neighbour(false) == fold
	atEnd := to > e.Length()-nearEnd && e.Neighbour(true) == fold
	if atStart || atEnd {
		return 2 * length, true, nil
	}
	return length, false, nil
}
