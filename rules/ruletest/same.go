package ruletest

import (
	"fmt"
	"math"

	"understitch/rules"
)

// judged are outcomes, and what each of them is about, in their order.
type judged struct {
	list []rules.Outcome
	keys []string
	at   map[string]int
}

func about(list []rules.Outcome) judged {
	return judged{list: list}.named(func(key string) string { return key })
}

// named are the outcomes by other names for what they are about.
func (j judged) named(other func(key string) string) judged {
	out := judged{list: j.list, at: map[string]int{}}
	for i, o := range j.list {
		name := fmt.Sprintf("%s %s %s", o.Rule.Name, o.Subject, other(o.Key))
		key := name
		for n := 2; ; n++ {
			if _, taken := out.at[key]; !taken {
				break
			}
			key = fmt.Sprintf("%s (%d)", name, n)
		}
		out.at[key] = i
		out.keys = append(out.keys, key)
	}
	return out
}

// rules are how many outcomes each rule has that can be compared: a look that was
// not possible says little.
func (j judged) rules(w way) map[string]int {
	out := map[string]int{}
	for _, o := range j.list {
		if !w.leaves(o) && o.Status != rules.NotPossible {
			out[o.Rule.Name]++
		}
	}
	return out
}

// differences are what is said otherwise, but for what is left out.
func (j judged) differences(got judged, w way) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	for i, was := range j.list {
		if w.leaves(was) {
			continue
		}
		at, ok := got.at[j.keys[i]]
		if !ok {
			say("%s is gone: %s%s", j.keys[i], was.Message, was.Reason)
			continue
		}
		is := got.list[at]
		if was.Status != is.Status || was.Severity != is.Severity || was.Unit != is.Unit || len(was.Related) != len(is.Related) {
			say("%s: %s, was %s", j.keys[i], ended(is), ended(was))
			continue
		}
		for _, f := range [][2]float64{{was.Measured, is.Measured}, {was.Limit, is.Limit}, {was.Margin, is.Margin}} {
			if !alike(f[0], f[1], within(was)) {
				say("%s: %v, was %v, in %s, was %s", j.keys[i], f[1], f[0], ended(is), ended(was))
			}
		}
	}
	for i, is := range got.list {
		if _, ok := j.at[got.keys[i]]; !ok && !w.leaves(is) {
			say("%s is new: %s", got.keys[i], ended(is))
		}
	}
	return out
}

func ended(o rules.Outcome) string {
	return fmt.Sprintf("%v of status %d, %v against %v %s: %s%s", o.Severity, o.Status, o.Measured, o.Limit, o.Unit, o.Message, o.Reason)
}

// How far figures may differ, in their own unit.
const (
	exactly = 1e-6 // by the arithmetic alone
	bounded = 0.01 // where a figure is a proven bound, by how closely that encloses it
)

// bounds are the rules whose lengths are proven bounds of how far lines or widths
// lie apart, enclosed to a hundredth of a millimetre.
var bounds = map[string]bool{"shared-edge": true, "inner-within-outer": true, "allowance-drawn": true}

func within(o rules.Outcome) float64 {
	if bounds[o.Rule.Name] && o.Unit == rules.Millimetres {
		return bounded
	}
	return exactly
}

// alike compares lengths; past a metre, where one is the radius of a bend, by how
// much they bend.
func alike(a, b, within float64) bool {
	const metre = 1000
	if a > metre && b > metre {
		return a == b || math.Abs(1/a-1/b) <= within/metre/metre
	}
	return a == b || math.Abs(a-b) <= within
}
