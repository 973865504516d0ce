// Package inspect takes specs all the way to results: it reads a spec and the
// house above it, builds the garment in every size or for every wearer, runs
// the engine over each and gathers what came of it. The command line, the
// editor and the live page all go through here, so that they agree.
//
// Garments are inspected side by side; the reports come back in the order the
// files were given, whatever the number of workers.
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
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/plugin"
)

// Options say what of each garment is inspected.
type Options struct {
	Sizes   []string      // only these; empty for all
	Wearers []body.Wearer // bodies to draft for, instead of sizes
	Today   time.Time
	Jobs    int // how many looks at a time; 0 for one

	NoPlugins bool // ask no plugins, where only figures are wanted

	Lean bool   // keep no models: for reports that only say what was found
	Done func() // told of each garment that is finished, or with wearers of each of them on each garment; may be nil
}

// Report is everything about one garment file.
type Report struct {
	File        string
	Garment     string // its name; "" when the file could not be read
	Title       string
	Unit        model.Unit // the spec's own
	Sizes       []string
	Source      []byte
	Result      rules.Result
	Diagnostics []model.Diagnostic
	Models      []*model.Garment // one for each size, in order; none when lean
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

// Files inspects files. The context stops it early.
func (in *Inspector) Files(ctx context.Context, files []string, o Options) ([]*Report, error) {
	reports := make([]*Report, len(files))
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(max(o.Jobs, 1))
	inner := o
	inner.Jobs = o.Jobs / max(len(files), 1) // a few garments on many wearers
	for i, file := range files {
		group.Go(func() error {
			if err := ctx.Err(); err != nil {
				return err
			}
			reports[i] = in.File(file, inner)
			if o.Done != nil && len(o.Wearers) == 0 {
				o.Done()
			}
			return nil
		})
	}
	return reports, group.Wait()
}

// File inspects one file.
func (in *Inspector) File(file string, o Options) *Report {
	return in.guarded(file, func(r *Report) {
		h := in.houseAbove(filepath.Dir(file))
		doc, diags := in.load(file, h.spec)
		in.document(r, doc, diags, h, o)
	})
}

// Source inspects a spec given as text; name is what it is called in reports,
// and decides which house file holds.
func (in *Inspector) Source(name string, src []byte, o Options) *Report {
	return in.guarded(name, func(r *Report) {
		h := in.houseAbove(filepath.Dir(name))
		r.Source = src
		doc, diags := spec.Read(name, src, h.spec)
		in.document(r, doc, diags, h, o)
	})
}

// guarded keeps a fault of ours in one garment from losing all the others.
func (in *Inspector) guarded(file string, inspect func(*Report)) (r *Report) {
	r = &Report{File: file}
	defer func() {
		if fault := recover(); fault != nil {
			r.Diagnostics = append(r.Diagnostics, atTop(file,
				fmt.Sprintf("understitch itself failed on this garment: %v", fault),
				"please report this with the spec that causes it\n"+string(debug.Stack())))
		}
	}()
	inspect(r)
	return r
}

func (in *Inspector) document(r *Report, doc *spec.Document, diags []model.Diagnostic, h *house, o Options) {
	r.Diagnostics = append(slices.Clone(h.diags), diags...)
	if doc == nil {
		return
	}
	r.Source, r.Garment, r.Sizes = doc.Source(), doc.Name(), doc.Sizes()
	if model.Errors(h.diags) {
		return
	}
	var models []*model.Garment
	var gathering rules.Gathering
	bodies, partial := in.bodies(r, doc, o)
	settings := in.settingsFor(h, r.File)
	var asking *plugin.Asking // which asks nobody
	if !o.NoPlugins {
		asking = h.plugins.Asking()
	}
	check := func(n int, l *look) {
		l.outcomes = h.engine.Check(l.garment, settings)
		l.said = asking.Look(n, l.garment, func(rule string) rules.Severity { return settings.InForce(rule).Severity })
	}
	complete := in.each(bodies, check, o, func(l look) bool {
		r.add(l.diags)
		said, failed := asking.Take(l.said)
		r.add(failed)
		gathering.Add(append(l.outcomes, said...))
		switch {
		case l.garment == nil:
			return len(o.Wearers) > 0 // other wearers may have what this one lacks
		case len(models) == 0 || !o.Lean || len(o.Wearers) == 0:
			models = append(models, l.garment)
		}
		return true
	})
	if len(models) == 0 {
		return
	}
	if len(o.Wearers) == 0 {
		gathering.Add(h.engine.CheckAcross(models, settings))
	}
	r.Title, r.Unit = models[0].Title, models[0].Unit
	r.Result = gathering.Result()
	h.engine.Waivers(&r.Result, models[0], settings, o.Today, partial || !complete)
	if !o.Lean {
		r.Models = models
	}
}

// add takes in diagnostics, each once: what is wrong for one wearer is often
// wrong for all.
func (r *Report) add(diags []model.Diagnostic) {
	for _, d := range diags {
		if !slices.Contains(r.Diagnostics, d) {
			r.Diagnostics = append(r.Diagnostics, d)
		}
	}
}
