package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"time"

	"understitch/cmd/corpus/internal/cost"
	"understitch/cmd/corpus/internal/plan"
	"understitch/cmd/corpus/internal/tally"
)

// Frozen is the corpus by which the cost of a check is told: garments of all
// kinds, half of them with a fault, and more than four sizes in the mean.
var Frozen = plan.Size{Garments: 1000, Sizes: 8, Faults: 0.5, Seed: 12}

const (
	costRuns  = 3
	costLimit = 30 * time.Minute
)

// tellCost writes the first of the frozen corpus's garments and prints what
// checking them with a program costs, as a multiple of the bare parse.
func tellCost(out io.Writer, dir, program string, garments int) error {
	size := Frozen
	size.Garments = garments
	expected, err := write(dir, size)
	if err != nil {
		return err
	}
	digest, err := cost.Digest(dir)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "%d garments, %.2f sizes in the mean, corpus %s\n", garments, meanSizes(expected), digest)

	self, err := os.Executable()
	if err != nil {
		return err
	}
	ctx, stop := context.WithTimeout(context.Background(), costLimit)
	defer stop()
	runs, err := cost.Compare(ctx, cost.Process{program, "check", dir}, cost.Process{self, "--parse", dir}, costRuns)
	if err != nil {
		return err
	}
	for _, r := range runs {
		fmt.Fprintf(out, "check %.2f s, parse %.2f s of processor time: %.1f times\n", r.Check.Seconds(), r.Parse.Seconds(), r.Ratio())
	}
	fmt.Fprintf(out, "median: %.1f times\n", cost.Median(runs).Ratio())
	return nil
}

func meanSizes(list []tally.Expect) float64 {
	n := 0
	for _, e := range list {
		n += e.Sizes
	}
	return float64(n) / float64(len(list))
}
