package inspect

import (
	"slices"

	"golang.org/x/sync/errgroup"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/plugin"
)

// build makes a garment in one size or for one wearer.
type build func() (*model.Garment, []model.Diagnostic)

// checker judges a garment by all that holds for it, in the n-th of its sizes.
type checker func(n int, l *look)

// look is what came of a garment in one size or on one wearer.
type look struct {
	garment  *model.Garment // nil where it could not be built
	diags    []model.Diagnostic
	outcomes []rules.Outcome
	said     plugin.Look // what the house's plugins said
	fault    any         // what we fell over
}

// bodies lists the sizes or wearers that a garment is built for. Partial tells
// that these are not all the sizes of the spec.
func (in *Inspector) bodies(r *Report, doc *spec.Document, o Options) (list []build, partial bool) {
	if len(o.Wearers) > 0 {
		r.Sizes = nil
		for _, w := range o.Wearers {
			r.Sizes = append(r.Sizes, w.Name)
			list = append(list, func() (*model.Garment, []model.Diagnostic) { return doc.Wearer(w.Name, w.Body) })
		}
		return list, true
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
		list = append(list, func() (*model.Garment, []model.Diagnostic) { return doc.Garment(s) })
	}
	return list, partial
}

// batch is how many bodies are looked at before what came of them is taken in.
const batch = 64

// each looks at the garment on every body, several at a time, and hands what
// came of it on in the order of the bodies. It stops where take says so, for
// one fault in a spec does not make one for every size, and reports whether all
// were handed on.
func (in *Inspector) each(bodies []build, check checker, o Options, take func(look) bool) bool {
	for from := 0; from < len(bodies); from += batch {
		looks := make([]look, min(batch, len(bodies)-from))
		if o.Jobs <= 1 || len(looks) == 1 {
			for i := range looks {
				looks[i] = in.look(from+i, bodies[from+i], check, o)
				if !take(looks[i]) {
					return false
				}
			}
			continue
		}
		var group errgroup.Group
		group.SetLimit(o.Jobs)
		for i := range looks {
			group.Go(func() error {
				defer func() { looks[i].fault = recover() }()
				looks[i] = in.look(from+i, bodies[from+i], check, o)
				return nil
			})
		}
		_ = group.Wait() // none of them returns an error
		for _, l := range looks {
			if l.fault != nil {
				panic(l.fault) // it costs this garment, as in guarded, and no other
			}
			if !take(l) {
				return false
			}
		}
	}
	return true
}

func (in *Inspector) look(n int, body build, check checker, o Options) (l look) {
	l.garment, l.diags = body()
	if model.Errors(l.diags) {
		l.garment = nil
	}
	if l.garment != nil {
		check(n, &l)
	}
	if o.Done != nil && len(o.Wearers) > 0 {
		o.Done()
	}
	return l
}
