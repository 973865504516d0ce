package sewing

import (
	"slices"

	"understitch/model"
)

// RoundLength is how long a line along edges is on the garment, darts closed. A
// line that runs on into the other half of a piece, over a fold or over a seam
// of an edge with itself, is drawn by its half: it counts twice, and halves says
// so. One that ends in other pieces, as round a leg, counts as it is.
func RoundLength(g *model.Garment, stretches []model.Stretch) (length float64, halves bool, err error) {
	w, err := LayOut(g, stretches)
	if err != nil {
		return 0, false, err
	}
	for _, atEnd := range []bool{false, true} {
		corner := w.Corner(atEnd)
		if corner == nil || len(w.Runs) == 0 {
			continue
		}
		if corner.Piece.Fold == corner || slices.Contains(g.Partners(corner), corner) {
			return 2 * w.Length, true, nil
		}
	}
	return w.Length, false, nil
}
