package spec

import (
	"fmt"
	"math"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// maxDepth is how deep an expression may go with all the values that it needs.
const maxDepth = 5000

// number reckons an expression in the file's unit. Where it cannot, it has
// reported why and ok is false.
func (s *scope) number(e hclsyntax.Expression) (v float64, ok bool) {
	if l, literal := e.(*hclsyntax.LiteralValueExpr); literal {
		return s.literal(l)
	}
	if s.depth >= maxDepth {
		s.fault(e.Range(), "", "this expression is too deep")
		return 0, false
	}
	s.depth++
	v, ok = s.reckoned(e)
	s.depth--
	return v, ok
}

func (s *scope) reckoned(e hclsyntax.Expression) (v float64, ok bool) {
	switch e := e.(type) {
	case *hclsyntax.ParenthesesExpr:
		return s.number(e.Expression)
	case *hclsyntax.UnaryOpExpr:
		if e.Op != hclsyntax.OpNegate {
			break
		}
		v, ok = s.number(e.Val)
		return -v, ok
	case *hclsyntax.BinaryOpExpr:
		if whole, fraction, odd := hyphened(e); odd {
			s.fault(e.Range(), fmt.Sprintf("Write %[1]s + %[2]s; where %[1]s less %[2]s is meant, put spaces round the minus sign.", whole, fraction),
				"%s-%s could be meant as a fraction", whole, fraction)
			return 0, false
		}
		return s.arithmetic(e)
	case *hclsyntax.ConditionalExpr:
		yes, ok := s.condition(e.Condition)
		switch {
		case !ok:
			return 0, false
		case yes:
			return s.number(e.TrueResult)
		}
		return s.number(e.FalseResult)
	case *hclsyntax.FunctionCallExpr:
		return s.call(e)
	case *hclsyntax.ScopeTraversalExpr:
		if root := e.Traversal.RootName(); functions[root].run != nil && len(e.Traversal) > 1 {
			s.fault(e.SrcRange, fmt.Sprintf("Write %s( ).", root), "%s has round brackets", root)
			return 0, false
		}
		return s.reference(e)
	}
	s.notNumber(e)
	return 0, false
}

func (s *scope) literal(e *hclsyntax.LiteralValueExpr) (float64, bool) {
	if e.Val.IsNull() || e.Val.Type() != cty.Number {
		s.notNumber(e)
		return 0, false
	}
	v, _ := e.Val.AsBigFloat().Float64()
	if math.IsInf(v, 0) {
		s.fault(e.SrcRange, "", "this number is out of all measure")
		return 0, false
	}
	return v, true
}

func (s *scope) notNumber(e hclsyntax.Expression) {
	detail := ""
	switch e := e.(type) {
	case *hclsyntax.TemplateExpr, *hclsyntax.TemplateWrapExpr:
		detail = "Write the figure without quotes."
	case *hclsyntax.TupleConsExpr:
		detail = "A single figure is meant here, not a list."
	case *hclsyntax.BinaryOpExpr, *hclsyntax.UnaryOpExpr:
		detail = "A comparison can only stand before a question mark."
	case *hclsyntax.ForExpr, *hclsyntax.SplatExpr:
		detail = "Specs have no loops; name each value."
	case *hclsyntax.LiteralValueExpr:
		if e.Val.IsNull() {
			detail = "null is only for the open end of a range."
		}
	}
	s.fault(e.Range(), detail, "a number is meant here")
}

func (s *scope) arithmetic(e *hclsyntax.BinaryOpExpr) (float64, bool) {
	switch e.Op {
	case hclsyntax.OpAdd, hclsyntax.OpSubtract, hclsyntax.OpMultiply, hclsyntax.OpDivide, hclsyntax.OpModulo:
	default:
		s.notNumber(e)
		return 0, false
	}
	a, okA := s.number(e.LHS)
	b, okB := s.number(e.RHS)
	if !okA || !okB {
		return 0, false
	}
	switch e.Op {
	case hclsyntax.OpAdd:
		return a + b, true
	case hclsyntax.OpSubtract:
		return a - b, true
	case hclsyntax.OpMultiply:
		return a * b, true
	}
	if b == 0 {
		s.fault(e.RHS.Range(), "", "division by zero")
		return 0, false
	}
	if e.Op == hclsyntax.OpModulo {
		return math.Mod(a, b), true
	}
	return a / b, true
}

// condition reckons what stands before a question mark.
func (s *scope) condition(e hclsyntax.Expression) (yes, ok bool) {
	switch e := e.(type) {
	case *hclsyntax.LiteralValueExpr:
		if !e.Val.IsNull() && e.Val.Type() == cty.Bool {
			return e.Val.True(), true
		}
	case *hclsyntax.ParenthesesExpr:
		return s.condition(e.Expression)
	case *hclsyntax.UnaryOpExpr:
		if e.Op == hclsyntax.OpLogicalNot {
			yes, ok = s.condition(e.Val)
			return !yes, ok
		}
	case *hclsyntax.BinaryOpExpr:
		return s.comparison(e)
	}
	s.fault(e.Range(), "For example: draft.bust > 100 ? 3 : 2.", "a comparison is meant here")
	return false, false
}

func (s *scope) comparison(e *hclsyntax.BinaryOpExpr) (yes, ok bool) {
	if e.Op == hclsyntax.OpLogicalAnd || e.Op == hclsyntax.OpLogicalOr {
		a, okA := s.condition(e.LHS)
		b, okB := s.condition(e.RHS)
		if e.Op == hclsyntax.OpLogicalAnd {
			return a && b, okA && okB
		}
		return a || b, okA && okB
	}
	var holds func(a, b float64) bool
	switch e.Op {
	case hclsyntax.OpGreaterThan:
		holds = func(a, b float64) bool { return a > b }
	case hclsyntax.OpGreaterThanOrEqual:
		holds = func(a, b float64) bool { return a >= b }
	case hclsyntax.OpLessThan:
		holds = func(a, b float64) bool { return a < b }
	case hclsyntax.OpLessThanOrEqual:
		holds = func(a, b float64) bool { return a <= b }
	case hclsyntax.OpEqual:
		holds = func(a, b float64) bool { return a == b }
	case hclsyntax.OpNotEqual:
		holds = func(a, b float64) bool { return a != b }
	default:
		s.fault(e.SrcRange, "For example: draft.bust > 100 ? 3 : 2.", "a comparison is meant here")
		return false, false
	}
	a, okA := s.number(e.LHS)
	b, okB := s.number(e.RHS)
	if !okA || !okB {
		return false, false
	}
	return holds(a, b), true
}

// steps takes an expression like draft.quarter apart into its words. Anything
// else that can stand behind a name, like an index, is refused.
func steps(e *hclsyntax.ScopeTraversalExpr) (words [5]string, n int) {
	for _, t := range e.Traversal {
		if n == len(words) {
			return words, 0
		}
		switch t := t.(type) {
		case hcl.TraverseRoot:
			words[n] = t.Name
		case hcl.TraverseAttr:
			words[n] = t.Name
		default:
			return words, 0
		}
		n++
	}
	return words, n
}

// asWritten is the text of a name in the spec: shell.front.side.
func asWritten(words []string) string { return strings.Join(words, ".") }
