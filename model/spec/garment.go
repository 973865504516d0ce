package spec

import (
	"maps"
	"slices"

	"understitch/model"
	"understitch/model/drafting"
)

// drafter builds one garment.
type drafter struct {
	*scope
	doc     *Document
	g       *model.Garment
	fabrics []*model.Fabric
	tapes   []*model.Tape

	unnamed []*model.Level // the house's levels that the garment does not name
	pieces  []*pieceDraft

	stretchesRead []model.Stretch // by which edges are joined, as they were read
}

// Garment builds the garment in one size, "" for the base size, or for the
// only one when the spec has none. It is nil when there is an error among the
// diagnostics.
func (d *Document) Garment(size string) (*model.Garment, []model.Diagnostic) {
	return d.garment(size, making{unit: d.unit})
}

// making is how a garment is built.
type making struct {
	unit   model.Unit           // of the spec's bare figures
	change func(*model.Garment) // made before the alterations are; nil for none
	bare   bool                 // without the alterations
}

func (d *Document) garment(size string, m making) (*model.Garment, []model.Diagnostic) {
	f := &faults{}
	s := &scope{faults: f, unit: m.unit, graded: d.sizes != nil}
	again := func(m making) *model.Garment {
		g, _ := d.garment(size, m)
		return g
	}
	if d.sizes == nil {
		if size != "" {
			f.fault(d.root.first("garment").header, "The spec has no sizes.", "size %q is not in this spec", size)
			return nil, f.sorted()
		}
		s.body, s.bodyAt = d.bodyIn(s, "")
		return d.draft(s, "", m, again)
	}
	if size == "" {
		size = d.BaseSize()
	}
	i := slices.Index(d.sizes, size)
	if i < 0 {
		f.fault(d.root.first("garment").header, hint(size, d.sizes), "size %q is not in this spec", size)
		return nil, f.sorted()
	}
	s.sizeSteps = i - d.base
	s.who = "size " + size
	s.body, s.bodyAt = d.bodyIn(s, size)
	return d.draft(s, size, m, again)
}

// Body is the spec's own body in its base size, in millimetres: nil where it
// states none and leaves that to tables of wearers.
func (d *Document) Body() map[string]float64 {
	body, _ := d.bodyIn(&scope{faults: &faults{}, unit: d.unit}, d.BaseSize())
	return body
}

// bodyIn reads the body that the spec or its house states for a size, and where each
// measure is.
func (d *Document) bodyIn(s *scope, size string) (map[string]float64, map[string]model.Place) {
	if d.sizes == nil {
		if b := d.root.first("body"); b != nil {
			return s.bodyOf(b)
		}
		return nil, nil
	}
	if b := d.root.named("size", size); b != nil {
		return s.bodyOf(b)
	}
	if z := d.house.size(size); z != nil {
		return maps.Clone(z.body), z.at
	}
	return nil, nil
}

// Wearer builds the garment for one person, whose measures (in millimetres)
// take the place of those in the spec. Graded figures are those of the base
// size.
func (d *Document) Wearer(name string, body map[string]float64) (*model.Garment, []model.Diagnostic) {
	return d.wearer(name, body, making{unit: d.unit})
}

func (d *Document) wearer(name string, body map[string]float64, m making) (*model.Garment, []model.Diagnostic) {
	s := &scope{faults: &faults{}, unit: m.unit, graded: d.sizes != nil, who: name, body: maps.Clone(body)}
	return d.draft(s, name, m, func(m making) *model.Garment {
		again, _ := d.wearer(name, body, m)
		return again
	})
}

// draft builds a garment; again builds the same one in some other way.
func (d *Document) draft(s *scope, size string, m making, again func(making) *model.Garment) (*model.Garment, []model.Diagnostic) {
	head := d.root.first("garment")
	b := &drafter{scope: s, doc: d, g: &model.Garment{
		File: d.file, Name: d.name, Title: d.title, Place: place(head.header), Unit: d.unit,
		Size: size, Sizes: d.Sizes(), Body: s.body, BodyAt: s.bodyAt,
	}}
	if b.g.Body == nil {
		b.g.Body = map[string]float64{}
	}
	b.takeLevels()
	b.draftValues()
	b.stock()
	b.levels()
	for _, l := range d.root.all("layer") {
		b.layer(l)
	}
	b.draftPieces()
	if len(b.g.Layers) == 0 {
		b.fault(head.header, "Write layer \"shell\" { … }.", "the garment has no layers")
	}
	b.leaveUnusedLevels()
	b.joins()
	b.allowances()
	if s.failed {
		return nil, s.sorted()
	}
	// Traced edges and stitch lines are drawn first; the fittings' alterations
	// re-draw them.
	if diags := drafting.Draw(b.g); diags != nil {
		return nil, append(s.sorted(), diags...)
	}
	if b.whole(); s.failed {
		return nil, s.sorted()
	}
	if m.change != nil {
		m.change(b.g)
	}
	if !m.bare {
		if diags := drafting.Alter(b.g); diags != nil {
			return nil, append(s.sorted(), diags...)
		}
	}
	b.g.Anew = func(change func(*model.Garment)) *model.Garment { return again(making{unit: m.unit, change: change}) }
	b.g.As = func(u model.Unit, bare bool) *model.Garment { return again(making{unit: u, bare: bare}) }
	return b.g, s.sorted()
}

// draftValues takes down the draft blocks' values and reckons each, so that a
// fault in one that nothing uses is found too.
func (b *drafter) draftValues() {
	blocks := b.doc.root.all("draft")
	n := 0
	for _, d := range blocks {
		n += len(d.inOrder)
	}
	b.draft = make(map[string]*value, n)
	list := make([]value, 0, n) // one allocation; never grown, as the map points into it
	for _, d := range blocks {
		for _, a := range d.inOrder {
			if first := b.draft[a.Name]; first != nil {
				b.fault(a.NameRange, "The first stands on "+lineOf(first.at)+".", "draft.%s is there twice", a.Name)
				continue
			}
			list = append(list, value{name: a.Name, expr: a.Expr, at: a.SrcRange})
			b.draft[a.Name] = &list[len(list)-1]
		}
	}
	for i := range list {
		if b.full() {
			return
		}
		b.reckon(&list[i])
	}
}

// stock gathers the fabrics and tapes: the spec's own, then those of the house
// that it does not replace.
func (b *drafter) stock() {
	for _, c := range b.doc.root.blocks {
		switch c.kind {
		case "fabric":
			b.fabrics = append(b.fabrics, b.fabric(c))
		case "tape":
			b.tapes = append(b.tapes, b.tape(c))
		}
	}
	if b.doc.house == nil {
		return
	}
	b.g.Standards = b.doc.house.model.Allowances
	for _, x := range b.doc.house.fabrics {
		if find(b.fabrics, x.Name, func(o *model.Fabric) string { return o.Name }) == nil {
			b.fabrics = append(b.fabrics, x)
		}
	}
	for _, x := range b.doc.house.tapes {
		if find(b.tapes, x.Name, func(o *model.Tape) string { return o.Name }) == nil {
			b.tapes = append(b.tapes, x)
		}
	}
}

// find gives the member of a list with a name, or nil.
func find[T any](list []*T, name string, nameOf func(*T) string) *T {
	for _, x := range list {
		if nameOf(x) == name {
			return x
		}
	}
	return nil
}

// namesOf lists the names of a list's members.
func namesOf[T any](list []*T, nameOf func(*T) string) []string {
	names := make([]string, len(list))
	for i, x := range list {
		names[i] = nameOf(x)
	}
	return names
}

// allowances settles the allowance of each edge: its own, the piece's, none on
// a fold, or the house's for its role. It runs last, as an edge's role depends
// on what is joined to it.
func (b *drafter) allowances() {
	if b.failed {
		return
	}
	for _, l := range b.g.Layers {
		for _, p := range l.Pieces {
			for _, e := range p.Edges {
				switch {
				case model.Known(e.Allowance.Width):
				case p.Fold == e:
					e.Allowance = model.Allowance{Place: e.Place}
				default:
					if s := b.standard(e); s != nil {
						e.Allowance = model.Allowance{Width: s.Width, Place: s.Place}
					}
				}
			}
		}
	}
}

// standard is the allowance of an edge that neither it nor its piece states: that for
// its role, or the default where there is none for it.
func (b *drafter) standard(e *model.Edge) *model.Standard {
	if s := b.g.StandardOf(e); s != nil {
		return s
	}
	return b.g.DefaultOf(e)
}
