package tables

import (
	"fmt"

	"understitch/model"
	"understitch/model/measured"
	"understitch/model/measuring"
	"understitch/model/sewing"
)

// garment adds all rows, in the order of the spec.
func (t *table) garment(g *model.Garment) {
	for _, l := range g.Layers {
		t.heading(0, l.Name)
		for _, level := range g.Levels {
			t.length(1, "girth at "+level.Name, func(s measured.Size) *float64 { return at(s.Layers[l.Name].Girth, level) })
			if _, err := measuring.Girth(g, l, level); model.NotMeasured(err) {
				t.unknown = append(t.unknown, "girth of "+l.Name+" at "+level.Name+" not known: "+err.Error())
			}
		}
		for _, p := range l.Pieces {
			t.piece(g, p)
		}
	}
	t.seams(g)
	t.insides(g)
	t.closures(g)
	t.runs(g)
	t.notions(g)
}

func (t *table) piece(g *model.Garment, p *model.Piece) {
	in := func(s measured.Size) measured.Piece { return s.Layers[p.Layer.Name].Pieces[p.Name] }
	t.heading(1, p.Name)
	for _, level := range g.Levels {
		t.length(2, "across at "+level.Name, func(s measured.Size) *float64 { return at(in(s).Width, level) })
	}
	for _, e := range p.Edges {
		t.length(2, "edge "+e.Name, func(s measured.Size) *float64 { return in(s).Edges[e.Name].Length })
		if len(e.Mouths()) > 0 {
			t.length(3, closed(p), func(s measured.Size) *float64 { return in(s).Edges[e.Name].SewnLength })
		}
		if e.Drafted != nil {
			t.length(3, "before the alterations", func(s measured.Size) *float64 { return in(s).Edges[e.Name].Drafted })
		}
		if of := e.TracedFrom(); of != nil {
			t.heading(3, "traced from "+of.Address())
		}
		t.length(3, "allowance", func(s measured.Size) *float64 { return in(s).Edges[e.Name].Allowance })
	}
	for _, d := range p.Pleats() {
		of := func(s measured.Size) measured.Pleat { return in(s).Pleats[d.Name] }
		t.length(2, d.Pleat.Kind+" pleat "+d.Name+", takes up", func(s measured.Size) *float64 { return of(s).TakesUp })
		t.length(3, "of it on the drawn piece", func(s measured.Size) *float64 { return of(s).Drawn })
	}
	for _, d := range p.OnlyDarts() {
		t.length(2, "dart "+d.Name+", intake", func(s measured.Size) *float64 { return in(s).Darts[d.Name].Intake })
		for i, leg := range []string{"one leg", "the other leg"} {
			t.length(3, leg, func(s measured.Size) *float64 { return side(in(s).Darts[d.Name].Legs, i) })
		}
	}
	for _, n := range p.Notches {
		t.length(2, "notch "+n.Name+", along "+n.On.Name, func(s measured.Size) *float64 { return in(s).Notches[n.Name].At })
		t.length(3, "across on the paper", func(s measured.Size) *float64 { return in(s).Notches[n.Name].X })
		t.length(3, "down on the paper", func(s measured.Size) *float64 { return in(s).Notches[n.Name].Y })
	}
	t.length(2, "round the outline", func(s measured.Size) *float64 { return in(s).Perimeter })
	t.area(2, "area", func(s measured.Size) *float64 { return in(s).Area })
}

// closed says what of a piece is closed where an edge is measured as sewn.
func closed(p *model.Piece) string {
	if len(p.Pleats()) > 0 {
		return "darts and pleats closed"
	}
	return "darts closed"
}

func (t *table) seams(g *model.Garment) {
	t.heading(0, "seams")
	for _, x := range g.Seams {
		t.pair(x.Name, func(s measured.Size) measured.Pair { return s.Seams[x.Name] })
	}
	t.heading(0, "shared edges")
	for _, x := range g.Shares {
		t.pair(x.Name, func(s measured.Size) measured.Pair { return s.Shares[x.Name].Pair })
		t.ease(x)
	}
}

// ease adds how much ease an eased share has, and how it is spread.
func (t *table) ease(x *model.Share) {
	of := func(s measured.Size) *measured.Ease { return s.Shares[x.Name].Ease }
	first := of(t.sizes[0])
	if first == nil {
		return
	}
	in := func(s measured.Size, i int) *measured.EaseStretch {
		if e := of(s); e != nil && i < len(e.Spread) {
			return &e.Spread[i]
		}
		return nil
	}
	share := ""
	if first.Percent != nil {
		share = ", " + model.Decimal(*first.Percent, 1) + " % of its stretch"
	}
	t.length(2, "ease in all"+share, func(s measured.Size) *float64 {
		if e := of(s); e != nil {
			return &e.Length
		}
		return nil
	})
	for i, st := range first.Spread {
		t.length(3, "from "+st.From+" to "+st.To, func(s measured.Size) *float64 {
			if e := in(s, i); e != nil {
				return &e.Length
			}
			return nil
		})
	}
}

// pair adds the two sides of a seam and which way they run.
func (t *table) pair(name string, of func(measured.Size) measured.Pair) {
	way := ""
	if p := of(t.sizes[0]); p.Way != "" {
		way = "  (the second side runs " + p.Way + " the first as drawn; found by " + p.FoundBy + ")"
	}
	t.heading(1, name+way)
	t.length(2, "first side", func(s measured.Size) *float64 { return side(of(s).Sides, 0) })
	t.length(2, "second side", func(s measured.Size) *float64 { return side(of(s).Sides, 1) })
	t.length(2, "first less second", func(s measured.Size) *float64 { return of(s).Difference })
}

func (t *table) insides(g *model.Garment) {
	t.heading(0, "room between layers")
	for _, n := range g.Insides {
		t.heading(1, n.Name)
		for _, level := range g.Levels {
			t.length(2, "at "+level.Name, func(s measured.Size) *float64 { return at(s.Insides[n.Name].Clearance, level) })
		}
		t.length(2, "least anywhere between", func(s measured.Size) *float64 { return s.Insides[n.Name].Least })
		t.length(2, "inner stands outside by at most", func(s measured.Size) *float64 { return s.Insides[n.Name].Outside })
	}
}

func (t *table) closures(g *model.Garment) {
	t.heading(0, "closures")
	for _, c := range g.Closures {
		t.pair(c.Name, func(s measured.Size) measured.Pair { return s.Closures[c.Name].Pair })
		if c.Gap != nil {
			t.length(2, "a gap that serves all levels, from", func(s measured.Size) *float64 { return side(s.Closures[c.Name].Gap, 0) })
			t.length(2, "to", func(s measured.Size) *float64 { return side(s.Closures[c.Name].Gap, 1) })
		}
		for i := range t.sizes[0].Closures[c.Name].Metal {
			t.length(2, fmt.Sprintf("fastener %d, from the %s", i+1, sewing.UpperEnd(g, c)), func(s measured.Size) *float64 {
				if m := s.Closures[c.Name].Metal; i < len(m) {
					return &m[i]
				}
				return nil
			})
		}
		t.length(2, "closed, across", func(s measured.Size) *float64 { return s.Closures[c.Name].Across })
	}
}

func (t *table) runs(g *model.Garment) {
	t.heading(0, "runs over the pattern")
	for _, m := range g.Measures {
		of := func(s measured.Size) measured.Run { return s.Runs[m.Name] }
		t.heading(1, m.Name)
		parts := of(t.sizes[0]).Parts
		for i, part := range parts {
			t.length(2, part.Item, func(s measured.Size) *float64 {
				if p := of(s).Parts; i < len(p) {
					return &p[i].Length
				}
				return nil
			})
		}
		t.length(2, "in all", func(s measured.Size) *float64 { return of(s).Total })
		t.length(2, "on the body", func(s measured.Size) *float64 { return of(s).Body })
	}
}

func (t *table) notions(g *model.Garment) {
	t.heading(0, "elastic")
	for _, x := range g.Elastics {
		t.length(1, x.Name+", its own length", func(s measured.Size) *float64 { return s.Elastics[x.Name].Length })
		t.length(1, x.Name+", the edges", func(s measured.Size) *float64 { return s.Elastics[x.Name].Edges })
	}
	for _, x := range g.Elastics {
		for i, part := range t.sizes[0].Elastics[x.Name].Sections {
			of := func(s measured.Size) *measured.Section { return sectionOf(s.Elastics[x.Name], i) }
			t.length(1, x.Name+", section along "+part.Along, func(s measured.Size) *float64 {
				if part := of(s); part != nil {
					return &part.Edges
				}
				return nil
			})
			for k, word := range []string{"takes at least", "takes at most"} {
				t.length(2, word, func(s measured.Size) *float64 {
					if part := of(s); part != nil {
						return &part.Takes[k]
					}
					return nil
				})
			}
		}
	}
	t.heading(0, "bones")
	for _, x := range g.Bones {
		t.length(1, x.Name+", its own length", func(s measured.Size) *float64 { return s.Bones[x.Name].Length })
		t.length(1, x.Name+", the line it lies along", func(s measured.Size) *float64 { return s.Bones[x.Name].Along })
	}
}

func at(levels measured.Levels, level *model.Level) *float64 {
	if v, ok := levels[level.Name]; ok {
		return &v
	}
	return nil
}

func side(pair *[2]float64, i int) *float64 {
	if pair == nil {
		return nil
	}
	return &pair[i]
}

func sectionOf(e measured.Elastic, i int) *measured.Section {
	if i >= len(e.Sections) {
		return nil
	}
	return &e.Sections[i]
}
