package drafting

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// laying is a piece while its traced edges are laid on it.
type laying struct {
	piece *model.Piece
	moves map[*model.Edge]move // the piece's own alterations
	lines []*curve.Path        // of each edge; nil on paper
	moved []*curve.Path        // the same after the piece's own alterations
	laid  []bool
	fault *model.Diagnostic
}

// lay gives the lines of a piece's edges: its own as they are, the traced ones as
// the lines that they are traced from lie now. Notches and darts that came along
// are put where they belong on those lines. A template is laid against its
// neighbours as the piece's own alterations move them.
func lay(p *model.Piece, moves map[*model.Edge]move) *laying {
	n := len(p.Edges)
	l := &laying{piece: p, moves: moves, lines: make([]*curve.Path, n), moved: make([]*curve.Path, n), laid: make([]bool, n)}
	var templates, inPlace []*model.Edge
	for _, e := range p.Edges {
		switch t := e.Traced; {
		case t == nil:
			l.put(e, e.Path)
		case t.Across:
			templates = append(templates, e)
		case t.Line != nil && t.Line == source(e):
			l.put(e, e.Path)
		default:
			inPlace = append(inPlace, e)
		}
	}
	for _, e := range inPlace {
		l.inPlace(e)
	}
	for len(templates) > 0 {
		next := max(0, slices.IndexFunc(templates, func(e *model.Edge) bool {
			return e.Traced.At != nil || l.laid[e.Neighbour(false).Index]
		})) // where none lies yet that another can begin at, the first stays where it is
		l.template(templates[next])
		templates = slices.Delete(templates, next, next+1)
	}
	l.inward()
	return l
}

// put takes down the line of an edge.
func (l *laying) put(e *model.Edge, line *curve.Path) {
	i := e.Index
	l.lines[i], l.moved[i], l.laid[i] = line, line, true
	if m := l.moves[e]; line != nil && !m.none() {
		l.moved[i] = m.line(line)
	}
}

func (l *laying) fail(d *model.Diagnostic) {
	if l.fault == nil {
		l.fault = d
	}
}

// begin cuts out the stretch that an edge is traced from; nil where it is on paper
// or cannot be cut.
func (l *laying) begin(e *model.Edge) *tracedLine {
	if source(e) == nil {
		l.onPaper(e)
		l.put(e, nil)
		return nil
	}
	s, fault := stretchOf(e)
	if fault != nil {
		l.fail(fault)
		l.put(e, source(e))
		return nil
	}
	if e.Traced.Mirror {
		s.move(turnOver)
	}
	return s
}

// inPlace traces an edge where the other line lies.
func (l *laying) inPlace(e *model.Edge) {
	s := l.begin(e)
	if s == nil {
		return
	}
	if drop, known := l.drop(e); known && drop != 0 {
		s.move(curve.Translate(curve.Point{Y: drop}))
	}
	if e.Traced.Reversible {
		l.turn(e, s, func(a, b curve.Point) float64 { return a.Dist(b) })
	}
	l.finish(e, s)
}

// template traces an edge at the heights of the other line, moved across to fit
// the piece.
func (l *laying) template(e *model.Edge) {
	s := l.begin(e)
	if s == nil {
		return
	}
	drop, known := l.drop(e)
	if known {
		if drop != 0 {
			s.move(curve.Translate(curve.Point{Y: drop}))
		}
		l.turn(e, s, func(a, b curve.Point) float64 { return math.Abs(a.Y - b.Y) })
	}
	var by curve.Point
	switch before := l.moved[e.Neighbour(false).Index]; {
	case e.Traced.At != nil:
		by.X = l.across(e, s.path)
	case before != nil:
		by = before.End().Sub(s.path.Start())
		if known {
			by.Y = 0
		}
	}
	if math.Hypot(by.X, by.Y) > nearEnd {
		s.move(curve.Translate(by))
	}
	l.finish(e, s)
}

// turn runs the line the other way where its ends then lie nearer to the edges
// beside it.
func (l *laying) turn(e *model.Edge, s *tracedLine, apart func(a, b curve.Point) float64) {
	start, end := s.path.Start(), s.path.End()
	on, back := 0.0, 0.0
	for _, atEnd := range []bool{false, true} {
		beside := e.Neighbour(atEnd)
		line := l.moved[beside.Index]
		if line == nil || beside == e {
			continue
		}
		nearest := func(p curve.Point) float64 { return min(apart(p, line.Start()), apart(p, line.End())) }
		if atEnd {
			on, back = on+nearest(end), back+nearest(start)
		} else {
			on, back = on+nearest(start), back+nearest(end)
		}
	}
	if back < on-nearEnd {
		s.back()
	}
}

// finish takes down the traced line and puts the notches and darts that came along
// with it where they belong.
func (l *laying) finish(e *model.Edge, s *tracedLine) {
	e.Traced.Line = source(e)
	l.put(e, s.path)
	l.marks(e, s)
}

// drop is how much further down the paper the traced line lies in this piece's
// frame, and whether the two frames have a level in common that says so.
func (l *laying) drop(e *model.Edge) (float64, bool) {
	of := e.Traced.Of.Piece
	if of == l.piece || !of.OwnLevels && !l.piece.OwnLevels {
		return 0, true
	}
	drop, known := 0.0, false
	var by *model.Level
	for _, v := range append(slices.Clone(of.LevelsAt), l.piece.LevelsAt...) {
		there, okA := of.LevelY(v.Level)
		here, okB := l.piece.LevelY(v.Level)
		switch {
		case !okA || !okB:
		case !known:
			drop, known, by = here-there, true, v.Level
		case math.Abs(here-there-drop) > sameHeight:
			l.fail(faultAt(e.Traced.Place, "Give both pieces the same heights from level to level.",
				"from the %s to the %s level %s and %s are not equally far", by.Name, v.Level.Name, of.Address(), l.piece.Address()))
			return 0, true
		}
	}
	return drop, known
}

// sameHeight is how far, in millimetres, two frames may differ from level to
// level for a line to keep its heights (common practice, no source).
const sameHeight = 0.5

// across is how far a template is moved across to meet the piece's own line at a
// level.
func (l *laying) across(e *model.Edge, template *curve.Path) float64 {
	t := e.Traced
	y, ok := l.piece.LevelY(t.At)
	if !ok {
		l.fail(faultAt(t.Place, "", "%s has no %s level of its own", l.piece.Address(), t.At.Name))
		return 0
	}
	xAt := func(line *curve.Path, whose string) (float64, bool) {
		s, ok := placeAt(line, y)
		if !ok {
			l.fail(faultAt(t.Place, "", "the %s level does not cross %s", t.At.Name, whose))
			return 0, false
		}
		return line.At(s).X, true
	}
	there, ok := xAt(template, t.Of.Address())
	if !ok {
		return 0
	}
	for _, v := range t.Through {
		if v.Level == t.At {
			return v.Value - there
		}
	}
	own := t.Own
	if own == nil && t.OwnEdge != nil {
		own = t.OwnEdge.Path
	}
	if own == nil {
		l.fail(faultAt(t.Place, "Draw the piece's own line beside trace, or write through = { "+t.At.Name+" = … }.",
			"%s has no line of its own that the template could meet at the %s level", e.Address(), t.At.Name))
		return 0
	}
	here, ok := xAt(own, "the line that "+e.Address()+" has of its own")
	if !ok {
		return 0
	}
	return here - there
}

// outline are the lines of the piece's edges, without that along which it is still
// to be cut off.
func (l *laying) outline() []*curve.Path {
	if end := l.piece.Ends; end != nil && l.lines[end.Edge.Index] == nil {
		return slices.Delete(slices.Clone(l.lines), end.Edge.Index, end.Edge.Index+1)
	}
	return l.lines
}

// inward moves traced lines towards the cloth, by the law of an alteration.
func (l *laying) inward() {
	moves := func(e *model.Edge) bool {
		t := e.Traced
		return t != nil && (t.Evenly != 0 || len(t.Inward) > 0) && l.lines[e.Index] != e.Path
	}
	if l.fault != nil || !slices.ContainsFunc(l.piece.Edges, moves) {
		return
	}
	outline := l.outline()
	if i := slices.Index(outline, nil); i >= 0 {
		l.fail(faultAt(l.piece.Place, "", "%s has no drawing, so which way inward is is not known in %s", l.piece.Edges[i].Address(), l.piece.Address()))
		return
	}
	clockwise := curve.NewRegion(outline).Clockwise()
	for _, e := range l.piece.Edges {
		if !moves(e) {
			continue
		}
		t, line := e.Traced, l.lines[e.Index]
		fall := line.End().Y - line.Start().Y
		if math.Abs(fall) < 1 {
			l.fail(faultAt(t.Place, "Draw the edge anew.", "%s runs across, and inward moves sideways", e.Address()))
			return
		}
		ramp, fault := evenly(t.Evenly), ""
		if len(t.Inward) > 0 {
			ramp, fault = rampOf(t.Inward, l.piece, e.Address())
		}
		if fault != "" {
			l.fail(faultAt(t.Place, "", "%s", fault))
			return
		}
		shift := curve.Shift{{Ramp: ramp, Factor: towardsCloth(clockwise, fall)}}
		moved := line.Sideways(shift, alterTolerance)
		carryEdge(e, line, move{aside: shift}, moved)
		l.put(e, moved)
	}
}

// evenly is the same amount at every height.
func evenly(amount float64) *curve.Ramp {
	ramp, err := curve.NewRamp([]float64{0}, []float64{amount})
	if err != nil {
		panic(err) // an amount that was read is finite
	}
	return ramp
}
