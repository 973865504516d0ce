package rules

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
)

// What a fitting or another size can change is listed before what neither can,
// however tight that is; among like the tightest comes first.
func TestClosestFirst(t *testing.T) {
	pass := func(r *Rule, subject string, margin float64) Outcome {
		return Outcome{Rule: r, Subject: subject, Status: Passed, Numeric: true, Unit: Millimetres, Limit: 2, Margin: margin, Room: 2}
	}
	walk, depth := &Rule{Name: "walk"}, &Rule{Name: "depth", Settled: true}
	r := Gather([]Outcome{pass(depth, "a", 0), pass(walk, "b", 1), pass(depth, "c", 1), pass(walk, "d", 0.5)})
	var order []string
	for _, f := range r.Closest {
		order = append(order, f.Subject)
	}
	require.Equal(t, []string{"d", "b", "a", "c"}, order)
}

// The worst figure is kept whole, and beside it how far all of them reach.
func TestGatherFigures(t *testing.T) {
	walk := &Rule{Name: "walk"}
	at := func(size string, measured float64) Outcome {
		return Outcome{Rule: walk, Subject: "seam.side", Status: Found, Severity: Error, Numeric: true, Measured: measured, Limit: 3, Margin: 3 - measured, Size: size}
	}
	r := Gather([]Outcome{at("36", 4), at("38", 5), at("40", 4.5)})
	require.Len(t, r.Findings, 1)
	f := r.Findings[0]
	require.Equal(t, []string{"36", "38", "40"}, f.Sizes)
	require.Equal(t, "38", f.Size)
	require.Equal(t, model.Range{Low: 4, High: 5}, f.Figures)
}

// The sizes of a check are kept as runs. They must be those that a plain list
// gives, also where a check is missing in some, comes twice in one, or comes once
// more for an earlier size when all are looked at together.
func TestSizesOfAFindingAreThoseOfAPlainList(t *testing.T) {
	rule := &Rule{Name: "walk"}
	rapid.Check(t, func(t *rapid.T) {
		names := []string{"", "34", "36", "38", "40", "42"}
		visits := rapid.SliceOfN(rapid.IntRange(0, len(names)-1), 0, 12).Draw(t, "sizes, as they come")
		status := rapid.SampledFrom([]Status{Passed, Found, NotPossible}).Draw(t, "status")
		var g Gathering
		var all []string
		plain := map[string][]string{}
		for _, v := range visits {
			size := names[v]
			var outcomes []Outcome
			for _, subject := range rapid.SliceOfN(rapid.SampledFrom([]string{"a", "b", "c"}), 0, 4).Draw(t, "checked") {
				outcomes = append(outcomes, Outcome{Rule: rule, Subject: subject, Status: status, Numeric: true, Size: size})
				list := plain[subject]
				if size != "" && (len(list) == 0 || list[len(list)-1] != size) {
					list = append(list, size)
				}
				plain[subject] = list
				if size != "" && !slices.Contains(all, size) {
					all = append(all, size)
				}
			}
			g.Add(outcomes)
		}
		for i := range g.joined {
			for _, f := range g.joined[i].list(g.sizes) {
				require.Equal(t, plain[f.Subject], f.Sizes)
				for k, n := range f.nth {
					require.Equal(t, f.Sizes[k], all[n])
				}
				require.Len(t, f.nth, len(f.Sizes))
				delete(plain, f.Subject)
			}
		}
		require.Empty(t, plain)
		require.Equal(t, all, g.sizes)
	})
}
