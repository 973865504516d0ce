package sewing

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// Way tells by what two sides were found to run alongside each other.
const (
	ByEdge     = "the same edge twice"
	ByEnds     = "the edges at their ends"
	ByLevels   = "levels"
	ByNotches  = "notches"
	ByDrawing  = "the drawing"
	ByListing  = "the order their edges are listed in"
	ByOutlines = "outlines running past each other"
	ByOrder    = "the order in which they are stated"
	ByKinds    = "notches, single and double"
	ByNames    = "the names of notches"
	ByJoins    = "where pieces join"
	ByFlip     = "flip"
	ByNothing  = "nothing: either way is the same"
)

// joinWalks are the two sides of a join or a share, once they are laid out.
type joinWalks struct {
	model.Once[[2]*Walk]
	way string
}

// Walks lays both sides of the join out, the second in the direction of the
// first, as they are sewn.
func Walks(g *model.Garment, j *model.Join) (a, b *Walk, err error) {
	laid := model.In[joinWalks](&j.Store)
	both, err := laid.Get(func() ([2]*Walk, error) {
		first, second, way, err := pair(g, j.Sides, j.Flip, alongside, missedEnds(g))
		laid.way = way
		return [2]*Walk{first, second}, err
	})
	return both[0], both[1], err
}

// Way tells by what the direction of the second side was found; it is known
// once Walks was asked for.
func Way(j *model.Join) string { return model.In[joinWalks](&j.Store).way }

// ShareWalks lays both sides of a share out, the inner in the direction of the
// outer. Layers are drafted one from the other: where both sides name several
// edges they name them in one order. Else the edges at the ends tell, and then the
// drawing of pieces that lie in each other on one sheet, before a line is taken to
// have been drawn the other way round; where nothing shows the direction of two
// edges they are drawn the same way round.
func ShareWalks(g *model.Garment, s *model.Share) (outer, inner *Walk, way string, err error) {
	laid := model.In[joinWalks](&s.Store)
	both, err := laid.Get(func() ([2]*Walk, error) {
		first, second, way, err := pair(g, [2][]model.Stretch{s.Outer, s.Inner}, s.Flip, alongsideShared, unlikeEnds(g))
		laid.way = way
		return [2]*Walk{first, second}, err
	})
	return both[0], both[1], laid.way, err
}

func alongsideShared(g *model.Garment, a, b *Walk) (same bool, by string) {
	if len(a.Runs) > 1 && len(b.Runs) > 1 {
		return true, ByOrder
	}
	if same, ok := endsTell(g, a, b); ok {
		return same, ByEnds
	}
	if laidInside(g, a.Runs[0].Edge, b.Runs[0].Edge) {
		if same, ok := drawnAlong(a, b); ok {
			return same, ByDrawing
		}
	}
	if same, by = alongside(g, a, b); by == ByOutlines {
		return true, ByOrder
	}
	return same, by
}

// pair lays two sides out and the second in the direction of the first. Two rings
// are laid by what they show, where missed weighs how ill their ends fit; of other
// lines along finds the direction.
func pair(g *model.Garment, sides [2][]model.Stretch, flip *bool, along func(g *model.Garment, a, b *Walk) (bool, string),
	missed func(a, b *Walk) float64) (a, b *Walk, way string, err error) {
	if a, err = LayOut(g, sides[0]); err != nil {
		return nil, nil, "", err
	}
	if b, err = LayOut(g, sides[1]); err != nil {
		return nil, nil, "", err
	}
	if a.Closed(g) && b.Closed(g) && !sameEdges(a, b) && !(a.roundOnePiece() && b.roundOnePiece()) {
		return pairRings(g, a, b, sides, flip, missed)
	}
	same, way := along(g, a, b)
	if same == (flip != nil && *flip) {
		b = b.Reversed()
	}
	return a, b, way, nil
}

// sameEdges reports whether both walks are of the same edges.
func sameEdges(a, b *Walk) bool {
	return slices.EqualFunc(a.Runs, b.Runs, func(x, y Run) bool { return x.Edge == y.Edge })
}

// clearly is the difference in millimetres from which one direction fits better
// than the other beyond doubt.
const clearly = 1.0

// alongside finds whether two walks run the same way as sewn: by the heights of
// their ends, else by their notches, else by where they are drawn; else, where
// each is a list of edges, by the order in which they are listed; else they are
// two outlines that run past each other.
func alongside(g *model.Garment, a, b *Walk) (same bool, by string) {
	if len(a.Runs) == 1 && len(b.Runs) == 1 && a.Runs[0].Edge == b.Runs[0].Edge {
		return a.Runs[0].Backward() == b.Runs[0].Backward(), ByEdge
	}
	if upright(g, a, b) {
		ga, gb := fallOf(a), fallOf(b)
		as, bs := math.Abs(ga-gb), math.Abs(ga+gb)
		if math.Min(math.Abs(ga), math.Abs(gb)) > clearly && math.Abs(as-bs) > clearly {
			return as < bs, ByLevels
		}
	}
	if d := notchFit(a, b.Reversed()) - notchFit(a, b); math.Abs(d) > clearly {
		return d > 0, ByNotches
	}
	if oneFrame(a, b) {
		if same, ok := drawnAlong(a, b); ok {
			return same, ByDrawing
		}
	}
	if len(a.Runs) > 1 && len(b.Runs) > 1 {
		return true, ByListing
	}
	return false, ByOutlines
}

// drawnAlong finds in which of the two ways the ends of two drawn walks lie nearer
// together on one sheet.
func drawnAlong(a, b *Walk) (same, ok bool) {
	direct := startOf(a).Dist(startOf(b)) + endOf(a).Dist(endOf(b))
	crossed := startOf(a).Dist(endOf(b)) + endOf(a).Dist(startOf(b))
	return direct < crossed, math.Abs(direct-crossed) > clearly
}

// notchFit is what it costs to lay the notches of two walks on each other: how
// far they are misplaced, of which kind they are, and which have no partner.
func notchFit(a, b *Walk) float64 {
	return alignmentCosts(a, b)[len(a.Notches)][len(b.Notches)]
}

// oneFrame reports whether all edges of both walks are drawn in the garment's
// common frame.
func oneFrame(walks ...*Walk) bool {
	for _, w := range walks {
		for _, r := range w.Runs {
			if !r.Edge.Drawn() || r.Edge.Piece.OwnLevels {
				return false
			}
		}
	}
	return true
}

func startOf(w *Walk) curve.Point { return w.Runs[0].Edge.Path.At(w.Runs[0].From) }

func endOf(w *Walk) curve.Point {
	last := w.Runs[len(w.Runs)-1]
	return last.Edge.Path.At(last.To)
}

// upright reports whether all edges of both walks are drawn with levels, be they
// the garment's or the piece's own, so that down is the same way for all.
func upright(g *model.Garment, walks ...*Walk) bool {
	for _, w := range walks {
		for _, r := range w.Runs {
			if !r.Edge.Drawn() || !Levelled(g, r.Edge.Piece) {
				return false
			}
		}
	}
	return true
}

// fallOf is how much lower the walk ends than it starts, drawn with levels.
func fallOf(w *Walk) float64 { return endOf(w).Y - startOf(w).Y }
