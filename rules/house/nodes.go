package house

import (
	"fmt"
	"math"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"understitch/model"
	"understitch/model/spec"
)

// The nodes here take the place of the parser's own in a compiled expression.
// Each holds the node it stands for, which gives it its place, and reckons in
// its stead: in float64, with a tolerance where numbers are compared, and with
// no quiet change of text into numbers.

// fail is the one diagnostic of a node that has no value.
func fail(r hcl.Range, detail, format string, args ...any) (cty.Value, hcl.Diagnostics) {
	return cty.DynamicVal, hcl.Diagnostics{{Severity: hcl.DiagError, Summary: fmt.Sprintf(format, args...), Detail: detail, Subject: &r}}
}

// wrongType marks a diagnostic that holds whatever the figures are.
type wrongType struct{}

// refuse is a diagnostic of a value that is of the wrong type.
func refuse(r hcl.Range, detail, format string, args ...any) (cty.Value, hcl.Diagnostics) {
	v, diags := fail(r, detail, format, args...)
	diags[0].Extra = wrongType{}
	return v, diags
}

// ref is a figure, or something further down in one: layer.girth.waist.
type ref struct {
	*hclsyntax.ScopeTraversalExpr
	slot    int
	rest    hcl.Traversal
	written string
}

func (n *ref) Value(ctx *hcl.EvalContext) (cty.Value, hcl.Diagnostics) {
	v := stateOf(ctx).slots[n.slot]
	if len(n.rest) == 0 {
		return v, nil
	}
	if v.IsNull() {
		return fail(n.SrcRange, "", "%s is not known", n.written)
	}
	v, diags := n.rest.TraverseRel(v)
	if diags.HasErrors() {
		at := spec.PlaceOf(n.SrcRange)
		return fail(n.SrcRange, "", "there is no %s, which %s:%d:%d asks for", n.written, at.File, at.Start.Line, at.Start.Column)
	}
	return v, nil
}

// tolerance is how far two numbers may differ by the computer's arithmetic
// alone, in the house's unit.
const tolerance = 1e-9

// binary is an operator between two operands.
type binary struct{ *hclsyntax.BinaryOpExpr }

func (n *binary) Value(ctx *hcl.EvalContext) (cty.Value, hcl.Diagnostics) {
	a, diags := n.LHS.Value(ctx)
	if diags.HasErrors() {
		return a, diags
	}
	switch n.Op {
	case hclsyntax.OpLogicalAnd, hclsyntax.OpLogicalOr:
		return n.logic(ctx, a)
	case hclsyntax.OpEqual, hclsyntax.OpNotEqual:
		return n.equal(ctx, a)
	}
	b, diags := n.RHS.Value(ctx)
	if diags.HasErrors() {
		return b, diags
	}
	x, known, diags := operand(n.LHS, a)
	if diags.HasErrors() {
		return cty.DynamicVal, diags
	}
	y, knownToo, diags := operand(n.RHS, b)
	switch {
	case diags.HasErrors():
		return cty.DynamicVal, diags
	case !known || !knownToo:
		return cty.UnknownVal(n.Op.Type), nil
	}
	return n.reckon(x, y)
}

func (n *binary) reckon(x, y float64) (cty.Value, hcl.Diagnostics) {
	v := 0.0
	switch n.Op {
	case hclsyntax.OpGreaterThan:
		return cty.BoolVal(x > y+tolerance), nil
	case hclsyntax.OpGreaterThanOrEqual:
		return cty.BoolVal(x >= y-tolerance), nil
	case hclsyntax.OpLessThan:
		return cty.BoolVal(x < y-tolerance), nil
	case hclsyntax.OpLessThanOrEqual:
		return cty.BoolVal(x <= y+tolerance), nil
	case hclsyntax.OpAdd:
		v = x + y
	case hclsyntax.OpSubtract:
		v = x - y
	case hclsyntax.OpMultiply:
		v = x * y
	case hclsyntax.OpDivide:
		v = x / y
	case hclsyntax.OpModulo:
		v = math.Mod(x, y)
	}
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return fail(n.SrcRange, "", "this has no value; is something divided by nothing?")
	}
	return cty.NumberFloatVal(v), nil
}

func (n *binary) logic(ctx *hcl.EvalContext, a cty.Value) (cty.Value, hcl.Diagnostics) {
	yes, known, diags := truth(n.LHS, a)
	switch {
	case diags.HasErrors():
		return cty.DynamicVal, diags
	case known && yes == (n.Op == hclsyntax.OpLogicalOr):
		return cty.BoolVal(yes), nil
	}
	b, diags := n.RHS.Value(ctx)
	if diags.HasErrors() {
		return b, diags
	}
	yes, knownToo, diags := truth(n.RHS, b)
	switch {
	case diags.HasErrors():
		return cty.DynamicVal, diags
	case !known || !knownToo:
		return cty.UnknownVal(cty.Bool), nil
	}
	return cty.BoolVal(yes), nil
}

func (n *binary) equal(ctx *hcl.EvalContext, a cty.Value) (cty.Value, hcl.Diagnostics) {
	b, diags := n.RHS.Value(ctx)
	if diags.HasErrors() {
		return b, diags
	}
	wanted := n.Op == hclsyntax.OpEqual
	switch s, t := a.Type(), b.Type(); {
	case !a.IsKnown() || !b.IsKnown() || a.IsNull() || b.IsNull():
		null := func(v cty.Value) bool { return v.IsKnown() && v.IsNull() }
		switch {
		case null(a) && null(b):
			return cty.BoolVal(wanted), nil
		case !s.Equals(t) && s != cty.DynamicPseudoType && t != cty.DynamicPseudoType:
		case null(a) && b.IsKnown() || null(b) && a.IsKnown():
			return cty.BoolVal(!wanted), nil
		default:
			return cty.UnknownVal(cty.Bool), nil
		}
		fallthrough
	case s.IsPrimitiveType() != t.IsPrimitiveType() || s.IsPrimitiveType() && !s.Equals(t):
		return refuse(n.SrcRange, kindOf(n.LHS, a)+"; "+kindOf(n.RHS, b), "these two are never equal")
	case s == cty.Number:
		return cty.BoolVal((math.Abs(float(a)-float(b)) <= tolerance) == wanted), nil
	case s == cty.String:
		return cty.BoolVal((a.AsString() == b.AsString()) == wanted), nil
	}
	same := a.Equals(b)
	if !same.IsKnown() {
		return same, nil
	}
	return cty.BoolVal(same.True() == wanted), nil
}

// unary is a minus sign or a not.
type unary struct{ *hclsyntax.UnaryOpExpr }

func (n *unary) Value(ctx *hcl.EvalContext) (cty.Value, hcl.Diagnostics) {
	v, diags := n.Val.Value(ctx)
	if diags.HasErrors() {
		return v, diags
	}
	if n.Op == hclsyntax.OpLogicalNot {
		yes, known, diags := truth(n.Val, v)
		if !known {
			return cty.UnknownVal(cty.Bool), diags
		}
		return cty.BoolVal(!yes), diags
	}
	x, known, diags := operand(n.Val, v)
	if !known {
		return cty.UnknownVal(cty.Number), diags
	}
	return cty.NumberFloatVal(-x), diags
}

// counted is a part of an expression that is run for each member of a list.
type counted struct {
	hclsyntax.Expression
	steps int
}

func (n *counted) Value(ctx *hcl.EvalContext) (cty.Value, hcl.Diagnostics) {
	stateOf(ctx).spend(n.steps)
	return n.Expression.Value(ctx)
}

// shown is a part of a message: numbers are written as a person would.
type shown struct{ hclsyntax.Expression }

func (n *shown) Value(ctx *hcl.EvalContext) (cty.Value, hcl.Diagnostics) {
	v, diags := n.Expression.Value(ctx)
	switch {
	case diags.HasErrors() || !v.IsKnown():
		return v, diags
	case v.IsNull():
		return cty.StringVal("not known"), nil
	case v.Type() == cty.Number:
		return cty.StringVal(model.Decimal(float(v), 3)), nil
	}
	return v, diags
}

func float(v cty.Value) float64 {
	f, _ := v.AsBigFloat().Float64()
	return f
}

// operand is a value as a number.
func operand(e hclsyntax.Expression, v cty.Value) (x float64, known bool, diags hcl.Diagnostics) {
	switch t := v.Type(); {
	case v.IsKnown() && v.IsNull():
		_, diags = fail(e.Range(), "", "%s is not known", written(e))
	case t == cty.Number && v.IsKnown():
		return float(v), true, nil
	case t != cty.Number && t != cty.DynamicPseudoType:
		_, diags = refuse(e.Range(), kindOf(e, v)+"; lengths are numbers too", "a number is meant here")
	}
	return 0, false, diags
}

// truth is a value as yes or no.
func truth(e hclsyntax.Expression, v cty.Value) (yes, known bool, diags hcl.Diagnostics) {
	switch t := v.Type(); {
	case v.IsKnown() && v.IsNull():
		_, diags = fail(e.Range(), "", "%s is not known", written(e))
	case t == cty.Bool && v.IsKnown():
		return v.True(), true, nil
	case t != cty.Bool && t != cty.DynamicPseudoType:
		_, diags = refuse(e.Range(), kindOf(e, v)+"; a comparison such as edge.length > 3 is true or false", "something that is true or false is meant here")
	}
	return false, false, diags
}

// written is a figure's name, for a message.
func written(e hclsyntax.Expression) string {
	switch n := e.(type) {
	case *ref:
		return n.written
	case *hclsyntax.ScopeTraversalExpr:
		return path(n.Traversal)
	case *hclsyntax.ParenthesesExpr:
		return written(n.Expression)
	}
	return "what stands here"
}

// kindOf says what a value is: "edge.finish is text".
func kindOf(e hclsyntax.Expression, v cty.Value) string {
	what := "a list"
	switch t := v.Type(); {
	case v.IsKnown() && v.IsNull():
		what = "null"
	case t == cty.Number:
		what = "a number"
	case t == cty.String:
		what = "text"
	case t == cty.Bool:
		what = "true or false"
	case t.IsMapType():
		what = "several, by name"
	case t.IsObjectType():
		what = "a thing with figures of its own"
	}
	return written(e) + " is " + what
}
