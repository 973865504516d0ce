package plugin

import (
	"math"

	"understitch/model"
	"understitch/rules"
)

// Rule is the rule under whose name a plugin's findings are reported, set and
// waived. It looks at nothing by itself.
func Rule(p *model.Plugin) *rules.Rule {
	return &rules.Rule{
		Name:     p.Name,
		Family:   "plugins",
		Severity: rules.Error,
		Place:    p.Place,
		Doc: rules.Doc{
			Title: "What the house's plugin " + p.Name + " looks for.",
			Why:   "The house has a rule that is a program: " + p.File + ".",
			How:   "The program is given all figures of the garment, those that \"understitch measure\" prints, and says what it finds. It has no files, no network and no clock, and is stopped when it takes too long.",
			Fix:   "The finding's message says; ask whoever looks after the house's standards where it does not.",
		},
		Each: func(*model.Garment, func(model.Thing, func(*rules.Pass))) {},
	}
}

// outcomesOf turns an answer into outcomes of a plugin's rule. A finding is never
// more severe than the house has the rule.
func outcomesOf(rule *rules.Rule, ceiling rules.Severity, g *model.Garment, things map[string]model.Thing, rows []Row) []rules.Outcome {
	if len(rows) == 0 { // it looked, and has nothing to say
		return []rules.Outcome{{Rule: rule, Subject: g.Address(), Status: rules.Passed, Place: g.Where(), Size: g.Size}}
	}
	out := make([]rules.Outcome, 0, len(rows))
	for _, r := range rows {
		o := rules.Outcome{
			Rule: rule, Subject: r.Address, Key: r.Key, Size: g.Size, Place: things[r.Address].Where(),
			Numeric: r.Numeric, Measured: r.Measured, Limit: r.Limit, Unit: r.Unit,
		}
		// Whether the limit is the most or the least is for the plugin to know:
		// room is left where it says so, and none where it does not.
		apart := math.Abs(r.Measured - r.Limit)
		switch r.Verdict {
		case passed:
			o.Status, o.Margin = rules.Passed, apart
		case notPossible:
			o.Status, o.Reason = rules.NotPossible, r.Message
		default:
			severity, _ := rules.SeverityNamed(r.Verdict)
			o.Status, o.Severity, o.Message = rules.Found, min(severity, ceiling), r.Message
			o.Margin, o.Off = -apart, apart
		}
		out = append(out, o)
	}
	return out
}
