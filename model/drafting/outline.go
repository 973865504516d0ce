package drafting

import (
	"understitch/model"
	"understitch/model/curve"
)

// OutlineCrossing is a place where the outline of a piece crosses itself. An
// edge is nil where it is the gap between two edges that do not meet.
type OutlineCrossing struct {
	A, B *model.Edge
	At   curve.Point
}

// OutlineCrossings are the places where the outline crosses itself, or many of
// them where it lies on itself too often for all to be found.
func OutlineCrossings(p *model.Piece) ([]OutlineCrossing, error) {
	if err := p.Undrawn(); err != nil {
		return nil, err
	}
	paths := make([]*curve.Path, len(p.Edges))
	for i, e := range p.Edges {
		paths[i] = e.Path
	}
	return crossings(p, "outline", paths)
}

// CutLineCrossings are the places where the piece's cut line crosses itself, in the
// same way.
func CutLineCrossings(p *model.Piece) ([]OutlineCrossing, error) {
	paths, err := CutLine(p)
	if err != nil {
		return nil, err
	}
	return crossings(p, "cut line", paths)
}

// crossings are the places where a line drawn edge by edge crosses itself.
func crossings(p *model.Piece, line string, paths []*curve.Path) ([]OutlineCrossing, error) {
	edge := func(i int) *model.Edge {
		if i < 0 {
			return nil
		}
		return p.Edges[i]
	}
	var out []OutlineCrossing
	found, whole := curve.SelfCrossings(paths)
	if !whole && len(found) == 0 {
		return nil, model.Missingf("the %s of %s touches itself in too many places to be looked at: draw it with fewer points", line, p.Address())
	}
	for _, m := range found {
		out = append(out, OutlineCrossing{edge(m.EdgeA), edge(m.EdgeB), m.P})
	}
	return out, nil
}
