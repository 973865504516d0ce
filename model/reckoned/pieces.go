package reckoned

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/measuring"
)

// edge accounts for one edge's length and allowance.
func (l *Lines) edge(depth int, e *model.Edge) {
	if of := e.TracedFrom(); of != nil {
		l.Say(depth+1, "traced from %s", of.Address())
	}
	if e.Drafted != nil {
		l.Beside(depth+1, e.Drafted.Length(), "as drafted, before the alterations")
	}
	if e.Cut != nil {
		l.Beside(depth+1, e.Cut.Length(), "the line as drawn, with its allowance")
	}
	l.stretch(depth, 1, e, 0, e.Length())
	l.Allowance(depth, e)
}

// Stretch accounts for a stretch of edge, and adds it to what follows, or takes it
// off.
func (l *Lines) Stretch(depth int, sign float64, s model.Stretch) {
	from, to, err := s.Extent()
	if err != nil {
		l.cannot(depth, err)
		return
	}
	l.stretch(depth, sign, s.Edge, from, to)
}

// stretch accounts for what is sewn of an edge between two distances along it.
func (l *Lines) stretch(depth int, sign float64, e *model.Edge, from, to float64) {
	low, high := min(from, to), max(from, to)
	name := e.Address()
	if low > 0 || high < e.Length() {
		l.Beside(depth+1, e.Length(), "%s, the whole of the stitch line", name)
		l.Beside(depth+1, low, "from")
		l.Beside(depth+1, high, "to")
	}
	taken := 0.0
	for _, m := range e.Mouths() {
		if open := min(m.To, high) - max(m.From, low); open > 0 {
			if taken == 0 {
				l.Add(depth+1, high-low, "%s as it lies on the paper", name)
			}
			taken += open
			what := "the mouth of"
			if m.Dart.Pleat != nil {
				what = "what is folded away by"
			}
			l.Add(depth+1, -open, "less %s %s", what, m.Dart.Address())
		}
	}
	net, how := sign*(e.Net(high)-e.Net(low)), "along the stitch line"
	if !e.Drawn() {
		how = "as measured by tape, darts closed"
	}
	if taken == 0 {
		l.Add(depth, net, "%s%s %s", less(sign), name, how)
		return
	}
	l.Sum(depth, net, "%s%s %s", less(sign), name, how)
}

// Allowance tells the allowance of an edge, and where it is stated.
func (l *Lines) Allowance(depth int, e *model.Edge) {
	if !model.Known(e.Allowance.Width) {
		l.Say(depth, "no allowance is stated for %s, for its piece or by the house", e.Address())
		return
	}
	l.Beside(depth, e.Allowance.Width, "%s", AllowanceText(e))
}

// AllowanceText names an edge's allowance and where it is stated.
func AllowanceText(e *model.Edge) string {
	if e.Allowance.Place.IsZero() {
		return "the allowance of " + e.Address()
	}
	return fmt.Sprintf("the allowance of %s, stated in %s line %d", e.Address(), e.Allowance.Place.File, e.Allowance.Place.Start.Line)
}

func (l *Lines) piece(g *model.Garment, p *model.Piece) {
	for _, level := range g.Levels {
		if p.Reaches(level) {
			l.Width(0, 1, p, level)
		}
	}
	for _, e := range p.Edges {
		l.edge(0, e)
	}
	for _, d := range p.Darts {
		l.dart(d)
	}
}

// Width accounts for a piece's width at a level, and adds it to what follows, or
// takes it off.
func (l *Lines) Width(depth int, sign float64, p *model.Piece, level *model.Level) {
	w, err := measuring.WidthOf(p, level)
	if err != nil {
		l.cannot(depth, err)
		return
	}
	if len(w.Spans) == 0 {
		l.Add(depth, sign*w.Net, "%s%s across at the %s level, measured by tape, darts closed", less(sign), p.Address(), level.Name)
		return
	}
	darts := math.Abs(w.Gross-w.Net) > 1e-6
	in := depth + 1
	if darts && len(w.Spans) > 1 {
		in++
	}
	if len(w.Spans) > 1 {
		for _, s := range w.Spans {
			l.Add(in, s.X1-s.X0, "cloth from %s to %s", side(p, s.E0), side(p, s.E1))
		}
	}
	switch {
	case darts && len(w.Spans) > 1:
		l.Sum(depth+1, w.Gross, "as it lies on the paper")
	case darts:
		l.Add(depth+1, w.Gross, "as it lies on the paper")
	}
	if darts {
		for _, d := range layering.DartsAcross(p, level) {
			l.Add(depth+1, -d.Takes, "less what %s takes out there", d.Dart.Address())
		}
	}
	kind := Entry
	if darts || len(w.Spans) > 1 {
		kind = Sum
	}
	l.put(depth, kind, Millimetres, sign*w.Net, "%s%s across at the %s level", []any{less(sign), p.Address(), level.Name})
}

func side(p *model.Piece, edge int) string {
	if edge < 0 {
		return "a gap"
	}
	return p.Edges[edge].Name
}

// girth accounts for a layer's girth at a level, and the ease there.
func (l *Lines) girth(g *model.Garment, layer *model.Layer, level *model.Level) {
	if _, err := measuring.SumGirth(g, layer, level); err != nil {
		l.cannot(0, err)
		return
	}
	if !model.Known(level.Body) {
		l.Girth(0, 1, g, layer, level)
		return
	}
	l.Ease(g, layer, level)
}

// Ease accounts for how much more a layer measures round at a level than the body,
// where both are known.
func (l *Lines) Ease(g *model.Garment, layer *model.Layer, level *model.Level) {
	l.Girth(1, 1, g, layer, level)
	l.Add(1, -level.Body, "less the body there")
	girth, err := measuring.Girth(g, layer, level)
	if err != nil {
		l.cannot(0, err)
		return
	}
	l.Sum(0, girth-level.Body, "is the ease at the %s level", level.Name)
}

// Girth accounts for a layer's girth at a level, and adds it to what follows, or
// takes it off.
func (l *Lines) Girth(depth int, sign float64, g *model.Garment, layer *model.Layer, level *model.Level) {
	girth, err := measuring.SumGirth(g, layer, level)
	if err != nil {
		l.cannot(depth, err)
		return
	}
	for _, p := range girth.Pieces {
		l.round(depth+1, p, level)
	}
	for _, lap := range girth.Laps {
		l.lap(depth+1, lap)
	}
	l.Sum(depth, sign*girth.Total, "%s%s round at the %s level", less(sign), layer.Address(), level.Name)
}

// round accounts for what a piece counts in a girth.
func (l *Lines) round(depth int, p *model.Piece, level *model.Level) {
	times := p.Times()
	if times == 1 {
		l.Width(depth, 1, p, level)
		return
	}
	l.Width(depth+1, 1, p, level)
	if w, err := measuring.WidthOf(p, level); err == nil {
		l.Result(depth, w.Net*times, "%s, %g times", p.Address(), times)
	}
}

// Room accounts for the room between two layers at a level, be it from their
// girths or from the widths of pieces that insides lay in each other.
func (l *Lines) Room(depth int, sign float64, g *model.Garment, outer, inner *model.Layer, r measuring.RoomAt) {
	for _, side := range []struct {
		layer *model.Layer
		sign  float64
		round float64
	}{{outer, 1, r.Outer}, {inner, -1, r.Inner}} {
		if girth, err := measuring.Girth(g, side.layer, r.Level); err == nil && girth == side.round {
			l.Girth(depth+1, side.sign, g, side.layer, r.Level)
			continue
		}
		for _, n := range measuring.InsidesAt(g, outer, inner, r.Level) {
			if measuring.HangFrom(g, n.Outer, r.Level) && measuring.HangFrom(g, n.Inner, r.Level) {
				continue // at a waist seam the pieces above are measured
			}
			pieces := n.Outer
			if side.sign < 0 {
				pieces = n.Inner
			}
			for _, p := range pieces {
				l.round(depth+2, p, r.Level)
			}
		}
		l.Sum(depth+1, side.sign*side.round, "%s%s at the %s level, all its pieces that insides name", less(side.sign), side.layer.Address(), r.Level.Name)
	}
	l.Sum(depth, sign*r.Room(), "%sthe room at the %s level", less(sign), r.Level.Name)
}

// lap accounts for what a closure takes off a girth.
func (l *Lines) lap(depth int, lap measuring.GirthLap) {
	often := ""
	if lap.Times != 1 {
		often = fmt.Sprintf(", %g times", lap.Times)
	}
	if lap.Closure.Gap != nil {
		l.Add(depth, -lap.Length(), "and what %s leaves open at least%s", lap.Closure.Address(), often)
		return
	}
	l.Add(depth, -lap.Length(), "less what laps over at %s%s", lap.Closure.Address(), often)
}

// pleat accounts for what a pleat folds away.
func (l *Lines) pleat(d *model.Dart) {
	folds := 2.0
	if d.Pleat.Depth > 0 {
		folds = d.Intake / d.Pleat.Depth
	}
	l.Beside(1, d.Pleat.Depth, "the depth of %s, a pleat of kind %s", d.Address(), d.Pleat.Kind)
	l.Result(0, d.Intake, "%g times that is folded away by %s", folds, d.Address())
	m, ok := d.Mouth()
	if !ok {
		l.Say(1, "%s was measured by tape, with its pleats closed", d.On.Address())
		return
	}
	l.Beside(1, m.From, "along %s it begins", d.On.Address())
	l.Beside(1, m.To, "and ends")
	if drawn := m.To - m.From; d.Intake-drawn > model.NearEnd {
		l.Beside(0, drawn, "of it is on the drawn piece; the rest lies beyond the end of the edge")
	}
	if angle, err := d.CapAngle(); err == nil {
		l.BesideIn(Degrees, 1, angle, "the edge turns by, over the closed pleat")
	}
}

func (l *Lines) dart(d *model.Dart) {
	if d.Pleat != nil {
		l.pleat(d)
		return
	}
	l.Beside(0, d.Intake, "%s takes out", d.Address())
	for _, legs := range d.Legs() {
		a, b := legs.Lengths()
		l.Beside(1, a, "one leg, from the tip")
		l.Beside(1, b, "the other leg")
	}
	if d.On != nil {
		l.Beside(1, d.At, "the middle of its mouth along %s", d.On.Address())
		if angle, err := d.CapAngle(); err == nil {
			l.BesideIn(Degrees, 1, angle, "the edge turns by, over the closed dart")
		}
	}
}

func (l *Lines) notch(n *model.Notch) {
	along, off, err := n.Position()
	if err != nil {
		l.cannot(0, err)
		return
	}
	if n.ByPoint {
		l.Beside(1, off, "from the point given to the line as it is now")
	}
	if n.Level != nil {
		l.Say(1, "where the %s level crosses the edge", n.Level.Name)
	}
	l.Beside(0, along, "%s along %s as drawn", n.Address(), n.On.Address())
	l.Beside(0, n.On.Net(along), "the same with the darts before it closed")
	if model.Known(n.Depth) {
		l.Beside(0, n.Depth, "its depth")
		l.Allowance(0, n.On)
	}
}
