package rules

import (
	"fmt"
	"slices"
	"time"

	"understitch/model"
)

// WaiverRule is the name of the rule over waivers themselves, which the engine
// judges once all the others are gathered.
const WaiverRule = "waiver-current"

// Waivers applies a garment's waivers to what was gathered: a finding that one
// accepts moves to Waived. A waiver past its last day, one that matches nothing
// and one of a rule that cannot be waived are findings themselves. partial tells
// that not every size was checked, so that a waiver without a match may belong to another size.
func (e *Engine) Waivers(r *Result, g *model.Garment, s *Settings, today time.Time, partial bool) {
	date := today.Format(time.DateOnly)
	matched := make([]bool, len(g.Waivers))
	r.Accept(func(f *Finding) *model.Waiver {
		for i, w := range g.Waivers {
			if w.Rule != f.Rule.Name || w.At != f.Subject {
				continue
			}
			matched[i] = true
			if f.Rule.Firm != "" {
				continue // reported below, whether or not there is a finding
			}
			note := refuses(w, *f, g, date)
			if note == "" {
				return w
			}
			f.Related = append(slices.Clip(f.Related), Related{note, w.Place})
		}
		return nil
	})
	for i, w := range g.Waivers {
		switch rule := e.Rule(w.Rule); {
		case rule != nil && rule.Firm != "":
			e.staleWaiver(r, g, s, w, fmt.Sprintf("%s cannot be waived: %s; take the waiver out", w.Rule, rule.Firm))
		case past(w, date):
			e.staleWaiver(r, g, s, w, fmt.Sprintf("the waiver of %s at %s held until %s; mend what it covered, or look again and give it a new date", w.Rule, w.At, w.Until))
		case !matched[i] && !partial:
			e.staleWaiver(r, g, s, w, e.matchesNothing(w))
		}
	}
}

func past(w *model.Waiver, date string) bool { return w.Until != "" && w.Until < date }

// refuses tells why a waiver that matches a finding does not accept it, or "".
func refuses(w *model.Waiver, f Finding, g *model.Garment, date string) string {
	if past(w, date) {
		return "this was accepted until " + w.Until
	}
	if w.UpTo == nil {
		return ""
	}
	upTo, shown := w.UpTo.Plain, fmt.Sprint(w.UpTo.Plain)
	if f.Unit == Millimetres {
		upTo, shown = w.UpTo.Length, g.Show(w.UpTo.Length)
	}
	if f.Numeric && f.Off > upTo {
		return "this was accepted up to " + shown
	}
	return ""
}

func (e *Engine) matchesNothing(w *model.Waiver) string {
	if e.Rule(w.Rule) == nil {
		text := fmt.Sprintf("this waives %q, and there is no rule of that name", w.Rule)
		if near := Nearest(w.Rule, e.names()); near != "" {
			text += fmt.Sprintf("; did you mean %q?", near)
		}
		return text
	}
	return fmt.Sprintf("this waives nothing: %s finds no fault at %s; take the waiver out", w.Rule, w.At)
}

func (e *Engine) staleWaiver(r *Result, g *model.Garment, s *Settings, w *model.Waiver, message string) {
	rule := e.Rule(WaiverRule)
	if rule == nil {
		return // an engine of a few rules, as tests build
	}
	severity := s.InForce(WaiverRule).Severity
	if severity == Off {
		return
	}
	r.raw = append(r.raw, Finding{Outcome: Outcome{
		Rule: rule, Subject: w.At, Key: w.Rule, Status: Found, Severity: severity, Message: message, Place: w.Place,
	}, Sizes: g.Sizes})
	r.Settle()
}
