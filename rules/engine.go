package rules

import (
	"errors"
	"fmt"
	"regexp"
	"slices"

	"understitch/model"
)

// Engine runs a validated list of rules.
type Engine struct{ rules []*Rule }

// New validates the whole list once: names unique and well formed, the
// documentation complete, examples present, every limit with its source.
func New(list []*Rule) (*Engine, error) {
	var faults []error
	seen := map[string]bool{}
	for _, r := range list {
		if seen[r.Name] {
			faults = append(faults, fmt.Errorf("rule %s: listed twice", r.Name))
		}
		seen[r.Name] = true
		if err := r.validate(); err != nil {
			faults = append(faults, fmt.Errorf("rule %s: %w", r.Name, err))
		}
	}
	faults = append(faults, ordered(list))
	return &Engine{slices.Clone(list)}, errors.Join(faults...)
}

// Rules are the engine's rules, in the order they were listed.
func (e *Engine) Rules() []*Rule { return e.rules }

// Rule finds a rule by its name, or nil.
func (e *Engine) Rule(name string) *Rule {
	if i := e.index(name); i >= 0 {
		return e.rules[i]
	}
	return nil
}

func (e *Engine) index(name string) int {
	return slices.IndexFunc(e.rules, func(r *Rule) bool { return r.Name == name })
}

var ruleName = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

func (r *Rule) validate() error {
	switch {
	case !ruleName.MatchString(r.Name):
		return errors.New("the name is not lower-case words joined by hyphens")
	case r.Family == "":
		return errors.New("no family")
	case r.Severity == Off:
		return errors.New("no severity")
	case (r.Each == nil) == (r.Across == nil):
		return errors.New("it must look either at each size or across them")
	}
	if d := r.Doc; !r.Place.IsZero() { // a house documents its rules as far as it likes
		if d.Title == "" {
			return errors.New("its documentation has no title")
		}
		return nil
	}
	d := r.Doc
	for _, part := range []struct{ name, text string }{
		{"title", d.Title}, {"why", d.Why}, {"how", d.How}, {"fix", d.Fix},
		{"bad example", d.Bad}, {"good example", d.Good}, {"since", d.Since},
	} {
		if part.text == "" {
			return fmt.Errorf("its documentation has no %s", part.name)
		}
	}
	for _, l := range r.Limits {
		if l.Source == "" || l.Text == "" || l.Unit == "" {
			return fmt.Errorf("the limit %q lacks its unit, text or source", l.Name)
		}
	}
	return nil
}

// Check judges one garment in one size. The outcomes come in the order of the
// rules and of the things they look at. Each finding stands by itself: see Trace.
func (e *Engine) Check(g *model.Garment, s *Settings) []Outcome {
	out := told(e.all(g, s))
	e.cover(out)
	return out
}

// all are the outcomes with those findings that are only told where something
// follows from them.
func (e *Engine) all(g *model.Garment, s *Settings) []Outcome {
	return e.some(g, s, func(*Rule) bool { return true })
}

// some are the outcomes of those rules alone that are asked.
func (e *Engine) some(g *model.Garment, s *Settings, asked func(*Rule) bool) []Outcome {
	return e.run(g, s, func(r *Rule, look func(model.Thing, func(*Pass))) {
		if r.Each != nil && asked(r) {
			r.Each(g, look)
		}
	})
}

// CheckAcross judges what can only be seen over all sizes of a garment together.
func (e *Engine) CheckAcross(sizes []*model.Garment, s *Settings) []Outcome {
	if len(sizes) == 0 {
		return nil
	}
	out := e.run(sizes[0], s, func(r *Rule, look func(model.Thing, func(*Pass))) {
		if r.Across != nil {
			r.Across(sizes, look)
		}
	})
	e.cover(out)
	return out
}

// Misnamed gives the errors of the rules in force that name something which the
// garment has only under a name that is nearly the same: it cannot be checked by them.
func (e *Engine) Misnamed(g *model.Garment, s *Settings) []model.Diagnostic {
	var out []model.Diagnostic
	for i, r := range e.rules {
		if r.Misnamed != nil && s.rules[i].severity != Off {
			out = append(out, r.Misnamed(g)...)
		}
	}
	return out
}

func (e *Engine) run(g *model.Garment, s *Settings, walk func(*Rule, func(model.Thing, func(*Pass)))) []Outcome {
	var out []Outcome
	for i, r := range e.rules {
		set := s.rules[i]
		if set.severity == Off {
			continue
		}
		walk(r, func(thing model.Thing, run func(*Pass)) {
			p := Pass{Garment: g, rule: r, settings: s, limits: set.limits, ceiling: set.severity, thing: thing, out: out}
			run(&p)
			if !p.answered {
				p.Cannot(errors.New("the rule came to no verdict"), Say{})
			}
			out = p.out
		})
	}
	return out
}
