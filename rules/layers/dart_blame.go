package layers

import (
	"fmt"
	"math"
	"strings"

	"understitch/model"
	"understitch/model/layering"
	"understitch/rules"
)

// dartsShow is how many times what is found the darts may differ by and still be
// named for it: a dart that is answered by a seam on purpose takes out more than
// the other too, and no small finding is due to that (common practice, no
// source).
const dartsShow = 3

// unlike are darts of an inside that do not take out alike at some place.
type unlike struct {
	inside *model.Inside
	darts  []layering.DartTakes
}

// unlikeDarts are those of an inside's darts that differ by more than so much.
func unlikeDarts(inside *model.Inside, takes []layering.DartTakes, within float64) unlike {
	out := unlike{inside: inside}
	for _, t := range takes {
		if math.Abs(t.More(inside)) > within {
			out.darts = append(out.darts, t)
		}
	}
	return out
}

// accounts reports whether something that is off would not be, within a
// tolerance, if darts that take out so much more took out alike; left is how far
// off it would be then.
func accounts(off, left, more, within float64) bool {
	return math.Abs(more) > within && math.Abs(more) <= dartsShow*math.Abs(off)+within && math.Abs(left) <= within
}

// blame names the darts that account for a clearance which is not as allowed, and
// gives a sentence about them; "" where they do not account for it.
func (n *laying) blame(say *rules.Say, takes func() []layering.DartTakes, clearance float64, allowed model.Range) string {
	off, within := allowed.Beyond(clearance), n.Limit("beyond")
	if math.Abs(off) <= within {
		return ""
	}
	all, more := takes(), 0.0
	for _, t := range all {
		more += t.More(n.inside)
	}
	if !accounts(off, allowed.Beyond(clearance+more), more, within) {
		return ""
	}
	return "The darts differ there: " + nameDarts(n.Pass, say, []unlike{unlikeDarts(n.inside, all, within)}) + ". "
}

// nameDarts says what darts take out, with their places and what to make of them.
func nameDarts(p *rules.Pass, say *rules.Say, all []unlike) string {
	var said, mends []string
	for _, u := range all {
		for _, t := range u.darts {
			outer, inner := u.inside.Outer.Address(), u.inside.Inner.Address()
			said, mends = append(said, takesText(p, t, outer, inner)), append(mends, mendDart(p, t, outer, inner))
			if t.Outer != nil {
				say.Related = append(say.Related, takesOut(p, t.Outer, t.ByOuter))
			}
			if t.Inner != nil {
				say.Related = append(say.Related, takesOut(p, t.Inner, t.ByInner))
			}
		}
	}
	if len(mends) > 0 {
		say.Mend = &rules.Mend{Title: strings.Join(mends, "; ")}
	}
	return strings.Join(said, "; ")
}

func takesOut(p *rules.Pass, d *model.Dart, by float64) rules.Related {
	return rules.Related{Message: fmt.Sprintf("%s takes out %s there", d.Address(), amount(p, by)), Place: d.Place}
}

// amount is what a dart takes out, which is nothing beyond its point.
func amount(p *rules.Pass, by float64) string {
	if p.Show(by) == p.Show(0) {
		return "nothing"
	}
	return p.Show(by)
}

// takesText says what two darts take out, or a dart that has none to answer it.
func takesText(p *rules.Pass, t layering.DartTakes, outer, inner string) string {
	switch {
	case t.Inner == nil:
		return fmt.Sprintf("%s takes out %s, and no dart of %s answers it", t.Outer.Address(), p.Show(t.ByOuter), inner)
	case t.Outer == nil:
		return fmt.Sprintf("%s takes out %s, and no dart of %s answers it", t.Inner.Address(), p.Show(t.ByInner), outer)
	case t.Outer.Name != t.Inner.Name:
		return fmt.Sprintf("%s takes out %s and %s %s", t.Outer.Address(), amount(p, t.ByOuter), t.Inner.Address(), amount(p, t.ByInner))
	}
	return fmt.Sprintf("dart %s takes out %s on %s and %s on %s", t.Outer.Name, amount(p, t.ByOuter), t.Outer.Piece.Address(),
		amount(p, t.ByInner), t.Inner.Piece.Address())
}

// mendDart says how two darts would take out alike.
func mendDart(p *rules.Pass, t layering.DartTakes, outer, inner string) string {
	switch {
	case t.Inner == nil:
		return fmt.Sprintf("take out %s of %s there, as %s does", p.Show(t.ByOuter), inner, t.Outer.Address())
	case t.Outer == nil:
		return fmt.Sprintf("take out %s of %s there, as %s does", p.Show(t.ByInner), outer, t.Inner.Address())
	case p.Show(t.Outer.Intake) == p.Show(t.Inner.Intake):
		return fmt.Sprintf("draw %s and %s alike, so that they take out as much there", t.Outer.Address(), t.Inner.Address())
	}
	return fmt.Sprintf("give %s an intake of %s, as %s has, or that one %s", t.Inner.Address(), p.Show(t.Outer.Intake),
		t.Outer.Address(), p.Show(t.Inner.Intake))
}
