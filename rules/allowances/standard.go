package allowances

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/allowance-standard.bad.garment.hcl
var standardBad string

//go:embed testdata/allowance-standard.good.garment.hcl
var standardGood string

//go:embed testdata/allowance-standard.house.hcl
var standardHouse string

// Standard checks that an edge carries the house's allowance for its role.
var Standard = rules.Rule{
	Name:     "allowance-standard",
	Family:   "allowances",
	Severity: rules.Warning,
	Settled:  true,
	Under:    []string{"allowance-match", "allowance-closure", "edge-unused", "unit-slip"},
	Doc: rules.Doc{
		Title: "An edge carries the house's allowance for its role",
		Why:   "The machinists sew to the house's allowances without looking them up. One that is different by accident is sewn as if it were not.",
		How: "An edge's role is what it says itself. Where it says nothing, the first of these holds: the closure's if a fastener is sewn to it; " +
			"its finish's if the house has an allowance of that name; the enclosed one if layers share it; else the default. Its allowance is " +
			"held against the house's for that role. A figure that a piece states for all its edges is reported once. An edge that lies on a shared " +
			"closure has the closure's role. Where the edge differs from what it is sewn to, is too narrow for its fastener, or has a width that no allowance has, that finding stands for this one.",
		Nothing: "The house states no allowance for the edge's role, or the edge lies on the fold.",
		Fix:     "Take the edge's own allowance out, so that the house's holds; or state its role, if it is another.",
		Bad:     standardBad, Good: standardGood, House: standardHouse, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "standard", Value: 0.5, Unit: rules.Millimetres, Text: "how far an allowance may be from the house's", Source: pencil},
	},
	Each: rules.Edges(standard),
}

func standard(p *rules.Pass, e *model.Edge) {
	house := standardOf(p, e)
	if house == nil {
		p.NothingHere()
		return
	}
	if !model.Known(e.Allowance.Width) {
		p.Cannot(unstated(e), rules.Say{})
		return
	}
	place, others := stated(e), 0
	if off(p, e) && !e.Allowance.Own {
		place = e.Allowance.Place // the piece's, which holds for several
		first, n := alsoOff(p, e)
		if first != e {
			p.NothingHere()
			return
		}
		others = n - 1
	}
	p.AtMost(offStandard(p.Garment, e), "standard", rules.Say{
		Place:   place,
		Under:   underStandard(p, e),
		Account: standardAccount(e, house),
		Message: func() string {
			text := fmt.Sprintf("%s carries an allowance of %s, and %s for %s is %s",
				e.Address(), p.Show(e.Allowance.Width), whose(house), roleText(house.Role), p.Show(house.Width))
			switch {
			case others == 1:
				text += "; one more edge takes the same figure from its piece"
			case others > 1:
				text += fmt.Sprintf("; %d more edges take the same figure from their piece", others)
			}
			return text + ". Take it out, so that " + whose(house) + " holds, or state the role it has."
		},
		Related: []rules.Related{{Message: whose(house) + " allowance", Place: house.Place}},
		Mend: &rules.Mend{
			Title: fmt.Sprintf("set it to %s", p.Show(house.Width)),
			Edits: []rules.Edit{{Place: place, Text: p.Garment.Unit.Bare(house.Width)}},
		},
	})
}

// whose names who states an allowance: "the house's", "that of fabric.satin".
func whose(s *model.Standard) string {
	if s.Of == "" {
		return "the house's"
	}
	return s.Of + "'s"
}

func roleText(role string) string {
	if role == model.RoleDefault {
		return "other edges"
	}
	return "the role " + role
}

// standardOf is the house's allowance that the edge is to be compared with, or
// nil where the house has none for it, or a closure states its own.
func standardOf(p *rules.Pass, e *model.Edge) *model.Standard {
	role := p.Garment.RoleOf(e)
	house := p.Garment.StandardOf(e)
	if house == nil || e.Piece.Fold == e {
		return nil
	}
	for _, c := range closuresOf(p.Garment, e) {
		if role == model.RoleClosure && model.Known(c.Needs) {
			return nil
		}
	}
	return house
}

// closuresOf are the closures that take an edge.
func closuresOf(g *model.Garment, e *model.Edge) []*model.Closure {
	var out []*model.Closure
	for _, c := range g.Closures {
		if c.Takes(e) {
			out = append(out, c)
		}
	}
	return out
}

// underStandard names the findings that explain why an edge does not carry the
// house's allowance.
func underStandard(p *rules.Pass, e *model.Edge) []rules.Under {
	out := append(differs(p.Garment, e), wrongUnit(p.Garment, e))
	if ofAnotherRole(p, e) { // it was not said what it is for
		out = append(out, rules.Under{Rule: "edge-unused", Subject: e.Address()})
	}
	for _, c := range closuresOf(p.Garment, e) {
		out = append(out, rules.Under{Rule: "allowance-closure", Subject: c.Address(), Key: e.Address()})
	}
	if !off(p, e) {
		return out
	}
	for _, j := range p.Garment.Joins() { // the edge that it runs on into tells it
		a, b, err := sewing.Walks(p.Garment, j)
		for _, atEnd := range []bool{false, true} {
			if err != nil {
				continue
			}
			if x, y, ok := sewing.RunsOn(a, b, atEnd); ok && (x == e || y == e) {
				out = append(out, rules.Under{Rule: "allowance-match", Subject: j.Address(), Key: runOnKey(x, y)})
			}
		}
	}
	return out
}

// ofAnotherRole reports whether the edge carries the house's allowance for some
// role that it does not have.
func ofAnotherRole(p *rules.Pass, e *model.Edge) bool {
	return slices.ContainsFunc(p.Garment.Standards, func(s *model.Standard) bool {
		return s.Role != model.RoleDefault && math.Abs(e.Allowance.Width-s.Width) <= p.Limit("standard")
	})
}

func off(p *rules.Pass, e *model.Edge) bool {
	return offStandard(p.Garment, e) > p.Limit("standard")
}

// alsoOff finds the edges that are off the house's standard by the same figure of
// their piece: the first of them, and how many there are.
func alsoOff(p *rules.Pass, e *model.Edge) (first *model.Edge, n int) {
	for _, other := range e.Piece.Edges {
		if other.Allowance.Own || other.Allowance.Place != e.Allowance.Place || standardOf(p, other) == nil || !off(p, other) {
			continue
		}
		if first == nil {
			first = other
		}
		n++
	}
	return first, n
}
