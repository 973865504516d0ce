// Package allowances holds the rules over seam allowances: that the sides of a
// seam carry the same one, that it is the house's for its role, that there is
// enough for a fastener, none on a fold, that a cut line drawn beside its stitch
// line keeps to it, and that it can be turned.
//
// Allowances are widths, stated for an edge, its piece or by the house; they are
// the same all along an edge.
//
// One wrong figure makes one finding in force: where an edge differs from the edge
// it is sewn to, or is too narrow for its fastener, that finding stands for the one
// against the house's standard.
package allowances

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/rules"
)

// pencil is the source of the half millimetre that the rules allow.
const pencil = "common practice, no source: the width of a pencil line"

// unstated is the reason why an allowance cannot be judged.
func unstated(e *model.Edge) error {
	return fmt.Errorf("%s states no allowance, nor does its piece or the house", e.Address())
}

// stated is the line where the edge's allowance is or would be stated.
func stated(e *model.Edge) model.Place {
	if e.Allowance.Own {
		return e.Allowance.Place
	}
	return e.Place
}

// set is the correction that gives an edge an allowance. It rewrites the figure
// where the edge states one of its own.
func set(p *rules.Pass, e *model.Edge, width float64) *rules.Mend {
	m := &rules.Mend{Title: fmt.Sprintf("give %s an allowance of %s", e.Address(), p.Show(width))}
	if e.Allowance.Own {
		m.Edits = []rules.Edit{{Place: e.Allowance.Place, Text: p.Garment.Unit.Bare(width)}}
	}
	return m
}

// setBoth is the correction that gives two edges one allowance. It rewrites their
// figures where both state one of their own.
func setBoth(p *rules.Pass, a, b *model.Edge, width float64) *rules.Mend {
	m := &rules.Mend{Title: fmt.Sprintf("give %s and %s an allowance of %s", a.Address(), b.Address(), p.Show(width))}
	if first, second := set(p, a, width), set(p, b, width); len(first.Edits) > 0 && len(second.Edits) > 0 {
		m.Edits = append(first.Edits, second.Edits...)
	}
	return m
}

// wrongUnit names the finding that an edge's allowance is of a width that no
// allowance has. It is made once for each figure, at the first edge that takes it.
func wrongUnit(g *model.Garment, e *model.Edge) rules.Under {
	for _, piece := range g.Pieces() {
		for _, other := range piece.Edges {
			if other.Allowance.Width > 0 && other.Allowance.Place == e.Allowance.Place {
				return rules.Under{Rule: "unit-slip", Subject: other.Address(), Key: "allowance"}
			}
		}
	}
	return rules.Under{Rule: "unit-slip", Subject: e.Address(), Key: "allowance"}
}

// differs names the findings that an edge carries another allowance than what it
// is laid on.
func differs(g *model.Garment, e *model.Edge) []rules.Under {
	var out []rules.Under
	for _, u := range g.Uses(e) {
		if u.Kind.Joining() || u.Kind == model.Shared {
			out = append(out, rules.Under{Rule: "allowance-match", Subject: u.Thing.Address()})
		}
	}
	return out
}

// offStandard is how far an edge's allowance is from the house's for its role;
// nothing where the house has none for it.
func offStandard(g *model.Garment, e *model.Edge) float64 {
	if s := g.StandardOf(e); s != nil {
		return math.Abs(e.Allowance.Width - s.Width)
	}
	return 0
}

// need is the allowance that a closure's edges must have: what it states, else
// the house's for closures, else the least.
func need(g *model.Garment, c *model.Closure, least float64) float64 {
	if model.Known(c.Needs) {
		return c.Needs
	}
	if s := g.Standard(model.RoleClosure); s != nil {
		return s.Width
	}
	return least
}
