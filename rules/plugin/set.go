package plugin

import (
	"fmt"
	"math"
	"sync/atomic"

	"understitch/model"
	"understitch/rules"
)

// Set is the plugins of one house. The zero value and nil have none.
type Set struct{ hosts []*host }

// NewSet makes a house's plugins ready to be asked. Nothing is read or started
// before the first garment. A nil runner fails every plugin. The rules are those
// that [Rule] made, one for each plugin.
func NewSet(r *Runner, open Open, plugins []*model.Plugin, list []*rules.Rule) *Set {
	s := &Set{}
	for i, p := range plugins {
		s.hosts = append(s.hosts, &host{decl: p, rule: list[i], runner: r, open: open})
	}
	return s
}

// Close ends the plugins. What is asked after it is asked in vain.
func (s *Set) Close() {
	if s == nil {
		return
	}
	for _, h := range s.hosts {
		h.close()
	}
}

// Asking is the asking about one garment, over its sizes or wearers. Looks may
// come from several sides; [Asking.Take] is called for each of them in order.
type Asking struct {
	set    *Set
	failed []atomic.Int64 // for each plugin the first look it failed at
	over   []bool         // and whether that has been taken in
}

// Asking begins the asking about a garment.
func (s *Set) Asking() *Asking {
	if s == nil || len(s.hosts) == 0 {
		return nil
	}
	out := &Asking{set: s, failed: make([]atomic.Int64, len(s.hosts)), over: make([]bool, len(s.hosts))}
	for i := range out.failed {
		out.failed[i].Store(math.MaxInt64)
	}
	return out
}

// Look is what the plugins said about a garment in one size.
type Look []said

type said struct {
	outcomes []rules.Outcome
	failed   *model.Diagnostic
}

// Look asks the plugins about a garment in the size at hand, the n-th of its
// sizes. Plugins that failed at an earlier size are not asked again. severity
// tells how the house has a rule.
func (s *Asking) Look(n int, g *model.Garment, severity func(rule string) rules.Severity) Look {
	if s == nil {
		return nil
	}
	out := make(Look, len(s.set.hosts))
	for i, h := range s.set.hosts {
		ceiling := severity(h.rule.Name)
		if ceiling == rules.Off || s.failed[i].Load() < int64(n) {
			continue
		}
		if out[i].failed = h.ready(); out[i].failed == nil {
			var err error
			if out[i].outcomes, err = h.look(g, ceiling); err != nil {
				out[i].failed = told(summary(h.decl.Name, g.Size, err), err, g.Place)
			}
		}
		if out[i].failed != nil {
			lower(&s.failed[i], int64(n))
		}
	}
	return out
}

func summary(name, size string, err error) string {
	of := ""
	if size != "" {
		of = " in " + size
	}
	return fmt.Sprintf("what the plugin %q looks for is not known of this garment%s: %s", name, of, err)
}

// lower sets a figure to a lesser one.
func lower(to *atomic.Int64, n int64) {
	for {
		old := to.Load()
		if old <= n || to.CompareAndSwap(old, n) {
			return
		}
	}
}

// Take takes in what came of the looks, in their order: the outcomes, and how
// plugins failed. What a plugin said of sizes after one that it failed at is left
// out, whether it was asked or not, so that the same garment gives the same
// report.
func (s *Asking) Take(l Look) (outcomes []rules.Outcome, failed []model.Diagnostic) {
	for i, x := range l { // of a nil asking there are none
		switch {
		case s.over[i]:
		case x.failed != nil:
			s.over[i] = true
			failed = append(failed, *x.failed)
		default:
			outcomes = append(outcomes, x.outcomes...)
		}
	}
	return outcomes, failed
}
