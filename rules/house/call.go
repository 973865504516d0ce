package house

import (
	"errors"
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
	"github.com/zclconf/go-cty/cty/convert"
	"github.com/zclconf/go-cty/cty/function"

	"understitch/model"
)

// call is a function and what it is given.
type call struct {
	*hclsyntax.FunctionCallExpr
	f function.Function
}

func (n *call) Value(ctx *hcl.EvalContext) (cty.Value, hcl.Diagnostics) {
	args, diags := n.args(ctx)
	if diags.HasErrors() {
		return cty.DynamicVal, diags
	}
	if err := n.fit(args); err != nil {
		return n.told(err, true)
	}
	stateOf(ctx).spend(n.cost(args))
	v, err := n.f.Call(args)
	if err != nil {
		_, typed := n.f.ReturnTypeForValues(args)
		return n.told(err, typed != nil)
	}
	return v, nil
}

func (n *call) args(ctx *hcl.EvalContext) ([]cty.Value, hcl.Diagnostics) {
	args := make([]cty.Value, 0, len(n.Args))
	for _, e := range n.Args {
		v, diags := e.Value(ctx)
		if diags.HasErrors() {
			return nil, diags
		}
		args = append(args, v)
	}
	return args, nil
}

// fit holds the arguments against what the function takes. Text is not quietly
// read as a number, nor a number written as text.
func (n *call) fit(args []cty.Value) error {
	params, rest := n.f.Params(), n.f.VarParam()
	switch {
	case len(args) < len(params):
		return fmt.Errorf("it is given %d figures and takes %d", len(args), len(params))
	case len(args) > len(params) && rest == nil:
		return fmt.Errorf("it is given %d figures and takes %d", len(args), len(params))
	}
	for i := range args {
		p := rest
		if i < len(params) {
			p = &params[i]
		}
		given := args[i].Type()
		switch {
		case args[i].IsKnown() && args[i].IsNull() && !p.AllowNull:
			return fmt.Errorf("%s is not known", written(n.Args[i]))
		case p.Type == cty.DynamicPseudoType || given == cty.DynamicPseudoType || given.Equals(p.Type):
			continue
		case p.Type.IsPrimitiveType():
			return function.NewArgErrorf(i, "%s", kindOf(n.Args[i], args[i])+", and "+map[cty.Type]string{
				cty.Number: "a number", cty.String: "text", cty.Bool: "true or false"}[p.Type]+" is meant here")
		}
		v, err := convert.Convert(args[i], p.Type)
		if err != nil {
			return function.NewArgErrorf(i, "%s, and a list is meant here", kindOf(n.Args[i], args[i]))
		}
		args[i] = v
	}
	return nil
}

// cost is how many steps a call takes: one, and more for long lists and texts.
func (n *call) cost(args []cty.Value) int {
	steps := 1
	for _, a := range args {
		steps += size(a)
	}
	if n.Name == "replace" && len(args) == 3 { // each letter may become the whole text
		steps += size(args[0]) * size(args[2])
	}
	return steps
}

// size is how many members a value has, and how much text.
func size(v cty.Value) int {
	const textInStep = 16
	switch t := v.Type(); {
	case !v.IsKnown() || v.IsNull():
		return 0
	case t == cty.String:
		return 1 + len(v.AsString())/textInStep
	case t.IsPrimitiveType() || !v.CanIterateElements():
		return 0
	}
	sum := 0
	for it := v.ElementIterator(); it.Next(); {
		_, member := it.Element()
		sum += 1 + size(member)
	}
	return sum
}

// told says why a call has no value, and whether that is so for all figures.
func (n *call) told(err error, always bool) (cty.Value, hcl.Diagnostics) {
	at := n.Range()
	var arg function.ArgError
	if errors.As(err, &arg) && arg.Index >= 0 && arg.Index < len(n.Args) {
		at = n.Args[arg.Index].Range()
	}
	say := fail
	if always {
		say = refuse
	}
	return say(at, "", "%s cannot be reckoned: %s", n.Name, strings.TrimSuffix(err.Error(), "."))
}

// show is the call that writes a length in the unit of the garment at hand.
type show struct{ *hclsyntax.FunctionCallExpr }

func (n *show) Value(ctx *hcl.EvalContext) (cty.Value, hcl.Diagnostics) {
	v, diags := n.Args[0].Value(ctx)
	if diags.HasErrors() {
		return v, diags
	}
	if v.IsKnown() && v.IsNull() {
		return cty.StringVal("not known"), nil
	}
	x, known, diags := operand(n.Args[0], v)
	if !known {
		return cty.UnknownVal(cty.String), diags
	}
	s := stateOf(ctx)
	if s.g == nil { // while it is tried
		return cty.UnknownVal(cty.String), nil
	}
	return cty.StringVal(s.g.Show(x * s.unit.Millimetre)), nil
}

// path is a name as it is written: layer.girth.waist.
func path(t hcl.Traversal) string {
	var b strings.Builder
	for _, step := range t {
		switch s := step.(type) {
		case hcl.TraverseRoot:
			b.WriteString(s.Name)
		case hcl.TraverseAttr:
			b.WriteString("." + s.Name)
		case hcl.TraverseIndex:
			switch {
			case s.Key.Type() == cty.Number:
				b.WriteString("[" + model.Decimal(float(s.Key), 3) + "]")
			case s.Key.Type() == cty.String:
				b.WriteString("[\"" + s.Key.AsString() + "\"]")
			}
		}
	}
	return b.String()
}
