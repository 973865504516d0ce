package house

import (
	"math"
	"reflect"

	"github.com/hashicorp/hcl/v2"
	"github.com/zclconf/go-cty/cty"

	"understitch/model"
)

// state is what a rule knows while it looks over one garment in one size. The
// expressions find it at the root of their context.
type state struct {
	g     *model.Garment
	unit  model.Unit // of the house file
	slots []cty.Value
	steps int // that may still be taken
}

// stateName is where the state stands in the context; no name in an expression
// can be like it.
const stateName = " state"

var stateType = cty.Capsule("state", reflect.TypeFor[state]())

func (s *state) context() *hcl.EvalContext {
	return &hcl.EvalContext{Variables: map[string]cty.Value{stateName: cty.CapsuleVal(stateType, s)}}
}

func stateOf(ctx *hcl.EvalContext) *state {
	for ctx.Parent() != nil {
		ctx = ctx.Parent()
	}
	return ctx.Variables[stateName].EncapsulatedValue().(*state)
}

// The steps that a rule may take: one for each part of an expression that is
// run again, for each member of a list that a function goes over. They are
// counted, not timed, so that a rule ends alike on every machine.
const (
	stepsOfLook    = 100_000
	stepsOfGarment = 2_000_000
)

// spent is what a rule that takes too many steps ends with; see judge.
type spent struct{}

func (s *state) spend(steps int) {
	if s.steps -= steps; s.steps < 0 {
		panic(spent{}) // recovered where the look began
	}
}

// slot is a figure that the expressions of a rule name, and where it comes from.
type slot struct {
	root   int // of the rule's kind; see roots
	figure *figure
	body   string // instead of both: a body measure
	whole  bool   // read as a whole, not one of its things by name
}

// value takes a figure down from a thing; null where it cannot be had.
func (s *state) value(f *figure, x any, used map[string]bool) cty.Value {
	if x == nil {
		return cty.NullVal(f.typ(used))
	}
	switch f.shape {
	case number:
		return s.number(f.number(s.g, x), f.dim)
	case text:
		return cty.StringVal(f.text(x))
	case flag:
		return cty.BoolVal(f.flag(x))
	case levels:
		of := f.levels(s.g, x)
		if len(of) == 0 {
			return cty.MapValEmpty(cty.Number)
		}
		out := make(map[string]cty.Value, len(of))
		for name, v := range of {
			out[name] = s.number(v, length)
		}
		return cty.MapVal(out)
	case pair:
		p := f.pair(s.g, x)
		if p == nil {
			return cty.NullVal(cty.List(cty.Number))
		}
		return cty.ListVal([]cty.Value{s.number(p[0], length), s.number(p[1], length)})
	case texts:
		return textList(f.texts(x))
	}
	return s.things(kindNamed(f.kind), f.many(s.g, x), used)
}

func textList(list []string) cty.Value {
	if len(list) == 0 {
		return cty.ListValEmpty(cty.String)
	}
	out := make([]cty.Value, len(list))
	for i, t := range list {
		out[i] = cty.StringVal(t)
	}
	return cty.ListVal(out)
}

// things are objects by name, each with the figures that the rule names
// anywhere: the others cannot be asked for.
func (s *state) things(k *kind, list []named, used map[string]bool) cty.Value {
	if len(list) == 0 {
		return cty.MapValEmpty(k.typ(used))
	}
	out := make(map[string]cty.Value, len(list))
	for _, n := range list {
		attrs := map[string]cty.Value{}
		for i := range k.figures {
			if f := &k.figures[i]; used[f.name] {
				attrs[f.name] = s.value(f, n.thing, used)
			}
		}
		out[n.name] = cty.ObjectVal(attrs)
	}
	return cty.MapVal(out)
}

// perUnit is how much of the program's millimetres one of the house's units is.
func perUnit(u model.Unit, d dim) float64 {
	switch d {
	case length:
		return u.Millimetre
	case area:
		return u.Millimetre * u.Millimetre
	}
	return 1
}

func (s *state) number(v float64, d dim) cty.Value {
	if math.IsNaN(v) {
		return cty.NullVal(cty.Number)
	}
	return cty.NumberFloatVal(v / perUnit(s.unit, d))
}

// typ is the type that the values of a figure have.
func (f *figure) typ(used map[string]bool) cty.Type {
	switch f.shape {
	case text:
		return cty.String
	case flag:
		return cty.Bool
	case levels:
		return cty.Map(cty.Number)
	case pair:
		return cty.List(cty.Number)
	case texts:
		return cty.List(cty.String)
	case many:
		return cty.Map(kindNamed(f.kind).typ(used))
	}
	return cty.Number
}

func (k *kind) typ(used map[string]bool) cty.Type {
	attrs := map[string]cty.Type{}
	for i := range k.figures {
		if f := &k.figures[i]; used[f.name] {
			attrs[f.name] = f.typ(used)
		}
	}
	return cty.Object(attrs)
}

// sample is a value that nothing is known of, to try types with. Things that
// are gone over are one such thing, so that what is asked of it is tried too.
func (f *figure) sample(used map[string]bool, whole bool) cty.Value {
	if f.shape != many || !whole {
		return cty.UnknownVal(f.typ(used))
	}
	k := kindNamed(f.kind)
	attrs := map[string]cty.Value{}
	for i := range k.figures {
		if own := &k.figures[i]; used[own.name] {
			attrs[own.name] = own.sample(used, true)
		}
	}
	return cty.MapVal(map[string]cty.Value{"any": cty.ObjectVal(attrs)})
}
