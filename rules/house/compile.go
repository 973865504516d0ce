package house

import (
	"regexp"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
)

// rule is a require block that has been compiled. It does not change any more,
// so that several goroutines may look over garments with it.
type rule struct {
	*spec.Require
	kind    *kind
	in      model.Unit
	reads   []slot
	levels  []levelName
	used    map[string]bool
	where   *part
	only    []only
	test    test
	message *part
}

// only is one line of the choice of things by what they state.
type only struct {
	figure *part
	want   cty.Value // text is a pattern
}

// Compile makes rules of the require blocks of a house. The taken names are
// those of the rules that are built in. A rule that cannot be compiled has said
// why in the diagnostics, and looks at nothing.
func Compile(h *spec.House, taken []*rules.Rule) ([]*rules.Rule, []model.Diagnostic) {
	var out []*rules.Rule
	var diags []model.Diagnostic
	for _, r := range h.Requires() {
		made, own := compile(h, r, taken)
		out, diags = append(out, made), append(diags, own...)
	}
	return out, diags
}

var ruleName = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

func compile(h *spec.House, r *spec.Require, taken []*rules.Rule) (*rules.Rule, []model.Diagnostic) {
	unit := h.Model().Unit
	out := &rules.Rule{
		Name: r.Name, Family: Family, Severity: rules.Warning, Place: spec.PlaceOf(r.Header),
		Each: func(*model.Garment, func(model.Thing, func(*rules.Pass))) {},
	}
	if severity, ok := rules.SeverityNamed(r.Severity); ok && severity != rules.Off {
		out.Severity = severity // where it is off, the house's settings have it so
	}
	c := &compiler{unit: unit, kind: kindNamed(r.Of), functions: functions(unit), used: map[string]bool{}, dims: map[hclsyntax.Expression]dim{}}
	switch {
	case !ruleName.MatchString(r.Name):
		c.fault(r.Header, "For example: hem-depth.", "the name of a rule is small letters with hyphens between")
	case slices.ContainsFunc(taken, func(t *rules.Rule) bool { return t.Name == r.Name }):
		c.fault(r.Header, "To change its severity or limits, write rule \""+r.Name+"\" { … }.", "%q is a rule that is built in", r.Name)
	}
	if c.kind == nil {
		c.fault(r.OfRange, suggested(r.Of, kindNames()), "there is no kind of thing called %q", r.Of)
		return out, c.diags
	}
	made := &rule{Require: r, kind: c.kind, in: unit}
	made.where = c.optional(r.Where)
	for _, o := range r.Only {
		made.only = append(made.only, c.only(o))
	}
	made.test = c.test(r)
	if made.message = c.optional(r.Message); made.message != nil {
		made.message.expr = &shown{made.message.expr} // a message may be one figure
	}
	made.reads, made.used, made.levels = c.slots, c.used, c.levels
	if !model.Errors(c.diags) {
		c.try(made.where, r.Where, cty.Bool, "where")
		if e := r.That; e != nil {
			c.try(made.test.free, e, cty.Bool, "that")
		}
		c.try(made.message, r.Message, cty.String, "message")
		c.tryNumbers(made.test, r)
	}
	out.Doc, out.Settled = made.doc(), made.settled()
	if !model.Errors(c.diags) {
		out.Each, out.Misnamed = made.each, made.misnamed
	}
	return out, c.diags
}

// settled reports whether all the numbers that the rule reads are stated.
func (r *rule) settled() bool {
	for _, s := range r.reads {
		if s.figure == nil || s.figure.shape == many || s.figure.shape != text && s.figure.shape != flag && !s.figure.said {
			return false
		}
	}
	return true
}

// Family is the group that the rules of a house are listed under.
const Family = "house"

func (c *compiler) optional(e hclsyntax.Expression) *part {
	if e == nil {
		return nil
	}
	return c.part(e)
}

func (c *compiler) only(o spec.Only) only {
	name := &hclsyntax.ScopeTraversalExpr{SrcRange: o.Range, Traversal: hcl.Traversal{
		hcl.TraverseRoot{Name: c.kind.name, SrcRange: o.Range}, hcl.TraverseAttr{Name: o.Name, SrcRange: o.Range}}}
	out := only{figure: c.part(name)}
	want := c.part(o.Value)
	if want == nil {
		return out
	}
	if !want.given {
		c.fault(o.Value.Range(), "Write a comparison as where = …", "a plain figure or text is meant here")
		return out
	}
	known := false
	if out.want, known = c.given(want.expr); !known {
		c.fault(o.Value.Range(), "", "this has no value")
		return out
	}
	if f := c.kind.figure(o.Name); f != nil && !out.want.Type().Equals(f.typ(nil)) {
		c.fault(o.Value.Range(), "", "%s.%s is %s", c.kind.name, o.Name, strings.TrimPrefix(kindOf(name, cty.UnknownVal(f.typ(nil))), written(name)+" is "))
	}
	return out
}

// try runs a part on figures without a value, which tells whether its types
// go together and whether it comes to what is meant.
func (c *compiler) try(p *part, e hclsyntax.Expression, want cty.Type, word string) {
	if p == nil || e == nil {
		return
	}
	v := c.tried(p)
	if t := v.Type(); t != want && t != cty.DynamicPseudoType && !(want == cty.String && t == cty.Number) {
		meant := "true or false"
		if want != cty.Bool {
			meant = "text"
		}
		c.fault(e.Range(), kindOf(p.expr, v)+".", "%s is to be %s", word, meant)
	}
}

func (c *compiler) tried(p *part) cty.Value {
	s := &state{unit: c.unit, steps: stepsOfLook}
	for _, slot := range c.slots {
		if slot.figure == nil {
			s.slots = append(s.slots, cty.UnknownVal(cty.Number))
			continue
		}
		s.slots = append(s.slots, slot.figure.sample(c.used, slot.whole))
	}
	v, diags := c.run(p.expr, s)
	c.tell(diags)
	return v
}

// given is the value of an expression that reads nothing.
func (c *compiler) given(e hclsyntax.Expression) (v cty.Value, known bool) {
	v, diags := c.run(e, &state{unit: c.unit, steps: stepsOfLook})
	return v, !diags.HasErrors() && v.IsKnown()
}

// run runs an expression within its steps.
func (c *compiler) run(e hclsyntax.Expression, s *state) (v cty.Value, diags hcl.Diagnostics) {
	defer func() {
		if fault := recover(); fault != nil {
			if _, ok := fault.(spent); !ok {
				panic(fault) // ours
			}
			v = cty.DynamicVal
			c.fault(e.Range(), "", "this takes more than %d steps", stepsOfLook)
		}
	}()
	return e.Value(s.context())
}

// tell passes on what the trial of an expression said of types. What it said of
// values is due to the figures it was tried on.
func (c *compiler) tell(diags hcl.Diagnostics) {
	for _, d := range diags {
		_, typed := d.Extra.(wrongType)
		if d.Subject != nil && (typed || slices.Contains(typeFaults, d.Summary)) {
			summary, detail := plainly(d)
			c.fault(*d.Subject, detail, "%s", summary)
		}
	}
}

// typeFaults are what the parser's own nodes say of wrong types.
var typeFaults = []string{
	"Unsupported attribute", "Iteration over non-iterable value", "Invalid template interpolation value",
	"Inconsistent conditional result types", "Incorrect condition type",
}

func lowered(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

func (c *compiler) tryNumbers(t test, r *spec.Require) {
	for _, x := range []struct {
		p *part
		e hclsyntax.Expression
		w string
	}{{t.figure, r.Figure, "figure"}, {t.low, r.Least, "least"}, {t.high, r.Greatest, "greatest"}, {t.other, r.Equals, "equals"}, {t.within, r.Within, "within"}} {
		if x.p == nil || x.e == nil {
			continue
		}
		if v := c.tried(x.p); v.Type() != cty.Number && v.Type() != cty.DynamicPseudoType {
			c.fault(x.e.Range(), kindOf(x.p.expr, v)+".", "%s is to be a number", x.w)
		}
	}
}
