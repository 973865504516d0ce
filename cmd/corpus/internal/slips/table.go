package slips

import (
	"cmp"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
)

// Print writes what came of slips: in all, by kind, and what misses the aim.
func Print(out io.Writer, list []One) {
	p := func(format string, args ...any) { fmt.Fprintf(out, format+"\n", args...) }
	var counted []One
	refused, nothing, notes := 0, 0, 0
	for _, o := range list {
		switch {
		case o.Refused:
			refused++
		case o.Raw == 0:
			nothing++
		default:
			counted = append(counted, o)
			if o.Found == 0 {
				notes++
			}
		}
	}
	n := len(counted)
	share := func(what string, suits func(One) bool) {
		p("  %-34s %6d  %s", what, many(counted, suits), percent(many(counted, suits), n))
	}
	p("%-36s %6d", "slips made", len(list))
	p("  %-34s %6d", "refused in reading", refused)
	p("  %-34s %6d", "of which no rule says anything", nothing)
	p("%-36s %6d", "slips of account", n)
	share("one error or warning", func(o One) bool { return o.Found == 1 })
	share("two", func(o One) bool { return o.Found == 2 })
	share("three", func(o One) bool { return o.Found == 3 })
	share("more", func(o One) bool { return o.Found > 3 })
	share("notes alone", func(o One) bool { return o.Found == 0 })
	share("what slipped is named", func(o One) bool { return o.Named })
	p("%-36s %6d", "of account, notes alone left out", n-notes)
	p("  %-34s %6d  %s", "one error or warning", many(counted, One.single), percent(many(counted, One.single), n-notes))
	p("  %-34s %6d  %s", "what slipped is named", many(counted, func(o One) bool { return o.Named }), percent(many(counted, func(o One) bool { return o.Named }), n-notes))

	p("\n%-24s %8s %8s %8s %8s %8s %8s %8s", "by kind", "account", "one", "two", "three", "more", "notes", "named")
	for _, kind := range kindsOf(counted) {
		of := slices.DeleteFunc(slices.Clone(counted), func(o One) bool { return o.Kind != kind })
		row := []any{kind, len(of)}
		for _, found := range []int{1, 2, 3} {
			row = append(row, many(of, func(o One) bool { return o.Found == found }))
		}
		row = append(row, many(of, func(o One) bool { return o.Found > 3 }), many(of, func(o One) bool { return o.Found == 0 }), many(of, func(o One) bool { return o.Named }))
		p("%-24s %8d %8d %8d %8d %8d %8d %8d", row...)
	}
	misses(p, "more than one finding, or notes alone", counted, func(o One) bool { return o.Found != 1 })
	misses(p, "what slipped is not named", counted, func(o One) bool { return !o.Named && o.Found > 0 })
}

func (o One) single() bool { return o.Found == 1 }

func kindsOf(list []One) []string {
	var out []string
	for _, o := range list {
		if !slices.Contains(out, o.Kind) {
			out = append(out, o.Kind)
		}
	}
	slices.Sort(out)
	return out
}

func many(list []One, suits func(One) bool) int {
	n := 0
	for _, o := range list {
		if suits(o) {
			n++
		}
	}
	return n
}

// misses groups slips by kind and by the rules that spoke, with one of each.
func misses(p func(string, ...any), head string, list []One, suits func(One) bool) {
	groups, first := map[string]int{}, map[string]string{}
	for _, o := range list {
		if !suits(o) {
			continue
		}
		g := o.Kind + ": " + cmp.Or(o.Rules, "notes alone")
		if groups[g]++; groups[g] == 1 {
			first[g] = o.File[strings.LastIndexByte(o.File, '/')+1:] + ", " + o.What
		}
	}
	if len(groups) == 0 {
		return
	}
	p("\n%s:", head)
	printGroups(p, groups, first)
}

func printGroups(p func(string, ...any), groups map[string]int, first map[string]string) {
	for _, g := range slices.SortedFunc(maps.Keys(groups), func(a, b string) int {
		return cmp.Or(cmp.Compare(groups[b], groups[a]), cmp.Compare(a, b))
	}) {
		p("%6d  %s  [%s]", groups[g], g, first[g])
	}
}

// PrintPairs writes what came of pairs of slips.
func PrintPairs(out io.Writer, list []Pair) {
	p := func(format string, args ...any) { fmt.Fprintf(out, format+"\n", args...) }
	both := 0
	groups, first := map[string]int{}, map[string]string{}
	for _, pair := range list {
		if pair.Both {
			both++
			continue
		}
		g := pair.Alone[0] + " | " + pair.Alone[1] + " -> " + pair.Rules
		groups[g]++
		first[g] = pair.File[strings.LastIndexByte(pair.File, '/')+1:] + ", " + pair.Slips[0].What + "; " + pair.Slips[1].What
	}
	p("%-36s %6d", "pairs of independent slips", len(list))
	p("  %-34s %6d  %s", "both are found", both, percent(both, len(list)))
	if len(groups) > 0 {
		p("\nonly one is found:")
		printGroups(p, groups, first)
	}
}

func percent(a, b int) string {
	if b == 0 {
		return ""
	}
	return fmt.Sprintf("%.1f %%", 100*float64(a)/float64(b))
}
