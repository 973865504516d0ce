package spec

import (
	"fmt"
	"math"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// function is a function that a spec may call. Angles are in degrees, as a
// cutter reads them off a set square.
type function struct {
	least, most int // how many figures it takes
	run         func(s *scope, a []float64) float64
}

// functions is the table of them. It is never written to.
var functions = map[string]function{
	"mm":   {1, 1, func(s *scope, a []float64) float64 { return a[0] / s.unit.Millimetre }},
	"cm":   {1, 1, func(s *scope, a []float64) float64 { return a[0] * 10 / s.unit.Millimetre }},
	"inch": {1, 1, func(s *scope, a []float64) float64 { return a[0] * 25.4 / s.unit.Millimetre }},
	// graded(v, step) is v at the base size and a step more a size up.
	"graded": {2, 2, func(s *scope, a []float64) float64 { return a[0] + a[1]*float64(s.sizeSteps) }},
	"min": {1, 32, func(_ *scope, a []float64) float64 {
		v := a[0]
		for _, x := range a[1:] {
			v = math.Min(v, x)
		}
		return v
	}},
	"max": {1, 32, func(_ *scope, a []float64) float64 {
		v := a[0]
		for _, x := range a[1:] {
			v = math.Max(v, x)
		}
		return v
	}},
	"abs":  {1, 1, func(_ *scope, a []float64) float64 { return math.Abs(a[0]) }},
	"sqrt": {1, 1, func(_ *scope, a []float64) float64 { return math.Sqrt(a[0]) }},
	"sin":  {1, 1, func(_ *scope, a []float64) float64 { return math.Sin(a[0] * math.Pi / 180) }},
	"cos":  {1, 1, func(_ *scope, a []float64) float64 { return math.Cos(a[0] * math.Pi / 180) }},
	"tan":  {1, 1, func(_ *scope, a []float64) float64 { return math.Tan(a[0] * math.Pi / 180) }},
	"atan": {1, 1, func(_ *scope, a []float64) float64 { return math.Atan(a[0]) * 180 / math.Pi }},
	// round(v) is the nearest whole number, round(v, 0.5) the nearest half.
	"round": {1, 2, func(_ *scope, a []float64) float64 {
		if len(a) == 1 {
			return math.Round(a[0])
		}
		return math.Round(a[0]/a[1]) * a[1]
	}},
}

func functionNames() []string {
	return []string{
		"mm", "cm", "inch", "graded", "min", "max", "abs", "sqrt", "sin", "cos", "tan", "atan", "round",
	}
}

func (s *scope) call(e *hclsyntax.FunctionCallExpr) (float64, bool) {
	f, known := functions[e.Name]
	switch {
	case !known:
		detail := hint(e.Name, functionNames())
		if u := unitWords[strings.ToLower(e.Name)]; u != "" {
			detail = fmt.Sprintf("Write %s( ).", u)
		}
		s.fault(e.NameRange, detail, "there is no function %s", e.Name)
		return 0, false
	case e.ExpandFinal:
		s.fault(e.Range(), "", "%s takes its figures one by one", e.Name)
		return 0, false
	case len(e.Args) < f.least || len(e.Args) > f.most:
		detail := signature(f)
		if meant := decimalComma(e.Args); meant != "" {
			detail = meant
		}
		s.fault(e.Range(), detail, "%s is given %s", e.Name, figures(len(e.Args)))
		return 0, false
	case e.Name == "graded" && !s.graded:
		s.fault(e.Range(), "It needs sizes in the garment block.", "graded has no sizes to go by")
		return 0, false
	}
	var room [4]float64
	args, ok := room[:0], true
	for _, a := range e.Args {
		v, good := s.number(a)
		args, ok = append(args, v), ok && good
	}
	if !ok {
		return 0, false
	}
	v := f.run(s, args)
	if math.IsNaN(v) && !s.lenient {
		s.fault(e.Range(), "", "%s has no value here", e.Name)
		return 0, false
	}
	return v, true
}

func figures(n int) string {
	switch n {
	case 0:
		return "no figure"
	case 1:
		return "one figure"
	}
	return fmt.Sprintf("%d figures", n)
}

// signature says how many figures a function takes.
func signature(f function) string {
	switch {
	case f.least == f.most && f.least == 1:
		return "It takes one."
	case f.least == f.most:
		return "It takes two."
	case f.most == 2:
		return "It takes one or two."
	}
	return "It takes from one to 32."
}
