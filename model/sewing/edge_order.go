package sewing

import (
	"math"

	"understitch/model"
)

// ways decides for every stretch of a chain whether it is walked against its
// drawing order, so that each starts where the one before it ends. Two ends
// meet where they are the same corner of a piece, or corners that a seam brings
// together; else the drawing's distances between the ends decide. All
// combinations are weighed, two at a time along the chain (dynamic programming).
func ways(g *model.Garment, stretches []model.Stretch, extents [][2]float64) []bool {
	n := len(stretches)
	cost := make([][2]float64, n)
	from := make([][2]int, n)
	for i := 1; i < n; i++ {
		for way := range 2 {
			best, bestFrom := math.Inf(1), 0
			for before := range 2 {
				c := cost[i-1][before] + apart(g, stretches, extents, i, before == 1, way == 1)
				if c < best {
					best, bestFrom = c, before
				}
			}
			cost[i][way], from[i][way] = best, bestFrom
		}
	}
	out := make([]bool, n)
	way := 0
	if n > 0 && cost[n-1][1] < cost[n-1][0] {
		way = 1
	}
	for i := n - 1; i >= 0; i-- {
		out[i] = way == 1
		way = from[i][way]
	}
	return out
}

// Costs of ends that do not visibly meet: far more than any distance on paper.
const (
	noDrawing = 1e6
	noMeeting = 1e7
)

// apart weighs how badly the end of stretch i-1 and the start of stretch i fit
// together, given the ways they are walked.
func apart(g *model.Garment, stretches []model.Stretch, extents [][2]float64, i int, before, way bool) float64 {
	a, b := stretches[i-1].Edge, stretches[i].Edge
	endA, endB := !before, way // the end of a that is left, the end of b that is entered
	sa, sb := extents[i-1][1], extents[i][0]
	if before {
		sa = extents[i-1][0]
	}
	if way {
		sb = extents[i][1]
	}
	cornerA := atCorner(a, sa, endA)
	cornerB := atCorner(b, sb, endB)
	if cornerA && cornerB && meet(g, a, endA, b, endB) {
		return 0
	}
	if a == b && math.Abs(sa-sb) < model.NearEnd {
		return 0 // two parts of one edge
	}
	if a.Drawn() && b.Drawn() {
		d := a.Path.At(sa).Dist(b.Path.At(sb))
		if a.Piece == b.Piece {
			return d
		}
		return 1 + d
	}
	if cornerA != cornerB {
		return noMeeting
	}
	return noDrawing
}

func atCorner(e *model.Edge, s float64, end bool) bool {
	if end {
		return s > e.Length()-model.NearEnd
	}
	return s < model.NearEnd
}

// meet reports whether two corners are one when sewn: the same corner of one
// piece, or corners whose other edges are joined to each other.
func meet(g *model.Garment, a *model.Edge, endA bool, b *model.Edge, endB bool) bool {
	na, nb := a.Neighbour(endA), b.Neighbour(endB)
	if na == b && nb == a && endA != endB {
		return true
	}
	if a == b && endA == endB && na.Piece.Fold == na {
		return true // the two halves of a piece on the fold
	}
	for _, partner := range g.Partners(na) {
		if partner == nb {
			return true
		}
	}
	return false
}
