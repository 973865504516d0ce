package rules

import (
	"testing"

	"github.com/stretchr/testify/require"

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
