package model

import "understitch/model/curve"

// Corner is the place of an outline where one edge ends and the next begins.
// Gap is the distance between the two in millimetres. An alteration trims edges
// and runs them on until they meet, and so hides a gap between edges as they were
// drafted: the larger of the two gaps counts.
type Corner struct {
	Before, After *Edge
	End, Start    curve.Point
	Gap           float64
}

func cornerOf(before, after *Edge, end, start curve.Point) Corner {
	return Corner{before, after, end, start, end.Dist(start)}
}

// Corners are the corners of a drawn piece in drawing order, the last where its
// outline comes back to its start.
func (p *Piece) Corners() ([]Corner, error) {
	if err := p.Undrawn(); err != nil {
		return nil, err
	}
	out := make([]Corner, len(p.Edges))
	for i, e := range p.Edges {
		next := e.Neighbour(true)
		out[i] = cornerOf(e, next, e.Path.End(), next.Path.Start())
		if c := cornerOf(e, next, e.asDrafted().End(), next.asDrafted().Start()); c.Gap > out[i].Gap {
			out[i] = c
		}
	}
	return out, nil
}

// asDrafted is the edge's line before any alteration.
func (e *Edge) asDrafted() *curve.Path {
	if e.Drafted != nil {
		return e.Drafted
	}
	return e.Path
}

// Undrawn is the reason why nothing can be told that takes the piece's whole
// outline; nil where all of it is drawn. A piece that is known by tape alone is
// named, not one of its edges.
func (p *Piece) Undrawn() error {
	if e := p.firstPaper(); e != nil {
		return e.undrawn()
	}
	return nil
}

// undrawn says that the edge, or the whole piece it belongs to, has no drawing.
func (e *Edge) undrawn() error {
	if e.Piece.Paper() {
		return missing("%s has no drawing", e.Piece.Address())
	}
	return missing("%s has no drawing", e.Address())
}

// Paper reports whether no edge of the piece is drawn.
func (p *Piece) Paper() bool {
	for _, e := range p.Edges {
		if e.Drawn() {
			return false
		}
	}
	return true
}

// OutlineCrossing is a place where the outline of a piece crosses itself. An
// edge is nil where it is the gap between two edges that do not meet.
type OutlineCrossing struct {
	A, B *Edge
	At   curve.Point
}

// OutlineCrossings are the places where the outline crosses itself, or many of
// them where it lies on itself too often for all to be found.
func (p *Piece) OutlineCrossings() ([]OutlineCrossing, error) {
	if err := p.Undrawn(); err != nil {
		return nil, err
	}
	paths := make([]*curve.Path, len(p.Edges))
	for i, e := range p.Edges {
		paths[i] = e.Path
	}
	return p.crossings("outline", paths)
}

// CutLineCrossings are the places where the piece's cut line crosses itself, in the
// same way.
func (p *Piece) CutLineCrossings() ([]OutlineCrossing, error) {
	paths, err := p.CutLine()
	if err != nil {
		return nil, err
	}
	return p.crossings("cut line", paths)
}

// crossings are the places where a line drawn edge by edge crosses itself.
func (p *Piece) crossings(line string, paths []*curve.Path) ([]OutlineCrossing, error) {
	edge := func(i int) *Edge {
		if i < 0 {
			return nil
		}
		return p.Edges[i]
	}
	var out []OutlineCrossing
	found, whole := curve.SelfCrossings(paths)
	if !whole && len(found) == 0 {
		return nil, missing("the %s of %s touches itself in too many places to be looked at: draw it with fewer points", line, p.Address())
	}
	for _, m := range found {
		out = append(out, OutlineCrossing{edge(m.EdgeA), edge(m.EdgeB), m.P})
	}
	return out, nil
}
