package rules

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"understitch/model"
)

// WaiverRule is the name of the rule over waivers themselves, which the engine
// checks once all the others are gathered.
const WaiverRule = "waiver-current"

// waived is what the rule and the thing of a waiver came to: the figures that the
// rule took of the thing, and why one could not be had.
type waived struct {
	keys   []string
	ends   []string // of each key
	reason string
}

// Watch notes what the waivers of a garment are about, so that the figures which
// rules take of those things are known. It comes before the first Add.
func (g *Gathering) Watch(list []*model.Waiver) {
	for _, w := range list {
		if g.watched == nil {
			g.watched = map[[2]string]*waived{}
		}
		g.watched[[2]string{w.Rule, w.At}] = &waived{}
		if w.Size != "" {
			g.bySize = append(g.bySize, w)
		}
	}
}

// note takes down an outcome that a waiver is about.
func (g *Gathering) note(o *Outcome) {
	if len(g.watched) == 0 {
		return
	}
	w := g.watched[[2]string{o.Rule.Name, o.Subject}]
	if w == nil || o.Status == Passed && !o.Numeric {
		return
	}
	if o.Status == NotPossible && w.reason == "" {
		w.reason = o.Reason
	}
	if !slices.Contains(w.keys, o.Key) {
		w.keys, w.ends = append(w.keys, o.Key), append(w.ends, o.End)
	}
}

// alone reports whether a waiver accepts a finding in one size alone, so that the
// finding stands by itself in that size.
func (g *Gathering) alone(o *Outcome) string {
	for _, w := range g.bySize {
		if w.Size == o.Size && w.Rule == o.Rule.Name && w.At == o.Subject {
			return o.Size
		}
	}
	return ""
}

// Waivers applies a garment's waivers to what was gathered: a finding that one
// accepts moves to Waived. A waiver past its last day, one that matches nothing, one
// that does not say which of several figures it accepts and one of a rule that
// cannot be waived are findings themselves. One whose check is not possible is
// reported as such, and one of a rule that is off sleeps. Partial says that not every
// size was checked, so that a waiver without a match may belong to another size.
func (e *Engine) Waivers(r *Result, g *model.Garment, s *Settings, today time.Time, partial bool) {
	date := today.Format(time.DateOnly)
	matched := make([]bool, len(g.Waivers))
	r.Accept(func(f *Finding) *model.Waiver {
		for i, w := range g.Waivers {
			if w.Rule != f.Rule.Name || w.At != f.Subject || !accepts(w, f, r.watched) {
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
		about := r.watched[[2]string{w.Rule, w.At}]
		rule := e.Rule(w.Rule)
		switch {
		case rule != nil && rule.Firm != "":
			e.staleWaiver(r, g, s, w, Warning, fmt.Sprintf("%s cannot be waived: %s; take the waiver out", w.Rule, rule.Firm))
		case rule != nil && s.InForce(w.Rule).Severity == Off:
		case past(w, date):
			e.staleWaiver(r, g, s, w, Warning, fmt.Sprintf("the waiver of %s at %s held until %s; mend what it covered, or look again and give it a new date", w.Rule, w.At, w.Until))
		case about != nil && unsaid(w) && len(about.keys) > 1:
			e.staleWaiver(r, g, s, w, Error, about.severalFigures(w))
		case matched[i]:
		case about != nil && about.reason != "":
			r.NotPossible = append(r.NotPossible, Finding{Outcome: Outcome{
				Rule: e.Rule(WaiverRule), Subject: w.At, Key: w.Rule, Status: NotPossible, Place: w.Place,
				Reason: fmt.Sprintf("the waiver of %s cannot be checked, because %s", w.Rule, about.reason),
			}})
		case !partial && w.Size == "" || slices.Contains(r.sizes, w.Size):
			e.staleWaiver(r, g, s, w, Warning, e.matchesNothing(w, about))
		}
	}
	if e.Rule(WaiverRule) == nil {
		r.NotPossible = slices.DeleteFunc(r.NotPossible, func(f Finding) bool { return f.Rule == nil })
	}
	sortFindings(r.NotPossible)
}

// unsaid reports whether a waiver names no figure.
func unsaid(w *model.Waiver) bool { return w.Figure == "" && w.Level == "" && w.End == "" }

// accepts reports whether a finding is the figure that a waiver names. A waiver
// that names none accepts the only figure of its thing.
func accepts(w *model.Waiver, f *Finding, watched map[[2]string]*waived) bool {
	if w.Size != "" && !slices.Equal(f.Sizes, []string{w.Size}) {
		return false
	}
	about := watched[[2]string{w.Rule, w.At}]
	switch {
	case w.End != "":
		return f.End == w.End
	case w.Level != "":
		return f.Key == w.Level
	case w.Figure == "":
		return about == nil || len(about.keys) <= 1
	case f.Key == w.Figure:
		return true
	}
	if about == nil {
		return false
	}
	// "corner" is enough for "corner shell.front.top side" where there is one corner.
	like := 0
	for _, k := range about.keys {
		if strings.HasPrefix(k, w.Figure+" ") {
			like++
		}
	}
	return like == 1 && strings.HasPrefix(f.Key, w.Figure+" ")
}

// severalFigures lists the figures that a waiver may name.
func (about *waived) severalFigures(w *model.Waiver) string {
	var names []string
	for i, k := range about.keys {
		name := fmt.Sprintf("figure = %q", k)
		if about.ends[i] != "" && !slices.Contains(names, fmt.Sprintf("end = %q", about.ends[i])) {
			name = fmt.Sprintf("end = %q", about.ends[i])
		}
		names = append(names, name)
	}
	const most = 12
	more := ""
	if len(names) > most {
		more = fmt.Sprintf(" and %d more", len(names)-most)
		names = names[:most]
	}
	return fmt.Sprintf("this waiver accepts nothing: %s takes several figures of %s. Say which one it accepts: %s%s", w.Rule, w.At, strings.Join(names, ", "), more)
}

func past(w *model.Waiver, date string) bool { return w.Until != "" && w.Until < date }

// refuses gives the reason why a waiver that matches a finding does not accept it,
// or "".
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

func (e *Engine) matchesNothing(w *model.Waiver, about *waived) string {
	if e.Rule(w.Rule) == nil {
		text := fmt.Sprintf("this waives %q, and there is no rule of that name", w.Rule)
		if near := Nearest(w.Rule, e.names()); near != "" {
			text += fmt.Sprintf("; did you mean %q?", near)
		}
		return text
	}
	if w.Figure != "" && about != nil && len(about.keys) > 0 && !slices.Contains(about.keys, w.Figure) {
		text := fmt.Sprintf("this waives nothing: %s has no figure %q at %s", w.Rule, w.Figure, w.At)
		if near := Nearest(w.Figure, about.keys); near != "" {
			text += fmt.Sprintf("; did you mean %q?", near)
		}
		return text
	}
	return fmt.Sprintf("this waives nothing: %s finds no fault at %s; take the waiver out", w.Rule, w.At)
}

func (e *Engine) staleWaiver(r *Result, g *model.Garment, s *Settings, w *model.Waiver, severity Severity, message string) {
	rule := e.Rule(WaiverRule)
	if rule == nil {
		return // an engine of a few rules, as tests build
	}
	if set := s.InForce(WaiverRule).Severity; set == Off || severity == Warning {
		severity = set
	}
	if severity == Off {
		return
	}
	r.raw = append(r.raw, Finding{Outcome: Outcome{
		Rule: rule, Subject: w.At, Key: w.Rule, Status: Found, Severity: severity, Message: message, Place: w.Place,
	}, Sizes: g.Sizes})
	r.Settle()
}
