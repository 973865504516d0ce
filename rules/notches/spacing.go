package notches

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/notch-spacing.bad.garment.hcl
var spacingBad string

//go:embed testdata/notch-spacing.good.garment.hcl
var spacingGood string

// Spacing checks that notches keep clear of corners, of darts and of each other.
var Spacing = rules.Rule{
	Name:     "notch-spacing",
	Family:   "notches",
	Severity: rules.Warning,
	Doc: rules.Doc{
		Title: "Notches keep clear of corners, of darts and of each other",
		Why: "A notch near a corner vanishes in the seam that crosses there, or weakens the corner. Beside a dart it is folded in. Two notches " +
			"close together are taken for a double one.",
		How: "Along the edge as drawn, measure from each notch to the corners of its edge, to the mouths of the darts on it, and to the other " +
			"notches. The fold is no corner, nor is a place where the outline runs straight on from one edge to the next. A notch at a dart's " +
			"mouth marks its leg and is not judged against that dart. A double notch, kind = \"double\", is one notch. Where two notches that are laid on each other both lie too close, the first tells of it.",
		Nothing: "The edge has no corner, dart or other notch, or another rule finds the notch in the wrong place, or one that it is laid on has told of it.",
		Fix:     "Move the notch, and its partner on the other side, clear of the place named. Write two that belong together as one double notch.",
		Bad:     spacingBad, Good: spacingGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		keptClear.Limit,
	},
	Each: rules.Notches(spacing),
}

// keptClear is how far notch-spacing keeps notches from what is near.
var keptClear = rules.LimitOf{Rule: "notch-spacing", Limit: rules.Limit{
	Name: "clear", Value: 12.7, Unit: rules.Millimetres,
	Text:   "how far a notch must be from a corner, a dart's mouth or another notch",
	Source: "Pop quiz: notching challenge, fashion-incubator.com: 1/2 in between notches that are to be told apart; for corners and darts common practice, no source",
}}

func spacing(p *rules.Pass, n *model.Notch) {
	p.NothingHere()
	if _, _, err := n.Position(); err != nil && (n.Level == nil || !n.On.Drawn()) {
		p.Cannot(err, rules.Say{Place: n.Given})
		return
	}
	near, err := sewing.Room(n)
	if err != nil || sewing.OffLine(n, p.LeftTo(OffLine)) || misplaced(p, n) {
		return // notch-on-line reports it, or the rule that finds it off its partner
	}
	for _, r := range near {
		if r.Apart < p.Limit("clear") && toldOfPartner(p, n, r) {
			continue
		}
		say := rules.Say{Place: n.Given}
		var what string
		switch {
		case r.Corner != nil:
			say.Key, what = "corner with "+r.Corner.Name, fmt.Sprintf("the corner with %s", r.Corner.Address())
			say.Related = []rules.Related{{Message: "the edge that meets it there", Place: r.Corner.Place}}
		case r.Dart != nil:
			say.Key, what = "dart "+r.Dart.Name, fmt.Sprintf("the mouth of %s", r.Dart.Address())
			say.Related = []rules.Related{{Message: "the dart", Place: r.Dart.Place}}
		default:
			say.Key, what = "notch "+r.Notch.Name, r.Notch.Address()
			say.Related = []rules.Related{{Message: "the other notch", Place: r.Notch.Place}}
		}
		say.Account = apartAccount(n, r, what)
		say.Message = func() string {
			if r.Dart != nil && r.Apart == 0 {
				return fmt.Sprintf("%s lies in the mouth of %s and is folded away with it. Move it at least %s clear of the mouth%s.", n.Address(), r.Dart.Address(), p.Show(p.Limit("clear")), withPartners(p, n))
			}
			return fmt.Sprintf("%s lies %s from %s; it must be %s clear of it. Move it%s.",
				n.Address(), p.Show(r.Apart), what, p.Show(p.Limit("clear")), withPartners(p, n))
		}
		p.AtLeast(r.Apart, p.Limit("clear"), say)
	}
}

// toldOfPartner reports whether a notch before it on which this one is laid lies too
// close to the same thing: the two are moved together, and that has been said.
func toldOfPartner(p *rules.Pass, n *model.Notch, r sewing.NotchRoom) bool {
	all := p.Garment.Notches()
	return slices.ContainsFunc(sewing.Meetings(p.Garment, n), func(m sewing.NotchMeeting) bool {
		near, err := sewing.Room(m.Partner)
		if err != nil || slices.Index(all, m.Partner) > slices.Index(all, n) || sewing.OffLine(m.Partner, p.LeftTo(OffLine)) || misplaced(p, m.Partner) {
			return false
		}
		return slices.ContainsFunc(near, func(o sewing.NotchRoom) bool {
			alike := r.Corner != nil && o.Corner != nil || r.Notch != nil && o.Notch != nil
			return alike && o.Apart < p.Limit("clear")
		})
	})
}

// misplaced reports whether a notch misses its partner and would keep clear where
// it meets it: then it lies too close because it lies in the wrong place.
func misplaced(p *rules.Pass, n *model.Notch) bool {
	return slices.ContainsFunc(sewing.Meetings(p.Garment, n), func(m sewing.NotchMeeting) bool {
		clear, ok := sewing.ClearPlace(n, m.Along, p.Limit("clear"))
		return math.Abs(m.Off) > p.LeftTo(misses) && model.Known(m.Along) && ok && clear == m.Along
	})
}

// withPartners names the notches that must be moved along with a notch; nothing
// where it has none.
func withPartners(p *rules.Pass, n *model.Notch) string {
	var names []string
	for _, m := range sewing.Meetings(p.Garment, n) {
		if name := m.Partner.Address(); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return ", and " + sewing.Listed(names) + " with it"
}
