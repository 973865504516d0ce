package spec

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"understitch/model"
)

// farthest is the longest length and the farthest coordinate that a garment
// can have, in millimetres. Past it a figure is a slip of the unit or the key.
const farthest = 20_000

// sense tells which figures are accepted.
type sense uint8

const (
	signed   sense = iota // any
	atLeast0              // not below nothing
	above0                // more than nothing
)

// length reckons a length and gives it in millimetres, NaN when it cannot.
func (s *scope) length(e hclsyntax.Expression, want sense) float64 {
	v, ok := s.number(e)
	if !ok {
		return math.NaN()
	}
	return s.lengthOf(e, v, want)
}

// lengthOf gives a figure of the file in millimetres, NaN when it is no length.
func (s *scope) lengthOf(e hclsyntax.Expression, v float64, want sense) float64 {
	mm := v * s.unit.Millimetre
	switch {
	case s.lenient && math.IsNaN(mm):
	case math.IsNaN(mm) || math.IsInf(mm, 0):
		s.fault(e.Range(), "", "this is not a finite number")
		return math.NaN()
	case math.Abs(mm) > farthest:
		s.fault(e.Range(), "Nothing in a garment is longer than 20 m; is the unit right?",
			"%s is out of all measure", s.metres(mm))
		return math.NaN()
	}
	return s.suits(e, mm, want)
}

func (s *scope) metres(mm float64) string { return model.Decimal(mm/1000, 1) + " m" }

// suits refuses a figure on the wrong side of nothing.
func (s *scope) suits(e hclsyntax.Expression, v float64, want sense) float64 {
	switch {
	case want == atLeast0 && v < 0:
		s.fault(e.Range(), "", "this cannot be negative")
		return math.NaN()
	case want == above0 && v <= 0:
		detail := ""
		if low, high, dash := dashed(e); dash {
			detail = fmt.Sprintf("This is %[1]s less %[2]s; two figures stand in a list, [%[1]s, %[2]s].", low, high)
		}
		s.fault(e.Range(), detail, "this must be more than 0")
		return math.NaN()
	}
	return v
}

// plain reckons a figure without a unit: percent or a ratio.
func (s *scope) plain(e hclsyntax.Expression, want sense) float64 {
	v, ok := s.number(e)
	switch {
	case !ok:
		return math.NaN()
	case math.IsNaN(v) || math.Abs(v) > 1e6:
		s.fault(e.Range(), "", "this figure is out of all measure")
		return math.NaN()
	}
	return s.suits(e, v, want)
}

// count reckons a whole number from low to high; a fault gives low.
func (s *scope) count(e hclsyntax.Expression, low, high int) int {
	v, ok := s.number(e)
	switch {
	case !ok:
		return low
	case v != math.Trunc(v) || v < float64(low) || v > float64(high):
		s.fault(e.Range(), "", "a whole number from %d to %d is meant here", low, high)
		return low
	}
	return int(v)
}

// flag reads true or false.
func (s *scope) flag(e hclsyntax.Expression) bool {
	if l, ok := e.(*hclsyntax.LiteralValueExpr); ok && !l.Val.IsNull() && l.Val.Type() == cty.Bool {
		return l.Val.True()
	}
	detail := "Write true or false, without quotes."
	if word, isText := quoted(e); isText || plainWord(e, &word) {
		switch strings.ToLower(word) {
		case "yes", "true", "y", "ja", "oui":
			detail = "Write true, without quotes."
		case "no", "false", "n", "nein", "non":
			detail = "Write false, without quotes."
		}
	}
	s.fault(e.Range(), detail, "true or false is meant here")
	return false
}

// quoted is the text between quotes, if the expression is one.
func quoted(e hclsyntax.Expression) (string, bool) {
	t, ok := e.(*hclsyntax.TemplateExpr)
	if !ok {
		return "", false
	}
	if len(t.Parts) == 1 {
		return literalText(t.Parts[0])
	}
	var b strings.Builder
	for _, p := range t.Parts {
		text, ok := literalText(p)
		if !ok {
			return "", false
		}
		b.WriteString(text)
	}
	return b.String(), true
}

func literalText(e hclsyntax.Expression) (string, bool) {
	l, ok := e.(*hclsyntax.LiteralValueExpr)
	if !ok || l.Val.IsNull() || l.Val.Type() != cty.String {
		return "", false
	}
	return l.Val.AsString(), true
}

// text reads quoted text that is not blank.
func (s *scope) text(e hclsyntax.Expression) string {
	t, ok := quoted(e)
	switch {
	case ok && strings.TrimSpace(t) == "":
		s.fault(e.Range(), "", "the text is blank")
	case ok:
		return t
	default:
		detail := ""
		switch w := e.(type) {
		case *hclsyntax.ScopeTraversalExpr:
			if words, n := steps(w); n > 0 {
				detail = "Write it in quotes: \"" + asWritten(words[:n]) + "\"."
			}
		case *hclsyntax.TemplateExpr, *hclsyntax.TemplateWrapExpr:
			detail = "Text in a garment is taken as it stands; ${ } is for house rules."
		}
		s.fault(e.Range(), detail, "text in quotes is meant here")
	}
	return ""
}

// choice reads quoted text that must be one of a few words; a fault gives the
// first of them.
func (s *scope) choice(e hclsyntax.Expression, known ...string) string {
	t := s.text(e)
	if t == "" {
		return known[0]
	}
	if !slices.Contains(known, t) {
		s.fault(e.Range(), hint(t, known), "%q is not known here", t)
		return known[0]
	}
	return t
}

// span reads a range [low, high] with open ends, or a single figure, by the
// reader of its figures.
func (s *scope) span(e hclsyntax.Expression, read func(hclsyntax.Expression) float64) model.Range {
	list, ok := e.(*hclsyntax.TupleConsExpr)
	if !ok {
		if low, high, dash := dashed(e); dash {
			s.fault(e.Range(), fmt.Sprintf("Write [%s, %s].", low, high), "a range is not written with a dash")
			return model.Exactly(math.NaN())
		}
		return model.Exactly(read(e))
	}
	if len(list.Exprs) != 2 {
		detail := "Write [low, high]; null leaves an end open."
		if meant := decimalComma(list.Exprs); meant != "" {
			detail = meant
		}
		s.fault(e.Range(), detail, "a range has two figures")
		return model.Exactly(math.NaN())
	}
	r := model.Range{Low: math.Inf(-1), High: math.Inf(1)}
	if !isNull(list.Exprs[0]) {
		r.Low = read(list.Exprs[0])
	}
	if !isNull(list.Exprs[1]) {
		r.High = read(list.Exprs[1])
	}
	if r.Low > r.High {
		s.fault(e.Range(), "Write [low, high].", "the range runs backwards")
	}
	return r
}

func (s *scope) lengthSpan(e hclsyntax.Expression) model.Range {
	return s.span(e, func(e hclsyntax.Expression) float64 { return s.length(e, signed) })
}

func isNull(e hclsyntax.Expression) bool {
	l, ok := e.(*hclsyntax.LiteralValueExpr)
	return ok && l.Val.IsNull()
}

// items are the members of a list; a single thing is a list of one.
func items(e hclsyntax.Expression) []hclsyntax.Expression {
	if list, ok := e.(*hclsyntax.TupleConsExpr); ok {
		return list.Exprs
	}
	return []hclsyntax.Expression{e}
}

// entry is one line of a map like { waist = 18.2 }.
type entry struct {
	key     string
	keyExpr hclsyntax.Expression
	value   hclsyntax.Expression
}

// maxEntries is how many lines such a map may have.
const maxEntries = 200

// entries reads a map with names for keys, in the order of the file.
func (s *scope) entries(e hclsyntax.Expression) []entry {
	object, ok := e.(*hclsyntax.ObjectConsExpr)
	if !ok {
		s.fault(e.Range(), "Write { name = figure }.", "figures by name are meant here")
		return nil
	}
	if len(object.Items) > maxEntries {
		s.fault(e.Range(), "", "more than %d figures by name", maxEntries)
		return nil
	}
	list := make([]entry, 0, len(object.Items))
	for _, item := range object.Items {
		key := ""
		if k, ok := item.KeyExpr.(*hclsyntax.ObjectConsKeyExpr); ok {
			switch w := k.Wrapped.(type) {
			case *hclsyntax.ScopeTraversalExpr:
				if words, n := steps(w); n == 1 {
					key = words[0]
				}
			case *hclsyntax.TemplateExpr:
				key, _ = quoted(w)
			}
		}
		if key == "" {
			s.fault(item.KeyExpr.Range(), "", "a name is meant here")
			continue
		}
		if i := slices.IndexFunc(list, func(o entry) bool { return o.key == key }); i >= 0 {
			s.fault(item.KeyExpr.Range(), "The first stands on "+lineOf(list[i].keyExpr.Range())+".", "%s is there twice", key)
			continue
		}
		list = append(list, entry{key, item.KeyExpr, item.ValueExpr})
	}
	return list
}

// sortedKeys are the names in a map, for the nearest to be found among them:
// none where there are too many for that.
func sortedKeys[K cmp.Ordered, V any](m map[K]V) []K {
	if len(m) > maxCandidates {
		return nil
	}
	keys := make([]K, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
