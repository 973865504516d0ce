package house

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
)

// What an expression of a house may come to. A rule that needs more is a
// program, and belongs in a plugin.
const (
	maxParts = 400 // of one expression
	maxLoops = 2   // inside one another
)

// part is a compiled expression.
type part struct {
	expr  hclsyntax.Expression
	slots []int // figures that it reads
	dim   dim
	given bool // it reads none, so that it is the same everywhere
}

// compiler makes parts of the expressions of one rule.
type compiler struct {
	unit      model.Unit
	kind      *kind
	functions map[string]callable
	slots     []slot
	levels    []levelName                  // that are named in it
	used      map[string]bool              // names of figures, as far as things by name have them
	dims      map[hclsyntax.Expression]dim // of what was compiled
	loops     []loop                       // that an expression stands in
	touched   []int                        // slots that the part at hand reads
	free      int                          // how often it reads what differs from thing to thing or turn to turn
	parts     int
	diags     []model.Diagnostic
}

// loop is a name that stands for one member of a list after another.
type loop struct {
	name string
	kind *kind // nil when not known
	dim  dim
}

// info is what is known of an expression without running it.
type info struct {
	dim  dim
	many *kind // it is things of this kind, by name
	one  *kind // it is a thing of this kind
}

func (c *compiler) fault(r hcl.Range, detail, format string, args ...any) {
	c.diags = append(c.diags, model.Diagnostic{
		Severity: "error", Summary: fmt.Sprintf(format, args...), Detail: detail, Place: spec.PlaceOf(r),
	})
}

// part compiles an expression; nil where it cannot, and has said why.
func (c *compiler) part(e hclsyntax.Expression) *part {
	faults := len(c.diags)
	c.touched, c.free, c.parts = nil, 0, 0
	expr, about := c.node(e)
	if c.parts > maxParts {
		c.fault(e.Range(), "Take it apart into several rules.", "this expression has more than %d parts", maxParts)
	}
	if len(c.diags) > faults {
		return nil
	}
	slices.Sort(c.touched)
	return &part{expr, slices.Compact(c.touched), about.dim, c.free == 0}
}

// node compiles one node of an expression and those below it.
func (c *compiler) node(e hclsyntax.Expression) (hclsyntax.Expression, info) {
	out, about := c.made(e)
	c.dims[out] = about.dim
	return out, about
}

func (c *compiler) made(e hclsyntax.Expression) (hclsyntax.Expression, info) {
	if c.parts++; c.parts > maxParts {
		return e, info{}
	}
	switch e := e.(type) {
	case *hclsyntax.LiteralValueExpr:
		return e, info{}
	case *hclsyntax.ParenthesesExpr:
		return c.node(e.Expression) // the tree keeps what they bind
	case *hclsyntax.ScopeTraversalExpr:
		return c.name(e)
	case *hclsyntax.BinaryOpExpr:
		return c.binary(e)
	case *hclsyntax.UnaryOpExpr:
		n := *e
		v, about := c.node(e.Val)
		n.Val = v
		return &unary{&n}, about
	case *hclsyntax.FunctionCallExpr:
		return c.call(e)
	case *hclsyntax.ConditionalExpr:
		n := *e
		n.Condition, _ = c.node(e.Condition)
		yes, a := c.node(e.TrueResult)
		no, b := c.node(e.FalseResult)
		n.TrueResult, n.FalseResult = yes, no
		return &n, info{dim: joined([]dim{a.dim, b.dim})}
	case *hclsyntax.TemplateWrapExpr:
		n := *e
		v, about := c.node(e.Wrapped)
		n.Wrapped = v
		return &n, about
	case *hclsyntax.TemplateExpr:
		return c.template(e), info{}
	case *hclsyntax.TupleConsExpr:
		n := *e
		n.Exprs = slices.Clone(e.Exprs)
		var dims []dim
		for i := range n.Exprs {
			v, about := c.node(n.Exprs[i])
			n.Exprs[i], dims = v, append(dims, about.dim)
		}
		return &n, info{dim: joined(dims)}
	case *hclsyntax.IndexExpr:
		n := *e
		list, about := c.node(e.Collection)
		n.Collection = list
		n.Key, _ = c.node(e.Key)
		if about.one != nil {
			c.fault(e.Key.Range(), suggested("", about.one.names()), "the name of a figure is meant here, in quotes or behind a dot")
		}
		return &n, info{dim: about.dim, one: about.many}
	case *hclsyntax.RelativeTraversalExpr:
		n := *e
		source, about := c.node(e.Source)
		n.Source = source
		return &n, c.walk(about, e.Traversal, e.SrcRange, written(source))
	case *hclsyntax.ForExpr:
		return c.loop(e)
	}
	c.fault(e.Range(), "Known are names, numbers, text, lists, operators, functions and for.", "this cannot stand in a rule of the house")
	return e, info{}
}

func (c *compiler) binary(e *hclsyntax.BinaryOpExpr) (hclsyntax.Expression, info) {
	n := *e
	left, a := c.node(e.LHS)
	right, b := c.node(e.RHS)
	n.LHS, n.RHS = left, right
	about := info{}
	switch e.Op {
	case hclsyntax.OpAdd, hclsyntax.OpSubtract, hclsyntax.OpModulo:
		about.dim = joined([]dim{a.dim, b.dim})
	case hclsyntax.OpMultiply:
		about.dim = product(a.dim, b.dim)
	case hclsyntax.OpDivide:
		about.dim = quotient(a.dim, b.dim)
	}
	return &binary{&n}, about
}

func product(a, b dim) dim {
	switch {
	case a == plain || a == ratio:
		return b
	case b == plain || b == ratio:
		return a
	case a == length && b == length:
		return area
	}
	return mixed
}

func quotient(a, b dim) dim {
	switch {
	case b == plain || b == ratio:
		return a
	case a == b:
		return ratio
	case a == area && b == length:
		return length
	}
	return mixed
}

func (c *compiler) call(e *hclsyntax.FunctionCallExpr) (hclsyntax.Expression, info) {
	n := *e
	n.Args = slices.Clone(e.Args)
	before := c.free
	var dims []dim
	var first info
	for i := range n.Args {
		v, about := c.node(n.Args[i])
		n.Args[i], dims = v, append(dims, about.dim)
		if i == 0 {
			first = about
		}
	}
	if e.ExpandFinal {
		c.fault(e.Range(), "min, max and sum take a list as it is.", "a list is not spread out here")
		return e, info{}
	}
	if e.Name == showName {
		if len(n.Args) != 1 {
			c.fault(e.Range(), "For example: show(edge.length).", "show takes one length")
		}
		c.free++ // the garment decides on the unit
		return &show{&n}, info{}
	}
	f, known := c.functions[e.Name]
	if !known {
		c.fault(e.NameRange, suggested(e.Name, functionNames), "there is no function %s", e.Name)
		return e, info{}
	}
	about := info{}
	if f.dim != nil {
		about.dim = f.dim(dims)
		switch e.Name {
		case "values":
			about.many = first.many
		case "lookup":
			about = info{dim: first.dim, one: first.many}
		}
	}
	out := &call{&n, f.f}
	if c.free == before { // cm(3) is reckoned once
		if v, known := c.given(out); known {
			return &hclsyntax.LiteralValueExpr{Val: v, SrcRange: e.Range()}, about
		}
	}
	return out, about
}

func (c *compiler) template(e *hclsyntax.TemplateExpr) hclsyntax.Expression {
	n := *e
	n.Parts = slices.Clone(e.Parts)
	literal, all := "", true
	for i, p := range n.Parts {
		l, ok := p.(*hclsyntax.LiteralValueExpr)
		if ok && l.Val.Type() == cty.String && !l.Val.IsNull() {
			literal += l.Val.AsString()
			continue
		}
		all = false
		v, _ := c.node(p)
		n.Parts[i] = &counted{&shown{v}, 1}
	}
	if all {
		c.used[literal] = true // it may be the name of a figure, for lookup
		return &hclsyntax.LiteralValueExpr{Val: cty.StringVal(literal), SrcRange: e.SrcRange}
	}
	return &n
}

func (c *compiler) loop(e *hclsyntax.ForExpr) (hclsyntax.Expression, info) {
	n := *e
	list, of := c.node(e.CollExpr)
	n.CollExpr = list
	if len(c.loops) >= 2*maxLoops { // each has a name for the key and one for the value
		c.fault(e.SrcRange, "", "for stands inside for more than %d deep", maxLoops)
		return e, info{}
	}
	for _, name := range []string{e.KeyVar, e.ValVar} {
		if name != "" && (slices.Contains(c.rootNames(), name) || slices.ContainsFunc(c.loops, func(l loop) bool { return l.name == name })) {
			c.fault(e.SrcRange, "", "%s means something else already; give the members another name", name)
		}
	}
	outer, parts := c.loops, c.parts
	c.loops = append(slices.Clone(outer), loop{name: e.KeyVar}, loop{e.ValVar, of.many, of.dim})
	value, about := c.node(e.ValExpr)
	if e.KeyExpr != nil {
		n.KeyExpr, _ = c.node(e.KeyExpr)
	}
	if e.CondExpr != nil {
		n.CondExpr, _ = c.node(e.CondExpr)
	}
	c.loops = outer
	n.ValExpr = &counted{value, c.parts - parts}
	if n.CondExpr != nil {
		n.CondExpr = &counted{n.CondExpr, c.parts - parts}
	}
	return &n, info{dim: about.dim, many: about.one}
}

// suggested names the nearest known word, or all of them.
func suggested(word string, known []string) string {
	if near := rules.Nearest(word, known); near != "" {
		return fmt.Sprintf("did you mean %q? Known are %s.", near, strings.Join(known, ", "))
	}
	return "Known are " + strings.Join(known, ", ") + "."
}
