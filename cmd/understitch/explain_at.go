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
		for _, g := range r.Models {
			verdicts := slices.DeleteFunc(held.Engine.Check(g, held.Settings), func(o rules.Outcome) bool {
				return o.Rule.Name != rule.Name || o.Subject != address
			})
			if err := accountOf(w, r.File, address, g, verdicts); err != nil {
				return err
			}
		}
	}
	if trouble {
		return status(statusTrouble)
	}
	return nil
}

func accountOf(w *world, file, address string, g *model.Garment, verdicts []rules.Outcome) error {
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
	for _, l := range report.Wrap(heading, w.columns()) {
		b.WriteString(report.Clean(l) + "\n")
	}
	writeLines(&b, g, lines, w.columns())
	b.WriteString("\n")
	for _, o := range verdicts {
		for _, l := range report.Wrap(verdictOn(g, o), w.columns()) {
			b.WriteString(report.Clean(l) + "\n")
		}
	}
	b.WriteString("\n")
	_, err := fmt.Fprint(w.stdout, b.String())
	return err
}

// figureColumn is where the figures stand in a line of the account.
const figureColumn = 12

func writeLines(b *strings.Builder, g *model.Garment, lines reckoned.Lines, columns int) {
	for _, l := range lines {
		figure := ""
		switch {
		case math.IsNaN(l.Figure):
		case l.Degree:
			figure = model.Decimal(l.Figure, 1) + "°"
		default:
			figure = g.Unit.Show(l.Figure)
		}
		mark := " "
		if l.Sum {
			mark = "="
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
	if o.Unit == rules.Millimetres {
		return fmt.Sprintf("%s: passed, %s where the limit is %s", name, g.Show(o.Measured), g.Show(o.Limit))
	}
	if o.Numeric {
		return fmt.Sprintf("%s: passed, %s where the limit is %s", name, model.Decimal(o.Measured, 3), model.Decimal(o.Limit, 3))
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
