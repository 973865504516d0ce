package house

import (
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model/spec"
)

// test is what must hold of a thing, in one of four forms.
type test struct {
	free *part // an expression that is true

	figure    *part // a figure that lies between two others; either end may be open
	low, high *part
	strict    bool // reaching an end is not enough

	other  *part // or is equal to another
	within *part // up to this

	has   []stated
	named []string
}

// stated is something that must be stated.
type stated struct {
	figure *part
	word   string
}

// test compiles what a rule asks for. Where the expression is a comparison, it
// is taken apart, so that findings have a figure, a limit and the room between.
func (c *compiler) test(r *spec.Require) test {
	var t test
	forms := 0
	for _, stated := range []bool{r.That != nil, r.Figure != nil, len(r.Has) > 0, len(r.Named) > 0} {
		if stated {
			forms++
		}
	}
	if forms != 1 {
		c.fault(r.Header, "One of them says what must hold.", "a rule states one of that, figure, has and named")
		return t
	}
	switch {
	case r.That != nil:
		if t.free = c.part(r.That); t.free != nil {
			c.comparison(&t)
		}
		if r.Message == nil {
			c.fault(r.Header, "For example: message = \"${edge.name} is ${show(edge.length)} long\".", "a rule with that needs a message")
		}
	case r.Figure != nil:
		c.readyMade(&t, r)
	case len(r.Has) > 0:
		for _, e := range r.Has {
			p := c.part(e)
			if p == nil {
				continue
			}
			n, ok := p.expr.(*ref)
			if !ok {
				c.fault(e.Range(), "For example: has = edge.finish.", "the name of a figure is meant here")
				continue
			}
			t.has = append(t.has, stated{p, words(n)})
		}
	default:
		for _, n := range r.Named {
			t.named = append(t.named, n.Text)
		}
		if c.kind.figure("name") == nil {
			c.fault(r.Header, "", "a %s has no name", c.kind.name)
		}
	}
	c.strays(r)
	return t
}

func (c *compiler) readyMade(t *test, r *spec.Require) {
	t.figure = c.part(r.Figure)
	t.low, t.high, t.other, t.within = c.optional(r.Least), c.optional(r.Greatest), c.optional(r.Equals), c.optional(r.Within)
	bounded := r.Least != nil || r.Greatest != nil
	if bounded == (r.Equals != nil) {
		c.fault(r.Figure.Range(), "", "a figure has a least or a greatest value, or equals another")
	}
}

// strays tells of words that go with another form.
func (c *compiler) strays(r *spec.Require) {
	for _, x := range []struct {
		word   string
		e      hclsyntax.Expression
		needs  string
		needed bool
	}{
		{"least", r.Least, "figure", r.Figure != nil},
		{"greatest", r.Greatest, "figure", r.Figure != nil},
		{"equals", r.Equals, "figure", r.Figure != nil},
		{"within", r.Within, "equals", r.Equals != nil},
	} {
		if x.e != nil && !x.needed {
			c.fault(x.e.Range(), "", "%s goes with %s", x.word, x.needs)
		}
	}
}

// comparison takes a comparison of two numbers apart.
func (c *compiler) comparison(t *test) {
	piece := func(e hclsyntax.Expression) *part {
		_, given := e.(*hclsyntax.LiteralValueExpr)
		return &part{e, t.free.slots, c.dims[e], given}
	}
	switch n := t.free.expr.(type) {
	case *binary:
		left, right := piece(n.LHS), piece(n.RHS)
		op := n.Op
		if left.given && !right.given { // 3 <= edge.allowance
			left, right, op = right, left, turned(op)
		}
		t.strict = op == hclsyntax.OpGreaterThan || op == hclsyntax.OpLessThan
		switch op {
		case hclsyntax.OpGreaterThan, hclsyntax.OpGreaterThanOrEqual:
			t.figure, t.low = left, right
		case hclsyntax.OpLessThan, hclsyntax.OpLessThanOrEqual:
			t.figure, t.high = left, right
		}
	case *call:
		if n.Name == "between" && len(n.Args) == 3 {
			t.figure, t.low, t.high = piece(n.Args[0]), piece(n.Args[1]), piece(n.Args[2])
		}
	}
}

func turned(op *hclsyntax.Operation) *hclsyntax.Operation {
	switch op {
	case hclsyntax.OpGreaterThan:
		return hclsyntax.OpLessThan
	case hclsyntax.OpGreaterThanOrEqual:
		return hclsyntax.OpLessThanOrEqual
	case hclsyntax.OpLessThan:
		return hclsyntax.OpGreaterThan
	case hclsyntax.OpLessThanOrEqual:
		return hclsyntax.OpGreaterThanOrEqual
	}
	return op
}

// words is a figure's name as a message has it: the sewn length.
func words(n *ref) string {
	return spaced(strings.TrimPrefix(path(n.Traversal[1:]), "."))
}
