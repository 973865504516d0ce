package house

import (
	"math"
	"slices"
	"strings"

	"github.com/zclconf/go-cty/cty"
	"github.com/zclconf/go-cty/cty/function"
	"github.com/zclconf/go-cty/cty/function/stdlib"

	"understitch/model"
)

// callable is a function that an expression may call.
type callable struct {
	f   function.Function
	dim func(args []dim) dim // what its result measures; nil for a bare number or text
}

// functions are those that a house in a unit may call. None of them reads
// anything but what it is given, and none makes much of little: what is not
// listed here, such as formatting to a width, has been left out for that.
func functions(unit model.Unit) map[string]callable {
	in := func(mm float64) callable {
		return callable{overNumbers(func(x []float64) float64 { return x[0] * mm / unit.Millimetre }, 1), func([]dim) dim { return length }}
	}
	plainly := func(f function.Function) callable { return callable{f, nil} }
	alike := func(f function.Function) callable { return callable{f, joined} }
	return map[string]callable{
		"mm":   in(1),
		"cm":   in(10),
		"inch": in(25.4),

		"abs":     alike(overNumbers(func(x []float64) float64 { return math.Abs(x[0]) }, 1)),
		"round":   alike(rounded),
		"ceil":    alike(overNumbers(func(x []float64) float64 { return math.Ceil(x[0]) }, 1)),
		"floor":   alike(overNumbers(func(x []float64) float64 { return math.Floor(x[0]) }, 1)),
		"min":     alike(overList(slices.Min[[]float64])),
		"max":     alike(overList(slices.Max[[]float64])),
		"sum":     alike(overList(total)),
		"between": plainly(between),

		"all":   plainly(overFlags(cty.Bool, func(yes, of int) cty.Value { return cty.BoolVal(yes == of) })),
		"any":   plainly(overFlags(cty.Bool, func(yes, _ int) cty.Value { return cty.BoolVal(yes > 0) })),
		"count": plainly(overFlags(cty.Number, func(yes, _ int) cty.Value { return cty.NumberIntVal(int64(yes)) })),

		"contains":   plainly(contains),
		"matches":    plainly(onTexts(matches)),
		"startswith": plainly(onTexts(strings.HasPrefix)),
		"endswith":   plainly(onTexts(strings.HasSuffix)),
		"upper":      plainly(stdlib.UpperFunc),
		"lower":      plainly(stdlib.LowerFunc),
		"title":      plainly(stdlib.TitleFunc),
		"trim":       plainly(stdlib.TrimFunc),
		"trimspace":  plainly(stdlib.TrimSpaceFunc),
		"trimprefix": plainly(stdlib.TrimPrefixFunc),
		"trimsuffix": plainly(stdlib.TrimSuffixFunc),
		"replace":    plainly(stdlib.ReplaceFunc),
		"split":      plainly(stdlib.SplitFunc),
		"join":       plainly(stdlib.JoinFunc),
		"substr":     plainly(stdlib.SubstrFunc),
		"strlen":     plainly(stdlib.StrlenFunc),

		"length":   plainly(stdlib.LengthFunc),
		"keys":     plainly(stdlib.KeysFunc),
		"values":   alike(stdlib.ValuesFunc),
		"lookup":   alike(stdlib.LookupFunc),
		"element":  alike(stdlib.ElementFunc),
		"slice":    alike(stdlib.SliceFunc),
		"concat":   alike(stdlib.ConcatFunc),
		"distinct": alike(stdlib.DistinctFunc),
		"flatten":  alike(stdlib.FlattenFunc),
		"reverse":  alike(stdlib.ReverseListFunc),
		"sort":     plainly(stdlib.SortFunc),
		"compact":  plainly(stdlib.CompactFunc),
		"coalesce": alike(stdlib.CoalesceFunc),
	}
}

// showName is the function that writes a length in the unit of the garment at
// hand; the node that calls it knows the garment.
const showName = "show"

var functionNames = func() []string {
	names := []string{showName}
	for name := range functions(model.Millimetre) {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}()

func numbersResult(x float64) (cty.Value, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return cty.UnknownVal(cty.Number), function.NewArgErrorf(0, "it has no value")
	}
	return cty.NumberFloatVal(x), nil
}

// overNumbers is a function of so many numbers.
func overNumbers(run func(x []float64) float64, count int) function.Function {
	spec := &function.Spec{Type: function.StaticReturnType(cty.Number)}
	for range count {
		spec.Params = append(spec.Params, function.Parameter{Name: "number", Type: cty.Number})
	}
	spec.Impl = func(args []cty.Value, _ cty.Type) (cty.Value, error) {
		var room [4]float64
		x := room[:0]
		for _, a := range args {
			x = append(x, float(a))
		}
		return numbersResult(run(x))
	}
	return function.New(spec)
}

// overList is a function of any numbers, one by one or as one list.
func overList(run func(x []float64) float64) function.Function {
	return function.New(&function.Spec{
		VarParam: &function.Parameter{Name: "numbers", Type: cty.DynamicPseudoType, AllowDynamicType: true},
		Type: func(args []cty.Value) (cty.Type, error) {
			for i, a := range args {
				if err := numbersOnly(i, a.Type()); err != nil {
					return cty.NilType, err
				}
			}
			return cty.Number, nil
		},
		Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
			var x []float64
			for i, a := range args {
				if a.Type() == cty.Number {
					x = append(x, float(a))
					continue
				}
				if !a.IsWhollyKnown() {
					return cty.UnknownVal(cty.Number), nil
				}
				for it := a.ElementIterator(); it.Next(); {
					_, v := it.Element()
					if v.IsNull() {
						return cty.UnknownVal(cty.Number), function.NewArgErrorf(i, "one of these figures is not known")
					}
					x = append(x, float(v))
				}
			}
			if len(x) == 0 {
				return cty.UnknownVal(cty.Number), function.NewArgErrorf(0, "there is no figure in it")
			}
			return numbersResult(run(x))
		},
	})
}

// numbersOnly refuses what is neither a number nor a list of them.
func numbersOnly(i int, t cty.Type) error {
	fits := func(t cty.Type) bool { return t == cty.Number || t == cty.DynamicPseudoType }
	switch {
	case fits(t):
		return nil
	case t.IsListType() || t.IsMapType() || t.IsSetType():
		if fits(t.ElementType()) {
			return nil
		}
	case t.IsTupleType():
		if !slices.ContainsFunc(t.TupleElementTypes(), func(t cty.Type) bool { return !fits(t) }) {
			return nil
		}
	}
	return function.NewArgErrorf(i, "numbers are meant here, or a list of them")
}

// overFlags is a function of a list of true and false, by how many are true. A list of
// which one is not known has no value.
func overFlags(result cty.Type, run func(yes, of int) cty.Value) function.Function {
	return function.New(&function.Spec{
		Params: []function.Parameter{{Name: "list", Type: cty.DynamicPseudoType}},
		Type:   function.StaticReturnType(result),
		Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
			list := args[0]
			if t := list.Type(); !t.IsTupleType() && !t.IsListType() && !t.IsSetType() {
				return cty.UnknownVal(result), function.NewArgErrorf(0, "a list of true and false is meant here: [for n in seam.notches : n.depth <= mm(4)]")
			}
			yes, of := 0, 0
			for it := list.ElementIterator(); it.Next(); of++ {
				_, v := it.Element()
				switch {
				case !v.IsKnown() || v.IsNull():
					return cty.UnknownVal(result), function.NewArgErrorf(0, "one of its members is not known")
				case v.Type() != cty.Bool:
					return cty.UnknownVal(result), function.NewArgErrorf(0, "a list of true and false is meant here")
				case v.True():
					yes++
				}
			}
			return run(yes, of), nil
		},
	})
}

func total(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum
}

// between tells whether a number lies between two others.
var between = function.New(&function.Spec{
	Params: []function.Parameter{{Name: "number", Type: cty.Number}, {Name: "least", Type: cty.Number}, {Name: "greatest", Type: cty.Number}},
	Type:   function.StaticReturnType(cty.Bool),
	Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
		x := float(args[0])
		return cty.BoolVal(x >= float(args[1])-tolerance && x <= float(args[2])+tolerance), nil
	},
})

// contains tells whether a list holds a value, or a text another.
var contains = function.New(&function.Spec{
	Params: []function.Parameter{{Name: "list", Type: cty.DynamicPseudoType}, {Name: "value", Type: cty.DynamicPseudoType}},
	Type: func(args []cty.Value) (cty.Type, error) {
		t := args[0].Type()
		if t == cty.String && args[1].Type() != cty.String && args[1].Type() != cty.DynamicPseudoType {
			return cty.NilType, function.NewArgErrorf(1, "text is looked for in text")
		}
		if t != cty.String && t != cty.DynamicPseudoType && !t.IsListType() && !t.IsTupleType() && !t.IsSetType() {
			return cty.NilType, function.NewArgErrorf(0, "a list or text is meant here")
		}
		return cty.Bool, nil
	},
	Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
		if args[0].Type() == cty.String {
			return cty.BoolVal(strings.Contains(args[0].AsString(), args[1].AsString())), nil
		}
		for it := args[0].ElementIterator(); it.Next(); {
			_, v := it.Element()
			if v.IsKnown() && !v.IsNull() && v.Type() == cty.Number && args[1].Type() == cty.Number {
				if math.Abs(float(v)-float(args[1])) <= tolerance {
					return cty.True, nil
				}
				continue
			}
			if v.RawEquals(args[1]) {
				return cty.True, nil
			}
		}
		return cty.False, nil
	},
})

// rounded is the nearest whole number, or the nearest multiple of a step.
var rounded = function.New(&function.Spec{
	Params:   []function.Parameter{{Name: "number", Type: cty.Number}},
	VarParam: &function.Parameter{Name: "step", Type: cty.Number},
	Type:     function.StaticReturnType(cty.Number),
	Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
		step := 1.0
		switch len(args) {
		case 1:
		case 2:
			step = float(args[1])
		default:
			return cty.UnknownVal(cty.Number), function.NewArgErrorf(2, "it takes a number and a step")
		}
		return numbersResult(math.Round(float(args[0])/step) * step)
	},
})

// matches tells whether a name is as a pattern has it, in which * stands for
// any part of a name and ? for any one letter. It takes no longer than the two
// are long together, times each other.
func matches(name, pattern string) bool {
	n, p := 0, 0
	star, from := -1, 0 // the last star, and what it has taken so far
	for n < len(name) {
		switch {
		case p < len(pattern) && pattern[p] == '*':
			star, from = p, n
			p++
		case p < len(pattern) && (pattern[p] == '?' || pattern[p] == name[n]):
			p++
			n++
		case star >= 0:
			from++
			p, n = star+1, from
		default:
			return false
		}
	}
	return strings.Trim(pattern[p:], "*") == ""
}

// onTexts is a question about two texts.
func onTexts(holds func(a, b string) bool) function.Function {
	return function.New(&function.Spec{
		Params: []function.Parameter{{Name: "text", Type: cty.String}, {Name: "text", Type: cty.String}},
		Type:   function.StaticReturnType(cty.Bool),
		Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
			return cty.BoolVal(holds(args[0].AsString(), args[1].AsString())), nil
		},
	})
}

// joined is what a number measures that comes of several.
func joined(dims []dim) dim {
	out := plain
	for _, d := range dims {
		switch {
		case out == plain:
			out = d
		case d != plain && d != out:
			return mixed
		}
	}
	return out
}
