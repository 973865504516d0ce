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
		if c := cornerOf(e, next, e.AsDrafted().End(), next.AsDrafted().Start()); c.Gap > out[i].Gap {
			out[i] = c
		}
	}
	return out, nil
}
