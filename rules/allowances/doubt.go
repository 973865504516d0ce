package allowances

import (
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

// doubt is which of two edges that are laid on each other carries the wrong
// allowance, as far as anything tells.
type doubt struct {
	wrong, right *model.Edge // where nothing tells, the second and the first
	meant        float64     // what an edge that is off is to carry; NaN where the cutter must choose
	both         bool        // both are off
	role         string      // the role that the wrong one lacks, where that is the fault
	why          string      // what tells; "" where nothing does
}

// suspect weighs two edges that carry different allowances. What the house or a
// closure asks for decides; where neither does, the other edges that the two are
// laid on; then a figure that one edge states for itself is doubted before one
// that holds for a piece; then the figure that fewer edges carry which are joined
// in the same way.
func suspect(p *rules.Pass, thing model.Thing, a, b *model.Edge) doubt {
	forA, forB := askedOf(p.Garment, a), askedOf(p.Garment, b)
	switch {
	case forA.known() && forB.known() && !same(p, forA.width, forB.width):
		return rolesDiffer(p, a, b, forA, forB)
	case forA.known():
		return against(p, a, b, forA)
	case forB.known():
		return against(p, a, b, forB)
	}
	return byOthers(p, thing, a, b)
}

// same reports whether two allowances may meet in a seam.
func same(p *rules.Pass, a, b float64) bool { return math.Abs(a-b) <= p.Limit("match") }

// asked is an allowance that an edge is to carry, and by whose word.
type asked struct {
	width float64
	role  string
	by    string
}

func (a asked) known() bool { return model.Known(a.width) }

// askedOf is what the closure sewn to an edge needs, else the house's allowance
// for its role.
func askedOf(g *model.Garment, e *model.Edge) asked {
	role := g.RoleOf(e)
	for _, c := range g.Closures {
		if role == model.RoleClosure && model.Known(c.Needs) && c.Takes(e) {
			return asked{c.Needs, role, c.Address() + " needs"}
		}
	}
	if s := g.StandardOf(e); s != nil {
		return asked{s.Width, role, whose(s) + " for " + roleText(role) + " is"}
	}
	return asked{model.Unknown(), role, ""}
}

// against holds both edges against one figure.
func against(p *rules.Pass, a, b *model.Edge, by asked) doubt {
	d := doubt{wrong: b, right: a, meant: by.width, why: by.by + " " + p.Show(by.width)}
	d.both = !same(p, a.Allowance.Width, by.width) && !same(p, b.Allowance.Width, by.width)
	if math.Abs(a.Allowance.Width-by.width) > math.Abs(b.Allowance.Width-by.width) {
		d.wrong, d.right = a, b
	}
	return d
}

// rolesDiffer is for two edges that are laid on each other though they are to
// carry different allowances: the one whose role says less lacks the other's.
func rolesDiffer(p *rules.Pass, a, b *model.Edge, forA, forB asked) doubt {
	wrong, right, less, more := b, a, forB, forA
	if tells(p.Garment, b) > tells(p.Garment, a) {
		wrong, right, less, more = a, b, forA, forB
	}
	d := doubt{wrong: wrong, right: right, meant: model.Unknown(), why: fmt.Sprintf("%s %s, and %s %s",
		more.by, p.Show(more.width), less.by, p.Show(less.width))}
	if tells(p.Garment, right) > tells(p.Garment, wrong) && wrong.Role == "" && same(p, right.Allowance.Width, more.width) {
		d.role, d.meant = more.role, more.width
	}
	return d
}

// tells is how much an edge's role says of it: one that it states the most, the
// default nothing.
func tells(g *model.Garment, e *model.Edge) int {
	switch role := g.RoleOf(e); {
	case e.Role != "":
		return 4
	case role == model.RoleClosure:
		return 3
	case role == e.Finish:
		return 2
	case role == model.RoleEnclosed:
		return 1
	}
	return 0
}

// byOthers goes by the rest of the garment, where nobody asks for a figure.
func byOthers(p *rules.Pass, thing model.Thing, a, b *model.Edge) doubt {
	g := p.Garment
	var around []*model.Edge
	for _, e := range slices.Concat(sewing.LaidAlong(g, a), sewing.LaidAlong(g, b)) {
		if e != a && e != b {
			around = append(around, e)
		}
	}
	if d, agree := byCount(p, a, b, around); agree != nil {
		d.why = fmt.Sprintf("%s, which is laid on one of them too, carries %s", agree.Address(), p.Show(d.meant))
		return d
	}
	if a.Allowance.Own != b.Allowance.Own {
		d := doubt{wrong: a, right: b}
		if b.Allowance.Own {
			d.wrong, d.right = b, a
		}
		d.meant = d.right.Allowance.Width
		d.why = d.right.Piece.Address() + " states it for its edges"
		return d
	}
	d, agree := byCount(p, a, b, joinedAs(g, thing))
	if agree != nil {
		d.why = fmt.Sprintf("so do more of the edges that are joined like them, as %s does", agree.Address())
	}
	return d
}

// joinedAs are the edges that seams, closures or shares take, whichever the
// thing is.
func joinedAs(g *model.Garment, thing model.Thing) []*model.Edge {
	kind := model.Sewn
	switch thing.(type) {
	case *model.Share:
		kind = model.Shared
	case *model.Closure:
		kind = model.Closed
	}
	var out []*model.Edge
	for _, piece := range g.Pieces() {
		for _, e := range piece.Edges {
			if slices.ContainsFunc(g.Uses(e), func(u model.Use) bool { return u.Kind == kind }) {
				out = append(out, e)
			}
		}
	}
	return out
}

// byCount sides with the figure that more of some edges carry, and returns one
// of them that does; nil where they are no help.
func byCount(p *rules.Pass, a, b *model.Edge, among []*model.Edge) (doubt, *model.Edge) {
	var likeA, likeB []*model.Edge
	for _, e := range among {
		switch {
		case e == a || e == b:
		case same(p, e.Allowance.Width, a.Allowance.Width):
			likeA = append(likeA, e)
		case same(p, e.Allowance.Width, b.Allowance.Width):
			likeB = append(likeB, e)
		}
	}
	switch {
	case len(likeA) > len(likeB):
		return doubt{wrong: b, right: a, meant: a.Allowance.Width}, likeA[0]
	case len(likeB) > len(likeA):
		return doubt{wrong: a, right: b, meant: b.Allowance.Width}, likeB[0]
	}
	return doubt{wrong: b, right: a, meant: model.Unknown()}, nil
}

// known reports whether it is the one edge that is wrong, and what it is to carry.
func (d doubt) known() bool { return model.Known(d.meant) && !d.both }

// laidOn names the edges that the doubtful one differs from.
func (d doubt) laidOn(p *rules.Pass) []rules.Related {
	out := []rules.Related{{Message: d.right.Address() + " carries " + p.Show(d.right.Allowance.Width), Place: stated(d.right)}}
	for _, e := range sewing.LaidAlong(p.Garment, d.wrong) {
		if e != d.right && e != d.wrong && model.Known(e.Allowance.Width) && !same(p, e.Allowance.Width, d.wrong.Allowance.Width) {
			out = append(out, rules.Related{Message: "it is laid on " + e.Address() + " too, which carries " + p.Show(e.Allowance.Width), Place: stated(e)})
		}
	}
	return out
}

// says tells what to do about two edges that differ.
func (d doubt) says(p *rules.Pass) string {
	a, b := d.wrong.Address(), d.right.Address()
	switch {
	case d.role != "":
		return fmt.Sprintf("Give %s the role %s too, so that it carries %s: %s.", a, d.role, p.Show(d.meant), d.why)
	case !model.Known(d.meant) && d.why != "":
		return fmt.Sprintf("Choose one for both, and say by role what it is: %s.", d.why)
	case !model.Known(d.meant):
		return "Nothing here tells which of them is meant: choose one, and give it to both."
	case d.both:
		return fmt.Sprintf("Give both %s: %s.", p.Show(d.meant), d.why)
	}
	return fmt.Sprintf("Give %s %s too, as %s has: %s.", a, p.Show(d.meant), b, d.why)
}

// mend is the correction.
func (d doubt) mend(p *rules.Pass) *rules.Mend {
	switch {
	case d.role != "":
		return &rules.Mend{Title: fmt.Sprintf("give %s the role %s, and so an allowance of %s", d.wrong.Address(), d.role, p.Show(d.meant))}
	case !model.Known(d.meant):
		return &rules.Mend{Title: fmt.Sprintf("give %s and %s one allowance: %s or %s", d.wrong.Address(), d.right.Address(),
			p.Show(d.wrong.Allowance.Width), p.Show(d.right.Allowance.Width))}
	case d.both:
		return setBoth(p, d.wrong, d.right, d.meant)
	}
	return set(p, d.wrong, d.meant)
}
