package spec

import (
	"bytes"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// levelValue is the height of a level, in the unit of the file that states it.
type levelValue struct {
	value
	in *scope
}

// takeLevels notes the heights of all levels, so that one may be stated from another
// in any order: the spec's own, and those of the house that it does not replace, which
// are in the house's unit and know nothing of the draft.
func (b *drafter) takeLevels() {
	b.levelY = map[string]*levelValue{}
	if h := b.doc.house; h != nil {
		for _, c := range h.levels {
			b.takeHeight(c.block, b.inHouse(c.unit))
		}
	}
	for _, c := range b.doc.root.all("level") {
		b.takeHeight(c, b.scope)
	}
}

// inHouse is what the names in a figure of a house stand for.
func (b *drafter) inHouse(unit model.Unit) *scope {
	house := *b.scope
	house.unit, house.draft, house.points = unit, nil, nil
	return &house
}

func (b *drafter) takeHeight(c *block, in *scope) {
	b.levelY[c.name] = nil
	if e := c.attr("y"); e != nil {
		b.levelY[c.name] = &levelValue{value{name: "level." + c.name + ".y", expr: e, at: e.Range()}, in}
	}
}

// levels builds the spec's levels, then those of the house that it does not replace. A
// level of the house that the garment does not name asks nothing of it: where its height
// or its measure is not known it is left out.
func (b *drafter) levels() {
	for _, c := range b.doc.root.blocks {
		if c.kind == "level" {
			b.g.Levels = append(b.g.Levels, b.level(c))
		}
	}
	if b.doc.house == nil {
		return
	}
	for _, c := range b.doc.house.levels {
		switch {
		case find(b.g.Levels, c.name, levelName) != nil:
		case b.doc.names(c.name):
			b.g.Levels = append(b.g.Levels, b.inHouse(c.unit).level(c.block))
		default:
			quiet := b.inHouse(c.unit)
			quiet.faults = &faults{}
			if l := quiet.level(c.block); !quiet.failed && model.Known(l.Y) {
				b.unnamed = append(b.unnamed, l)
				b.g.Levels = append(b.g.Levels, l)
			}
		}
	}
}

// leaveUnusedLevels leaves out the house's levels that the garment does not name, where a
// piece is known by tape: it could be asked for a width there.
func (b *drafter) leaveUnusedLevels() {
	paper := slices.ContainsFunc(b.g.Pieces(), func(p *model.Piece) bool { return !p.Drawn() })
	b.g.Levels = slices.DeleteFunc(b.g.Levels, func(l *model.Level) bool { return paper && slices.Contains(b.unnamed, l) })
}

// names reports whether the spec has a word in it anywhere.
func (d *Document) names(word string) bool {
	letter := func(i int) bool {
		return i >= 0 && i < len(d.src) && (d.src[i] == '_' || d.src[i] == '-' || d.src[i] >= '0' && d.src[i] <= '9' || d.src[i]|0x20 >= 'a' && d.src[i]|0x20 <= 'z')
	}
	for from := 0; ; {
		i := bytes.Index(d.src[from:], []byte(word))
		if i < 0 {
			return false
		}
		if at := from + i; !letter(at-1) && !letter(at+len(word)) {
			return true
		}
		from += i + 1
	}
}

// height is the height of a level in the file's unit, as another figure names it.
func (s *scope) height(e *hclsyntax.ScopeTraversalExpr, level, which string) (float64, bool) {
	v, stated := s.levelY[level]
	switch {
	case which != "y":
		s.fault(e.SrcRange, "Write level."+level+".y.", "a level has no %s", which)
	case v != nil:
		y, ok := v.in.follow(s).reckon(&v.value)
		return y * v.in.unit.Millimetre / s.unit.Millimetre, ok
	case s.lenient:
		return model.Unknown(), true
	case stated:
		if s.tell("level." + level) {
			s.fault(e.SrcRange, "Give it a height: y = 17.5.", "level.%s states no y", level)
		}
	case s.tell("level." + level):
		detail := "There is no level block that states it."
		if near := nearest(level, sortedKeys(s.levelY)); near != "" {
			detail = "The nearest is level." + near + "."
		}
		s.fault(e.SrcRange, detail, "there is no level %s", level)
	}
	return 0, false
}

// follow takes over the values that another scope is in the midst of, so that a circle
// through both is told whole.
func (s *scope) follow(by *scope) *scope {
	if s == by {
		return s
	}
	out := *s
	out.chain, out.depth, out.told = by.chain, by.depth, by.told
	return &out
}
