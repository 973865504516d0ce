package inspect

import (
	"context"
	"slices"

	"golang.org/x/sync/errgroup"

	"understitch/model"
	"understitch/model/measured"
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
	said     plugin.Look   // what the house's plugins said
	figures  measured.Size // where they alone are asked for
	done     bool          // whether we came to look at all
	fault    *fault        // what we fell over
}

// misnamed takes down what the house's rules name wrongly, for which a garment is not
// checked, and reports whether there is such.
func (l *look) misnamed(diags []model.Diagnostic) bool {
	l.diags = append(l.diags, diags...)
	if len(diags) > 0 {
		l.garment = nil
	}
	return len(diags) > 0
}

// bodies lists the sizes or wearers that a garment is built for. Partial tells
// that these are not all the sizes of the spec.
func (in *Inspector) bodies(r *Report, doc *spec.Document, o Options) (list []build, partial bool) {
	if len(o.wearers()) > 0 {
		r.Sizes, r.OfWearers = nil, true
		for _, w := range o.wearers() {
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
// one fault in a spec does not make one for every size, and when the context
// ends. It reports how many were handed on, and whether that is all.
func (in *Inspector) each(ctx context.Context, bodies []build, check checker, o Options, take func(int, look) bool) (looked int, all bool) {
	for from := 0; from < len(bodies); from += batch {
		looks := make([]look, min(batch, len(bodies)-from))
		at := func(i int) (fell *fault) {
			defer func() { fell = caught(recover()) }()
			if ctx.Err() == nil {
				looks[i] = in.look(from+i, bodies[from+i], check, o)
			}
			return nil
		}
		aside := o.Jobs > 1 && len(looks) > 1
		if aside {
			var group errgroup.Group
			group.SetLimit(o.Jobs)
			for i := range looks {
				group.Go(func() error {
					if fell := at(i); fell != nil {
						looks[i].fault = fell
					}
					return nil
				})
			}
			_ = group.Wait() // none of them returns an error
		}
		for i := range looks {
			if !aside {
				looks[i].fault = at(i)
			}
			switch {
			case looks[i].fault != nil:
				panic(looks[i].fault) // it costs this garment, as in guarded, and no other
			case !looks[i].done:
				return looked, false
			}
			looked++
			if !take(from+i, looks[i]) {
				return looked, false
			}
		}
	}
	return looked, true
}

func (in *Inspector) look(n int, body build, check checker, o Options) look {
	l := look{done: true}
	l.garment, l.diags = body()
	if model.Errors(l.diags) {
		l.garment = nil
	}
	if l.garment != nil {
		check(n, &l)
	}
	if o.Done != nil && len(o.wearers()) > 0 {
		o.Done()
	}
	return l
}
