package spec

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// block is one block of a file after its words were checked. The file itself
// is a block without a word.
type block struct {
	kind, name string
	attrs      hclsyntax.Attributes
	inOrder    []*hclsyntax.Attribute // only where the names are the user's own
	blocks     []*block
	header     hcl.Range // the word and its label
}

// attr finds an attribute's expression, or nil.
func (b *block) attr(name string) hclsyntax.Expression {
	if a := b.attrs[name]; a != nil {
		return a.Expr
	}
	return nil
}

// all lists the blocks of a kind, in the order of the file.
func (b *block) all(kind string) []*block {
	var list []*block
	for _, c := range b.blocks {
		if c.kind == kind {
			list = append(list, c)
		}
	}
	return list
}

// first is the first block of a kind, or nil.
func (b *block) first(kind string) *block {
	for _, c := range b.blocks {
		if c.kind == kind {
			return c
		}
	}
	return nil
}

// named finds a block by kind and label, or nil.
func (b *block) named(kind, name string) *block {
	for _, c := range b.blocks {
		if c.kind == kind && c.name == name {
			return c
		}
	}
	return nil
}

// title names a block in a message: piece "front".
func title(kind, name string) string {
	if name == "" {
		return kind
	}
	return fmt.Sprintf("%s %q", kind, name)
}

// grower checks the words of a parsed file and keeps its blocks.
type grower struct {
	*faults
	root   *shape
	blocks int  // so far
	second bool // a second garment has begun, whose names may be those of the first
}

// maxBlocks is how many blocks a file may have. A garment of a hundred pieces,
// each with ten edges and ten notches, has some two thousand.
const maxBlocks = 5000

func (g *grower) grow(body *hclsyntax.Body, sh *shape, b *block) {
	b.attrs = body.Attributes
	if sh.free {
		b.inOrder = byPlace(b.attrs)
	} else {
		meant := map[string]bool{}           // what a misspelt word stands for is not missing too
		for _, a := range byPlace(b.attrs) { // so that where there are too many faults the first are listed
			if g.full() {
				return
			}
			if !slices.Contains(sh.needs, a.Name) && !slices.Contains(sh.may, a.Name) {
				g.unknownAttr(a, sh, b)
				meant[nearest(a.Name, sh.names())] = true
			}
		}
		for _, name := range sh.needs {
			if b.attrs[name] == nil && !meant[name] {
				g.fault(b.header, "Write "+name+" = … in it.", "%s does not state %s", title(b.kind, b.name), name)
			}
		}
	}
	if len(body.Blocks) > 0 {
		b.blocks = make([]*block, 0, len(body.Blocks))
	}
	for _, src := range body.Blocks {
		if g.blocks++; g.blocks == maxBlocks {
			g.fault(src.TypeRange, "", "the file has more than %d blocks", maxBlocks)
		}
		if g.blocks >= maxBlocks || g.full() {
			return
		}
		g.inner(src, sh, b)
	}
}

// byPlace are the attributes of a block in the order in which they stand there.
func byPlace(attrs hclsyntax.Attributes) []*hclsyntax.Attribute {
	out := make([]*hclsyntax.Attribute, 0, len(attrs))
	for _, a := range attrs {
		out = append(out, a)
	}
	slices.SortFunc(out, func(x, y *hclsyntax.Attribute) int { return x.SrcRange.Start.Byte - y.SrcRange.Start.Byte })
	return out
}

func (g *grower) inner(src *hclsyntax.Block, sh *shape, parent *block) {
	inner := sh.blocks[src.Type]
	header := src.TypeRange
	if n := len(src.LabelRanges); n > 0 {
		header.End = src.LabelRanges[n-1].End
	}
	if inner == nil {
		g.unknownBlock(src, header, sh, parent)
		return
	}
	if inner.later {
		g.fault(header, "", "%s is not yet supported", src.Type)
		return
	}
	b := &block{kind: src.Type, header: header}
	if !g.label(src, inner, b) {
		return
	}
	switch twin := parent.first(b.kind); {
	case inner.once && twin != nil && twin.name != b.name:
		g.fault(header, fmt.Sprintf("A file holds one %s; the first stands on %s. Begin a new file for another.", b.kind, lineOf(twin.header)),
			"%s is the second in this file", title(b.kind, b.name))
		g.second = true
		return
	case g.second:
	case inner.label != ruleLabel && (inner.once || inner.label != noLabel && (inner.label != maybeLabel || b.name != "")):
		if twin := parent.named(b.kind, b.name); twin != nil {
			detail := "The first stands on " + lineOf(twin.header) + "."
			g.fault(header, detail, "%s is there twice", title(b.kind, b.name))
			return
		}
	}
	g.grow(src.Body, inner, b)
	parent.blocks = append(parent.blocks, b)
}

// label checks what stands between a block's word and its brace.
func (g *grower) label(src *hclsyntax.Block, sh *shape, b *block) bool {
	switch n := len(src.Labels); {
	case sh.label == noLabel && n > 0:
		g.fault(src.LabelRanges[0], "Write "+src.Type+" { … }.", "%s takes no name", src.Type)
		return false
	case sh.label == noLabel, sh.label == maybeLabel && n == 0:
		return true
	case n == 0:
		g.fault(src.TypeRange, fmt.Sprintf("Write %s \"name\" { … }.", src.Type), "%s needs a name in quotes", src.Type)
		return false
	case n > 1:
		g.fault(src.LabelRanges[1], "", "%s takes one name", src.Type)
		return false
	}
	b.name = src.Labels[0]
	switch r := src.LabelRanges[0]; {
	case sh.label == textLabel:
		if strings.TrimSpace(b.name) == "" {
			g.fault(r, "", "%s needs a name in quotes", src.Type)
			return false
		}
	case !isName(b.name):
		g.fault(r, lettersOf(asName(b.name)), "%q cannot be a name", b.name)
		return false
	case b.kind == "layer" && slices.Contains(firstWords, b.name):
		g.fault(r, "Addresses that begin with this word mean something else.", "a layer cannot be called %q", b.name)
		return false
	case b.kind == "level" && (b.name == "start" || b.name == "end"):
		g.fault(r, "These words mean the ends of an edge.", "a level cannot be called %q", b.name)
		return false
	}
	return true
}

func (g *grower) unknownAttr(a *hclsyntax.Attribute, sh *shape, b *block) {
	where := "at the top of a file"
	if b.kind != "" {
		where = "in " + title(b.kind, b.name)
	}
	if sh.blocks[a.Name] != nil {
		g.fault(a.NameRange, fmt.Sprintf("Write %s { … } without the equals sign.", a.Name), "%s is a block", a.Name)
		return
	}
	g.fault(a.NameRange, hint(a.Name, append(sh.names(), sh.kinds()...)), "%s is not known %s", a.Name, where)
}

func (g *grower) unknownBlock(src *hclsyntax.Block, header hcl.Range, sh *shape, parent *block) {
	if slices.Contains(sh.needs, src.Type) || slices.Contains(sh.may, src.Type) {
		g.fault(header, fmt.Sprintf("Write %s = …", src.Type), "%s needs an equals sign", src.Type)
		return
	}
	where := "at the top of a spec"
	if g.root == houseShape {
		where = "in house.hcl"
	}
	if parent.kind != "" {
		where = "in " + title(parent.kind, parent.name)
	}
	detail := hint(src.Type, append(sh.kinds(), sh.names()...))
	switch {
	case src.Type == "nest":
		detail = "Write inside: in the trade a nest is a stack of sizes."
	case g.root == houseShape && garmentShape.blocks[src.Type] != nil:
		detail = "It belongs in a spec."
	case g.root == garmentShape && houseShape.blocks[src.Type] != nil:
		detail = "It belongs in house.hcl."
	}
	if parents := parentsOf(g.root, src.Type); len(parents) > 0 {
		detail = "It belongs at the top of the file; is a closing brace missing above?"
		if parents[0] != "" {
			detail = "It belongs inside " + strings.Join(parents, " or ") + "."
			if parent.kind != "" && !slices.Contains(parents, parent.kind) {
				detail = fmt.Sprintf("It belongs inside %s; is the closing brace of %s missing above?",
					strings.Join(parents, " or "), title(parent.kind, parent.name))
			}
		}
	}
	g.fault(header, detail, "%s cannot stand %s", title(src.Type, strings.Join(src.Labels, " ")), where)
}
