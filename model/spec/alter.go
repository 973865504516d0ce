package spec

import "understitch/model"

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
	if a.Inward = b.levelValues(c.attr("inward"), signed); len(a.Inward) == 0 {
		b.fault(c.attr("inward").Range(), "For example: inward = { waist = 1.4 }.", "an alteration states how far at one level at least")
	}
	b.g.Alterations = append(b.g.Alterations, a)
}
