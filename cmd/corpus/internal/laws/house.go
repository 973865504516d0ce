package laws

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"

	"understitch/cmd/corpus/internal/plan"
	"understitch/cmd/corpus/internal/tally"
	"understitch/cmd/corpus/internal/wardrobe"
	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
)

// The ways in which a house changes a rule.
var changes = []string{"off", "wider", "narrower"}

// House changes rules in so many garments, half of them with a fault, so many
// changes in each: over the garments every rule in every way.
func House(garments, each int, seed uint64) (checked int, breaks []Break, err error) {
	files, err := plan.Corpus(plan.Size{Garments: garments, Sizes: 4, Faults: 0.7, Seed: seed})
	if err != nil {
		return 0, nil, err
	}
	engine, err := rules.New(builtin.Rules())
	if err != nil {
		return 0, nil, err
	}
	house, diags := spec.ReadHouse("house.hcl", []byte(wardrobe.House().Text()))
	if model.Errors(diags) {
		return 0, nil, fmt.Errorf("the house: %v", diags)
	}
	found := make([][]Break, len(files))
	tally.Parallel(len(files), func(i int) {
		found[i] = changed(engine, house, files[i], i*each, each, rand.New(rand.NewPCG(seed, uint64(i))))
	})
	for _, list := range found {
		breaks = append(breaks, list...)
	}
	return len(files), breaks, nil
}

// changed holds one garment to the law, under some of the changes there are,
// beginning with the nth.
func changed(engine *rules.Engine, house *spec.House, f plan.File, n, some int, r *rand.Rand) []Break {
	doc, diags := spec.Read(f.File, []byte(f.Text), house)
	if model.Errors(diags) {
		return []Break{{"house", "", "the garment cannot be read", f.File, f.Text}}
	}
	var sizes []*model.Garment
	for _, size := range doc.Sizes() {
		g, _ := doc.Garment(size)
		sizes = append(sizes, g)
	}
	if len(sizes) == 0 {
		g, _ := doc.Garment("")
		sizes = append(sizes, g)
	}
	if slices.Contains(sizes, nil) {
		return nil
	}
	under := func(change model.RuleSetting) judged {
		own := *house.Model()
		if change.Rule != "" {
			own.Rules = append(slices.Clone(own.Rules), change)
		}
		settings, _ := engine.Settings(&own)
		return judge(engine, sizes, settings)
	}
	before := under(model.RuleSetting{})
	var breaks []Break
	list := engine.Rules()
	for i := range some {
		rule, way := list[(n+i)/len(changes)%len(list)], changes[(n+i)%len(changes)]
		if r.IntN(3) == 0 && len(before.raw) > 0 { // a rule that has something to say here
			name := ruleOf(slices.Sorted(maps.Keys(before.raw))[r.IntN(len(before.raw))])
			rule = engine.Rule(name)
		}
		change, ok := setting(rule, way)
		if !ok {
			continue
		}
		after := under(change)
		for _, what := range before.differences(after, rule.Name, way) {
			breaks = append(breaks, Break{"house", rule.Name + " " + way, what, f.File, f.Text})
		}
	}
	return breaks
}

// setting is what a house says of a rule. What cannot be accepted cannot be switched
// off, and what has no limits cannot be made wider.
func setting(r *rules.Rule, way string) (model.RuleSetting, bool) {
	out := model.RuleSetting{Rule: r.Name}
	if way == "off" {
		out.Severity = "off"
		return out, r.Firm == ""
	}
	by := 4.0
	if way == "narrower" {
		by = 0.25
	}
	for _, l := range r.Limits {
		out.Limits = append(out.Limits, model.LimitSetting{Name: l.Name, Length: l.Value * by, Plain: l.Value * by})
	}
	return out, len(out.Limits) > 0
}

// judged are the findings of a garment: all that were made, and those in force.
// Consequences are not asked for.
type judged struct{ raw, inForce map[string]bool }

func judge(engine *rules.Engine, sizes []*model.Garment, s *rules.Settings) judged {
	j := judged{map[string]bool{}, map[string]bool{}}
	var gathering rules.Gathering
	add := func(outcomes []rules.Outcome) {
		gathering.Add(outcomes)
		for _, o := range outcomes {
			if o.Status == rules.Found {
				j.raw[id(o)+" in "+o.Size] = true
			}
		}
	}
	for _, g := range sizes {
		add(engine.Check(g, s))
	}
	add(engine.CheckAcross(sizes, s))
	result := gathering.Result()
	for _, f := range result.Findings {
		for _, size := range append(slices.Clone(f.Sizes), "")[:max(len(f.Sizes), 1)] {
			j.inForce[id(f.Outcome)+" in "+size] = true
		}
	}
	return j
}

func id(o rules.Outcome) string { return o.Rule.Name + " at " + o.Subject + " " + o.Key }

func ruleOf(id string) string {
	var name string
	fmt.Sscan(id, &name)
	return name
}

// differences are the findings of other rules that are others than they may be once
// a rule is changed.
func (j judged) differences(after judged, rule, way string) []string {
	var out []string
	for _, k := range others(j.raw, after.raw, rule) {
		out = append(out, "loses "+k)
	}
	for _, k := range others(after.raw, j.raw, rule) {
		out = append(out, "gains "+k)
	}
	if way != "narrower" {
		for _, k := range others(j.inForce, after.inForce, rule) {
			out = append(out, "hides "+k)
		}
		return out
	}
	for _, k := range others(after.inForce, j.inForce, rule) {
		out = append(out, "brings back "+k)
	}
	if hidden := others(j.inForce, after.inForce, rule); len(hidden) > 0 && !after.has(rule) {
		out = append(out, "hides, under nothing of its own, "+hidden[0])
	}
	return out
}

// others are the findings of other rules that are in one list and not in another.
func others(in, not map[string]bool, rule string) []string {
	var out []string
	for _, k := range slices.Sorted(maps.Keys(in)) {
		if !not[k] && ruleOf(k) != rule {
			out = append(out, k)
		}
	}
	return out
}

// has reports whether a rule has something in force.
func (j judged) has(rule string) bool {
	for k := range j.inForce {
		if ruleOf(k) == rule {
			return true
		}
	}
	return false
}
