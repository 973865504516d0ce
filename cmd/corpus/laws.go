package main

import (
	"cmp"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"understitch/cmd/corpus/internal/laws"
)

// holdToLaws grows every fault in so many garments, changes the house in ten times as
// many, and prints where a law does not hold.
func holdToLaws(out io.Writer, garments int, seed uint64, keep string) error {
	grown, breaks, err := laws.Faults(laws.Size{Garments: garments, Times: laws.AllTimes, Seed: seed})
	if err != nil {
		return err
	}
	judged, more, err := laws.House(100*garments, 6, seed)
	if err != nil {
		return err
	}
	breaks = append(breaks, more...)
	fmt.Fprintf(out, "garments with a fault that grows  %6d\ngarments of which the house changes %4d\nwhere a law does not hold         %6d\n", grown, judged, len(breaks))
	times, first := map[string]int{}, map[string]string{}
	for i, b := range breaks {
		g := b.Law + ": " + b.Kind
		if times[g]++; times[g] == 1 {
			first[g] = b.File + ": " + b.What
		}
		if keep != "" {
			if err := os.WriteFile(filepath.Join(keep, fmt.Sprintf("%05d-%s", i, b.File)), []byte(b.Text), 0o644); err != nil {
				return err
			}
		}
	}
	for _, g := range slices.SortedFunc(maps.Keys(times), func(a, b string) int {
		return cmp.Or(cmp.Compare(times[b], times[a]), cmp.Compare(a, b))
	}) {
		fmt.Fprintf(out, "%6d  %s  [%s]\n", times[g], g, first[g])
	}
	return nil
}
