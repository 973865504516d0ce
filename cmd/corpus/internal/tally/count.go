package tally

import (
	"cmp"
	"fmt"
	"io"
	"maps"
	"slices"

	"understitch/rules"
)

// Count is what came of a corpus.
type Count struct {
	Planted, Found    int
	Missed            []Case // faults that the expected rule did not find
	Twice             []Case // faults about which another rule said something as well
	Again             []Case // faults about which the same rule said more than one thing
	Clean             int
	Passed            int    // looks at garments in order that passed
	NotPossible       int    // and that were not possible
	Disturbed, Unread []Case // clean garments with an error or a warning; files that were not checked in full
}

// Of counts.
func Of(cases []Case) Count {
	var n Count
	for _, c := range cases {
		if len(c.Unread) > 0 {
			n.Unread = append(n.Unread, c)
		}
		if c.Fault == "" {
			n.Clean++
			n.Passed += c.Passed
			n.NotPossible += c.NotPossible
			if slices.ContainsFunc(c.Findings, func(f Finding) bool { return f.Severity != rules.Note.String() }) {
				n.Disturbed = append(n.Disturbed, c)
			}
			continue
		}
		n.Planted++
		if c.Found() {
			n.Found++
		} else {
			n.Missed = append(n.Missed, c)
		}
		other, same := c.Further()
		if len(other) > 0 {
			n.Twice = append(n.Twice, c)
		}
		if len(same) > 0 {
			n.Again = append(n.Again, c)
		}
	}
	return n
}

// Print writes the count, and for each kind of miss how often it came and where.
func (n Count) Print(out io.Writer) {
	p := func(format string, args ...any) { fmt.Fprintf(out, format+"\n", args...) }
	p("planted faults           %6d", n.Planted)
	p("  found by the rule      %6d  %s", n.Found, percent(n.Found, n.Planted))
	p("  missed                 %6d", len(n.Missed))
	p("  by two rules           %6d", len(n.Twice))
	p("  twice by one rule      %6d", len(n.Again))
	p("garments in order        %6d", n.Clean)
	p("  with error or warning  %6d", len(n.Disturbed))
	p("  looks that passed      %6d", n.Passed)
	p("  looks not possible     %6d", n.NotPossible)
	p("not read in full         %6d", len(n.Unread))
	n.list(p, "missed", n.Missed, func(c Case) []string {
		return []string{fmt.Sprintf("%s (%s)", c.Rule, c.Fault)}
	})
	further := func(list func(Case) []Finding) func(Case) []string {
		return func(c Case) []string {
			var out []string
			for _, f := range list(c) {
				out = append(out, fmt.Sprintf("%s (%s) of a %s: also %s", c.Rule, c.Fault, c.Kind, f.Rule))
			}
			return out
		}
	}
	n.list(p, "by two rules", n.Twice, further(func(c Case) []Finding { other, _ := c.Further(); return other }))
	n.list(p, "twice by one rule", n.Again, further(func(c Case) []Finding { _, same := c.Further(); return same }))
	n.list(p, "in order, with error or warning", n.Disturbed, func(c Case) []string {
		var out []string
		for _, f := range c.Findings {
			if f.Severity != rules.Note.String() {
				out = append(out, fmt.Sprintf("%s %s of a %s: %s", f.Severity, f.Rule, c.Kind, f.Subject))
			}
		}
		return out
	})
	n.list(p, "not read in full", n.Unread, func(c Case) []string { return c.Unread[:1] })
}

// list groups cases and gives the first file of each group.
func (n Count) list(p func(string, ...any), head string, cases []Case, groups func(Case) []string) {
	if len(cases) == 0 {
		return
	}
	times, first := map[string]int{}, map[string]string{}
	for _, c := range cases {
		for _, g := range groups(c) {
			if times[g]++; first[g] == "" {
				first[g] = c.File
			}
		}
	}
	p("\n%s:", head)
	for _, g := range slices.SortedFunc(maps.Keys(times), func(a, b string) int {
		return cmp.Or(cmp.Compare(times[b], times[a]), cmp.Compare(a, b))
	}) {
		p("%6d  %s  [%s]", times[g], g, first[g])
	}
}

func percent(a, b int) string {
	if b == 0 {
		return ""
	}
	return fmt.Sprintf("%.2f %%", 100*float64(a)/float64(b))
}
