package layering

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/measuring"
)

// DartsBetween is the most that the inner piece's darts take out of its width
// more than the outer's do, at any height of the inner piece's frame from top to
// bottom; nothing where they take out less. By so much the inner piece may stand
// out as it lies on the paper. The same height lies so much lower in the outer
// piece's frame. Where that is not known (NaN) no heights of the two belong together, and the
// inner piece's darts count in full. Between two ends of darts what they take out
// runs evenly enough that the heights by those ends and midway decide: at an end
// itself, or where an outline turns, the computer's arithmetic would tell what is met.
func DartsBetween(n *model.Inside, top, bottom, lower float64) (float64, error) {
	most := 0.0
	at := func(y float64) error {
		w, err := measuring.GroupWidthAt(n.Inner, y)
		taken := w.Gross - w.Net
		if err == nil && model.Known(lower) {
			w, err = measuring.GroupWidthAt(n.Outer, y+lower)
			taken -= w.Gross - w.Net
		}
		most = math.Max(most, taken)
		return err
	}
	heights := pair{n.Inner}.heights(top, bottom)
	if model.Known(lower) {
		for _, y := range (pair{n.Outer}).heights(top+lower, bottom+lower) {
			heights = append(heights, y-lower)
		}
		slices.Sort(heights)
	}
	for i := 1; i < len(heights); i++ {
		from, to := heights[i-1]+corner, heights[i]-corner
		if to < from {
			continue
		}
		for _, y := range [3]float64{from, (from + to) / 2, to} {
			if err := at(y); err != nil {
				return 0, err
			}
		}
	}
	return most, nil
}

// SameHalves reports whether both pieces are drawn as the same part of their
// layer: both as halves, or both whole. A half on the fold can be compared with
// a whole piece across, but not be laid on it.
func SameHalves(n *model.Inside) bool { return n.Outer.Times() == n.Inner.Times() }

// LaidOn is the inside's frame, where the inner piece laid by it lies on the outer
// one: drawings beside each other on one paper tell nothing.
func LaidOn(n *model.Inside, g *model.Garment) (curve.Motion, error) {
	frame, err := Frame(n, g)
	if err != nil {
		return frame, err
	}
	beside, err := BesideEachOther(n, g)
	if beside {
		err = model.Missingf("%s and %s are drawn beside each other; only a share named by align tells how one lies in the other",
			n.Outer.Address(), n.Inner.Address())
	}
	return frame, err
}

// BesideEachOther reports whether the two drawings, the inner one laid by the
// inside's frame, have nothing in common across: two pieces drawn on one paper
// beside each other, which says nothing about how one lies in the other.
func BesideEachOther(n *model.Inside, g *model.Garment) (bool, error) {
	frame, err := Frame(n, g)
	if err != nil {
		return false, err
	}
	outer, err := n.Outer[0].Region()
	if err != nil {
		return false, err
	}
	if _, err = n.Inner[0].Region(); err != nil {
		return false, err
	}
	box, low, high := outer.Bounds(), math.Inf(1), math.Inf(-1)
	for _, e := range n.Inner[0].Edges {
		b := e.Path.Move(frame).Bounds()
		low, high = math.Min(low, b.Min.X), math.Max(high, b.Max.X)
	}
	return high <= box.Min.X || low >= box.Max.X, nil
}
