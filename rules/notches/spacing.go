package notches

import (
	_ "embed"
	"fmt"
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
	Under:    []string{"notch-on-line", "notch-match", "shared-edge"},
	Doc: rules.Doc{
		Title: "Notches keep clear of corners, of darts and of each other",
		Why: "A notch near a corner vanishes in the seam that crosses there, or weakens the corner. Beside a dart it is folded in. Two notches " +
			"close together are taken for a double one.",
		How: "Along the edge as drawn, measure from each notch to the corners of its edge, to the mouths of the darts on it, and to the other " +
			"notches. The fold is no corner, nor is a place where the outline runs straight on from one edge to the next. A notch at a dart's " +
			"mouth marks its leg and is not judged against that dart. A double notch, kind = \"double\", is one notch. Where two notches that are laid on each other both lie too close, the first is reported. Where the notch lies in the wrong place, the finding of notch-on-line, notch-match or shared-edge stands for this one.",
		Nothing: "The edge has no corner, dart or other notch.",
		Fix:     "Move the notch, and its partner on the other side, clear of the place named. Write two that belong together as one double notch.",
		Bad:     spacingBad, Good: spacingGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "clear", Value: 12.7, Unit: rules.Millimetres,
		Text:   "how far a notch must be from a corner, a dart's mouth or another notch",
		Source: "Pop quiz: notching challenge, fashion-incubator.com: 1/2 in between notches that are to be told apart; for corners and darts common practice, no source",
	}},
	Each: rules.Notches(spacing),
}

func spacing(p *rules.Pass, n *model.Notch) {
	p.NothingHere()
	if _, _, err := n.Position(); err != nil && (n.Level == nil || !n.On.Drawn()) {
		p.Cannot(err, rules.Say{Place: n.Given})
		return
	}
	near, err := sewing.Room(n)
	if err != nil {
		return // it lies on no place of its edge
	}
	misplaced := underPlace(p, n)
	for _, r := range near {
		say := rules.Say{Place: n.Given, Under: append(slices.Clip(misplaced), underPartner(p, n, r)...)}
		var what string
		switch {
		case r.Corner != nil:
			say.Key, what = nearKey(r), fmt.Sprintf("the corner with %s", r.Corner.Address())
			say.Related = []rules.Related{{Message: "the edge that meets it there", Place: r.Corner.Place}}
		case r.Dart != nil:
			say.Key, what = nearKey(r), fmt.Sprintf("the mouth of %s", r.Dart.Address())
			say.Related = []rules.Related{{Message: "the " + r.Dart.Word(), Place: r.Dart.Place}}
		default:
			say.Key, what = nearKey(r), r.Notch.Address()
			say.Related = []rules.Related{{Message: "the other notch", Place: r.Notch.Place}}
		}
		say.Account = apartAccount(n, r, what)
		say.Message = func() string {
			switch {
			case r.Dart != nil && r.Apart == 0 && r.Dart.Pleat != nil:
				return fmt.Sprintf("%s lies in %s and is folded away with it, on none of its lines. Move it to a line of the pleat, or at least %s clear of it%s.", n.Address(), r.Dart.Address(), p.Show(p.Limit("clear")), withPartners(p, n))
			case r.Dart != nil && r.Apart == 0:
				return fmt.Sprintf("%s lies in the mouth of %s and is folded away with it. Move it at least %s clear of the mouth%s.", n.Address(), r.Dart.Address(), p.Show(p.Limit("clear")), withPartners(p, n))
			}
			return fmt.Sprintf("%s lies %s from %s; it must be %s clear of it. Move it%s.",
				n.Address(), p.Show(r.Apart), what, p.Show(p.Limit("clear")), withPartners(p, n))
		}
		p.AtLeast(r.Apart, p.Limit("clear"), say)
	}
}

// underPartner names the finding of an earlier notch, on which this one is laid,
// about the same kind of thing: the two are moved together.
func underPartner(p *rules.Pass, n *model.Notch, r sewing.NotchRoom) []rules.Under {
	var out []rules.Under
	all := p.Garment.Notches()
	for _, m := range sewing.Meetings(p.Garment, n) {
		near, err := sewing.Room(m.Partner)
		if err != nil || slices.Index(all, m.Partner) > slices.Index(all, n) {
			continue
		}
		for _, o := range near {
			if r.Corner != nil && o.Corner != nil || r.Notch != nil && o.Notch != nil {
				out = append(out, rules.Under{Rule: "notch-spacing", Subject: m.Partner.Address(), Key: nearKey(o)})
			}
		}
	}
	return out
}

// underPlace names the findings by which a notch lies in the wrong place: off its
// line, or off a partner where it would keep clear.
func underPlace(p *rules.Pass, n *model.Notch) []rules.Under {
	out := []rules.Under{{Rule: "notch-on-line", Subject: n.Address()}}
	for _, m := range sewing.Meetings(p.Garment, n) {
		if clear, ok := sewing.ClearPlace(n, m.Along, p.Limit("clear")); !model.Known(m.Along) || !ok || clear != m.Along {
			continue
		}
		for _, notch := range []*model.Notch{n, m.Partner} {
			out = append(out,
				rules.Under{Rule: "notch-match", Subject: m.Thing.Address(), Key: notch.Address()},
				rules.Under{Rule: "shared-edge", Subject: m.Thing.Address(), Key: "notch " + notch.Address()})
		}
	}
	return out
}

// nearKey tells apart the things that a notch is near.
func nearKey(r sewing.NotchRoom) string {
	switch {
	case r.Corner != nil:
		return "corner with " + r.Corner.Name
	case r.Dart != nil:
		return r.Dart.Word() + " " + r.Dart.Name
	}
	return "notch " + r.Notch.Name
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
