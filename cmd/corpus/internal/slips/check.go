package slips

import (
	"context"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing/fstest"

	"understitch/cmd/corpus/internal/plan"
	"understitch/cmd/corpus/internal/tally"
	"understitch/cmd/corpus/internal/wardrobe"
	"understitch/cmd/understitch/demo"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

// source is a garment in order.
type source struct {
	file string
	*text
	says map[string]bool // what the rules say of it as it is
}

// checker runs the rules over specs with slips in them.
type checker struct {
	inspector *inspect.Inspector
	demos     []*source
	made      []*source
}

// newChecker has the demo's garments and so many of the corpus.
func newChecker(made int, seed uint64) (*checker, error) {
	engine, err := rules.New(builtin.Rules())
	if err != nil {
		return nil, err
	}
	files := fstest.MapFS{"corpus/" + "house.hcl": {Data: []byte(wardrobe.House().Text())}}
	var demos, garments []string
	err = fs.WalkDir(demo.Files(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(name, "faulty/") {
			return err
		}
		data, err := fs.ReadFile(demo.Files(), name)
		files["demo/"+name] = &fstest.MapFile{Data: data}
		if strings.HasSuffix(name, ".garment.hcl") {
			demos = append(demos, "demo/"+name)
		}
		return err
	})
	if err != nil {
		return nil, err
	}
	sound, err := plan.Corpus(plan.Size{Garments: made, Sizes: 3, Seed: seed})
	if err != nil {
		return nil, err
	}
	for _, f := range sound {
		files["corpus/"+f.File] = &fstest.MapFile{Data: []byte(f.Text)}
		garments = append(garments, "corpus/"+f.File)
	}
	c := &checker{inspector: &inspect.Inspector{Engine: engine, FS: files}}
	if c.demos, err = c.sources(files, demos); err != nil {
		return nil, err
	}
	c.made, err = c.sources(files, garments)
	return c, err
}

func (c *checker) sources(files fstest.MapFS, names []string) ([]*source, error) {
	var out []*source
	for _, name := range names {
		t, err := read(files[name].Data)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		s := &source{file: name, text: t, says: map[string]bool{}}
		for f := range each(c.check(s, t.src).Result.Findings) {
			s.says[key(f)] = true
		}
		out = append(out, s)
	}
	return out, nil
}

func (c *checker) check(s *source, src []byte) *inspect.Report {
	return c.inspector.Source(context.Background(), s.file, src, inspect.Options{Today: tally.Today, Jobs: 1, Lean: true})
}

// each gives findings with those that follow from them.
func each(list []rules.Finding) func(yield func(*rules.Finding) bool) {
	return func(yield func(*rules.Finding) bool) {
		for i := range list {
			if !yield(&list[i]) {
				return
			}
			for f := range each(list[i].Follow) {
				if !yield(f) {
					return
				}
			}
		}
	}
}

func key(f *rules.Finding) string { return f.Rule.Name + " " + f.Subject + " " + f.Key }

// verdict is what the rules say of a slip.
type verdict struct {
	refused bool             // the spec can no longer be read
	raw     map[string]bool  // everything that is said beside what is said without it, notes too
	inForce []*rules.Finding // errors and warnings of which that is so
}

// judge checks a source with slips in it.
func (c *checker) judge(s *source, slips ...Slip) verdict {
	report := c.check(s, s.with(slips...))
	v := verdict{raw: map[string]bool{}, refused: !report.Complete()}
	for f := range each(report.Result.Findings) {
		if !s.says[key(f)] {
			v.raw[key(f)] = true
		}
	}
	for i := range report.Result.Findings {
		f := &report.Result.Findings[i]
		if f.Severity >= rules.Warning && (!s.says[key(f)] || len(f.Follow) > 0) {
			v.inForce = append(v.inForce, f)
		}
	}
	return v
}

// names reports whether one of the findings in force points at the thing.
func (v verdict) names(th thing, file string) bool {
	return slices.ContainsFunc(v.inForce, func(f *rules.Finding) bool { return named(f, th, file) })
}

// rules are the rules whose findings are in force, with how many each has.
func (v verdict) rules() string {
	n := map[string]int{}
	for _, f := range v.inForce {
		n[f.Rule.Name]++
	}
	var out []string
	for _, name := range slices.Sorted(maps.Keys(n)) {
		if n[name] > 1 {
			name = fmt.Sprintf("%s x%d", name, n[name])
		}
		out = append(out, name)
	}
	return strings.Join(out, ", ")
}

// House is the house file of a folder of garments: "demo" or "corpus".
func House(folder string) ([]byte, error) {
	if folder == "demo" {
		return fs.ReadFile(demo.Files(), "house.hcl")
	}
	return []byte(wardrobe.House().Text()), nil
}
