package rules

import (
	"fmt"

	"github.com/agext/levenshtein"

	"understitch/model"
)

// Settings are the rules in force: each with its severity and limits, as built
// in or as the house has them.
type Settings struct {
	rules []setting // in the engine's order
}

type setting struct {
	severity Severity
	limits   []float64
	place    model.Place // the house's line; zero when built in
}

// Settings resolves what a house says. A nil house leaves everything as built
// in. A rule or limit that does not exist gives a diagnostic with the nearest
// known name.
func (e *Engine) Settings(house *model.House) (*Settings, []model.Diagnostic) {
	s := &Settings{rules: make([]setting, len(e.rules))}
	index := make(map[string]int, len(e.rules))
	for i, r := range e.rules {
		s.rules[i] = setting{severity: r.Severity, limits: make([]float64, len(r.Limits))}
		for j, l := range r.Limits {
			s.rules[i].limits[j] = l.Value
		}
		index[r.Name] = i
	}
	if house == nil {
		return s, nil
	}
	var diags []model.Diagnostic
	for _, set := range house.Rules {
		i, ok := index[set.Rule]
		if !ok {
			diags = append(diags, unknown("rule", set.Rule, e.names(), set.Place))
			continue
		}
		diags = append(diags, s.rules[i].apply(e.rules[i], set)...)
	}
	return s, diags
}

// InForce tells a rule's severity and limits and the place in the house file
// that changed them (zero when they are built in).
func (s *Settings) InForce(e *Engine, name string) (Severity, []Limit, model.Place) {
	for i, r := range e.rules {
		if r.Name != name {
			continue
		}
		limits := make([]Limit, len(r.Limits))
		copy(limits, r.Limits)
		for j := range limits {
			limits[j].Value = s.rules[i].limits[j]
		}
		return s.rules[i].severity, limits, s.rules[i].place
	}
	return Off, nil, model.Place{}
}

func (s *setting) apply(r *Rule, set model.RuleSetting) []model.Diagnostic {
	var diags []model.Diagnostic
	s.place = set.Place
	if set.Severity != "" {
		severity, ok := SeverityNamed(set.Severity)
		if !ok {
			diags = append(diags, unknown("severity", set.Severity, severityNames[:], set.Place))
		}
		s.severity = severity
	}
	for _, l := range set.Limits {
		found := false
		for j, own := range r.Limits {
			if own.Name != l.Name {
				continue
			}
			found = true
			s.limits[j] = l.Plain
			if own.Unit == Millimetres {
				s.limits[j] = l.Length
			}
		}
		if !found {
			var names []string
			for _, own := range r.Limits {
				names = append(names, own.Name)
			}
			diags = append(diags, unknown("limit of "+r.Name, l.Name, names, l.Place))
		}
	}
	return diags
}

func (e *Engine) names() []string {
	names := make([]string, len(e.rules))
	for i, r := range e.rules {
		names[i] = r.Name
	}
	return names
}

// Nearest finds the known word that is closest to one that is not known, or "".
func Nearest(word string, known []string) string {
	best, least := "", 4
	for _, k := range known {
		if d := levenshtein.Distance(word, k, nil); d < least {
			best, least = k, d
		}
	}
	return best
}

func unknown(what, word string, known []string, place model.Place) model.Diagnostic {
	d := model.Diagnostic{Severity: "error", Place: place, Summary: fmt.Sprintf("there is no %s called %q", what, word)}
	if near := Nearest(word, known); near != "" {
		d.Detail = fmt.Sprintf("did you mean %q?", near)
	}
	return d
}
