package spec

import (
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// alter takes down one alteration. The garment re-draws its edges when all of
// them are known, since those of one edge add up.
func (b *drafter) alter(c *block) {
	a := &model.Alteration{Name: c.name, Place: place(c.header)}
	edges := c.attr("edges")
	for _, s := range b.stretches(edges) {
		if s.From.Kind != model.NoMark || s.To.Kind != model.NoMark {
			b.fault(edges.Range(), "Name the whole edge; amounts of 0 at levels leave the rest of it where it is.", "an alteration re-draws whole edges")
			return
		}
		a.Edges = append(a.Edges, s.Edge)
	}
	for _, e := range a.Edges {
		if source := a.By(e); source != nil {
			b.fault(edges.Range(), "Leave "+e.Address()+" out: it moves with the line that it is traced from.",
				"alter %s names %s and its trace %s", a.Name, source.Address(), e.Address())
		}
	}
	for _, way := range []struct {
		name string
		sign float64
	}{{"inward", 1}, {"outward", -1}} {
		if c.attr(way.name) == nil {
			continue
		}
		for _, v := range b.levelValues(c.attr(way.name), signed) {
			v.Value *= way.sign
			a.Inward = append(a.Inward, v)
		}
	}
	for _, way := range []struct {
		name string
		sign float64
	}{{"down", 1}, {"up", -1}} {
		if c.attr(way.name) == nil {
			continue
		}
		for _, v := range b.markValues(c.attr(way.name), a.Edges) {
			v.Value *= way.sign
			a.Down = append(a.Down, v)
		}
	}
	if c.attr("inward") == nil && c.attr("outward") == nil && c.attr("down") == nil && c.attr("up") == nil {
		b.fault(c.header, "For example: inward = { waist = 1.4 }, or down = { start = 1, end = 0 }.", "an alteration states how far its edges are moved at one place at least")
	}
	b.g.Alterations = append(b.g.Alterations, a)
}

// markValues reads amounts at places along edges: levels, notches, their ends, or
// the edges that they meet there.
func (b *drafter) markValues(e hclsyntax.Expression, edges []*model.Edge) []model.MarkValue {
	var out []model.MarkValue
	for _, x := range b.entries(e) {
		v := model.MarkValue{Name: x.key, Value: b.length(x.value, signed), Place: place(between(x.keyExpr, x.value))}
		v.Level = find(b.g.Levels, x.key, levelName)
		known := append([]string{"start", "end"}, namesOf(b.g.Levels, levelName)...)
		for _, edge := range edges {
			own := []string{"start", "end", edge.Neighbour(false).Name, edge.Neighbour(true).Name}
			for _, n := range edge.Piece.Notches {
				if n.On == edge {
					own = append(own, n.Name)
				}
			}
			known = append(known, own...)
			if v.Level == nil && !slices.Contains(own, x.key) {
				b.nothing(x.keyExpr, "level, notch or end", "", x.key, known)
				return out
			}
		}
		out = append(out, v)
	}
	return out
}
