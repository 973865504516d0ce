package spec

import (
	"fmt"
	"math"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// maxChain is how many values may each be stated by the next.
const maxChain = 500

// scope is what the names in an expression stand for, at one size.
type scope struct {
	*faults
	unit      model.Unit
	body      map[string]float64     // in millimetres
	bodyAt    map[string]model.Place // where each of its measures is stated
	draft     map[string]*value
	levelY    map[string]*levelValue // the heights of the levels
	points    map[string]*pointValue // of the piece at hand
	graded    bool                   // whether the spec has sizes
	sizeSteps int                    // sizes up from the base size
	lenient   bool                   // a body measure that is not stated is NaN, not a fault
	plainOnly bool                   // nothing may be referred to: the figures of a body
	who       string                 // whose body, for messages: size 38
	chain     []*value               // values that are being reckoned
	told      map[string]bool        // names whose absence was reported
	piece     string                 // the piece at hand, whose points are its own
	depth     int                    // how deep in an expression, through all values that it needs
}

// value is a figure with a name: a draft value or one coordinate of a point.
// It is reckoned when first asked for.
type value struct {
	name string
	expr hclsyntax.Expression
	at   hcl.Range
	v    float64
	done state
}

type state uint8

const (
	fresh state = iota
	underWay
	good
	bad // reported already
)

// pointValue is a named point.
type pointValue struct {
	x, y value
	attr *hclsyntax.Attribute
	used bool
}

// constants have a name of their own in every expression.
const piName = "pi"

// reckon gives a named value, once.
func (s *scope) reckon(v *value) (float64, bool) {
	switch v.done {
	case good:
		return v.v, true
	case bad:
		return 0, false
	case underWay:
		s.circle(v)
		return 0, false
	}
	if len(s.chain) >= maxChain {
		s.fault(v.at, "", "more than %d values that each need the next", maxChain)
		v.done = bad
		return 0, false
	}
	v.done = underWay
	s.chain = append(s.chain, v)
	x, ok := s.number(v.expr)
	s.chain = s.chain[:len(s.chain)-1]
	if ok && (math.IsInf(x, 0) || math.IsNaN(x)) {
		s.fault(v.expr.Range(), "", "%s is not a finite number", v.name)
		ok = false
	}
	if v.done == bad { // it was found to be part of a circle
		return 0, false
	}
	v.v, v.done = x, bad
	if ok {
		v.done = good
	}
	return x, ok
}

// circle reports values that need each other, in full: quarter → half → quarter.
func (s *scope) circle(v *value) {
	var names []string
	for i, w := range s.chain {
		if w == v {
			for _, w := range s.chain[i:] {
				names = append(names, w.name)
				w.done = bad
			}
			break
		}
	}
	names = append(names, v.name)
	if n := len(names); n > 12 {
		names = append(append(names[:6:6], "…"), names[n-5:]...)
	}
	s.fault(v.at, "", "these values go round in a circle: %s", strings.Join(names, " → "))
}

// reference is what a name stands for.
func (s *scope) reference(e *hclsyntax.ScopeTraversalExpr) (float64, bool) {
	words, n := steps(e)
	switch {
	case n == 1 && words[0] == piName:
		return math.Pi, true
	case s.plainOnly:
		s.fault(e.SrcRange, "It cannot follow from a draft or from another measure.", "a body measure is a plain figure")
		return 0, false
	case n == 2 && words[0] == "draft":
		if v := s.draft[words[1]]; v != nil {
			return s.reckon(v)
		}
		s.unknownDraft(e, words[1])
		return 0, false
	case n == 2 && words[0] == "body":
		return s.measure(e, words[1])
	case n == 3 && words[0] == "level":
		return s.height(e, words[1], words[2])
	case n == 2:
		if p := s.points[words[0]]; p != nil {
			return s.coordinate(e, p, words[1])
		}
	}
	s.unknownName(e, words[:n])
	return 0, false
}

func (s *scope) coordinate(e *hclsyntax.ScopeTraversalExpr, p *pointValue, which string) (float64, bool) {
	switch which {
	case "x":
		return s.reckon(&p.x)
	case "y":
		return s.reckon(&p.y)
	}
	s.spacedMinus(e, which, "x", "y")
	return 0, false
}

// spacedMinus explains b.x-1, which reads as one long name.
func (s *scope) spacedMinus(e *hclsyntax.ScopeTraversalExpr, which string, known ...string) {
	if i := strings.IndexByte(which, '-'); i > 0 {
		for _, k := range known {
			if which[:i] == k {
				s.fault(e.SrcRange, minusHint, "%s is read as one name", which)
				return
			}
		}
	}
	s.fault(e.SrcRange, "A point has .x and .y.", "a point has no %s", which)
}

const minusHint = "A minus sign needs a space on either side, as names may hold hyphens."

// measure is a body measure in the file's unit.
func (s *scope) measure(e *hclsyntax.ScopeTraversalExpr, name string) (float64, bool) {
	if v, known := s.body[name]; known {
		return v / s.unit.Millimetre, !(math.IsNaN(v) && s.failed) // what is wrong with it was said where it is stated
	}
	if s.lenient {
		return math.NaN(), true
	}
	// Where there is no body at all, that is one fault and not one a measure.
	if (len(s.body) > 0 || s.who != "" || s.tell("body")) && s.tell("body."+name) {
		known := sortedKeys(s.body)
		detail := ""
		switch near := nearest(name, known); {
		case nearHyphen(name, func(k string) bool { _, ok := s.body[k]; return ok }):
			detail = minusHint
		case near != "":
			detail = "The nearest measure stated is body." + near + "."
		case len(s.body) == 0:
			detail = "No body measures are stated: write a body block, or size blocks."
		case len(known) > 0 && len(known) <= 16:
			detail = "Stated are " + strings.Join(known, ", ") + "."
		}
		of := ""
		if s.who != "" {
			of = " for " + s.who
		}
		s.lacks("error", e.SrcRange, name, detail, of)
	}
	return 0, false
}

// nearHyphen reports whether a name is a known one with a minus sign and more
// stuck to it, or ends in a minus sign and a figure.
func nearHyphen(name string, known func(string) bool) bool {
	for i := range len(name) {
		if i == 0 || name[i] != '-' {
			continue
		}
		if known(name[:i]) || strings.Trim(name[i+1:], "0123456789") == "" {
			return true
		}
	}
	return false
}

func (s *scope) unknownDraft(e *hclsyntax.ScopeTraversalExpr, name string) {
	if !s.tell("draft." + name) {
		return
	}
	detail := ""
	switch known := sortedKeys(s.draft); {
	case nearHyphen(name, func(k string) bool { return s.draft[k] != nil }):
		detail = minusHint
	case nearest(name, known) != "":
		detail = "The nearest known value is draft." + nearest(name, known) + "."
	case len(s.draft) == 0:
		detail = "There is no draft block that states it."
	}
	s.fault(e.SrcRange, detail, "draft.%s is not stated", name)
}

func (s *scope) unknownName(e *hclsyntax.ScopeTraversalExpr, words []string) {
	name := asWritten(words)
	if len(words) == 0 {
		s.fault(e.SrcRange, "A name is words with dots between, like body.waist_girth.", "a number is meant here")
		return
	}
	if !s.tell(s.piece + " " + name) {
		return
	}
	first := words[0]
	detail := "A name here is draft.NAME or body.NAME."
	if s.points != nil {
		detail = "A name here is draft.NAME, body.NAME, or a point's .x or .y."
	}
	switch {
	case len(words) == 1 && s.points[first] != nil:
		detail = fmt.Sprintf("%s is a point: write %s.x or %s.y.", first, first, first)
	case len(words) == 1 && s.draft[first] != nil:
		detail = "Write draft." + first + "."
	case len(words) == 1 && s.body[first] != 0:
		detail = "Write body." + first + "."
	case len(words) == 2 && nearest(first, append(sortedKeys(s.points), "draft", "body")) != "":
		detail = "The nearest known name is " + nearest(first, append(sortedKeys(s.points), "draft", "body")) + "."
	}
	s.fault(e.SrcRange, detail, "%s is not known", name)
}

// tell reports whether the absence of a name is still to be said.
func (s *scope) tell(name string) bool {
	if s.told[name] {
		return false
	}
	if s.told == nil {
		s.told = map[string]bool{}
	}
	s.told[name] = true
	return true
}
