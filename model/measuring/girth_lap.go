package measuring

import (
	"math"
	"slices"

	"understitch/model"
)

// GirthLap is what one closure takes off a girth that crosses it: where it is
// done up, one edge lies over the other. What a lacing leaves open is added.
type GirthLap struct {
	Closure *model.Closure
	Times   float64 // how often the garment has this closure at the level
}

// Length is how much is taken off in all, in millimetres.
func (l GirthLap) Length() float64 { return (l.Closure.Lap - l.Gap()) * l.Times }

// Gap that a lacing leaves open, laced as close as it may be; nothing at other
// closures.
func (l GirthLap) Gap() float64 {
	if l.Closure.Gap == nil {
		return 0
	}
	return max(l.Closure.Gap.Low, 0)
}

// lapsAt are the closures with a lap that a level crosses on its way over these
// pieces, each once, in the garment's order. The lap counts as stated, measured
// along the level; it reaches as far as the closure does. A closure that runs more
// along the level than across it, as a gusset does, takes nothing off round the
// body.
func lapsAt(g *model.Garment, pieces []*model.Piece, level *model.Level) ([]GirthLap, error) {
	var out []GirthLap
	for _, c := range g.Closures {
		if !(c.Lap > 0) && c.Gap == nil {
			continue
		}
		for _, p := range pieces {
			crossed, err := crosses(g, c, p, level)
			if err != nil {
				return nil, err
			}
			if crossed {
				out = append(out, GirthLap{c, pairs(c)})
				break
			}
		}
	}
	return out, nil
}

// crosses reports whether the level leaves the piece over the closure.
func crosses(g *model.Garment, c *model.Closure, p *model.Piece, level *model.Level) (bool, error) {
	w, err := WidthOf(p, level)
	if err != nil {
		return false, err
	}
	var edges []model.Stretch
	for _, j := range g.JoinsOf(c) {
		edges = slices.Concat(edges, j.Sides[0], j.Sides[1])
	}
	for _, s := range edges {
		switch {
		case s.Edge.Piece != p || liesAcross(s):
		case len(w.Spans) == 0:
			if crossed, err := taped(s, c, level); crossed || err != nil {
				return crossed, err
			}
		default:
			for _, span := range w.Spans {
				if leavesOver(g, c, p, span.E0, span.S0) || leavesOver(g, c, p, span.E1, span.S1) {
					return true, nil
				}
			}
		}
	}
	return false, nil
}

// leavesOver reports whether a place of the piece's outline lies on the closure,
// or where the closure begins or ends.
func leavesOver(g *model.Garment, c *model.Closure, p *model.Piece, edge int, at float64) bool {
	if edge < 0 {
		return false
	}
	for _, u := range usesAt(g, p.Edges[edge], at) {
		if u.Thing == model.Thing(c) {
			return true
		}
	}
	return false
}

// taped tells whether a level whose width was taped crosses the closure: by its
// place on the edge, where that is known. Without it a closure that runs over the
// whole edge is taken to reach wherever the piece has a width.
func taped(s model.Stretch, c *model.Closure, level *model.Level) (bool, error) {
	from, to, err := s.Extent()
	if err != nil {
		return false, err
	}
	at, err := s.Edge.LevelAt(level)
	switch {
	case err == nil:
		return at > from-model.CornerReach && at < to+model.CornerReach, nil
	case s.Edge.Drawn():
		return false, nil // it passes the edge by
	case from < model.CornerReach && to > s.Edge.Length()-model.CornerReach:
		return true, nil
	}
	return false, model.Missingf("%s laps over, and whether it reaches the %s level is not known: %s", c.Address(), level.Name, err)
}

// liesAcross reports whether the stretch is drawn more across than up and down.
func liesAcross(s model.Stretch) bool {
	from, to, err := s.Extent()
	if err != nil || !s.Edge.Drawn() {
		return false
	}
	chord := s.Edge.Path.At(to).Sub(s.Edge.Path.At(from))
	return math.Abs(chord.X) > math.Abs(chord.Y)
}

// pairs is how often the garment has the closure: the two edges of a mirrored
// pair make one, and two edges as many as there are of either.
func pairs(c *model.Closure) float64 {
	a, b := c.Starts(0).Edge, c.Starts(1).Edge
	if c.Half != "" {
		return max(min(a.Piece.Times(), b.Piece.Times())/2, 1)
	}
	if a == b {
		return max(a.Piece.Times()/2, 1)
	}
	return min(a.Piece.Times(), b.Piece.Times())
}
