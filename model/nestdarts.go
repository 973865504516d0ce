package model

import "math"

// DartsBetween is the most that the inner piece's darts take out of its width
// more than the outer's do, at any height from top to bottom of their common
// frame; nothing where they take out less. The inner piece may stand out by as
// much as it lies on the paper. Between two ends of darts what they take out
// runs evenly enough that the heights of those ends and midway decide.
func (n *Nest) DartsBetween(top, bottom float64) (float64, error) {
	heights := pair{n.Outer, n.Inner}.heights(top, bottom)
	most := 0.0
	at := func(y float64) error {
		outer, err := n.Outer.widthAt(y)
		if err != nil {
			return err
		}
		inner, err := n.Inner.widthAt(y)
		most = math.Max(most, inner.Gross-inner.Net-(outer.Gross-outer.Net))
		return err
	}
	for i, y := range heights {
		if err := at(y); err != nil {
			return 0, err
		}
		if i == 0 {
			continue
		}
		if err := at((y + heights[i-1]) / 2); err != nil {
			return 0, err
		}
	}
	return most, nil
}

// SameHalves reports whether both pieces are drawn as the same part of their
// layer: both as halves, or both whole. A half on the fold can be compared with
// a whole piece across, but not be laid on it.
func (n *Nest) SameHalves() bool { return n.Outer.Times() == n.Inner.Times() }

// OneFrame reports whether both pieces are drawn, in the garment's common
// frame, so that a height is the same in both.
func (n *Nest) OneFrame() bool {
	return n.Align == nil && n.Outer.Drawn() && n.Inner.Drawn() && !n.Outer.OwnLevels && !n.Inner.OwnLevels
}

// BesideEachOther reports whether the two drawings, the inner one laid by the
// nest's frame, have nothing in common across: two pieces drawn on one paper
// beside each other, which says nothing about how one lies in the other.
func (n *Nest) BesideEachOther(g *Garment) (bool, error) {
	frame, err := n.Frame(g)
	if err != nil {
		return false, err
	}
	outer, err := n.Outer.Region()
	if err != nil {
		return false, err
	}
	if _, err = n.Inner.Region(); err != nil {
		return false, err
	}
	box, low, high := outer.Bounds(), math.Inf(1), math.Inf(-1)
	for _, e := range n.Inner.Edges {
		b := e.Path.Move(frame).Bounds()
		low, high = math.Min(low, b.Min.X), math.Max(high, b.Max.X)
	}
	return high <= box.Min.X || low >= box.Max.X, nil
}
