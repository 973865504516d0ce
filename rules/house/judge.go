package house

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/zclconf/go-cty/cty"

	"understitch/model"
	"understitch/rules"
)

// each looks over the things of a garment.
func (r *rule) each(g *model.Garment, look func(model.Thing, func(*rules.Pass))) {
	run := &run{rule: r, state: state{g: g, unit: r.in, slots: make([]cty.Value, len(r.reads))}, from: make([]any, len(r.reads)), left: stepsOfGarment}
	run.ctx = run.context()
	for _, thing := range r.kind.list(g) {
		look(thing, func(p *rules.Pass) { run.look(p, thing) })
	}
}

// run is one rule on one garment in one size.
type run struct {
	*rule
	state
	ctx   *hcl.EvalContext
	from  []any // the thing that each slot was taken down from
	above []any // what the roots after the first stand for, at the thing at hand
	left  int   // steps that the rule may still take on this garment
}

func (r *run) look(p *rules.Pass, thing model.Thing) {
	r.steps = min(stepsOfLook, r.left)
	allowed := r.steps
	defer func() {
		r.left -= allowed - max(r.steps, 0)
		if fault := recover(); fault != nil {
			if _, ok := fault.(spent); !ok {
				panic(fault) // ours, and told as such
			}
			p.Cannot(fmt.Errorf("the rule %s takes too many steps here", r.Name), rules.Say{})
		}
	}()
	r.above = r.kind.above(thing)
	chosen, err := r.chosen(thing)
	switch {
	case err != nil:
		p.Cannot(err, rules.Say{})
	case !chosen:
		p.NothingHere()
	default:
		r.judge(p, thing)
	}
}

// chosen reports whether the rule is about this thing.
func (r *run) chosen(thing model.Thing) (bool, error) {
	for _, o := range r.only {
		v, err := r.value(o.figure, thing)
		if err != nil {
			return false, err
		}
		if v.IsNull() || !fits(v, o.want) {
			return false, nil
		}
	}
	if r.where == nil {
		return true, nil
	}
	return r.truth(r.where, thing)
}

func fits(v, want cty.Value) bool {
	switch want.Type() {
	case cty.String:
		return matches(v.AsString(), want.AsString())
	case cty.Number:
		return math.Abs(float(v)-float(want)) <= tolerance
	}
	return v.RawEquals(want)
}

// value runs a part on the thing at hand, taking down the figures it reads.
func (r *run) value(p *part, thing model.Thing) (cty.Value, error) {
	for _, i := range p.slots {
		r.take(i, thing)
	}
	v, diags := p.expr.Value(r.ctx)
	for _, d := range diags {
		if d.Severity == hcl.DiagError {
			summary, _ := plainly(d)
			return v, errors.New(summary)
		}
	}
	return v, nil
}

func (r *run) take(i int, thing model.Thing) {
	s := &r.reads[i]
	var from any = thing
	switch {
	case s.root == fromGarment || s.root == fromBody:
		from = r.g
	case s.root > 0:
		from = r.above[s.root-1]
	}
	if r.from[i] == from && (from != nil || r.slots[i] != cty.NilVal) {
		return
	}
	r.from[i] = from
	if s.figure == nil {
		v, known := r.g.Body[s.body]
		if !known {
			v = model.Unknown()
		}
		r.slots[i] = r.number(v, length)
		return
	}
	r.slots[i] = r.state.value(s.figure, from, r.used)
}

func (r *run) truth(p *part, thing model.Thing) (bool, error) {
	v, err := r.value(p, thing)
	if err != nil {
		return false, err
	}
	yes, known, diags := truth(p.expr, v)
	if !known {
		return false, unknownFigure(diags)
	}
	return yes, nil
}

func (r *run) float(p *part, thing model.Thing) (float64, error) {
	v, err := r.value(p, thing)
	if err != nil {
		return 0, err
	}
	x, known, diags := operand(p.expr, v)
	if !known {
		return 0, unknownFigure(diags)
	}
	return x, nil
}

func unknownFigure(diags hcl.Diagnostics) error {
	if len(diags) > 0 {
		return errors.New(diags[0].Summary)
	}
	return errors.New("a figure is not known")
}

func (r *run) judge(p *rules.Pass, thing model.Thing) {
	t := &r.test
	switch {
	case t.figure != nil && t.other != nil:
		r.equal(p, thing)
	case t.figure != nil:
		r.bounds(p, thing)
	case t.free != nil:
		holds, err := r.truth(t.free, thing)
		r.say(p, thing, holds, err, func() string { return "" })
	case len(t.has) > 0:
		r.has(p, thing)
	default:
		name := r.kind.figure("name").text(thing)
		holds := false
		for _, pattern := range t.named {
			holds = holds || matches(name, pattern)
		}
		r.say(p, thing, holds, nil, func() string {
			return fmt.Sprintf("%s is called %q; names here are %s", thing.Address(), name, strings.Join(t.named, ", "))
		})
	}
}

func (r *run) has(p *rules.Pass, thing model.Thing) {
	for _, h := range r.test.has {
		v, err := r.value(h.figure, thing)
		missing := err == nil && (v.IsNull() || v.Type() == cty.String && v.AsString() == "" ||
			v.CanIterateElements() && v.LengthInt() == 0)
		say := rules.Say{Key: h.word}
		r.sayKeyed(p, thing, say, !missing, err, func() string {
			return fmt.Sprintf("%s states no %s", thing.Address(), h.word)
		})
	}
}

// say reports a look without a figure.
func (r *run) say(p *rules.Pass, thing model.Thing, holds bool, err error, otherwise func() string) {
	r.sayKeyed(p, thing, rules.Say{}, holds, err, otherwise)
}

func (r *run) sayKeyed(p *rules.Pass, thing model.Thing, say rules.Say, holds bool, err error, otherwise func() string) {
	say.Message, say.Related = r.told(thing, otherwise), r.related()
	switch {
	case err != nil:
		p.Cannot(err, say)
	case holds:
		p.Good(say)
	default:
		p.Fault(say)
	}
}

// related points to the line of the house.
func (r *run) related() []rules.Related {
	return []rules.Related{{Message: "the rule of the house", Place: r.place()}}
}

// told is the message of a finding: the rule's own, or the one that follows from
// what it asks for. Where its own cannot be put together the other stands in.
func (r *run) told(thing model.Thing, otherwise func() string) func() string {
	return func() string {
		if r.message != nil {
			if v, err := r.value(r.message, thing); err == nil && !v.IsNull() && v.Type() == cty.String && v.AsString() != "" {
				return v.AsString()
			}
		}
		if text := otherwise(); text != "" {
			return text
		}
		return fmt.Sprintf("what %s asks for does not hold at %s", r.Name, thing.Address())
	}
}
