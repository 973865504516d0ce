package spec

import (
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// What is here is sound to the parser, and means something other than what the
// cutter wrote it for: 5,5 is two figures, 4-7/8 is less than four. It is told
// by how closely the figures stand, as a sum is set out with spaces and a
// fraction is not.

// numeral is a figure as it was written, where the expression is a plain one.
func numeral(e hclsyntax.Expression) (text string, ok bool) {
	l, literal := e.(*hclsyntax.LiteralValueExpr)
	if !literal || l.Val.IsNull() || l.Val.Type() != cty.Number {
		return "", false
	}
	text = l.Val.AsBigFloat().Text('f', -1)
	// Leading noughts are lost on the way: the 05 of 3,05.
	if n := l.SrcRange.End.Byte - l.SrcRange.Start.Byte - len(text); n > 0 && !strings.Contains(text, ".") {
		text = strings.Repeat("0", n) + text
	}
	return text, true
}

// decimalComma finds two whole figures with a comma between them and no space,
// and says what to write instead, or nothing.
func decimalComma(list []hclsyntax.Expression) string {
	for i := 1; i < len(list); i++ {
		a, okA := numeral(list[i-1])
		b, okB := numeral(list[i])
		if okA && okB && !strings.Contains(a+b, ".") && list[i-1].Range().End.Byte+1 == list[i].Range().Start.Byte {
			return fmt.Sprintf("Write %[1]s.%[2]s in place of %[1]s,%[2]s.", a, b)
		}
	}
	return ""
}

// dashed takes 2-6 apart, which is no range here.
func dashed(e hclsyntax.Expression) (low, high string, ok bool) {
	d, binary := e.(*hclsyntax.BinaryOpExpr)
	if !binary || d.Op != hclsyntax.OpSubtract || d.LHS.Range().End.Byte+1 != d.RHS.Range().Start.Byte {
		return "", "", false
	}
	low, okL := numeral(d.LHS)
	high, okH := numeral(d.RHS)
	return low, high, okL && okH
}

// hyphened takes 4-7/8 apart, which is 4 less 7/8 here.
func hyphened(e *hclsyntax.BinaryOpExpr) (whole, fraction string, ok bool) {
	f, binary := e.RHS.(*hclsyntax.BinaryOpExpr)
	if !binary || e.Op != hclsyntax.OpSubtract || f.Op != hclsyntax.OpDivide ||
		e.LHS.Range().End.Byte+1 != f.Range().Start.Byte || f.LHS.Range().End.Byte+1 != f.RHS.Range().Start.Byte {
		return "", "", false
	}
	whole, okW := numeral(e.LHS)
	over, okO := numeral(f.LHS)
	under, okU := numeral(f.RHS)
	return whole, over + "/" + under, okW && okO && okU
}

// plainWord reads a single word without dots into word.
func plainWord(e hclsyntax.Expression, word *string) bool {
	t, ok := e.(*hclsyntax.ScopeTraversalExpr)
	if !ok {
		return false
	}
	words, n := steps(t)
	if n == 1 {
		*word = words[0]
	}
	return n == 1
}
