package report

import (
	"crypto/sha256"
	"encoding/hex"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"understitch/rules"
	"understitch/rules/inspect"
)

// Options say what goes into a document.
type Options struct {
	Version string         // of the program
	Least   rules.Severity // from which a finding keeps the cloth from being cut
	Closest int            // how many of the passes with least room are listed
	Rules   []*rules.Rule  // that the garments were judged by
}

// Of makes the document of inspected garments, in the order given.
func Of(reports []*inspect.Report, o Options) *Document {
	d := &Document{
		Version:  Version,
		Tool:     Tool{"understitch", o.Version},
		Garments: make([]*Garment, 0, len(reports)),
		Least:    o.Least,
		Rules:    o.Rules,

		inspected: reports,
	}
	sources := map[string][]byte{}
	for _, r := range reports {
		g := garment(r, o.Closest)
		d.Garments = append(d.Garments, g)
		d.Summary.count(g)
		sources[r.File] = r.Source
	}
	d.Source = func(file string) []byte { return sources[file] }
	return d
}

// Trim leaves out of a report the passes that its document will not list; of
// thousands of garments they would take up nearly all of the memory. Of makes the
// same of what is left.
func Trim(r *inspect.Report, closest int) {
	r.Result.Closest = header(r).close(r.Result.Closest, closest)
}

func garment(r *inspect.Report, closest int) *Garment {
	g := header(r)
	for _, f := range r.Result.Findings {
		g.Findings = append(g.Findings, g.finding(f))
	}
	for _, f := range r.Result.Waived {
		g.Waived = append(g.Waived, Waived{g.finding(f), Waiver{f.Waiver.Reason, f.Waiver.Until, f.Waiver.Place}})
	}
	for _, f := range r.Result.NotPossible {
		n := NotPossible{f.Rule.Name, f.Subject, f.Reason}
		if !slices.Contains(g.NotPossible, n) { // the same reason at another level or notch tells nothing new
			g.NotPossible = append(g.NotPossible, n)
		}
	}
	g.close(r.Result.Closest, closest)
	return g
}

// header is a garment of which nothing is listed yet.
func header(r *inspect.Report) *Garment {
	return &Garment{
		File:        r.File,
		Name:        r.Garment,
		Title:       r.Title,
		Unit:        r.Unit.Name,
		Sizes:       list(r.Sizes),
		Wearers:     r.OfWearers,
		Complete:    r.Complete(),
		Findings:    []Finding{},
		Waived:      []Waived{},
		NotPossible: []NotPossible{},
		Passed:      r.Result.Passed,
		Closest:     []Close{},
		Diagnostics: list(r.Diagnostics),
	}
}

// close lists the passes with least room left. Of those in which one rule says
// the same of several things the first stands for all; of two figures of one
// thing that come to the same the first is enough. Close returns those that had
// a part in the list.
func (g *Garment) close(passes []rules.Finding, most int) (listed []rules.Finding) {
	at, twice := map[string]int{}, map[string]bool{}
	for _, f := range passes {
		fig := figure(f)
		if fig == nil || fig.untouched() {
			continue
		}
		c := Close{Rule: f.Rule.Name, Subject: f.Subject, Key: f.Key, Sizes: list(f.Sizes), WorstSize: f.Size, Figure: *fig}
		kind, _, _ := strings.Cut(c.Key, " ") // what follows it are the names of things
		said := strings.Join([]string{c.Rule, g.showOf(c.Figure, c.Margin), g.showOf(c.Figure, math.Abs(c.Measured)), strings.Join(c.Sizes, "\x00")}, "\x00")
		twin := c.Subject + "\x00" + said
		said = kind + "\x00" + said
		i, known := at[said]
		switch {
		case twice[twin]:
		case known && g.Closest[i].Subject != c.Subject:
			g.Closest[i].Likewise = addTo(g.Closest[i].Likewise, c.Subject)
			twice[twin] = true
			listed = append(listed, f)
		case !known && len(g.Closest) < most:
			twice[twin] = true
			at[said] = len(g.Closest)
			g.Closest = append(g.Closest, c)
			listed = append(listed, f)
		}
	}
	return listed
}

func (g *Garment) finding(f rules.Finding) Finding {
	out := Finding{
		Rule:        f.Rule.Name,
		Severity:    f.Severity.String(),
		Subject:     f.Subject,
		Key:         f.Key,
		Message:     f.Message,
		Sizes:       list(f.Sizes),
		WorstSize:   f.Size,
		Figure:      figure(f),
		Range:       f.Place,
		Related:     list(f.Related),
		Mend:        f.Mend,
		Fingerprint: fingerprint(filepath.Base(g.File), g.Name, f.Rule.Name, f.Subject, f.Key),
	}
	if m := f.Mend; m != nil && m.Edits == nil {
		out.Mend = &rules.Mend{Title: m.Title, Safe: m.Safe, Edits: []rules.Edit{}}
	}
	return out
}

// figure is an outcome's figure, nil where it has none that can be written
// down: against a range without an end there is no room to tell.
func figure(o rules.Finding) *Figure {
	for _, v := range []float64{o.Measured, o.Limit, o.Margin} {
		if math.IsInf(v, 0) || math.IsNaN(v) {
			return nil
		}
	}
	if !o.Numeric {
		return nil
	}
	return &Figure{o.Measured, o.Limit, o.Margin, string(o.Unit), o.Figures.High - o.Figures.Low}
}

// untouched reports whether all of the room is left: what is exactly as it is
// meant to be is not a close call.
func (f *Figure) untouched() bool {
	const nothing = 1e-9 // of the limit
	return f.Limit > 0 && math.Abs(f.Measured) <= nothing*f.Limit && f.Margin >= f.Limit*(1-nothing)
}

// fingerprint tells a finding again after lines have moved or the folder has:
// it is made of names alone.
func fingerprint(names ...string) string {
	sum := sha256.Sum256([]byte(strings.Join(names, "\x00")))
	return hex.EncodeToString(sum[:12])
}

// list is never nil, so that it is written as [].
func list[T any](l []T) []T {
	if l == nil {
		return []T{}
	}
	return l
}
