package rules

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"github.com/agext/levenshtein"
	"github.com/bmatcuk/doublestar/v4"

	"understitch/model"
)

// Settings are the rules in force: each with its severity and limits, as built
// in or as the house has them.
type Settings struct {
	engine *Engine
	rules  []setting // in the engine's order
	styles []model.StyleSetting
}

type setting struct {
	severity   Severity
	severityAt model.Place // the house's line; zero when built in
	limits     []float64
	limitsAt   []model.Place
}

// Settings resolves what a house says of all its garments. A nil house leaves
// everything as built in. A rule or limit that does not exist gives a
// diagnostic with the nearest known name.
func (e *Engine) Settings(house *model.House) (*Settings, []model.Diagnostic) {
	s := &Settings{engine: e, rules: make([]setting, len(e.rules))}
	for i, r := range e.rules {
		s.rules[i] = setting{severity: r.Severity, limits: make([]float64, len(r.Limits)), limitsAt: make([]model.Place, len(r.Limits))}
		for j, l := range r.Limits {
			s.rules[i].limits[j] = l.Value
		}
	}
	if house == nil {
		return s, nil
	}
	diags := s.apply(house.Rules)
	for _, style := range house.Styles {
		diags = append(diags, s.copy().apply(style.Rules)...)
	}
	s.styles = house.Styles
	return s, diags
}

// For gives the settings that hold for one garment file, named from the
// house's folder with slashes: the styles whose pattern names it come on top,
// in the order of the house file.
func (s *Settings) For(file string) *Settings {
	own := s
	for _, style := range s.styles {
		if doublestar.MatchUnvalidated(style.Pattern, path.Join(style.Under, file)) {
			if own == s {
				own = s.copy()
			}
			own.apply(style.Rules) // what is wrong with them was told when the house was read
		}
	}
	return own
}

func (s *Settings) copy() *Settings {
	c := *s
	c.rules = slices.Clone(s.rules)
	for i := range c.rules {
		c.rules[i].limits = slices.Clone(c.rules[i].limits)
		c.rules[i].limitsAt = slices.Clone(c.rules[i].limitsAt)
	}
	return &c
}

func (s *Settings) apply(list []model.RuleSetting) []model.Diagnostic {
	var diags []model.Diagnostic
	for _, set := range list {
		i := s.engine.index(set.Rule)
		if i < 0 {
			diags = append(diags, unknown("rule", set.Rule, s.engine.names(), set.Place))
			continue
		}
		diags = append(diags, s.rules[i].apply(s.engine.rules[i], set)...)
	}
	return diags
}

// InForce is a rule as it holds: its severity and limits, and the lines of the
// house file that set them (zero where they are as built in).
type InForce struct {
	Severity   Severity
	SeverityAt model.Place
	Limits     []Limit
	LimitsAt   []model.Place // one for each limit
}

// InForce tells how a rule holds. A rule that the engine does not have is off.
func (s *Settings) InForce(name string) InForce {
	for i, r := range s.engine.rules {
		if r.Name != name {
			continue
		}
		set := s.rules[i]
		f := InForce{set.severity, set.severityAt, slices.Clone(r.Limits), slices.Clone(set.limitsAt)}
		for j := range f.Limits {
			f.Limits[j].Value = set.limits[j]
		}
		return f
	}
	return InForce{}
}

func (s *setting) apply(r *Rule, set model.RuleSetting) []model.Diagnostic {
	var diags []model.Diagnostic
	if set.Severity != "" {
		severity, ok := SeverityNamed(set.Severity)
		if !ok {
			diags = append(diags, unknown("severity", set.Severity, severityNames[:], set.Place))
		}
		if severity == Off && ok && r.Firm != "" {
			diags = append(diags, model.Diagnostic{
				Severity: "error", Place: set.SeverityPlace,
				Summary: r.Name + " cannot be switched off", Detail: "Its findings cannot be accepted either: " + r.Firm + ".",
			})
			severity = s.severity
		}
		s.severity, s.severityAt = severity, set.SeverityPlace
	}
	for _, l := range set.Limits {
		j := slices.IndexFunc(r.Limits, func(own Limit) bool { return own.Name == l.Name })
		if j < 0 {
			names := []string{"severity"}
			for _, own := range r.Limits {
				names = append(names, own.Name)
			}
			diags = append(diags, unknown("limit of "+r.Name, l.Name, names, l.Place))
			continue
		}
		s.limits[j], s.limitsAt[j] = l.Plain, l.Place
		if r.Limits[j].Unit == Millimetres {
			s.limits[j] = l.Length
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
	} else if len(known) <= 8 {
		d.Detail = "known are " + strings.Join(known, ", ")
	}
	return d
}
