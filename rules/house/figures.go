package house

import (
	"fmt"
	"math"
	"strings"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/model/spec"
	"understitch/rules"
)

// Judging a figure against what the house asks for.

// bounds judges a figure that lies between two others.
func (r *run) bounds(p *rules.Pass, thing model.Thing) {
	t := &r.test
	x, err := r.float(t.figure, thing)
	low, high := math.Inf(-1), math.Inf(1)
	dims := []dim{t.figure.dim}
	for _, end := range []struct {
		p  *part
		to *float64
	}{{t.low, &low}, {t.high, &high}} {
		if end.p == nil || err != nil {
			continue
		}
		*end.to, err = r.float(end.p, thing)
		dims = append(dims, end.p.dim)
	}
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	span := model.Range{Low: low, High: high}
	margin := span.Room(x)
	holds := margin >= -tolerance
	if t.strict {
		holds = margin > tolerance
	}
	room := 0.0
	if !math.IsInf(high-low, 0) {
		room = (high - low) / 2
	}
	d := joined(dims)
	account := func(l *reckoned.Lines, unit rules.Unit, by float64) {
		l.Say(1, "asked by the house in %s", r.place())
		l.ResultIn(unit, 0, x*by, "is %s", r.nameOf(t.figure, thing))
	}
	r.verdict(p, thing, holds, d, rules.Figure{Measured: x, Limit: span.Nearer(x), Margin: margin, Room: room}, account, func() string {
		asks := "at least " + r.show(low, d)
		switch {
		case math.IsInf(low, -1):
			asks = "at most " + r.show(high, d)
		case !math.IsInf(high, 1):
			asks = fmt.Sprintf("from %s to %s", r.show(low, d), r.show(high, d))
		}
		return fmt.Sprintf("%s is %s; %s is asked for", r.nameOf(t.figure, thing), r.show(x, d), asks)
	})
}

// equal judges two figures that are to be equal.
func (r *run) equal(p *rules.Pass, thing model.Thing) {
	t := &r.test
	x, err := r.float(t.figure, thing)
	y, within := 0.0, 0.0
	if err == nil {
		y, err = r.float(t.other, thing)
	}
	if err == nil && t.within != nil {
		within, err = r.float(t.within, thing)
	}
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	d := joined([]dim{t.figure.dim, t.other.dim})
	off := math.Abs(x - y)
	account := func(l *reckoned.Lines, unit rules.Unit, by float64) {
		l.Say(1, "asked by the house in %s", r.place())
		l.AddIn(unit, 1, x*by, "%s", r.nameOf(t.figure, thing))
		l.AddIn(unit, 1, -y*by, "less %s", r.nameOf(t.other, thing))
		l.SumIn(unit, 0, (x-y)*by, "is what they differ by")
	}
	r.verdict(p, thing, off <= within+tolerance, d, rules.Figure{Measured: x - y, Limit: within, Margin: within - off, Room: within}, account, func() string {
		return fmt.Sprintf("%s is %s and %s %s; they differ by %s, and %s is allowed", r.nameOf(t.figure, thing), r.show(x, d),
			r.nameOf(t.other, thing), r.show(y, d), r.show(off, d), r.show(within, d))
	})
}

// verdict reports a figure, in the unit of findings where it has one.
func (r *run) verdict(p *rules.Pass, thing model.Thing, holds bool, d dim, f rules.Figure, account func(*reckoned.Lines, rules.Unit, float64), otherwise func() string) {
	units := map[dim]rules.Unit{length: rules.Millimetres, percent: rules.Percent, degrees: rules.Degrees, ratio: rules.Ratio, plain: rules.Ratio}
	unit, known := units[d]
	atLimit := math.Abs(f.Margin) <= tolerance && (!holds || f.Room == 0 && f.Limit == 0)
	if !known || atLimit { // areas and the like; and where there is nothing between figure and limit to tell
		r.say(p, thing, holds, nil, otherwise)
		return
	}
	by := perUnit(r.unit, d)
	f = rules.Figure{Unit: unit, Measured: f.Measured * by, Limit: f.Limit * by, Margin: f.Margin * by, Room: f.Room * by}
	p.Verdict(holds, f, rules.Say{Account: func(l *reckoned.Lines) { account(l, unit, by) }, Message: r.told(thing, otherwise), Related: r.related()})
}

// show writes a figure for a person, lengths in the unit of the garment.
func (r *run) show(x float64, d dim) string {
	switch d {
	case length:
		return r.g.Show(x * r.unit.Millimetre)
	case percent:
		return model.Decimal(x, 2) + " %"
	case degrees:
		return model.Decimal(x, 1) + "°"
	}
	return model.Decimal(x, 3)
}

// nameOf says in words what a figure is: the allowance of shell.front.hem.
func (r *run) nameOf(p *part, thing model.Thing) string {
	n, ok := p.expr.(*ref)
	switch {
	case !ok:
		return "what is reckoned of " + thing.Address()
	case n.Traversal.RootName() == r.kind.name:
		return "the " + words(n) + " of " + thing.Address()
	}
	return "the " + spaced(path(n.Traversal)) + " at " + thing.Address()
}

func spaced(name string) string {
	return strings.NewReplacer("_", " ", ".", " ", "sides[0]", "first side", "sides[1]", "second side", "legs[0]", "first leg", "legs[1]", "second leg").Replace(name)
}

func (r *rule) place() model.Place { return spec.PlaceOf(r.Header) }

// doc is what is known of the rule without a garment.
func (r *rule) doc() rules.Doc {
	d := rules.Doc{Title: r.Title, Why: r.Why, Fix: r.Fix, Good: specimen(r.Good), Bad: specimen(r.Bad)}
	if d.Title == "" {
		d.Title = "What the house asks of every " + r.kind.name + ", as " + r.place().String() + " has it"
	}
	if d.Why == "" {
		d.Why = "The house has it so; its file states no reason."
	}
	if d.Fix == "" {
		d.Fix = "Bring the spec to what the house asks for, or waive the finding there with the reason."
	}
	d.How = "Stated at " + r.place().String() + ", of every " + r.kind.name + "."
	if r.Where != nil || len(r.Only) > 0 {
		d.How = "Stated at " + r.place().String() + ", of those kinds of " + r.kind.name + " that it chooses."
	}
	return d
}

// specimen is the text of the first example, or where it stands.
func specimen(list []spec.Text) string {
	if len(list) == 0 {
		return ""
	}
	if inline(list[0].Text) {
		return list[0].Text
	}
	return "# see " + list[0].Text + "\n"
}

// inline tells the text of a spec from the path of one.
func inline(text string) bool { return strings.Contains(text, "\n") }
