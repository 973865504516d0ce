// Package drafting is what a cutter does to the lines of a piece before it is
// sewn: edges are re-drawn by alterations, and the cut line is set out from the
// stitch line by the allowances, or the stitch line set in from the cut line.
// It also finds where an outline or a cut line crosses itself.
//
// Lengths are millimetres in the piece's own frame, y downward. A line that
// cannot be drawn gives a diagnostic with the place of the block that asked for
// it; a figure that needs a line which is not there gives a [model.Missing].
//
// The package changes lines and says nothing of whether two lines agree: see
// package sewing.
package drafting
