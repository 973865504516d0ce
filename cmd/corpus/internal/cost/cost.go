// Package cost tells what a whole check of a corpus costs, as a multiple of what
// HCL's own parser costs on the same files.
//
// Both run as processes of their own, in turn, and their processor time is
// compared (user and system together, all threads). A machine that is slow or busy
// slows both, so ratios of one run compare between machines; times do not.
package cost

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// Run is one comparison: the processor time of both over the same files.
type Run struct{ Check, Parse time.Duration }

// Ratio is how many times the bare parse the check costs.
func (r Run) Ratio() float64 { return float64(r.Check) / float64(r.Parse) }

// Process is a program and its arguments.
type Process []string

// Compare runs both so many times, one after the other.
func Compare(ctx context.Context, check, parse Process, times int) ([]Run, error) {
	var runs []Run
	for range times {
		var r Run
		var err error
		if r.Parse, err = parse.processor(ctx, 0); err != nil {
			return nil, err
		}
		if r.Check, err = check.processor(ctx, found); err != nil {
			return nil, err
		}
		runs = append(runs, r)
	}
	return runs, nil
}

// found is the exit code of a check that found something.
const found = 1

// processor is the processor time that a process takes. It must end with 0, or
// with the code that is allowed beside.
func (p Process) processor(ctx context.Context, allowed int) (time.Duration, error) {
	cmd := exec.CommandContext(ctx, p[0], p[1:]...)
	var errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = io.Discard, &errs
	var exit *exec.ExitError
	if err := cmd.Run(); errors.As(err, &exit) && exit.ExitCode() == allowed {
		// as meant
	} else if err != nil {
		return 0, fmt.Errorf("%s: %w: %s", filepath.Base(p[0]), err, errs.String())
	}
	return cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime(), nil
}

// Median is the run whose ratio lies in the middle.
func Median(runs []Run) Run {
	sorted := slices.SortedFunc(slices.Values(runs), func(a, b Run) int {
		switch {
		case a.Ratio() < b.Ratio():
			return -1
		case a.Ratio() > b.Ratio():
			return 1
		}
		return 0
	})
	return sorted[len(sorted)/2]
}

// Parse parses every spec of a folder with HCL's parser, and does nothing else.
func Parse(dir string) error {
	return each(dir, func(file string, text []byte) error {
		if _, diags := hclsyntax.ParseConfig(text, file, hcl.InitialPos); diags.HasErrors() {
			return diags
		}
		return nil
	})
}

// Digest is made of the names and the bytes of every spec of a folder, so that
// it can be seen whether two runs had the same corpus.
func Digest(dir string) (string, error) {
	sum := sha256.New()
	err := each(dir, func(file string, text []byte) error {
		fmt.Fprintf(sum, "%s %d\n", filepath.Base(file), len(text))
		sum.Write(text)
		return nil
	})
	return fmt.Sprintf("%x", sum.Sum(nil)[:8]), err
}

func each(dir string, do func(file string, text []byte) error) error {
	files, err := filepath.Glob(filepath.Join(dir, "*.hcl")) // in the order of their names
	if err != nil {
		return err
	}
	if len(files) == 0 {
		return fmt.Errorf("no spec is in %s", dir)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		if err := do(file, text); err != nil {
			return err
		}
	}
	return nil
}
