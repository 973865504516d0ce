package notches

import (
	"fmt"

	"understitch/model"
	"understitch/rules"
)

// move is the correction that puts a notch at a distance along an edge. It
// rewrites the figure that the notch is given by; one that follows a level, or
// would have to go on to another edge, is left to the cutter. It is never safe:
// the notch may be right, and the line wrong.
func move(p *rules.Pass, n *model.Notch, edge *model.Edge, along float64) *rules.Mend {
	m := &rules.Mend{Title: fmt.Sprintf("move %s to %s along %s", n.Address(), p.Show(along), edge.Address())}
	if edge != n.On || len(p.Garment.Sizes) > 0 { // one figure may not serve every size
		return m
	}
	unit := p.Garment.Unit
	switch {
	case n.ByPoint && edge.Drawn():
		at := edge.Path.At(along)
		m.Edits = []rules.Edit{{Place: n.Given, Text: fmt.Sprintf("[%s, %s]", unit.Bare(at.X), unit.Bare(at.Y))}}
	case model.Known(n.At):
		m.Edits = []rules.Edit{{Place: n.Given, Text: unit.Bare(along)}}
	}
	return m
}

// moving is the same as a cure: what else is put right by it shows which of two
// notches is the wrong one.
func moving(p *rules.Pass, n *model.Notch, edge *model.Edge, along float64) []rules.Cure {
	if edge != n.On || n.ByPoint || n.Level != nil {
		return nil
	}
	m, address := move(p, n, edge, along), n.Address()
	return []rules.Cure{{Title: m.Title, Edits: m.Edits, Make: func(g *model.Garment) {
		for _, again := range g.Notches() {
			if again.Address() == address {
				again.At = along
			}
		}
	}}}
}
