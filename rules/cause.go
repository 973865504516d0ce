package rules

import (
	"slices"

	"understitch/model"
)

// Cure is a way to put right what a finding is about. It is tried on the garment
// built anew, to see what else is put right with it.
type Cure struct {
	Title string // what the cutter does: "end shell.front.hem where shell.front.centre starts"
	Edits []Edit // the same in the spec, where a figure does it
	// Make changes the garment as it was drafted, before its alterations are made.
	Make func(g *model.Garment)
}

// Trace judges one garment in one size as Check does, and finds out which of the
// findings follow from another. A rule that knows how its finding is put right
// says so by Say.Cures; each of them is made on the garment built anew, and the
// rules look again. What is then no longer found follows from that finding, and
// Fold tells it there. What is found all the same is a fault of its own, though
// it may lie in the very same edge.
func (e *Engine) Trace(g *model.Garment, s *Settings) []Outcome {
	t := &trace{Engine: e, garment: g, settings: s, out: e.all(g, s), roots: map[gatherKey]bool{}}
	e.cover(t.out)
	for _, firm := range []bool{true, false} { // on what is firm all else rests
		for i := range t.out {
			if o := &t.out[i]; o.Status == Found && len(o.cures) > 0 && (o.Rule.Firm != "") == firm {
				t.follow(o)
			}
		}
	}
	return told(t.out)
}

// told leaves out what is only told where something follows from it.
func told(out []Outcome) []Outcome {
	return slices.DeleteFunc(out, func(o Outcome) bool { return o.only })
}

// trace is a garment while it is found out what follows from what.
type trace struct {
	*Engine
	garment  *model.Garment
	settings *Settings
	out      []Outcome
	made     []Cure             // those found so far, which stay made
	roots    map[gatherKey]bool // what something was found to follow from
	tried    int                // how many findings were tried
}

// mostTried is how many findings of a garment are put right to see what follows
// from them: a drawing with more faults is looked at again anyway, and each has the
// garment built anew several times.
const mostTried = 8

// follow tries the cures of one finding and marks what is put right by the one
// that puts most right.
func (t *trace) follow(root *Outcome) {
	if root.because != (gatherKey{}) || t.garment.Anew == nil {
		return
	}
	open := 0
	for i := range t.out {
		if t.follows(&t.out[i], root) {
			open++
		}
	}
	if open == 0 {
		return
	}
	if t.tried++; t.tried > mostTried {
		return
	}
	var best []*Outcome
	var by Cure
	most := 0 // findings less, all told
	if root.Rule.Firm != "" {
		most = -1 // what it hid may come to light by it
	}
	for _, c := range root.cures {
		gone, fresh := t.cured(root, c)
		if n := len(gone) - fresh; len(gone) > 0 && n > most {
			most, best, by = n, gone, c
		}
		if most == open {
			break
		}
	}
	for _, o := range best {
		o.because = root.key()
	}
	if best == nil {
		return
	}
	t.made = append(t.made, by)
	t.roots[root.key()] = true
	root.only, root.covers = false, nil // a cause is in force, whatever else sees it
	if by.Title != "" && (root.Mend == nil || root.Mend.Title != by.Title) {
		root.Mend = &Mend{Title: by.Title, Edits: by.Edits}
	}
}

// follows reports whether an outcome may be found to follow from a root.
func (t *trace) follows(o, root *Outcome) bool {
	return o != root && o.Status == Found && !o.only && o.covers == nil && o.because == (gatherKey{}) && !t.roots[o.key()]
}

// cured makes a cure, with those that were made before, and gives the findings
// that are gone by it, and how many are there that were not.
func (t *trace) cured(root *Outcome, c Cure) (gone []*Outcome, fresh int) {
	g := t.garment.Anew(func(g *model.Garment) {
		for _, m := range t.made {
			m.Make(g)
		}
		c.Make(g)
	})
	if g == nil {
		return nil, 0
	}
	was := map[gatherKey]bool{}
	asked := map[*Rule]bool{root.Rule: true} // those by which something may be gone
	for i := range t.out {
		o := &t.out[i]
		if o.Status == Found || o.Status == NotPossible {
			was[o.key()] = true
		}
		asked[o.Rule] = asked[o.Rule] || t.follows(o, root)
	}
	left := map[gatherKey]bool{}  // what is found still, or cannot be looked at
	moved := map[gatherKey]bool{} // things at which a rule now finds something else
	look := func(again bool) {
		for _, o := range t.some(g, t.settings, func(r *Rule) bool { return asked[r] == again }) {
			k := o.key()
			if left[k] || o.Status != NotPossible && (o.Status != Found || o.only) {
				continue
			}
			left[k] = true
			if !was[k] {
				// A list made whole asks more of paper than it can show. What the same rule
				// finds next at the same thing was hidden by the first fault.
				if o.Status == Found && (o.Rule != root.Rule || o.Subject != root.Subject) {
					fresh++
				}
				k.key = ""
				moved[k] = true
			}
		}
	}
	look(true)
	if left[root.key()] {
		return nil, 0
	}
	for i := range t.out {
		o := &t.out[i]
		thing := o.key()
		thing.key = ""
		if t.follows(o, root) && !left[o.key()] && !moved[thing] {
			gone = append(gone, o)
		}
	}
	if gone != nil {
		look(false) // the other rules can only tell of what is new
	}
	return gone, fresh
}

// key is what makes outcomes at several sizes the same check.
func (o *Outcome) key() gatherKey { return gatherKey{o.Rule, o.Subject, o.Key} }
