package model

import "understitch/model/curve"

// EndAt moves the end of a drawn edge, before any alteration, as a cutter would who
// re-draws it to another point; with handle set the line keeps its direction
// there. The cut line of a piece drawn with its allowances goes along by as much; one
// drawn beside the stitch line stays.
func (e *Edge) EndAt(p curve.Point, handle bool) {
	by := p.Sub(e.Path.End())
	e.redrawn(func(line *curve.Path) *curve.Path { return line.EndAt(line.End().Add(by), handle) })
}

// StartAt moves the start of a drawn edge in the same way.
func (e *Edge) StartAt(p curve.Point, handle bool) {
	by := p.Sub(e.Path.Start())
	e.redrawn(func(line *curve.Path) *curve.Path {
		return line.Reverse().EndAt(line.Start().Add(by), handle).Reverse()
	})
}

// MoveBy moves a drawn edge as a whole, before any alteration.
func (e *Edge) MoveBy(by curve.Point) {
	e.redrawn(func(line *curve.Path) *curve.Path { return line.Move(curve.Translate(by)) })
}

// Turn draws an edge the other way round, before any alteration.
func (e *Edge) Turn() { e.redrawn((*curve.Path).Reverse) }

func (e *Edge) redrawn(draw func(*curve.Path) *curve.Path) {
	for _, line := range []**curve.Path{&e.Path, &e.Cut} {
		if *line != nil {
			*line = draw(*line)
		}
	}
	e.Store, e.Piece.Store = Store{}, Store{}
}
