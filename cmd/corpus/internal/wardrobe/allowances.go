package wardrobe

import "understitch/cmd/corpus/internal/sheet"

// stated writes the house's allowance at every edge but the fold.
func (m *Maker) stated() {
	widths := map[string]float64{}
	for _, a := range House().Allowances {
		widths[a.Name] = a.MM
	}
	for _, l := range m.Layers {
		for _, p := range l.Pieces {
			for _, e := range p.Edges {
				if e.Name == p.Fold {
					continue
				}
				width, ok := widths[m.roleOf(l.Name+"."+p.Name+"."+e.Name, e)]
				if !ok {
					width = widths["default"]
				}
				e.Allowance = &width
			}
		}
	}
}

// roleOf is the house's allowance that an edge follows.
func (m *Maker) roleOf(address string, e *sheet.Edge) string {
	if e.Role != "" {
		return e.Role
	}
	for _, c := range m.Closures {
		if c.A.Edge == address || c.B.Edge == address {
			return "closure"
		}
	}
	for _, a := range House().Allowances {
		if e.Finish == a.Name {
			return a.Name
		}
	}
	for _, s := range m.Shares {
		for _, side := range [][]sheet.Stretch{s.Outer, s.Inner} {
			for _, st := range side {
				if st.Edge == address {
					return "enclosed"
				}
			}
		}
	}
	return "default"
}

// cutLines draws the cut line beside the stitch line of some shoulders.
func (m *Maker) cutLines() {
	for _, l := range m.Layers {
		for _, p := range l.Pieces {
			e := p.Edge("shoulder")
			if e == nil || e.Form != sheet.Line || m.IntN(3) > 0 {
				continue
			}
			for _, at := range e.Pts {
				e.CutLine = append(e.CutLine, at.By(12*fallY, -12*fallX))
			}
		}
	}
}
