package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"understitch/model"
	"understitch/model/body"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

// selection says which garments are inspected, in which sizes.
type selection struct {
	size         string
	bodies       string
	bodiesUnit   string
	jobs         int
	shard        string
	changedSince string
	stdinPath    string

	// What commands set.
	noRules bool                  // judge nothing
	figures bool                  // measure every body instead of keeping the models
	trim    func(*inspect.Report) // leaves out of a report what nobody reads; may be nil
	told    bool                  // what could not be read is told in the report, and the user sees it there
}

func (s *selection) flags(f *pflag.FlagSet) {
	f.StringVar(&s.size, "size", "", "only this `size`")
	f.StringVar(&s.bodies, "bodies", "", "check on the wearers of a table (`FILE.csv`: a row a wearer, a column a body measure) instead of sizes")
	f.StringVar(&s.bodiesUnit, "bodies-unit", "", "the unit of that table: cm, mm or in (default the unit of the house above it)")
	f.IntVar(&s.jobs, "jobs", 0, "how many garments or wearers are looked at side by side, a `number`; 0 for one a processor")
	f.StringVar(&s.shard, "shard", "", "only the K-th of N shares of the garments, as `K/N`")
	f.StringVar(&s.changedSince, "changed-since", "", "only garments that git finds changed since this `revision`")
	f.StringVar(&s.stdinPath, "stdin-path", "stdin"+suffix, "what a spec read from standard input (-) is called")
}

// garments is what a selection came to.
type garments struct {
	reports []*inspect.Report
	engine  *rules.Engine
	trouble bool // something was said on standard error that is no garment's fault
	stopped bool // not all was looked at, which has been said
}

// inspect finds the garments under the paths and inspects them. What cannot be
// read is told on standard error.
func (s *selection) inspect(ctx context.Context, w *world, paths []string, lean bool) (*garments, error) {
	engine, err := rules.New(builtin.Rules())
	if err != nil {
		return nil, fmt.Errorf("the rules that are built in are not in order: %w", err)
	}
	in := &inspect.Inspector{Engine: engine, Plugins: pluginRunner()}
	defer in.Close()
	o := inspect.Options{Today: w.now(), Jobs: s.jobs, Lean: lean, NoRules: s.noRules, Figures: s.figures, Finished: s.trim}
	switch {
	case s.jobs < 0:
		return nil, fmt.Errorf("--jobs %d: a number from 0", s.jobs)
	case s.jobs == 0:
		o.Jobs = runtime.GOMAXPROCS(0)
	}
	if s.size != "" {
		o.Sizes = []string{s.size}
	}
	if s.bodies != "" {
		if o.Wearers, err = s.wearers(w, in); err != nil {
			return nil, err
		}
	} else if s.bodiesUnit != "" {
		return nil, errors.New("--bodies-unit is the unit of a table of wearers; name the table by --bodies")
	}
	got := &garments{engine: engine}
	if len(paths) == 1 && paths[0] == "-" {
		if s.shard != "" || s.changedSince != "" {
			return nil, errors.New("--shard and --changed-since choose among files, and - is standard input")
		}
		report, err := s.standardInput(ctx, w, in, o)
		if err != nil {
			return nil, err
		}
		got.reports = []*inspect.Report{report}
	} else {
		if got.reports, err = s.files(ctx, w, in, paths, o); err != nil {
			return nil, err
		}
		if len(got.reports) == 0 && s.shard == "" && s.changedSince == "" {
			got.trouble = true
			fmt.Fprintf(w.stderr, "understitch: no garment found: no file named *%s under %s\n", suffix, strings.Join(orHere(paths), ", "))
		}
	}
	if !s.told {
		w.problems(got.reports)
	}
	w.failures(got.reports)
	got.stopped = w.stopped(got.reports)
	got.trouble = got.trouble || got.stopped
	return got, nil
}

func orHere(paths []string) []string {
	if len(paths) == 0 {
		return []string{"."}
	}
	return paths
}

func (s *selection) standardInput(ctx context.Context, w *world, in *inspect.Inspector, o inspect.Options) (*inspect.Report, error) {
	const enough = 64 << 20 // the reader of specs refuses far less, and says so
	src, err := io.ReadAll(io.LimitReader(w.stdin, enough))
	if err != nil {
		return nil, fmt.Errorf("standard input cannot be read: %w", err)
	}
	if len(src) == 0 {
		return nil, errors.New("there is nothing on standard input")
	}
	return in.Source(ctx, filepath.Clean(s.stdinPath), src, o), nil
}

func (s *selection) files(ctx context.Context, w *world, in *inspect.Inspector, paths []string, o inspect.Options) ([]*inspect.Report, error) {
	for _, p := range paths {
		if p == "-" {
			return nil, errors.New("- reads one spec from standard input and stands by itself")
		}
	}
	list := find(orHere(paths))
	list, err := s.changed(ctx, list)
	if err != nil {
		return nil, err
	}
	if list, err = s.share(list); err != nil {
		return nil, err
	}
	var names []string
	for _, f := range list {
		if f.reason == "" {
			names = append(names, f.file)
		}
		w.inputs = append(w.inputs, f.file)
	}
	wearers := 1
	if o.Wearers != nil {
		wearers = len(o.Wearers.Wearers)
	}
	bar := w.progress(len(names) * wearers)
	defer bar.clear()
	o.Done = bar.step
	inspected, _ := in.Files(ctx, names, o) // where it was stopped, the reports say so
	reports := make([]*inspect.Report, len(list))
	for i, f := range list {
		if f.reason == "" {
			reports[i], inspected = inspected[0], inspected[1:]
			continue
		}
		reports[i] = inspect.Unread(f.file, f.reason)
	}
	return reports, nil
}

// share takes the K-th of N shares, every N-th garment, so that the shares are
// alike whatever folders hold.
func (s *selection) share(list []found) ([]found, error) {
	if s.shard == "" {
		return list, nil
	}
	first, all, _ := strings.Cut(s.shard, "/")
	k, errK := strconv.Atoi(first)
	n, errN := strconv.Atoi(all)
	if errK != nil || errN != nil || k < 1 || k > n {
		return nil, fmt.Errorf("--shard %q: write K/N, the K-th of N shares, such as 1/4", s.shard)
	}
	var out []found
	for i := k - 1; i < len(list); i += n {
		out = append(out, list[i])
	}
	return out, nil
}

// wearers reads the table of wearers.
func (s *selection) wearers(w *world, in *inspect.Inspector) (*body.Table, error) {
	if s.size != "" {
		return nil, errors.New("--size and --bodies exclude each other: a garment is drafted for sizes or for wearers")
	}
	unit, err := s.unitOfBodies(in)
	if err != nil {
		return nil, err
	}
	w.inputs = append(w.inputs, s.bodies)
	src, err := readBounded(s.bodies, maxTable)
	if err != nil {
		return nil, err
	}
	wearers, diags := body.Read(s.bodies, bytes.NewReader(src), unit)
	for _, d := range diags {
		w.problem(d)
	}
	if len(diags) > 0 {
		return nil, status(statusTrouble)
	}
	return wearers, nil
}

func (s *selection) unitOfBodies(in *inspect.Inspector) (model.Unit, error) {
	if s.bodiesUnit != "" {
		unit, ok := model.UnitNamed(s.bodiesUnit)
		if !ok {
			return unit, fmt.Errorf("--bodies-unit %q is not known; it takes cm, mm or in", s.bodiesUnit)
		}
		return unit, nil
	}
	house, _, diags := in.House(filepath.Dir(s.bodies))
	if house == nil || model.Errors(diags) {
		return model.Unit{}, fmt.Errorf("%s: no house.hcl above it tells its unit; name it by --bodies-unit cm, mm or in", s.bodies)
	}
	return house.Unit, nil
}
