package reckoned

import (
	"fmt"
	"math"

	"understitch/model"
)

// edge accounts for one edge's length and allowance.
func (l *Lines) edge(depth int, e *model.Edge) {
	if !e.Drawn() {
		l.figure(depth, e.PaperLength, "%s, measured by tape, darts closed", e.Address())
		l.allowance(depth, e)
		return
	}
	if e.Drafted != nil {
		l.figure(depth+1, e.Drafted.Length(), "as drafted, before the alterations")
	}
	if e.Cut != nil {
		l.figure(depth+1, e.Cut.Length(), "the line as drawn, with its allowance")
	}
	l.stretch(depth, e, 0, e.Length())
	l.allowance(depth, e)
}

// stretch accounts for what is sewn of an edge between two distances along it.
func (l *Lines) stretch(depth int, e *model.Edge, from, to float64) {
	low, high := min(from, to), max(from, to)
	name := e.Address()
	if low > 0 || high < e.Length() {
		l.figure(depth+1, e.Length(), "%s, the whole of the stitch line", name)
		l.figure(depth+1, low, "from")
		l.figure(depth+1, high, "to")
	}
	taken := 0.0
	for _, m := range e.Mouths() {
		if open := min(m.To, high) - max(m.From, low); open > 0 {
			if taken == 0 {
				l.figure(depth+1, high-low, "%s as it lies on the paper", name)
			}
			taken += open
			l.figure(depth+1, -open, "less the mouth of %s", m.Dart.Address())
		}
	}
	l.sum(depth, e.Net(high)-e.Net(low), "%s along the stitch line", name)
}

func (l *Lines) allowance(depth int, e *model.Edge) {
	switch {
	case !model.Known(e.Allowance.Width):
		l.say(depth, "no allowance is stated for it, for its piece or by the house")
	case e.Allowance.Place.IsZero():
		l.figure(depth, e.Allowance.Width, "allowance")
	default:
		l.figure(depth, e.Allowance.Width, "allowance, stated in %s line %d", e.Allowance.Place.File, e.Allowance.Place.Start.Line)
	}
}

func (l *Lines) piece(g *model.Garment, p *model.Piece) {
	for _, level := range g.Levels {
		if p.Reaches(level) {
			l.width(0, p, level)
		}
	}
	for _, e := range p.Edges {
		l.edge(0, e)
	}
	for _, d := range p.Darts {
		l.dart(d)
	}
}

// width accounts for a piece's width at a level.
func (l *Lines) width(depth int, p *model.Piece, level *model.Level) {
	w, err := p.Width(level)
	if err != nil {
		l.cannot(depth, err)
		return
	}
	if len(w.Spans) == 0 {
		l.figure(depth, w.Net, "%s across at the %s level, measured by tape, darts closed", p.Address(), level.Name)
		return
	}
	if len(w.Spans) > 1 {
		for _, s := range w.Spans {
			l.figure(depth+1, s.X1-s.X0, "cloth from %s to %s", side(p, s.E0), side(p, s.E1))
		}
	}
	if math.Abs(w.Gross-w.Net) > 1e-6 {
		l.figure(depth+1, w.Gross, "as it lies on the paper")
		l.figure(depth+1, w.Net-w.Gross, "less what its darts take out there")
	}
	l.sum(depth, w.Net, "%s across at the %s level", p.Address(), level.Name)
}

func side(p *model.Piece, edge int) string {
	if edge < 0 {
		return "a gap"
	}
	return p.Edges[edge].Name
}

// girth accounts for a layer's girth at a level.
func (l *Lines) girth(g *model.Garment, layer *model.Layer, level *model.Level) {
	girth, err := g.GirthSum(layer, level)
	if err != nil {
		l.cannot(0, err)
		return
	}
	for _, p := range girth.Pieces {
		l.width(2, p, level)
		if w, err := p.Width(level); err == nil && p.Times() != 1 {
			l.sum(1, w.Net*p.Times(), "%s, %g times", p.Address(), p.Times())
		}
	}
	for _, lap := range girth.Laps {
		l.lap(lap)
	}
	l.sum(0, girth.Total, "%s round at the %s level", layer.Address(), level.Name)
	if model.Known(level.Body) {
		l.figure(0, level.Body, "the body there")
		l.sum(0, girth.Total-level.Body, "ease at the %s level", level.Name)
	}
}

// lap accounts for what a closure takes off a girth.
func (l *Lines) lap(lap model.GirthLap) {
	often := ""
	if lap.Times != 1 {
		often = fmt.Sprintf(", %g times", lap.Times)
	}
	l.figure(1, -lap.Length(), "less what laps over at %s%s", lap.Closure.Address(), often)
}

func (l *Lines) dart(d *model.Dart) {
	l.figure(0, d.Intake, "%s takes out", d.Address())
	for _, legs := range d.Legs() {
		a, b := legs.Lengths()
		l.figure(1, a, "one leg, from the tip")
		l.figure(1, b, "the other leg")
	}
	if d.On != nil {
		l.figure(1, d.At, "the middle of its mouth along %s", d.On.Address())
		if angle, err := d.CapAngle(); err == nil {
			*l = append(*l, Line{Depth: 1, Text: "the edge turns by, over the closed dart", Figure: angle, Degree: true})
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
		l.figure(1, off, "from the point given to the line as it is now")
	}
	if n.Level != nil {
		l.say(1, "where the %s level crosses the edge", n.Level.Name)
	}
	l.figure(0, along, "%s along %s as drawn", n.Address(), n.On.Address())
	l.sum(0, n.On.Net(along), "the same with the darts before it closed")
	if model.Known(n.Depth) {
		l.figure(0, n.Depth, "its depth")
		l.allowance(0, n.On)
	}
}
