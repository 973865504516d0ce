package draft

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/reckoned"
	"understitch/rules"
)

// table are the body measures of all sizes.
type table struct {
	*rules.Pass
	sizes  []*model.Garment
	series []measuring.Series
	wrong  map[int]bool // the sizes at which a measure is out of step
}

// ordered checks that the sizes are listed in the order in which their bodies grow. It
// reports whether the steps from size to size can be compared.
func (t *table) ordered() bool {
	if t.rising(t.inOrder()) || t.rising(t.backwards()) {
		return true
	}
	order := t.bySize()
	if len(t.series) < 2 || !t.rising(order) {
		return true // no order has all of them grow: one figure is wrong
	}
	listed, meant := t.names(t.inOrder()), t.names(order)
	say := rules.Say{Key: "order", Account: t.orderAccount(order), Mild: true, Message: func() string {
		return fmt.Sprintf("the sizes are listed as %s, and every measure of their bodies grows in the order %s. List them in that order.", listed, meant)
	}}
	if t.numbered() { // the names say that the order is right, so the bodies are exchanged
		say.Mild = false
		say.Message = func() string {
			return fmt.Sprintf("the bodies of the sizes %s grow in the order %s: some of them look exchanged. Look the table up.", listed, meant)
		}
	}
	t.Fault(say)
	return false
}

func (t *table) inOrder() []int {
	out := make([]int, len(t.sizes))
	for i := range out {
		out[i] = i
	}
	return out
}

func (t *table) backwards() []int {
	out := t.inOrder()
	slices.Reverse(out)
	return out
}

// bySize is the order in which the sum of all girths grows.
func (t *table) bySize() []int {
	out := t.inOrder()
	sum := func(i int) float64 {
		total := 0.0
		for _, s := range t.series {
			total += s.Values[i]
		}
		return total
	}
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(sum(a), sum(b)) })
	return out
}

// rising reports whether no measure falls from size to size in an order, but for one
// that falls throughout, as an inside leg may.
func (t *table) rising(order []int) bool {
	grows := false
	for _, s := range t.series {
		up, down := 0, 0
		for i := 1; i < len(order); i++ {
			switch step := s.Values[order[i]] - s.Values[order[i-1]]; {
			case step > t.Limit("slip"):
				up++
			case step < -t.Limit("slip"):
				down++
			}
		}
		if up > 0 && down > 0 {
			return false
		}
		grows = grows || up > 0
	}
	return grows
}

// numbered reports whether the sizes have numbers for names, listed as they grow.
func (t *table) numbered() bool {
	before := math.Inf(-1)
	for _, g := range t.sizes {
		n, err := strconv.ParseFloat(g.Size, 64)
		if err != nil || n <= before {
			return false
		}
		before = n
	}
	return true
}

func (t *table) names(order []int) string {
	var out []string
	for _, i := range order {
		out = append(out, t.sizes[i].Size)
	}
	return strings.Join(out, ", ")
}

// outOfStep is a figure of the table that does not go on as its neighbours do.
type outOfStep struct {
	at    int     // the size
	meant float64 // what its neighbours suggest
	usual float64 // the usual step of such a figure, without its sign
	back  bool    // it goes back where the others grow
}

// slip finds the one figure of a measure that is out of step, if there is one. A series
// of three has too few steps of its own: those of the other measures tell which of them
// is the odd one.
func (t *table) slip(s measuring.Series) (outOfStep, bool) {
	found := s.Slip(t.Limit("left"))
	out := outOfStep{at: found.At, meant: found.Meant, usual: s.UsualStep()}
	if len(s.Values) < fewest {
		var off bool
		if out, off = t.slipOfThree(s); !off {
			return out, false
		}
	}
	if len(s.Values) >= fewest && math.Abs(found.Off) <= t.Limit("slip") {
		return t.goingBack(s)
	}
	if math.Abs(s.Values[out.at]-out.meant) <= t.Limit("slip") {
		return t.goingBack(s)
	}
	out.back = t.fallsBack(s, out.at)
	return out, true
}

// slipOfThree finds the odd figure of three by the steps of the other measures.
func (t *table) slipOfThree(s measuring.Series) (outOfStep, bool) {
	first, second := s.Step(0), s.Step(1)
	if math.Abs(second-first) <= t.Limit("slip") {
		return outOfStep{}, false
	}
	out := outOfStep{usual: math.Min(math.Abs(first), math.Abs(second))}
	a, okA := t.others(s, 0)
	b, okB := t.others(s, 1)
	switch {
	case !okA || !okB:
		out.at = 0
		if math.Abs(first) < math.Abs(second) {
			out.at = 2
		}
	default:
		off := []float64{math.Abs(second - b), math.Abs(first + second - a - b), math.Abs(first - a)}
		out.at = slices.Index(off, slices.Min(off))
		out.usual = math.Max(math.Abs(a), math.Abs(b))
		if math.Abs(a-first) <= t.Limit("slip") && math.Abs(b-second) <= t.Limit("slip") {
			return out, false // all measures step so here
		}
	}
	out.meant = s.Beside(out.at)
	return out, true
}

// others is the usual step of the other measures from one size to the next: of girths
// for a girth, since lengths grow by less.
func (t *table) others(s measuring.Series, from int) (float64, bool) {
	var steps []float64
	for _, o := range t.series {
		if o.Name != s.Name && isGirth(o.Name) == isGirth(s.Name) {
			steps = append(steps, o.Step(from))
		}
	}
	if len(steps) == 0 {
		return 0, false
	}
	slices.Sort(steps)
	return steps[len(steps)/2], true
}

func isGirth(name string) bool { return strings.HasSuffix(name, "_girth") }

// goingBack finds a step that goes back in a measure that grows else, where nothing
// else is odd.
func (t *table) goingBack(s measuring.Series) (outOfStep, bool) {
	for i := 1; i < len(s.Values); i++ {
		if t.fallsBack(s, i) {
			return outOfStep{at: i, meant: s.Beside(i), usual: s.UsualStep(), back: true}, true
		}
	}
	return outOfStep{}, false
}

// fallsBack reports whether a step beside a figure goes back, past the limit, where the
// measure itself grows else and most of the other measures grow there.
func (t *table) fallsBack(s measuring.Series, at int) bool {
	for from := at - 1; from <= at; from++ {
		if from < 0 || from+1 >= len(s.Values) || s.Step(from) >= -t.Limit("slip") {
			continue
		}
		up, down := 0, 0
		for _, o := range t.series {
			switch step := o.Step(from); {
			case o.Name == s.Name:
			case step > 0:
				up++
			case step < 0:
				down++
			}
		}
		if t.growsElse(s) && (up > down || up+down == 0) {
			return true
		}
	}
	return false
}

// growsElse reports whether a measure grows at least as often as it falls.
func (t *table) growsElse(s measuring.Series) bool {
	up, down := 0, 0
	for i := 1; i < len(s.Values); i++ {
		switch step := s.Step(i - 1); {
		case step > 0:
			up++
		case step < 0:
			down++
		}
	}
	return up > 0 && up >= down
}

// measures judges every body measure over all sizes.
func (t *table) measures() {
	for _, s := range t.series {
		name := "body." + s.Name
		found, off := t.slip(s)
		if !off {
			t.AtMost(math.Abs(s.Slip(t.Limit("left")).Off), "slip", rules.Say{Key: name, Place: s.Place, Account: stepAccount(t.sizes, s, name, s.Slip(t.Limit("left")))})
			continue
		}
		t.wrong[found.at] = true
		t.odd(s, name, found)
	}
}

// odd reports a figure of the table: as an error where it goes back, as a warning where it
// is off by more than so many usual steps.
func (t *table) odd(s measuring.Series, name string, o outOfStep) {
	size := t.sizes[o.at].Size
	off := math.Abs(s.Values[o.at] - o.meant)
	far := off > t.Limit("far")*o.usual
	say := rules.Say{Key: name, Size: size, Place: s.At[o.at], Mild: !o.back && far, Note: !o.back && !far, Account: stepAccount(t.sizes, s, name, measuring.Slip{At: o.at, Meant: o.meant, Off: s.Values[o.at] - o.meant}),
		Message: func() string {
			how := "falls out of step"
			if o.back {
				how = "goes back where most measures grow"
			}
			return fmt.Sprintf("%s is %s in size %s and %s%s: its neighbours suggest %s, which is %s off. Look the figure up.",
				name, t.Show(s.Values[o.at]), size, how, between(t.Pass, t.sizes, s, o.at), t.Show(o.meant), t.Show(off))
		}}
	if say.Place == (model.Place{}) {
		say.Place = s.Place
	}
	t.AtMost(off, "slip", say)
}

func (t *table) orderAccount(order []int) rules.Account {
	return func(l *reckoned.Lines) {
		for _, s := range t.series {
			for _, i := range order {
				l.Beside(1, s.Values[i], "body.%s in size %s", s.Name, t.sizes[i].Size)
			}
		}
	}
}
