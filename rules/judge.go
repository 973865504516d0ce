package rules

import (
	"fmt"
	"slices"

	"understitch/model"
)

// Under names a finding that makes another redundant: a rule that sees a fault
// which another rule may see as well says so, and does not ask whether it does.
// The engine drops the redundant finding only under one that was really made, in
// the same size, is at least as grave, and was not accepted. So a rule that is
// off, or has wider limits, silences nothing.
type Under struct {
	Rule    string // the rule's name
	Subject string // the address of the thing that it checks
	Key     string // which of its figures; "" for any
}

func (u Under) names(o *Outcome) bool {
	return u.Rule == o.Rule.Name && u.Subject == o.Subject && (u.Key == "" || u.Key == o.Key)
}

// cover notes for each finding which others, made in the same size, would make
// it redundant. A rule may name findings of its own and of the rules that it
// lists. A name that would close a circle is passed over.
func (e *Engine) cover(out []Outcome) {
	at := map[string][]int{} // findings by subject
	for i := range out {
		if out[i].Status == Found {
			at[out[i].Subject] = append(at[out[i].Subject], i)
		}
	}
	for i := range out {
		o := &out[i]
		if o.Status != Found {
			continue
		}
		for _, u := range o.under {
			if u.Rule != o.Rule.Name && !slices.Contains(o.Rule.Under, u.Rule) {
				panic("rules: " + o.Rule.Name + " names " + u.Rule + ", which it does not list") // a fault in the rule, met by any test of it
			}
			for _, j := range at[u.Subject] {
				c := &out[j]
				if j != i && u.names(c) && c.Severity >= o.Severity && !slices.Contains(o.covers, c.key()) && !rests(out, at, c, o) {
					o.covers = append(o.covers, c.key())
				}
			}
		}
	}
}

// rests reports whether a finding stands, in the end, under another.
func rests(out []Outcome, at map[string][]int, f, on *Outcome) bool {
	if f.key() == on.key() {
		return true
	}
	for _, k := range f.covers {
		for _, j := range at[k.subject] {
			if out[j].key() == k && rests(out, at, &out[j], on) {
				return true
			}
		}
	}
	return false
}

// ordered validates that no rule's findings can make each other redundant in a
// circle, by the rules that each of them lists.
func ordered(list []*Rule) error {
	at := map[string]*Rule{}
	for _, r := range list {
		at[r.Name] = r
	}
	const entered, left = 1, 2
	state := map[string]int{}
	var visit func(r *Rule) error
	visit = func(r *Rule) error {
		switch state[r.Name] {
		case entered:
			return fmt.Errorf("rule %s: findings of its own would make it redundant, by those that it lists", r.Name)
		case left:
			return nil
		}
		state[r.Name] = entered
		for _, name := range r.Under {
			if other := at[name]; other != nil {
				if err := visit(other); err != nil {
					return err
				}
			}
		}
		state[r.Name] = left
		return nil
	}
	for _, r := range list {
		if err := visit(r); err != nil {
			return err
		}
	}
	return nil
}

// ResultOf is the result of findings that were made, each with what follows from
// it in its Follow.
func ResultOf(findings ...Finding) *Result {
	r := &Result{}
	for _, f := range findings {
		follow := f.Follow
		f.Follow = nil
		r.raw = append(r.raw, f)
		for _, o := range follow {
			o.because = f.key()
			r.raw = append(r.raw, o)
		}
	}
	r.Settle()
	return r
}

// Accept moves findings to the accepted ones: those to which accept gives a
// waiver. What such a finding made redundant, and what followed from it, is then
// in force by itself.
func (r *Result) Accept(accept func(*Finding) *model.Waiver) {
	kept := make([]Finding, 0, len(r.raw))
	for _, f := range r.raw {
		w := accept(&f)
		if w == nil {
			kept = append(kept, f)
			continue
		}
		f.Status, f.Waiver = Waived, w
		r.Waived = append(r.Waived, f)
	}
	r.raw, r.Waived = kept, r.joined(r.Waived)
	r.Settle()
}

// Settle decides which of the raw findings are in force: those that no other in
// force makes redundant, each with what follows from it.
func (r *Result) Settle() {
	there := map[gatherKey]bool{}
	for i := range r.raw {
		there[r.raw[i].key()] = true
	}
	var force []Finding
	for _, f := range r.raw {
		if !slices.ContainsFunc(f.covers, func(k gatherKey) bool { return there[k] }) {
			force = append(force, f)
		}
	}
	r.Findings = r.joined(force)
	sortFindings(r.Findings)
	r.fold()
}

// Raw are all findings that were made and not accepted, also those that others
// make redundant, in the order of their places.
func (r *Result) Raw() []Finding {
	out := r.joined(r.raw)
	sortFindings(out)
	return out
}

// joined makes one finding of those of one check that stand under different
// findings in different sizes.
func (r *Result) joined(list []Finding) []Finding {
	at := map[gatherKey]int{}
	out := make([]Finding, 0, len(list))
	for _, f := range list {
		k := f.key()
		i, ok := at[k]
		if !ok {
			at[k] = len(out)
			out = append(out, f)
			continue
		}
		out[i] = out[i].with(f)
	}
	return out
}

// with is a finding together with the same one in other sizes.
func (f Finding) with(o Finding) Finding {
	both := f
	if o.worse(f.Outcome) {
		both = o
	}
	if f.because != o.because { // in some size it stands by itself
		both.because = gatherKey{}
	}
	both.Figures = model.Range{Low: min(f.Figures.Low, o.Figures.Low), High: max(f.Figures.High, o.Figures.High)}
	both.nth = append(slices.Clone(f.nth), o.nth...)
	both.Sizes = append(slices.Clone(f.Sizes), o.Sizes...)
	order := make([]int, len(both.Sizes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return both.nth[a] - both.nth[b] })
	sizes, nth := make([]string, len(order)), make([]int, len(order))
	for i, k := range order {
		sizes[i], nth[i] = both.Sizes[k], both.nth[k]
	}
	both.Sizes, both.nth = sizes, nth
	return both
}

// worse reports whether an outcome is worse than another of the same check.
func (o *Outcome) worse(than Outcome) bool {
	return o.Severity > than.Severity || o.Severity == than.Severity && o.Margin < than.Margin
}

// fold reports what follows from a finding in force as notes of that finding,
// which is then as grave as the gravest of them.
func (r *Result) fold() {
	at := map[gatherKey]int{}
	for i := range r.Findings {
		at[r.Findings[i].key()] = i
	}
	follows := func(f *Finding) (root int, ok bool) {
		root, ok = at[f.because]
		return root, ok && f.because != (gatherKey{})
	}
	for i := range r.Findings {
		if root, ok := follows(&r.Findings[i]); ok {
			r.Findings[root].takeIn(r.Findings[i])
		}
	}
	r.Findings = slices.DeleteFunc(r.Findings, func(f Finding) bool { _, ok := follows(&f); return ok })
}

// takeIn makes another finding a note of this one.
func (f *Finding) takeIn(other Finding) {
	f.Follow = append(f.Follow, other)
	f.Severity = max(f.Severity, other.Severity)
	f.Related = append(slices.Clip(f.Related), Related{fmt.Sprintf("from this comes, by %s: %s", other.Rule.Name, other.Message), other.Place})
}

// RestsOn reports whether a finding is not in force by itself, because of one
// that holds: it is redundant under it or follows from it.
func (r *Result) RestsOn(f Finding, holds func(*Finding) bool) bool {
	for i := range r.raw {
		o := &r.raw[i]
		if k := o.key(); (k == f.because || slices.Contains(f.covers, k)) && holds(o) {
			return true
		}
	}
	return false
}
