package laws

import (
	"fmt"
	"slices"
	"strings"

	"understitch/cmd/corpus/internal/faults"
	"understitch/cmd/corpus/internal/plan"
	"understitch/cmd/corpus/internal/tally"
	"understitch/rules"
	"understitch/rules/inspect"
)

// Size says in how many garments each fault is grown, and to how many times its limit.
type Size struct {
	Garments int
	Times    []float64
	Seed     uint64
}

// AllTimes go from hardly anything to far too much.
var AllTimes = []float64{0.1, 0.3, 0.8, 1.25, 1.6, 2.2, 3, 4.5, 7, 10, 14, 20}

// Break is where a law does not hold.
type Break struct{ Law, Kind, What, File, Text string }

// Faults grows every kind of fault in so many garments, and gives the number of
// garments that were checked.
func Faults(size Size) (checked int, breaks []Break, err error) {
	memory, err := tally.InMemory()
	if err != nil {
		return 0, nil, err
	}
	type grown struct {
		faults.Fault
		faults.Growth
		n int
	}
	var all []grown
	for _, f := range faults.All(4) {
		g, ok := f.Growth()
		for n := range size.Garments {
			if ok {
				all = append(all, grown{f, g, n})
			}
		}
	}
	found := make([][]Break, len(all))
	counts, errs := make([]int, len(all)), make([]error, len(all))
	tally.Parallel(len(all), func(i int) {
		a := all[i]
		found[i], counts[i], errs[i] = grow(memory, a.Fault, a.Growth, a.n, size)
	})
	for i := range all {
		if errs[i] != nil {
			return 0, nil, errs[i]
		}
		checked += counts[i]
		breaks = append(breaks, found[i]...)
	}
	return checked, breaks, nil
}

// step is what is said of a fault at one amount.
type step struct {
	times   float64
	gravest rules.Severity // of what names the planted thing
	any     rules.Severity // of all that is said
	said    string
	doubt   bool // some check is not possible, or the spec cannot be read in full
}

// grow grows one fault in one garment.
func grow(m *tally.Memory, fault faults.Fault, growth faults.Growth, n int, size Size) ([]Break, int, error) {
	var breaks []Break
	var worst step
	count, fewest := 0, 0
	for _, k := range size.Times {
		if k > growth.Most {
			break
		}
		f, err := plan.Grown(n, plan.Size{Sizes: 4, Seed: size.Seed}, fault, k*growth.Limit)
		if err != nil {
			return nil, 0, err
		}
		report := m.Check(f.File, f.Text)
		now := seen(report, f, k)
		if count++; count == 1 {
			fewest = len(report.Result.NotPossible)
		}
		now.doubt = !report.Complete() || len(report.Result.NotPossible) > fewest
		broken := func(law, format string, args ...any) {
			what := fmt.Sprintf("%s at %g times its limit ", fault.Name, k) + fmt.Sprintf(format, args...)
			breaks = append(breaks, Break{law, fault.Name, what, f.File, f.Text})
		}
		switch {
		case k < 1 && !growth.Sharp && slices.ContainsFunc(report.Result.Findings, func(o rules.Finding) bool { return o.Rule.Name == fault.Rule && o.Severity >= rules.Warning }):
			broken("in order", "is found: %s", now.said)
		case now.gravest >= worst.gravest:
		case now.doubt && (now.any == rules.Error || !report.Complete()): // it may not be cut
		case now.doubt:
			broken("fault", "makes a check impossible and may be cut; at %g times: %s", worst.times, worst.said)
		default:
			broken("fault", "gives %q, which is less than at %g times: %s", now.said, worst.times, worst.said)
		}
		if now.gravest > worst.gravest {
			worst = now
		}
	}
	return breaks, count, nil
}

// seen is what is in force, and what of it names the planted thing.
func seen(report *inspect.Report, f plan.File, k float64) step {
	s := step{times: k}
	names := append([]string{f.Subject}, f.Touched...)
	var said []string
	for i := range report.Result.Findings {
		o := &report.Result.Findings[i]
		s.any = max(s.any, o.Severity)
		said = append(said, o.Severity.String()+" "+o.Rule.Name)
		words := o.Subject + " | " + o.Message
		for _, r := range o.Related {
			words += " | " + r.Message
		}
		if slices.ContainsFunc(names, func(name string) bool { return tally.Says(words, name) }) {
			s.gravest = max(s.gravest, o.Severity)
		}
	}
	s.said = strings.Join(said, ", ")
	return s
}
