package spec

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// Document is a spec that was read and whose words are sound. It does not
// change any more, so that several goroutines may build garments from it.
type Document struct {
	file  string
	src   []byte
	root  *block
	house *House // nil without one

	name, title string
	unit        model.Unit
	sizes       []string // nil when the spec has none
	base        int      // index of the base size
}

// Name is the garment's name.
func (d *Document) Name() string { return d.name }

// Sizes are the sizes of the spec in its order, nil when it has none.
func (d *Document) Sizes() []string { return slices.Clone(d.sizes) }

// BaseSize is the size that graded figures start from, "" when the spec has no
// sizes.
func (d *Document) BaseSize() string {
	if d.sizes == nil {
		return ""
	}
	return d.sizes[d.base]
}

// Source is the text that was read.
func (d *Document) Source() []byte { return d.src }

// File is the name of the file as it was given.
func (d *Document) File() string { return d.file }

// Read parses a spec. The name stands in every place that is reported. The
// house may be nil. The document is nil when there is an error among the
// diagnostics.
func Read(name string, src []byte, house *House) (*Document, []model.Diagnostic) {
	f := &faults{}
	root := parse(name, src, garmentShape, f)
	if root == nil || f.failed {
		return nil, f.sorted()
	}
	d := &Document{file: name, src: src, root: root, house: house}
	if g := root.first("garment"); g == nil {
		f.fault(root.header, "Begin it with garment \"name\" { unit = \"cm\" }.", "the file has no garment block")
	} else {
		d.head(g, f)
	}
	if f.failed {
		return nil, f.sorted()
	}
	return d, f.sorted()
}

// Load reads a spec from a file.
func Load(path string, house *House) (*Document, []model.Diagnostic) {
	src, diags := readFile(path)
	if diags != nil {
		return nil, diags
	}
	return Read(path, src, house)
}

// readFile reads a whole file if it is one and not larger than a spec can be.
func readFile(path string) ([]byte, []model.Diagnostic) {
	fail := func(summary, detail string) ([]byte, []model.Diagnostic) {
		at := model.Pos{Line: 1, Column: 1}
		return nil, []model.Diagnostic{{Severity: "error", Summary: summary, Detail: detail,
			Place: model.Place{File: path, Start: at, End: at}}}
	}
	unreadable := func(err error) ([]byte, []model.Diagnostic) {
		var p *fs.PathError
		if errors.As(err, &p) {
			err = p.Err
		}
		return fail("the file cannot be read: "+err.Error(), "")
	}
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return unreadable(err)
	case info.IsDir():
		return fail("this is a folder, not a file", "")
	case !info.Mode().IsRegular():
		return fail("this is not a plain file", "")
	case info.Size() > maxBytes:
		return fail(fmt.Sprintf("the file is larger than %d MB", maxBytes>>20), "A spec of one garment is a few kilobytes.")
	}
	file, err := os.Open(path)
	if err != nil {
		return unreadable(err)
	}
	defer file.Close()
	src, err := io.ReadAll(io.LimitReader(file, maxBytes+1))
	switch {
	case err != nil:
		return unreadable(err)
	case len(src) == 0:
		return fail("the file is empty", "")
	}
	return src, nil
}

// head reads the garment block and settles the sizes.
func (d *Document) head(g *block, f *faults) {
	s := &scope{faults: f}
	d.name = g.name
	d.unit = s.unitOf(g)
	if e := g.attr("title"); e != nil {
		d.title = s.text(e)
	}
	own := d.root.all("size")
	body := d.root.first("body")
	switch e := g.attr("sizes"); {
	case body != nil && (e != nil || len(own) > 0):
		f.fault(body.header, "A body block is for a garment without sizes.", "a garment has a body block or sizes, not both")
	case e != nil:
		d.namedSizes(s, e, own)
	default:
		for _, b := range own {
			d.sizes = append(d.sizes, b.name)
		}
	}
	e := g.attr("base_size")
	if e == nil || f.failed {
		return
	}
	base := s.text(e)
	if base == "" {
		return
	}
	if d.base = slices.Index(d.sizes, base); d.base < 0 {
		f.fault(e.Range(), hint(base, d.sizes), "size %q is not among the sizes", base)
	}
}

func (d *Document) namedSizes(s *scope, e hclsyntax.Expression, own []*block) {
	known := make([]string, 0, len(own))
	for _, b := range own {
		known = append(known, b.name)
	}
	if d.house != nil {
		for _, z := range d.house.sizes {
			known = append(known, z.name)
		}
	}
	if _, ok := e.(*hclsyntax.TupleConsExpr); !ok {
		s.fault(e.Range(), "Write sizes = [\"36\", \"38\"].", "a list of sizes is meant here")
		return
	}
	list := items(e)
	if len(list) == 0 {
		s.fault(e.Range(), "", "the list of sizes is empty")
	}
	var bare, absent []string // told together, as one cause has made them all
	var bareAt, absentAt hcl.Range
	for _, item := range list {
		if s.full() {
			return
		}
		if _, number := item.(*hclsyntax.LiteralValueExpr); number {
			r := item.Range()
			if bare == nil {
				bareAt = r
			}
			bare = append(bare, fmt.Sprintf("%q", d.src[r.Start.Byte:r.End.Byte]))
			continue
		}
		name := s.text(item)
		switch {
		case name == "":
		case slices.Contains(d.sizes, name):
			s.fault(item.Range(), "", "size %q is there twice", name)
		case !slices.Contains(known, name):
			if absent == nil {
				absentAt = item.Range()
			}
			absent = append(absent, name)
		default:
			d.sizes = append(d.sizes, name)
		}
	}
	if bare != nil {
		s.fault(bareAt, "Write them in quotes: "+strings.Join(bare, ", ")+".", "a size's name stands in quotes")
	}
	switch len(absent) {
	case 0:
	case 1:
		s.fault(absentAt, join(fmt.Sprintf("Write size %q { … } here or in house.hcl.", absent[0]), hint(absent[0], known)),
			"size %q has no size block", absent[0])
	default:
		s.fault(absentAt, fmt.Sprintf("Write size %q { … } and so on, here or in house.hcl.", absent[0]),
			"%d sizes have no size block: %s", len(absent), strings.Join(absent, ", "))
	}
	for _, b := range own {
		if !slices.Contains(d.sizes, b.name) {
			s.warn(b.header, "It is not among the garment's sizes.", "size %q is not used", b.name)
		}
	}
}

// unitOf reads the unit that a garment or house block states.
func (s *scope) unitOf(b *block) model.Unit {
	e := b.attr("unit")
	name := s.text(e)
	u, ok := model.UnitNamed(name)
	if !ok {
		u = model.Millimetre
		if name != "" {
			s.fault(e.Range(), "Known are \"mm\", \"cm\" and \"in\".", "the unit %q is not known", name)
		}
	}
	return u
}
