package ruletest

import (
	"slices"

	"understitch/model"
)

// withoutLevels takes out of a draft what goes by levels, so that it can be turned
// by any angle: a notch stays at the place where the level crosses its edge, and
// what runs from or to a level runs from or to a notch there. What is stated at
// levels goes, that is ease, clearances, widths, points of templates and alterations, whose lines stay as
// they have altered them; and so do darts with two points, whose line is upright by
// definition.
func withoutLevels(g *model.Garment) {
	for _, n := range g.Notches() {
		if n.Level == nil {
			continue
		}
		if at, err := n.On.LevelAt(n.Level); err == nil {
			n.At, n.Level = at, nil
		} else { // it lies nowhere, and is to lie nowhere once turned
			n.Level = &model.Level{Name: n.Level.Name, Y: model.Unknown(), Place: n.Level.Place}
		}
	}
	for _, d := range g.Pleats() {
		if s, ok := d.Strip(); ok && d.Pleat.To != nil {
			from, to := d.FoldedBetween(s)
			d.Pleat.To, d.Pleat.Reach = nil, (to-from)/s.Down.Y
		}
	}
	for _, d := range g.Pleats() { // what was measured is of the draft as it lay
		d.Piece.Store, d.On.Store = model.Store{}, model.Store{}
	}
	for _, s := range g.Seams {
		notched(s.Sides[0], s.Sides[1])
	}
	for _, s := range g.Shares {
		notched(s.Outer, s.Inner)
	}
	for _, c := range g.Closures {
		openings := append([]model.Opening{c.Edges}, c.Also...)
		for i, j := range g.JoinsOf(c) { // its marks stand on either edge
			for side := range j.Sides {
				openings[i][side] = slices.Clone(j.Sides[side])
			}
			notched(openings[i][0], openings[i][1])
		}
		c.Edges, c.Also = openings[0], openings[1:]
		c.From, c.To = model.Mark{}, model.Mark{}
	}
	g.Store = model.Store{} // what closures take was found by their levels
	for _, e := range g.Elastics {
		notched(e.Edges)
		for i := range e.Sections {
			notched(e.Sections[i].Along)
		}
	}
	for _, b := range g.Bones {
		b.Along.From, b.Along.To = onNotch(b.Along.From, b.Along.Edge), onNotch(b.Along.To, b.Along.Edge)
	}
	for _, m := range g.Measures {
		alongNotches(m)
	}
	for _, l := range g.Layers {
		l.Ease = nil
	}
	for _, e := range g.Edges() {
		if e.Traced != nil {
			e.Traced.Through = nil
		}
	}
	for _, n := range g.Insides {
		n.Clearance = nil
	}
	for _, p := range g.Pieces() {
		p.LevelsAt, p.Widths = nil, nil
		p.Darts = slices.DeleteFunc(p.Darts, func(d *model.Dart) bool { return d.On == nil })
	}
	g.Levels, g.Alterations = nil, nil
}

// alongNotches sets the marks of a run over the pattern: those of its parts, and
// where it starts on the first and ends on the last.
func alongNotches(m *model.Measure) {
	var first, last *model.Edge
	for _, item := range m.Along {
		if s := item.Stretch; s != nil {
			s.From, s.To = onNotch(s.From, s.Edge), onNotch(s.To, s.Edge)
			if last = s.Edge; first == nil {
				first = s.Edge
			}
		}
	}
	m.From, m.To = onNotch(m.From, first), onNotch(m.To, last)
}

func orMark(m, or model.Mark) model.Mark {
	if m.Kind == model.NoMark {
		return or
	}
	return m
}

func notched(sides ...[]model.Stretch) {
	for _, side := range sides {
		for i, s := range side {
			side[i].From, side[i].To = onNotch(s.From, s.Edge), onNotch(s.To, s.Edge)
		}
	}
}

// onNotch is a notch in the place of a level: the one that is at the place where the
// level crosses the edge, or a new one. Where the level does not cross the edge, no
// notch will be found either.
func onNotch(m model.Mark, e *model.Edge) model.Mark {
	if m.Kind != model.AtLevel {
		return m
	}
	at, err := e.LevelAt(m.Level)
	m.Kind, m.Notch, m.Level = model.AtNotch, "where-"+m.Level.Name+"-was", nil
	if err != nil {
		return m
	}
	for _, n := range e.Piece.Notches {
		if n.On == e && n.At == at {
			m.Notch = n.Name
			return m
		}
	}
	e.Piece.Notches = append(e.Piece.Notches, &model.Notch{
		Name: m.Notch, Piece: e.Piece, On: e, At: at, Kind: "single", Depth: model.Unknown(), Place: m.Place, Given: m.Place,
	})
	return m
}
