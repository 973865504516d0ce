package drafting

import (
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// cutOff cuts a piece off straight across at a level. The edges below are gone,
// with the notches and darts that came along on them; those that cross the level
// end on it, and the new edge runs between them.
func cutOff(p *model.Piece) *model.Diagnostic {
	end := p.Ends
	edges := slices.DeleteFunc(slices.Clone(p.Edges), func(e *model.Edge) bool { return e == end.Edge })
	lines := make([]*curve.Path, len(edges))
	for i, e := range edges {
		if lines[i] = e.Path; !e.Drawn() {
			return faultAt(end.Place, "List its edges, each with its length.",
				"%s has no drawing that could be cut off at the %s level", e.Address(), end.Level.Name)
		}
	}
	c, fault := across(p, edges, lines)
	if fault != nil {
		return fault
	}
	kept := []*model.Edge{end.Edge} // in drawing order, the new edge first
	for i := c.up; ; i = (i + 1) % len(edges) {
		e := edges[i]
		from, to := 0.0, e.Length()
		if i == c.up {
			from = c.upAt
		}
		if i == c.down {
			to = c.downAt
		}
		if to-from > nearEnd {
			shorten(e, from, to)
			kept = append(kept, e)
		}
		if i == c.down {
			break
		}
	}
	end.Edge.Path = curve.Polyline(c.from, c.to)
	p.CutOff = append(p.CutOff, slices.DeleteFunc(edges, func(e *model.Edge) bool { return slices.Contains(kept, e) })...)
	p.Darts = slices.DeleteFunc(p.Darts, func(d *model.Dart) bool {
		return d.Traced != nil && (slices.Contains(p.CutOff, d.On) || d.On == nil && d.Centre.Y > c.from.Y)
	})
	for _, d := range p.Darts {
		if d.On == nil && d.Centre.Y+d.Down > c.from.Y+nearEnd {
			return faultAt(end.Place, "Leave the dart by without, and state it anew as it is to be.", "%s reaches below the %s level", d.Address(), end.Level.Name)
		}
	}
	p.Notches = slices.DeleteFunc(p.Notches, func(n *model.Notch) bool { return slices.Contains(p.CutOff, n.On) })
	p.Widths = slices.DeleteFunc(slices.Clone(p.Widths), func(w model.LevelValue) bool {
		y, ok := p.LevelY(w.Level)
		return ok && y > c.from.Y+nearEnd
	})
	if slices.Contains(p.CutOff, p.Fold) {
		p.Fold = nil
	}
	// The list keeps its first edge where that is still there.
	first := max(1, slices.IndexFunc(kept, func(e *model.Edge) bool { return e == firstOf(p, kept[1:]) }))
	p.Edges = slices.Concat(kept[first:], kept[:first])
	for i, e := range p.Edges {
		e.Index = i
	}
	p.Store = model.Store{}
	return nil
}

// firstOf is the edge that the piece lists first of some.
func firstOf(p *model.Piece, some []*model.Edge) *model.Edge {
	for _, e := range p.Edges {
		if slices.Contains(some, e) {
			return e
		}
	}
	return nil
}

// crossing is how a level cuts an outline: on the edge with index down it goes
// below, on that with index up it comes back.
type crossing struct {
	down, up     int
	downAt, upAt float64
	from, to     curve.Point
}

// across finds the level that a piece is cut off at on its edges.
func across(p *model.Piece, edges []*model.Edge, lines []*curve.Path) (crossing, *model.Diagnostic) {
	end := p.Ends
	y, ok := p.LevelY(end.Level)
	if !ok {
		return crossing{}, faultAt(end.Place, "", "%s has no %s level of its own", p.Address(), end.Level.Name)
	}
	below := func(p curve.Point) bool { return p.Y > y+nearEnd }
	c := crossing{down: -1, up: -1}
	stray := false
	for i, line := range lines {
		starts, ends, box := below(line.Start()), below(line.End()), line.Bounds()
		if starts == ends {
			stray = stray || starts && box.Min.Y < y-nearEnd || !starts && below(box.Max)
			continue
		}
		at := slices.DeleteFunc(line.Crossings(y), func(s float64) bool { return s < nearEnd || s > line.Length()-nearEnd })
		switch {
		case len(at) > 1 || starts && c.up >= 0 || ends && c.down >= 0:
			stray = true
		case starts && len(at) == 0:
			c.up, c.upAt = i, line.Length()
		case starts:
			c.up, c.upAt = i, at[0]
		case len(at) == 0:
			c.down, c.downAt = i, 0
		default:
			c.down, c.downAt = i, at[0]
		}
	}
	switch {
	case stray:
		return c, faultAt(end.Place, "A piece is cut off where its outline goes below the level once and comes back once.",
			"the outline of %s passes the %s level more than twice", p.Address(), end.Level.Name)
	case c.down < 0 || c.up < 0:
		return c, faultAt(end.Place, "", "the %s level does not cross the outline of %s", end.Level.Name, p.Address())
	}
	c.from, c.to = lines[c.down].At(c.downAt), lines[c.up].At(c.upAt)
	return c, nil
}

// shorten leaves a stretch of an edge, with the notches and darts on it.
func shorten(e *model.Edge, from, to float64) {
	line := e.Path.Part(from, to)
	if line == e.Path {
		return
	}
	p, s := e.Piece, tracedLine{path: line, from: from, to: to}
	p.Notches = slices.DeleteFunc(p.Notches, func(n *model.Notch) bool {
		if n.On != e {
			return false
		}
		place, _, err := n.Position()
		at, on := s.along(place)
		if err == nil && on && model.Known(n.At) {
			n.At = at
		}
		return err == nil && !on && n.Traced != nil
	})
	p.Darts = slices.DeleteFunc(p.Darts, func(d *model.Dart) bool {
		if d.On != e {
			return false
		}
		at, on := s.along(d.Middle())
		if on {
			d.At = at
			if d.Pleat != nil {
				d.Pleat.AtEnd = false
			}
		}
		return !on && d.Traced != nil
	})
	e.Path, e.Store = line, model.Store{}
}

// cutAgain cuts a piece that is laid anew off at its level once more: the edges
// beside the new one, and the new one between them.
func (l *laying) cutAgain() *model.Diagnostic {
	end := l.piece.Ends.Edge
	before, after := end.Neighbour(false), end.Neighbour(true)
	fresh := func(e *model.Edge) bool { return l.lines[e.Index] != e.Path }
	if !fresh(before) && !fresh(after) {
		return nil
	}
	y, ok := l.piece.LevelY(l.piece.Ends.Level)
	if !ok {
		return nil
	}
	ends := map[*model.Edge]curve.Point{}
	for _, e := range []*model.Edge{before, after} {
		line := l.lines[e.Index]
		ends[e] = line.End()
		if e == after {
			ends[e] = line.Start()
		}
		if !fresh(e) {
			continue
		}
		s, crosses := placeAt(line, y)
		if !crosses {
			return faultAt(l.piece.Ends.Place, "", "as altered, %s does not come to the %s level any more", e.Address(), l.piece.Ends.Level.Name)
		}
		cut := line.Part(0, s)
		if e == after {
			cut = line.Part(s, line.Length())
			l.shift(e, s)
		}
		ends[e] = line.At(s)
		l.put(e, cut)
	}
	l.put(end, curve.Polyline(ends[before], ends[after]))
	return nil
}

// shift takes the notches and darts of an edge back by what was cut off its start.
func (l *laying) shift(e *model.Edge, by float64) {
	for _, n := range l.piece.Notches {
		if n.On == e && model.Known(n.At) {
			n.At -= by
		}
	}
	for _, d := range l.piece.Darts {
		if d.On == e {
			d.At -= by
		}
	}
}
