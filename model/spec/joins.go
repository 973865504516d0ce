package spec

import (
	"slices"
	"time"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// joins builds all that ties pieces together. Closures come before what
// measures over them, shares before the insides that are laid together by them.
func (b *drafter) joins() {
	for _, c := range b.doc.root.blocks {
		switch c.kind {
		case "seam":
			b.seam(c)
		case "share":
			b.share(c)
		case "closure":
			b.closure(c)
		case "elastic":
			b.elastic(c)
		case "bone":
			b.bone(c)
		case "alter":
			b.alter(c)
		}
	}
	for _, c := range b.doc.root.blocks {
		switch c.kind {
		case "inside":
			b.inside(c)
		case "measure":
			b.measureRun(c)
		}
	}
	for _, c := range b.doc.root.blocks {
		if c.kind == "waive" {
			b.waiver(c)
		}
	}
}

func (b *drafter) seam(c *block) {
	s := &model.Seam{Name: c.name, Place: place(c.header), Join: place(c.attrs["join"].SrcRange)}
	b.g.Seams = append(b.g.Seams, s)
	join := c.attr("join")
	if sides, ok := join.(*hclsyntax.TupleConsExpr); ok && len(sides.Exprs) == 2 {
		for i := range s.Sides {
			s.Sides[i] = b.stretches(sides.Exprs[i])
		}
	} else {
		b.fault(join.Range(), "Write join = [A, B]; a side of several edges is a list of its own.", "a seam has two sides")
	}
	if e := c.attr("ease"); e != nil {
		s.Ease = b.lengthSpan(e)
	}
	if e := c.attr("flip"); e != nil {
		flip := b.flag(e)
		s.Flip = &flip
	}
}

func (b *drafter) share(c *block) {
	s := &model.Share{Name: c.name, Match: model.Identical, Place: place(c.header)}
	b.g.Shares = append(b.g.Shares, s)
	s.Outer, s.Inner = b.stretches(c.attr("outer")), b.stretches(c.attr("inner"))
	if e := c.attr("match"); e != nil {
		s.Match = model.Match(b.choice(e, string(model.Identical), string(model.SameLength), string(model.Eased)))
	}
	if e := c.attr("flip"); e != nil {
		flip := b.flag(e)
		s.Flip = &flip
	}
	b.eased(c, s)
}

// eased reads how two edges are eased on to each other, and asks for it.
func (b *drafter) eased(c *block, s *model.Share) {
	if s.Match != model.Eased {
		for _, name := range []string{"ease", "over"} {
			if a := c.attrs[name]; a != nil {
				b.fault(a.SrcRange, "Write match = \"eased\" beside it.", "%s is for edges that are eased on to each other", name)
			}
		}
		return
	}
	e := c.attr("ease")
	if e == nil {
		b.fault(c.attrs["match"].SrcRange, "For example: ease = [0.5, 1].",
			"share %s is eased and does not state ease = [low, high], how much longer the outer is than the inner", s.Name)
		return
	}
	s.Ease, s.EasePlace = b.lengthSpan(e), place(e.Range())
	if e := c.attr("over"); e != nil {
		s.Over = b.stretches(e)
		for _, st := range s.Over {
			of := func(other model.Stretch) bool { return other.Edge == st.Edge }
			if !slices.ContainsFunc(s.Outer, of) && !slices.ContainsFunc(s.Inner, of) {
				b.fault(e.Range(), "Name a part of an edge that the share names.", "%s is no edge of share %s", st.Edge.Address(), s.Name)
			}
		}
	}
}

func (b *drafter) inside(c *block) {
	n := &model.Inside{Name: c.name, Place: place(c.header)}
	b.g.Insides = append(b.g.Insides, n)
	n.Outer, n.Inner = b.group(c.attr("outer")), b.group(c.attr("inner"))
	for _, p := range n.Outer {
		if n.Inner.Has(p) {
			b.fault(c.attrs["inner"].SrcRange, "", "a piece cannot lie in itself")
		}
	}
	if e := c.attr("clearance"); e != nil {
		n.Clearance = b.levelRanges(e)
	}
	if e := c.attr("clearance_from"); e != nil {
		n.ClearanceFrom = b.levelRanges(e)
	}
	defer b.alignEnd(c, n)
	e := c.attr("align")
	if e == nil {
		return
	}
	nameOf := func(s *model.Share) string { return s.Name }
	name, isText := quoted(e)
	switch {
	case !isText:
		n.Align = thing(b, e, "share", b.g.Shares, nameOf)
	case name == "draft":
		n.Laid = true
		b.asDrawn(e, n)
	default:
		if n.Align = find(b.g.Shares, name, nameOf); n.Align == nil {
			b.nothing(e, "share", "", name, append(namesOf(b.g.Shares, nameOf), "draft"))
		}
	}
}

// alignEnd reads by which end an eased share lays two pieces together.
func (b *drafter) alignEnd(c *block, n *model.Inside) {
	eased := n.Align != nil && n.Align.Match == model.Eased
	e := c.attr("align_end")
	word := ""
	switch {
	case e == nil && eased:
		b.fault(c.attrs["align"].SrcRange, "Write align_end = start, or end.",
			"share %s is eased, so inside %s must say which of its ends are laid together", n.Align.Name, n.Name)
	case e == nil:
	case !eased:
		b.fault(c.attrs["align_end"].SrcRange, "Take it out: the whole line is laid on the other.", "align_end is for pieces that are aligned by an eased share")
	case plainWord(e, &word) && word == "start":
		n.AlignEnd = model.AtStart
	case plainWord(e, &word) && word == "end":
		n.AlignEnd = model.AtEnd
	default:
		b.fault(e.Range(), "Write start or end, without quotes.", "one end of the share is meant here")
	}
}

// asDrawn refuses pieces that are said to be drawn in one frame and have a level at
// different heights.
func (b *drafter) asDrawn(e hclsyntax.Expression, n *model.Inside) {
	for _, p := range slices.Concat(n.Outer, n.Inner) {
		if l := n.Outer[0].Parted(p); l != nil {
			first, _ := n.Outer[0].LevelY(l)
			other, _ := p.LevelY(l)
			b.fault(e.Range(), "Draw them in one frame, or name a share to lay them together by: align = share.top.",
				"%s has the %s level at %s and %s at %s: they are not drawn in one frame",
				n.Outer[0].Address(), l.Name, b.unit.Show(first), p.Address(), b.unit.Show(other))
			return
		}
	}
}

// group reads a piece, or a list of pieces that are compared as one.
func (b *drafter) group(e hclsyntax.Expression) model.Group {
	list := []hclsyntax.Expression{e}
	if t, ok := e.(*hclsyntax.TupleConsExpr); ok {
		list = t.Exprs
		if len(list) == 0 {
			b.fault(e.Range(), "For example: outer = [shell.front, shell.side].", "this list names no piece")
		}
	}
	var group model.Group
	for _, x := range list {
		p := b.pieceAt(x)
		switch {
		case p == nil:
		case group.Has(p):
			b.fault(x.Range(), "", "%s is there twice", p.Address())
		case len(group) > 0 && group.Layer() != p.Layer:
			b.fault(x.Range(), "", "the pieces of one side of an inside belong to one layer")
		default:
			group = append(group, p)
		}
	}
	return group
}

func (b *drafter) elastic(c *block) {
	e := &model.Elastic{Name: c.name, Place: place(c.header), Ratio: anyRange()}
	b.g.Elastics = append(b.g.Elastics, e)
	sections := c.all("section")
	switch edges := c.attr("edges"); {
	case len(sections) > 0:
		for _, name := range []string{"edges", "ratio"} {
			if a := c.attrs[name]; a != nil {
				b.fault(a.SrcRange, "Leave it out: each section states along and ratio.", "elastic %s states both %s and sections", e.Name, name)
			}
		}
		for _, x := range sections {
			b.section(x, e)
		}
	case edges == nil:
		b.fault(c.header, "Write edges = [brief.front.leg, brief.back.leg], or a section { } for each part.", "elastic %s does not state edges", e.Name)
	default:
		e.Edges = b.stretches(edges)
	}
	e.Length = b.length(c.attr("length"), above0)
	if x := c.attr("ratio"); x != nil {
		e.Ratio = b.span(x, func(x hclsyntax.Expression) float64 { return b.plain(x, atLeast0) })
	}
}

// section reads a part of an elastic that is stretched by a ratio of its own.
func (b *drafter) section(c *block, e *model.Elastic) {
	s := model.Section{Name: c.name, Place: place(c.header), Along: b.stretches(c.attr("along"))}
	s.Ratio = b.span(c.attr("ratio"), func(x hclsyntax.Expression) float64 { return b.plain(x, atLeast0) })
	e.Sections = append(e.Sections, s)
	e.Edges = append(e.Edges, s.Along...)
}

func (b *drafter) bone(c *block) {
	b.g.Bones = append(b.g.Bones, &model.Bone{
		Name: c.name, Along: b.stretch(c.attr("along")), Length: b.length(c.attr("length"), above0), Place: place(c.header),
	})
}

// waiver reads a waiver. What it names must be there, or it would wait for
// ever for a finding that cannot come.
func (b *drafter) waiver(c *block) {
	w := &model.Waiver{Rule: c.name, Place: place(c.header)}
	b.g.Waivers = append(b.g.Waivers, w)
	w.At = b.subject(c.attr("at"))
	w.Reason = b.text(c.attr("reason"))
	b.waivedFigure(c, w)
	if e := c.attr("up_to"); e != nil {
		limit := b.limit("up_to", e)
		w.UpTo = &limit
	}
	if e := c.attr("until"); e != nil {
		w.Until = b.text(e)
		if _, err := time.Parse(time.DateOnly, w.Until); err != nil && w.Until != "" {
			b.fault(e.Range(), "Write year, month and day: \"2027-06-30\".", "%q is not a date", w.Until)
		}
	}
}

// waivedFigure reads which of several figures of a thing a waiver accepts.
func (b *drafter) waivedFigure(c *block, w *model.Waiver) {
	if e := c.attr("figure"); e != nil {
		w.Figure = b.text(e)
	}
	if e := c.attr("size"); e != nil {
		w.Size = b.text(e)
	}
	if e := c.attr("level"); e != nil {
		if l := b.levelAt(e); l != nil {
			w.Level = l.Name
		}
	}
	if e := c.attr("end"); e != nil {
		if w.End = b.text(e); w.End != "start" && w.End != "end" && w.End != "" {
			b.fault(e.Range(), "Write \"start\" or \"end\".", "%q is no end of a seam", w.End)
		}
	}
	said := 0
	for _, name := range []string{"figure", "level", "end"} {
		if c.attr(name) != nil {
			said++
		}
	}
	if said > 1 {
		b.fault(c.header, "One of figure, level and end says which figure is accepted.", "%s names its figure twice", title(c.kind, c.name))
	}
}

// subject reads the address of anything a finding can be about.
func (b *drafter) subject(e hclsyntax.Expression) string {
	words, n := b.address(e, "inside.front")
	text := asWritten(words[:n])
	switch {
	case n == 0 || n == 1 && text == "garment":
		return text
	case n == 2 && slices.Contains(firstWords, words[0]):
		b.joined(e, words[0], words[1])
		return text
	case slices.Contains(firstWords, words[0]):
		b.fault(e.Range(), "For example: inside.front or shell.front.side.", "%s is not a thing that findings are about", text)
		return text
	}
	l := b.layerAt(e, words[0])
	if l == nil || n == 1 {
		return text
	}
	p := b.pieceIn(e, l, words[1])
	if p == nil || n == 2 {
		return text
	}
	switch {
	case n == 3:
		b.edgeIn(e, p, words[2], p.Address()+".")
	case n == 4 && words[2] == "notch":
		nameOf := func(x *model.Notch) string { return x.Name }
		if find(p.Notches, words[3], nameOf) == nil {
			b.nothing(e, "notch", p.Address()+".notch.", words[3], namesOf(p.Notches, nameOf))
		}
	case n == 4 && (words[2] == "dart" || words[2] == "pleat"):
		nameOf := func(x *model.Dart) string { return x.Name }
		darts := p.OnlyDarts()
		if words[2] == "pleat" {
			darts = p.Pleats()
		}
		if find(darts, words[3], nameOf) == nil {
			b.nothing(e, words[2], p.Address()+"."+words[2]+".", words[3], namesOf(darts, nameOf))
		}
	default:
		b.fault(e.Range(), "For example: inside.front or shell.front.side.", "%s is not a thing that findings are about", text)
	}
	return text
}

// joined checks that a thing named by its kind is there.
func (b *drafter) joined(e hclsyntax.Expression, kind, name string) {
	switch kind {
	case "seam", "share", "inside", "closure", "elastic", "bone", "measure", "level", "alter":
	default:
		b.fault(e.Range(), "For example: inside.front or shell.front.side.", "%s.%s is not a thing that findings are about", kind, name)
		return
	}
	var known []string
	for _, c := range b.doc.root.all(kind) {
		known = append(known, c.name)
	}
	if kind == "level" {
		known = namesOf(b.g.Levels, levelName)
	}
	if !slices.Contains(known, name) {
		b.nothing(e, kind, kind+".", name, known)
	}
}
