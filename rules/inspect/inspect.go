// Package inspect takes specs all the way to results: it reads a spec and the
// house above it, builds the garment in every size or for every wearer, runs
// the engine over each and gathers what came of it. Every command that looks at
// garments goes through here (check, demo, measure, overlay, explain --at), so that
// they agree; the engine alone knows nothing of files, houses and sizes.
//
// Garments are inspected side by side, and so are the wearers of one garment;
// the reports come back in the order the files were given, whatever the number
// of workers.
//
// What goes wrong costs as little as can be. A fault of ours in one garment is
// told in its report and leaves the others alone. What is wrong with some
// wearers of a table is told once for all of them, at the table's cells. When
// the context ends, what was looked at by then is reported, and each garment
// that was not looked at in full says so.
package inspect

import (
	"context"
	"fmt"
	"io/fs"
	"path/filepath"
	"runtime/debug"
	"slices"
	"sync"
	"time"

	"golang.org/x/sync/errgroup"

	"understitch/model"
	"understitch/model/body"
	"understitch/model/measured"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/plugin"
)

// Options say what of each garment is inspected.
type Options struct {
	Sizes   []string    // only these; empty for all
	Wearers *body.Table // bodies to draft for, instead of sizes; nil for sizes
	Today   time.Time
	Jobs    int // how many looks at a time; 0 for one

	NoRules bool // judge nothing: run no rule, ask no plugin, look at no waiver
	Figures bool // with NoRules: measure each body (Report.Figures), and keep of the models the first alone

	Lean     bool          // keep no models: for reports that only say what was found
	Finished func(*Report) // given each report of Files as soon as it is whole, so that it may leave out what nobody reads; may be nil

	Done func() // told of each garment that is finished, or with wearers of each of them on each garment; may be nil
}

func (o *Options) wearers() []body.Wearer {
	if o.Wearers == nil {
		return nil
	}
	return o.Wearers.Wearers
}

// Report is everything about one garment file.
type Report struct {
	File        string
	Garment     string // its name; "" when the file could not be read
	Title       string
	Unit        model.Unit // the spec's own
	Sizes       []string   // that were looked at
	Source      []byte
	Result      rules.Result
	Diagnostics []model.Diagnostic
	Models      []*model.Garment // one for each size, in order; with wearers none when lean
	Figures     []measured.Size  // one for each size or wearer that could be built; only where they were asked for

	OfWearers bool   // Sizes are wearers of a table
	Stopped   string // what the context's end left undone; "" where nothing was. A diagnostic tells of it too.
	Stack     []byte // where the program itself failed, for those who mend it; nil where it did not
}

// Complete reports whether all of the garment was checked.
func (r *Report) Complete() bool { return !model.Errors(r.Diagnostics) }

// Inspector inspects garments with one engine.
type Inspector struct {
	Engine  *rules.Engine
	FS      fs.FS          // where files are read from, named by slash paths; nil for the disk
	Plugins *plugin.Runner // how the plugins of houses are run; nil where they cannot be

	mu     sync.Mutex
	houses map[string]*house // by path of the house file; "" for none
}

// Files inspects files. When the context ends, what is left is not looked at: the
// reports are there all the same and say so, and the error is the context's.
func (in *Inspector) Files(ctx context.Context, files []string, o Options) ([]*Report, error) {
	reports := make([]*Report, len(files))
	var group errgroup.Group
	group.SetLimit(max(o.Jobs, 1))
	inner := o
	inner.Jobs = o.Jobs / max(len(files), 1) // a few garments on many wearers
	for i, file := range files {
		group.Go(func() error {
			reports[i] = in.File(ctx, file, inner)
			if o.Finished != nil {
				o.Finished(reports[i])
			}
			if o.Done != nil && len(o.wearers()) == 0 {
				o.Done()
			}
			return nil
		})
	}
	_ = group.Wait() // none of them returns an error
	for _, r := range reports {
		if r.Stopped != "" {
			return reports, ctx.Err()
		}
	}
	return reports, nil
}

// File inspects one file, until the context ends.
func (in *Inspector) File(ctx context.Context, file string, o Options) *Report {
	return in.guarded(file, func(r *Report) {
		if ctx.Err() != nil {
			r.stop("it was not looked at")
			return
		}
		h := in.houseAbove(filepath.Dir(file))
		doc, diags := in.load(file, h.spec)
		in.document(ctx, r, doc, diags, h, o)
	})
}

// Source inspects a spec given as text; name is what it is called in reports,
// and decides which house file holds.
func (in *Inspector) Source(ctx context.Context, name string, src []byte, o Options) *Report {
	return in.guarded(name, func(r *Report) {
		h := in.houseAbove(filepath.Dir(name))
		r.Source = src
		doc, diags := spec.Read(name, src, h.spec)
		in.document(ctx, r, doc, diags, h, o)
	})
}

// guarded keeps a fault of ours in one garment from losing all the others.
func (in *Inspector) guarded(file string, inspect func(*Report)) (r *Report) {
	r = &Report{File: file}
	defer func() {
		if f := caught(recover()); f != nil {
			r.Stack = f.stack
			r.Diagnostics = append(r.Diagnostics, atTop(file,
				fmt.Sprintf("understitch itself failed on this garment: %v", f.what),
				"please report this with the spec that causes it"))
		}
	}()
	inspect(r)
	return r
}

// fault is a fault of ours, and where we were when we fell over it.
type fault struct {
	what  any
	stack []byte
}

// caught is the fault that was recovered from, nil where there was none. One that
// another worker fell over keeps the place where it did.
func caught(what any) *fault {
	switch what := what.(type) {
	case nil:
		return nil
	case *fault:
		return what
	default:
		return &fault{what, debug.Stack()}
	}
}

// stop marks a garment as not looked at in full.
func (r *Report) stop(undone string) {
	r.Stopped = undone
	r.Diagnostics = append(r.Diagnostics, atTop(r.File, "the check was stopped: "+undone, ""))
}

func (in *Inspector) document(ctx context.Context, r *Report, doc *spec.Document, diags []model.Diagnostic, h *house, o Options) {
	r.Diagnostics = append(slices.Clone(h.diags), diags...)
	if doc == nil {
		return
	}
	r.Source, r.Garment, r.Sizes = doc.Source(), doc.Name(), doc.Sizes()
	if model.Errors(h.diags) {
		return
	}
	var first *model.Garment
	var gathering rules.Gathering
	ofWearers := len(o.wearers()) > 0
	bodies, partial := in.bodies(r, doc, o)
	settings := in.settingsFor(h, r.File)
	var asking *plugin.Asking // which asks nobody
	if !o.NoRules {
		asking = h.plugins.Asking()
	}
	check := func(n int, l *look) {
		if o.Figures {
			l.figures = measured.Of(l.garment)
		}
		if o.NoRules {
			return
		}
		if l.misnamed(h.engine.Misnamed(l.garment, settings)) {
			return
		}
		l.outcomes = h.engine.Trace(l.garment, settings)
		inTable(o.Wearers, n, l.garment, l.outcomes)
		l.said = asking.Look(n, l.garment, func(rule string) rules.Severity { return settings.InForce(rule).Severity })
	}
	told := newTroubles(r.Diagnostics, ofWearers)
	looked, complete := in.each(ctx, bodies, check, o, func(n int, l look) bool {
		told.add(n, l)
		said, failed := asking.Take(l.said)
		told.plain(failed)
		if first == nil && l.garment != nil {
			first = l.garment
			gathering.Watch(first.Waivers)
		}
		gathering.Add(append(l.outcomes, said...))
		if l.garment == nil {
			return ofWearers // other wearers may have what this one lacks
		}
		switch {
		case o.Figures:
			r.Figures = append(r.Figures, l.figures)
		case !o.Lean || !ofWearers:
			r.Models = append(r.Models, l.garment)
		}
		return true
	})
	r.Diagnostics = told.diagnostics(doc, o.Wearers, looked)
	if !complete && ctx.Err() != nil {
		r.stop(undone(looked, len(bodies), ofWearers))
		r.Sizes = r.Sizes[:min(looked, len(r.Sizes))]
	}
	if first == nil {
		return
	}
	r.Title, r.Unit = first.Title, first.Unit
	if o.Figures {
		r.Models = []*model.Garment{first}
	}
	if o.NoRules {
		return
	}
	if !ofWearers && r.Stopped == "" {
		gathering.Add(h.engine.CheckAcross(r.Models, settings))
	}
	r.Result = gathering.Result()
	h.engine.Waivers(&r.Result, first, settings, o.Today, partial || !complete)
	if o.Lean {
		r.Models = nil
	}
}

// undone says how far a garment was looked at.
func undone(looked, all int, wearers bool) string {
	what := "sizes"
	if wearers {
		what = "wearers"
	}
	return fmt.Sprintf("%d of its %d %s were looked at", looked, all, what)
}
