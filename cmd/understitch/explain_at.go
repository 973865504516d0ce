package main

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/cmd/understitch/internal/report"
	"understitch/model"
	"understitch/model/reckoned"
	"understitch/rules"
	"understitch/rules/inspect"
)

// account writes how a rule came to what it says about one thing of a spec, in
// each size asked for: every length, dart, ease and allowance that entered.
func (s *selection) account(ctx context.Context, w *world, rule *rules.Rule, address, path string) error {
	s.noRules = true
	got, err := s.inspect(ctx, w, []string{path}, false)
	if err != nil {
		return err
	}
	in := &inspect.Inspector{Engine: got.engine}
	held := in.Standards(path)
	trouble := got.trouble
	for _, r := range got.reports {
		trouble = trouble || !r.Complete()
		across := held.Engine.CheckAcross(r.Models, held.Settings)
		for i, g := range r.Models {
			verdicts := held.Engine.Check(g, held.Settings)
			if i == 0 {
				verdicts = append(verdicts, across...) // of all sizes together, told once
			}
			verdicts = slices.DeleteFunc(verdicts, func(o rules.Outcome) bool {
				return o.Rule.Name != rule.Name || o.Subject != address
			})
			if err := accountOf(w, rule, r.File, address, g, verdicts); err != nil {
				return err
			}
		}
	}
	if trouble {
		return status(statusTrouble)
	}
	return nil
}

// accountOf writes what a rule came to about a thing, each figure after the lines
// by which it was reached. Where the rule has no account of its own, all that is
// reckoned about the thing is told.
func accountOf(w *world, rule *rules.Rule, file, address string, g *model.Garment, verdicts []rules.Outcome) error {
	lines, ok := reckoned.Of(g, address)
	if !ok {
		var known []string
		for _, t := range reckoned.Things(g) {
			known = append(known, t.Address())
		}
		return fmt.Errorf("%s has nothing called %q%s", file, address, orNearest(address, known, ""))
	}
	var b strings.Builder
	heading := address
	if g.Size != "" {
		heading += ", size " + g.Size
	}
	say := func(text string) {
		for _, l := range report.Wrap(text, w.columns()) {
			b.WriteString(report.Clean(l) + "\n")
		}
	}
	say(heading)
	told := slices.ContainsFunc(verdicts, func(o rules.Outcome) bool { return len(o.Account()) > 0 })
	if !told {
		writeLines(&b, g, lines, w.columns())
		b.WriteString("\n")
	}
	if len(verdicts) == 0 && rule.Across == nil {
		say(strings.TrimSpace(rule.Name + " has nothing to judge there. " + rule.Doc.Nothing))
	}
	for _, o := range verdicts {
		writeLines(&b, g, o.Account(), w.columns())
		say(verdictOn(g, o))
		if told {
			b.WriteString("\n")
		}
	}
	if !told {
		b.WriteString("\n")
	}
	_, err := fmt.Fprint(w.stdout, b.String())
	return err
}

// figureColumn is where the figures stand in a line of the account.
const figureColumn = 12

func writeLines(b *strings.Builder, g *model.Garment, lines reckoned.Lines, columns int) {
	for _, l := range lines {
		figure, mark := "", " "
		if !math.IsNaN(l.Figure) {
			figure = inUnit(g, l.Figure, l.Unit)
		}
		switch l.Kind {
		case reckoned.Sum, reckoned.Result:
			mark = "="
		case reckoned.Beside:
			if figure != "" {
				figure = "(" + figure + ")" // told, but in no sum
			}
		}
		indent := strings.Repeat("  ", l.Depth)
		for i, text := range report.Wrap(l.Text, max(columns-figureColumn-3-len(indent), 20)) {
			if i > 0 {
				figure, mark = "", " "
			}
			b.WriteString(strings.TrimRight(fmt.Sprintf("%*s %s %s%s", figureColumn, figure, mark, indent, report.Clean(text)), " ") + "\n")
		}
	}
}

// inUnit writes a figure with its unit, a length in that of the spec.
func inUnit(g *model.Garment, v float64, unit rules.Unit) string {
	switch unit {
	case rules.Millimetres:
		return g.Show(v)
	case rules.Degrees:
		return model.Decimal(v, 2) + "°" // finer than a report, so that what is added up comes out as shown
	case rules.Percent:
		return model.Decimal(v, 1) + " %"
	}
	return model.Decimal(v, 3) + " times"
}

// verdictOn says what the rule made of it.
func verdictOn(g *model.Garment, o rules.Outcome) string {
	name := o.Rule.Name
	if o.Key != "" {
		name += ", " + o.Key
	}
	switch o.Status {
	case rules.NotPossible:
		return name + ": not possible, because " + o.Reason
	case rules.Found:
		return fmt.Sprintf("%s: %s. %s", name, o.Severity, o.Message)
	}
	switch {
	case o.Numeric && math.IsInf(o.Limit, 0):
		return fmt.Sprintf("%s: passed, %s, and no limit to it", name, inUnit(g, o.Measured, o.Unit))
	case o.Numeric:
		return fmt.Sprintf("%s: passed, %s where the limit is %s", name, inUnit(g, o.Measured, o.Unit), inUnit(g, o.Limit, o.Unit))
	}
	return name + ": passed"
}

// checkAt refuses words that only go with an address.
func checkAt(at string, args []string) error {
	switch {
	case at == "" && len(args) == 1, at != "" && len(args) == 2:
		return nil
	case at != "":
		return errors.New("explain RULE --at ADDRESS takes one spec, for example: explain seam-walk --at seam.side skirt" + suffix)
	case len(args) == 0:
		return errors.New("explain takes the name of one rule; \"understitch rules\" lists them")
	}
	return errors.New("explain takes the name of one rule; a spec goes with --at ADDRESS")
}

func ruleNamed(list []*rules.Rule, name string) (*rules.Rule, error) {
	i := slices.IndexFunc(list, func(r *rules.Rule) bool { return r.Name == name })
	if i < 0 {
		return nil, fmt.Errorf("there is no rule %q%s", name, orNearest(name, namesOf(list), "; \"understitch rules\" lists them"))
	}
	return list[i], nil
}
