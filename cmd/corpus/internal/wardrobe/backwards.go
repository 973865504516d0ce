package wardrobe

import (
	"slices"

	"understitch/cmd/corpus/internal/sheet"
)

// drawBackwards draws all pieces the other way round, from the last edge to the
// first. Distances along are then counted from the other end, which takes a
// garment in one size, drawn on its stitch lines.
func drawBackwards(g *sheet.Garment) {
	if len(g.Sizes) > 1 {
		return
	}
	for _, l := range g.Layers {
		for _, p := range l.Pieces {
			if p.Drawn != "" || slices.ContainsFunc(p.Edges, func(e *sheet.Edge) bool { return e.Form == sheet.Tape || e.Form == sheet.Smooth }) {
				return
			}
		}
	}
	lengths := map[string]float64{}
	for _, l := range g.Layers {
		for _, p := range l.Pieces {
			for _, e := range p.Edges {
				lengths[l.Name+"."+p.Name+"."+e.Name] = Length(e)
			}
			turnBack(p)
		}
	}
	for _, s := range g.Seams {
		otherEnds(s.A)
		otherEnds(s.B)
	}
	for _, s := range g.Shares {
		otherEnds(s.Outer)
		otherEnds(s.Inner)
	}
	for _, c := range g.Closures {
		c.From, c.To = otherEnd(c.To), otherEnd(c.From)
		for i := range c.Buttons {
			c.Buttons[i] = lengths[c.A.Edge] - c.Buttons[i]
		}
		slices.Sort(c.Buttons)
	}
}

func turnBack(p *sheet.Piece) {
	from := func(edge string, at *sheet.Num) { *at = sheet.N(Length(p.Edge(edge)) - at.Base()) }
	for _, n := range p.Notches {
		if n.At != nil {
			from(n.On, n.At)
		}
	}
	for _, d := range p.Darts {
		if d.On != "" {
			from(d.On, &d.At)
		}
	}
	slices.Reverse(p.Edges)
	for i, e := range p.Edges {
		p.Edges[i] = backwards(e)
		p.Edges[i].CutLine = slices.Clone(e.CutLine)
		slices.Reverse(p.Edges[i].CutLine)
	}
}

func otherEnds(side []sheet.Stretch) {
	for i, s := range side {
		side[i].From, side[i].To = otherEnd(s.To), otherEnd(s.From)
	}
}

func otherEnd(place string) string {
	switch place {
	case "start":
		return "end"
	case "end":
		return "start"
	}
	return place
}
