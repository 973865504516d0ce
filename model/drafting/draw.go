package drafting

import (
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/curve"
)

// Draw draws the lines of a garment that its points do not draw, as they are
// before any alteration: traced edges, the stitch lines of pieces that were drawn
// with their allowances, and the ends of pieces that are cut off at a level. A
// line is drawn before those that are traced from it.
func Draw(g *model.Garment) []model.Diagnostic {
	d := drawing{drawn: map[*model.Piece]bool{}}
	for _, p := range g.Pieces() {
		if fault := d.piece(p); fault != nil {
			return []model.Diagnostic{*fault}
		}
	}
	return nil
}

// drawing is a garment while its lines are drawn.
type drawing struct {
	drawn   map[*model.Piece]bool
	waiting []*model.Piece // which each need the next
}

// finishes reports whether a piece's lines come out of its whole outline, so that
// none of them can be traced before all are drawn.
func finishes(p *model.Piece) bool {
	return p.DrawnOn == model.CutLine || p.Ends != nil || slices.ContainsFunc(p.Edges, func(e *model.Edge) bool {
		return e.Traced != nil && e.Traced.Moved()
	})
}

// source draws the line that another edge is traced from.
func (d *drawing) source(e *model.Edge) *model.Diagnostic {
	switch {
	case finishes(e.Piece):
		return d.piece(e.Piece)
	case e.Traced == nil || e.Traced.Line != nil:
		return nil
	}
	if fault := d.source(e.Traced.Of); fault != nil {
		return fault
	}
	n := len(e.Piece.Edges)
	l := &laying{piece: e.Piece, lines: make([]*curve.Path, n), moved: make([]*curve.Path, n), laid: make([]bool, n)}
	l.inPlace(e)
	e.Path, e.Store = l.lines[e.Index], model.Store{}
	return l.fault
}

func (d *drawing) piece(p *model.Piece) *model.Diagnostic {
	if d.drawn[p] {
		return nil
	}
	if i := slices.Index(d.waiting, p); i >= 0 {
		return roundAbout(append(d.waiting[i:], p))
	}
	d.waiting = append(d.waiting, p)
	for _, e := range p.Edges {
		if e.Traced == nil || e.Traced.Of.Piece == p {
			continue
		}
		if fault := d.source(e.Traced.Of); fault != nil {
			return fault
		}
	}
	d.waiting = d.waiting[:len(d.waiting)-1]
	d.drawn[p] = true
	return draw(p)
}

// draw draws the lines of one piece, when all lines that they are traced from are
// drawn.
func draw(p *model.Piece) *model.Diagnostic {
	inSourceOrder(p)
	if slices.ContainsFunc(p.Edges, func(e *model.Edge) bool { return e.Traced != nil }) {
		l := lay(p, nil)
		if l.fault != nil {
			return l.fault
		}
		// The edge along which the piece is cut off stands last, until it is drawn.
		lines := l.outline()
		edges := p.Edges[:len(lines)]
		if p.DrawnOn != model.CutLine && !slices.Contains(lines, nil) {
			// What was drawn to meet a line that now lies elsewhere is trimmed or run on.
			lines, _ = curve.CloseSome(lines, cornerRun, func(i int) bool {
				next := edges[(i+1)%len(edges)]
				return (movedLine(edges[i]) || movedLine(next)) && (p.Ends == nil || follows(edges[i], next))
			})
		}
		for i, e := range edges {
			if lines[i] != l.lines[i] {
				carryEdge(e, l.lines[i], move{}, lines[i])
			}
			e.Path, e.Store = lines[i], model.Store{}
		}
		p.Store = model.Store{}
	}
	if p.DrawnOn == model.CutLine {
		if fault := setIn(p); fault != "" {
			return faultAt(p.Place, "", "%s", fault)
		}
	}
	if p.Ends != nil {
		return cutOff(p)
	}
	return nil
}

// inSourceOrder puts the edges of a piece that is traced as a whole in the order of
// the piece that it is traced from, where that was cut off at a level: what was cut
// off there is not traced.
func inSourceOrder(p *model.Piece) {
	from := p.TracedFrom
	if from == nil || len(from.CutOff) == 0 && from.Ends == nil {
		return
	}
	rank := func(e *model.Edge) int {
		if p.Ends != nil && e == p.Ends.Edge {
			return len(from.Edges) // it stands last until the piece is cut off
		}
		return slices.IndexFunc(from.Edges, func(s *model.Edge) bool { return s.Name == e.Name })
	}
	gone := func(e *model.Edge) bool { return e.Traced != nil && slices.Contains(from.CutOff, e.Traced.Of) }
	if slices.ContainsFunc(p.Edges, func(e *model.Edge) bool { return rank(e) < 0 && !gone(e) }) {
		return // it lists its own edges in order
	}
	for _, e := range p.Edges {
		if gone(e) {
			p.CutOff = append(p.CutOff, e)
		}
	}
	p.Edges = slices.DeleteFunc(slices.Clone(p.Edges), gone)
	slices.SortStableFunc(p.Edges, func(a, b *model.Edge) int { return rank(a) - rank(b) })
	for i, e := range p.Edges {
		e.Index = i
	}
	p.Notches = slices.DeleteFunc(p.Notches, func(n *model.Notch) bool { return slices.Contains(p.CutOff, n.On) })
	p.Darts = slices.DeleteFunc(p.Darts, func(d *model.Dart) bool { return slices.Contains(p.CutOff, d.On) })
	if slices.Contains(p.CutOff, p.Fold) {
		p.Fold = nil
	}
}

// follows reports whether two edges that follow each other do so where both are
// traced from, if they are: else one between them makes room for the edge along
// which the piece is cut off.
func follows(e, next *model.Edge) bool {
	of, after := e.TracedFrom(), next.TracedFrom()
	return of == nil || after == nil || of.Piece != after.Piece || of.Neighbour(true) == after
}

func movedLine(e *model.Edge) bool { return e.Traced != nil && e.Traced.Moved() }

// sourcesFirst orders the pieces that have to be drawn again: each after those
// that its edges are traced from. Those whose lines stay as they are left out.
func sourcesFirst(g *model.Garment, moves map[*model.Edge]move) ([]*model.Piece, *model.Diagnostic) {
	pieces := g.Pieces()
	touched := map[*model.Piece]bool{}
	for again := true; again; {
		again = false
		for _, p := range pieces {
			if !touched[p] && slices.ContainsFunc(p.Edges, func(e *model.Edge) bool {
				return !moves[e].none() || e.Traced != nil && (e.Traced.Line != source(e) || !e.Traced.Drafted && touched[e.Traced.Of.Piece])
			}) {
				touched[p], again = true, true
			}
		}
	}
	var out, waiting []*model.Piece
	var visit func(p *model.Piece) *model.Diagnostic
	visit = func(p *model.Piece) *model.Diagnostic {
		if !touched[p] || slices.Contains(out, p) {
			return nil
		}
		if i := slices.Index(waiting, p); i >= 0 {
			return roundAbout(append(waiting[i:], p))
		}
		waiting = append(waiting, p)
		for _, e := range p.Edges {
			if e.Traced != nil && e.Traced.Of.Piece != p {
				if fault := visit(e.Traced.Of.Piece); fault != nil {
					return fault
				}
			}
		}
		waiting = waiting[:len(waiting)-1]
		out = append(out, p)
		return nil
	}
	for _, p := range pieces {
		if fault := visit(p); fault != nil {
			return nil, fault
		}
	}
	return out, nil
}

// roundAbout reports pieces that are each drawn by the next, in full.
func roundAbout(way []*model.Piece) *model.Diagnostic {
	names := make([]string, len(way))
	for i, p := range way {
		names[i] = p.Address()
	}
	return faultAt(way[0].Place, "Draw one of the lines by itself, or trace it with state = \"drafted\".",
		"these pieces are each traced from the next, in a circle: %s", strings.Join(names, " → "))
}
