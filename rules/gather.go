package rules

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"understitch/model"
)

// Finding is one fault of a garment over all its sizes: the outcome at the
// size where it is worst, and the sizes it shows at.
type Finding struct {
	Outcome
	Sizes   []string      // in the garment's order; empty when it has no sizes
	Waiver  *model.Waiver // the waiver that accepts it; nil for a finding in force
	Follow  []Finding     // what follows from it, and is reported as notes of it
	Figures model.Range   // the least and the largest that was measured over its sizes

	nth []int // of each size: which it is of those that were checked
}

// Result is everything that came of checking one garment.
type Result struct {
	Findings    []Finding // in force
	Waived      []Finding
	NotPossible []Finding
	Closest     []Finding // passes with a figure, least room first, those that nothing will change last
	Passed      int       // looks that passed, each size counted

	watched map[[2]string]*waived // what waivers are about, by rule and subject
	sizes   []string              // that were checked

	raw []Finding // every finding that was not accepted; one for each set of findings that it stands under
}

// gatherKey is what makes two outcomes at two sizes the same check.
type gatherKey struct {
	rule         *Rule
	subject, key string
}

// Gather joins the outcomes of every size of one garment. Outcomes must come
// size by size in the garment's order.
func Gather(outcomes []Outcome) Result {
	var g Gathering
	g.Add(outcomes)
	return g.Result()
}

// Gathering joins the outcomes of a garment as they come, so that those of
// thousands of wearers need not all be kept. The zero value is empty.
type Gathering struct {
	passed  int
	sizes   []string
	at      map[string]int        // which of the sizes each is
	watched map[[2]string]*waived // by rule and subject
	bySize  []*model.Waiver
	joined  [NotPossible + 1]joiner
}

// Add takes in the outcomes of one more size.
func (g *Gathering) Add(outcomes []Outcome) {
	for _, o := range outcomes {
		nth := g.nth(o.Size)
		g.note(&o)
		o.account, o.cures = nil, nil // they would keep the garment of every size
		if o.Status == Passed {
			g.passed++
			if !o.Numeric {
				continue
			}
		}
		g.joined[o.Status].add(o, nth, g.alone(&o))
	}
}

// Result is what has come of all that was added; nothing may be added after.
func (g *Gathering) Result() Result {
	result := Result{
		raw:         g.joined[Found].list(g.sizes),
		NotPossible: g.joined[NotPossible].list(g.sizes),
		Closest:     g.joined[Passed].list(g.sizes),
		Passed:      g.passed,
		watched:     g.watched,
		sizes:       g.sizes,
	}
	result.Settle()
	sortFindings(result.NotPossible)
	slices.SortStableFunc(result.Closest, func(a, b Finding) int {
		return cmp.Or(a.settled()-b.settled(), cmp.Compare(a.tightness(), b.tightness()), byPlace(a, b))
	})
	return result
}

// nth is which of the sizes that were checked a size is; a new one is the next.
// A garment without sizes has none, which is -1.
func (g *Gathering) nth(size string) int {
	if size == "" {
		return -1
	}
	if n := len(g.sizes) - 1; n >= 0 && g.sizes[n] == size {
		return n
	}
	n, ok := g.at[size]
	if !ok {
		if g.at == nil {
			g.at = map[string]int{}
		}
		n = len(g.sizes)
		g.at[size] = n
		g.sizes = append(g.sizes, size)
	}
	return n
}

// joiner collects outcomes, one entry for each check, and for each set of
// findings that it stands under.
type joiner struct {
	findings []Finding
	runs     [][]run // of each finding
	index    map[joinKey]int
}

// run is a run of sizes, one after the other. What holds for thousands of wearers
// holds for nearly all of them: few runs say of whom.
type run struct{ from, to int } // without to

type joinKey struct {
	gatherKey
	covers string
	alone  string // the size that a waiver accepts by itself
}

func (j *joiner) add(o Outcome, nth int, alone string) {
	k := joinKey{gatherKey: o.key(), alone: alone}
	if len(o.covers) > 0 {
		k.covers = fmt.Sprint(o.covers)
	}
	i, ok := j.index[k]
	if !ok {
		if j.index == nil {
			j.index = map[joinKey]int{}
		}
		j.index[k] = len(j.findings)
		j.findings = append(j.findings, Finding{Outcome: o, Figures: model.Exactly(o.Measured)})
		j.runs = append(j.runs, extended(nil, nth))
		return
	}
	f := &j.findings[i]
	f.Figures.Low, f.Figures.High = min(f.Figures.Low, o.Measured), max(f.Figures.High, o.Measured)
	j.runs[i] = extended(j.runs[i], nth)
	because := f.because
	if o.because != because { // in some size it stands by itself
		because = gatherKey{}
	}
	if o.worse(f.Outcome) {
		f.Outcome = o
	}
	f.because = because
}

// extended is a list of runs with one more size, unless it was the last; they come
// size by size.
func extended(runs []run, nth int) []run {
	if nth < 0 {
		return runs
	}
	if last := len(runs) - 1; last >= 0 {
		switch runs[last].to {
		case nth + 1:
			return runs
		case nth:
			runs[last].to++
			return runs
		}
	}
	return append(runs, run{nth, nth + 1})
}

// list is what was collected, each with its sizes. Where those are one run, they
// are a stretch of the list of all sizes, and take no room of their own.
func (j *joiner) list(sizes []string) []Finding {
	all := make([]int, len(sizes))
	for i := range all {
		all[i] = i
	}
	for i, runs := range j.runs {
		f := &j.findings[i]
		for k, r := range runs {
			if k == 0 {
				f.Sizes, f.nth = sizes[r.from:r.to:r.to], all[r.from:r.to:r.to]
				continue
			}
			f.Sizes, f.nth = append(f.Sizes, sizes[r.from:r.to]...), append(f.nth, all[r.from:r.to]...)
		}
	}
	return j.findings
}

// tightness ranks passes by the share of their room that is left, so that
// figures of different sizes and units compare: nothing left is 0, as good as
// can be is 1. Where there is no telling how good it can be, as where a range
// is open, the margin is held against loose.
func (f Finding) tightness() float64 {
	room := f.Room
	if room == 0 {
		room = loose
	}
	return f.Margin / room
}

// settled puts what neither a fitting nor another size can change after what
// they can.
func (f Finding) settled() int {
	if f.Rule.Settled {
		return 1
	}
	return 0
}

// loose is a margin, in millimetres, that no fitting is likely to use up.
const loose = 40

func sortFindings(list []Finding) { slices.SortStableFunc(list, byPlace) }

func byPlace(a, b Finding) int {
	return cmp.Or(
		a.Place.Compare(b.Place),
		strings.Compare(a.Rule.Name, b.Rule.Name),
		strings.Compare(a.Subject, b.Subject),
		strings.Compare(a.Key, b.Key),
	)
}
