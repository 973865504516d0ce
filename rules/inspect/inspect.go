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
)

// Options say what of each garment is inspected.
type Options struct {
	Sizes   []string      // only these; empty for all
	Wearers []body.Wearer // bodies to draft for, instead of sizes
	Today   time.Time
	Jobs    int // garments at a time; 0 for one

	OneModel bool          // keep only the first size's model: for many wearers
	Done     func(*Report) // told of each garment as it is finished, from any goroutine; may be nil
}

// Report is everything about one garment file.
type Report struct {
	File        string
	Garment     string // its name; "" when the file could not be read
	Title       string
	Sizes       []string
	Source      []byte
	Result      rules.Result
	Diagnostics []model.Diagnostic
	Models      []*model.Garment // one for each size, in order; see Options.OneModel
}

// Complete reports whether all of the garment was checked.
func (r *Report) Complete() bool { return !model.Errors(r.Diagnostics) }

// Inspector inspects garments with one engine.
type Inspector struct {
	Engine *rules.Engine
	FS     fs.FS // where files are read from, named by slash paths; nil for the disk

	mu     sync.Mutex
	houses map[string]*house // by path of the house file; "" for none
}

// Files inspects files. The context stops it early.
func (in *Inspector) Files(ctx context.Context, files []string, o Options) ([]*Report, error) {
	reports := make([]*Report, len(files))
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(max(o.Jobs, 1))
	for i, file := range files {
		group.Go(func() error {
			if err := ctx.Err(); err != nil {
				return err
			}
			reports[i] = in.File(file, o)
			if o.Done != nil {
				o.Done(reports[i])
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
	var outcomes []rules.Outcome
	var sizes []*model.Garment // kept for what is judged across them
	add := func(g *model.Garment, diags []model.Diagnostic) bool {
		r.Diagnostics = append(r.Diagnostics, diags...)
		if g == nil || model.Errors(diags) {
			return false
		}
		if len(r.Models) == 0 || !o.OneModel {
			r.Models = append(r.Models, g)
		}
		if len(o.Wearers) == 0 {
			sizes = append(sizes, g)
		}
		outcomes = append(outcomes, in.Engine.Check(g, h.settings)...)
		return true
	}
	partial := in.eachSize(r, doc, o, add)
	outcomes = append(outcomes, in.Engine.CheckAcross(sizes, h.settings)...)
	if len(r.Models) == 0 {
		return
	}
	first := r.Models[0]
	r.Title = first.Title
	r.Result = rules.Gather(outcomes)
	in.Engine.Waivers(&r.Result, first, h.settings, o.Today, partial)
}

// eachSize builds the garment in each size asked for; it reports whether some
// sizes of the spec were left out.
func (in *Inspector) eachSize(r *Report, doc *spec.Document, o Options, add func(*model.Garment, []model.Diagnostic) bool) (partial bool) {
	if len(o.Wearers) > 0 {
		r.Sizes = nil
		for _, w := range o.Wearers {
			r.Sizes = append(r.Sizes, w.Name)
			if !add(doc.Wearer(w.Name, w.Body)) {
				return true
			}
		}
		return true
	}
	sizes := doc.Sizes()
	if len(o.Sizes) > 0 {
		if missing := notAmong(o.Sizes, sizes); missing != "" {
			r.Diagnostics = append(r.Diagnostics, lacksSize(r.File, missing, sizes))
		}
		sizes = slices.DeleteFunc(slices.Clone(sizes), func(s string) bool { return !slices.Contains(o.Sizes, s) })
		partial = len(sizes) < len(doc.Sizes())
		r.Sizes = sizes
	} else if len(sizes) == 0 {
		sizes = []string{""}
	}
	for _, s := range sizes {
		if !add(doc.Garment(s)) {
			return true // one fault in the spec does not make one for every size
		}
	}
	return partial
}
