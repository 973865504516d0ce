package sewing

import (
	"math"
	"slices"

	"understitch/model"
)

// Whole is a line as it is on the made-up garment. A line that runs on into the
// other half of a piece, over a fold or over a seam of an edge with itself, is
// drawn by its half.
type Whole struct {
	Length float64 // in millimetres, darts closed, both halves
	Halves bool    // it is drawn by its half
	Copies int     // how often the garment has it
}

// WholeOf measures the line along stretches that lie end to end: what an elastic
// or a closure along them is as long as. A line that lies along the centre itself
// does not run on over it, and one that ends in other pieces, as round a leg,
// counts as it is.
func WholeOf(g *model.Garment, stretches []model.Stretch) (Whole, error) {
	w, err := LayOut(g, stretches)
	if err != nil {
		return Whole{}, err
	}
	whole := Whole{Length: w.Length, Halves: w.overCentre(g, false) || w.overCentre(g, true)}
	whole.Copies = copies(w.Runs)
	if whole.Halves {
		whole.Length *= 2
	}
	atCentre := func(r Run) bool { return atCentre(g, r.Edge) }
	if whole.Halves || slices.ContainsFunc(w.Runs, atCentre) {
		whole.Copies = max(whole.Copies/2, 1)
	}
	return whole, nil
}

// WholeClosure measures a side of a closure.
func WholeClosure(g *model.Garment, c *model.Closure, side int) (Whole, error) {
	whole, err := WholeOf(g, g.JoinOf(c).Sides[side])
	if c.Half != "" {
		whole.Copies = max(whole.Copies/2, 1)
	}
	return whole, err
}

// overCentre reports whether the line runs on into the other half at its end, or
// its start.
func (w *Walk) overCentre(g *model.Garment, atEnd bool) bool {
	last := w.Runs[0]
	if atEnd {
		last = w.Runs[len(w.Runs)-1]
	}
	corner := w.Corner(atEnd)
	return corner != nil && (corner.Piece.Fold == corner || atCentre(g, corner) && !atCentre(g, last.Edge))
}

// copies is how often a garment has a line: as often as the piece of it that is
// there the fewest times.
func copies(runs []Run) int {
	n := 0
	for i, r := range runs {
		times := int(r.Edge.Piece.Times())
		if i == 0 || times < n {
			n = times
		}
	}
	return n
}

// UpperEnd names the end of a closure from which its fasteners are placed: the upper
// one by height, else its start.
func UpperEnd(g *model.Garment, c *model.Closure) string {
	w, err := LayOut(g, g.JoinOf(c).Sides[0])
	if err != nil || !upright(g, w) || math.Abs(fallOf(w)) < clearly {
		return "start"
	}
	return "upper end"
}
