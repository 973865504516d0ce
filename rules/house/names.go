package house

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// Where the figures of an expression come from. The roots of the rule's kind
// count from 0.
const (
	fromGarment = -1
	fromBody    = -2
)

// rootNames are the words that a name can begin with.
func (c *compiler) rootNames() []string {
	names := slices.Clone(c.kind.roots)
	if c.kind != garmentKind {
		names = append(names, "garment")
	}
	return append(names, "body")
}

// root finds what a first word stands for.
func (c *compiler) root(name string) (int, *kind) {
	if i := slices.Index(c.kind.roots, name); i >= 0 {
		return i, kindNamed(name)
	}
	if name == "garment" {
		return fromGarment, garmentKind
	}
	return 0, nil
}

// name compiles a name: a figure of a thing, or the member of a list at hand.
func (c *compiler) name(e *hclsyntax.ScopeTraversalExpr) (hclsyntax.Expression, info) {
	c.free++
	first := e.Traversal.RootName()
	if i := slices.IndexFunc(c.loops, func(l loop) bool { return l.name == first }); i >= 0 {
		l := c.loops[i]
		return e, c.walk(info{one: l.kind, dim: l.dim}, e.Traversal[1:], e.SrcRange, first)
	}
	if first == "body" {
		return c.bodyMeasure(e)
	}
	root, k := c.root(first)
	switch {
	case k == nil:
		c.fault(e.SrcRange, suggested(first, c.rootNames()), "%s is not known in a rule of = %s", first, c.kind.name)
		return e, info{}
	case len(e.Traversal) == 1:
		c.fault(e.SrcRange, fmt.Sprintf("Known are %s.%s.", first, strings.Join(k.names(), ", "+first+".")), "%s is a thing; say which figure of it is meant", first)
		return e, info{}
	}
	word, ok := stepName(e.Traversal[1])
	f := k.figure(word)
	if !ok || f == nil {
		c.unknownFigure(e.SrcRange, first, word, k)
		return e, info{}
	}
	about := c.walk(f.about(), e.Traversal[2:], e.SrcRange, first+"."+word)
	if f.shape == levels && len(e.Traversal) > 2 {
		if level, ok := stepName(e.Traversal[2]); ok {
			c.levels = append(c.levels, levelName{level, path(e.Traversal), e.SrcRange})
		}
	}
	s := slot{root: root, figure: f, whole: len(e.Traversal) == 2}
	return &ref{e, c.slot(s), e.Traversal[2:], path(e.Traversal)}, about
}

func (c *compiler) slot(s slot) int {
	i := slices.Index(c.slots, s)
	if i < 0 {
		i = len(c.slots)
		c.slots = append(c.slots, s)
	}
	c.touched = append(c.touched, i)
	return i
}

func (c *compiler) bodyMeasure(e *hclsyntax.ScopeTraversalExpr) (hclsyntax.Expression, info) {
	name := ""
	if len(e.Traversal) == 2 {
		name, _ = stepName(e.Traversal[1])
	}
	if name == "" {
		c.fault(e.SrcRange, "For example: body.waist_girth.", "a measure of the body is meant here")
		return e, info{}
	}
	return &ref{e, c.slot(slot{root: fromBody, body: name}), nil, path(e.Traversal)}, info{dim: length}
}

// about is what is known of a figure.
func (f *figure) about() info {
	if f.shape == many {
		return info{many: kindNamed(f.kind)}
	}
	return info{dim: f.dim}
}

// walk follows the steps behind something and tells what they lead to. Where
// that is not known, anything goes, and is found out when it is tried.
func (c *compiler) walk(from info, steps hcl.Traversal, at hcl.Range, name string) info {
	for _, step := range steps {
		word, byName := stepName(step)
		if byName {
			c.used[word] = true
		}
		switch {
		case from.many != nil:
			from = info{one: from.many}
		case from.one != nil:
			f := from.one.figure(word)
			if f == nil {
				c.unknownFigure(at, name, word, from.one)
				return info{}
			}
			from = f.about()
		default:
			from = info{dim: from.dim}
		}
		if byName {
			name += "." + word
		}
	}
	return from
}

func (c *compiler) unknownFigure(at hcl.Range, of, word string, k *kind) {
	if word == "" {
		c.fault(at, "For example: "+of+"."+k.figures[0].name+".", "%s has figures by name", of)
		return
	}
	c.fault(at, suggested(word, k.names()), "%s %s has no figure %s", article(k.name), k.name, word)
}

func article(word string) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an"
	}
	return "a"
}

// stepName is a step's word: .waist or ["waist"].
func stepName(step hcl.Traverser) (string, bool) {
	switch s := step.(type) {
	case hcl.TraverseAttr:
		return s.Name, true
	case hcl.TraverseIndex:
		if s.Key.Type() == cty.String {
			return s.Key.AsString(), true
		}
	}
	return "", false
}
