package draft

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/sewing"
	"understitch/rules"
	"understitch/rules/guess"
)

// tell reports all that an alteration leaves unanswered as one finding.
func (u *unanswered) tell() {
	if len(u.open) == 0 {
		return
	}
	every := func(holds func(partner) bool) bool {
		return !slices.ContainsFunc(u.open, func(o partner) bool { return !holds(o) })
	}
	say := rules.Say{
		Mild:    every(func(o partner) bool { return o.room }),
		Message: u.message,
		Mend:    &rules.Mend{Title: u.mend()},
		Cures:   u.cures(),
	}
	for _, o := range u.open {
		say.Related = append(say.Related, rules.Related{Message: o.edge.Address() + " was re-drawn", Place: o.edge.Place})
		other := o.other.Address() + " is as it was drafted"
		if by := guess.AlteredBy(u.Garment, o.other); len(by) > 0 {
			other = o.other.Address() + " was re-drawn by " + by[0].Address()
		}
		say.Related = append(say.Related, rules.Related{Message: other, Place: o.other.Place})
	}
	if every(func(o partner) bool { return o.under.Rule != "" }) {
		for _, o := range u.open {
			say.Under = append(say.Under, o.under)
		}
	}
	u.Fault(say)
}

func (u *unanswered) message() string {
	text := u.sentence(u.open[0])
	for _, o := range u.open[1:] {
		text += fmt.Sprintf(" So it is with %s and %s, %s%s.", o.edge.Address(), o.other.Address(), o.how, u.amounts(o))
	}
	some := func(holds func(partner) bool) bool { return slices.ContainsFunc(u.open, holds) }
	switch {
	case !some(func(o partner) bool { return !o.room }):
		return text + " The room between them is still what is asked for: leave it where it is meant so, else alter both alike."
	case some(func(o partner) bool { return o.apart != nil }):
		return text + " Alter both alike, or accept this with the reason."
	}
	return text + " Alter both, or accept this with the reason."
}

// sentence tells of one edge that does not answer another.
func (u *unanswered) sentence(o partner) string {
	if len(guess.AlteredBy(u.Garment, o.other)) > 0 {
		return fmt.Sprintf("%s re-drew %s, and %s, %s, was not altered alike%s.", u.by.Address(), o.edge.Address(), o.other.Address(), o.how, u.amounts(o))
	}
	return fmt.Sprintf("%s re-drew %s, and nothing re-drew %s, %s%s%s.", u.by.Address(), o.edge.Address(), o.other.Address(), o.how, o.difference, u.amounts(o))
}

// amounts tells by how much two laidInside edges were taken in, level by level.
func (u *unanswered) amounts(o partner) string {
	var out []string
	for _, t := range o.apart {
		out = append(out, fmt.Sprintf("%s against %s at the %s level", u.taken(t.Edge), u.taken(t.Other), t.Level.Name))
	}
	if len(out) == 0 {
		return ""
	}
	return ": " + strings.Join(out, ", ")
}

// taken writes how far an edge was taken in or let out.
func (u *unanswered) taken(inward float64) string {
	switch text := u.Show(math.Abs(inward)); {
	case text == u.Show(0):
		return "nothing"
	case inward < 0:
		return text + " out"
	default:
		return text + " in"
	}
}

// mend says which edges to name in the alteration, or which amounts to make alike.
func (u *unanswered) mend() string {
	var left, others []string
	for _, o := range u.open {
		if len(guess.AlteredBy(u.Garment, o.other)) == 0 {
			left = append(left, o.other.Address())
			continue
		}
		var at []string
		for _, t := range o.apart {
			at = append(at, fmt.Sprintf("%s or %s at the %s level", u.taken(t.Edge), u.taken(t.Other), t.Level.Name))
		}
		others = append(others, fmt.Sprintf("take %s and %s alike: %s", o.edge.Address(), o.other.Address(), strings.Join(at, ", ")))
	}
	if len(left) > 0 {
		others = append([]string{fmt.Sprintf("name %s in %s as well", sewing.Listed(left), u.by.Address())}, others...)
	}
	return strings.Join(others, "; ")
}

// cures are the ways to answer the alteration: to alter the other edges as those
// that it names were, or where both were altered, those as the others.
func (u *unanswered) cures() []rules.Cure {
	type pair struct{ as, follows string }
	var there, back []pair
	both := false
	for _, o := range u.open {
		there = append(there, pair{o.edge.Address(), o.other.Address()})
		back = append(back, pair{o.other.Address(), o.edge.Address()})
		both = both || len(guess.AlteredBy(u.Garment, o.other)) > 0
	}
	alike := func(pairs []pair) rules.Cure {
		return rules.Cure{Make: func(g *model.Garment) {
			edges := map[string]*model.Edge{}
			for _, e := range g.Edges() {
				edges[e.Address()] = e
			}
			for _, p := range pairs {
				layering.AlterAlike(g, edges[p.as], edges[p.follows])
			}
		}}
	}
	out := []rules.Cure{alike(there)}
	if both {
		out = append(out, alike(back))
	}
	return out
}
