package rules

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/layering"
)

// Pass is all that a rule may touch while it looks at one thing of one garment
// in one size.
type Pass struct {
	Garment *model.Garment

	rule     *Rule
	settings *Settings
	limits   []float64 // in the rule's order
	ceiling  Severity  // the highest severity its findings may have
	thing    model.Thing
	out      []Outcome
	answered bool
}

// Say is what a rule has to say about a figure, beside the figure itself.
// Message is called only for a finding.
type Say struct {
	Key     string      // which of several figures of the thing this is
	End     string      // "start" or "end", where it is a figure at one end of a seam or a share
	Size    string      // the size it is about, for a rule that looks at all of them
	Place   model.Place // where to look; the thing's own place when not given
	Account Account     // how the figure was reached
	Message func() string
	Related []Related
	Mend    *Mend
	Spot    layering.Spot // where on a piece a finding lies, for the drawing
	Mild    bool          // a finding is one severity less than the rule's gravest
	Note    bool          // a finding is a note: worth a look, and may well be meant

	Under []Under // findings that make a finding redundant: only of rules that the rule lists
	Cures []Cure  // ways to put a finding right, to see what else is put right with it: see Engine.Trace
	Only  bool    // a finding is told only where something follows from it
}

// Limit is the figure of one of the rule's limits, as the house has it.
func (p *Pass) Limit(name string) float64 {
	for i, l := range p.rule.Limits {
		if l.Name == name {
			return p.limits[i]
		}
	}
	panic("rules: " + p.rule.Name + " has no limit named " + name) // a fault in the rule, met by any test of it
}

// Show writes a length in the unit of the garment's spec.
func (p *Pass) Show(mm float64) string { return p.Garment.Show(mm) }

// Steps judges how far something is from what is meant by the rule's two
// limits: "warn" and "error", or those of a rule that warns at most, "note" and
// "warn". off may carry a sign; its size is judged.
func (p *Pass) Steps(off float64, say Say) {
	lower, upper := "warn", "error"
	if p.rule.Severity == Warning {
		lower, upper = "note", "warn"
	}
	low, high := p.Limit(lower), p.Limit(upper)
	size := math.Abs(off)
	o := Outcome{Unit: p.limitUnit(lower), Measured: off, Limit: low, Margin: low - size, Room: low, Off: size}
	switch {
	case size > high+rounding:
		o.Limit, o.Margin = high, high-size
		p.finding(o, p.rule.Severity, say)
	case size > low+rounding:
		p.finding(o, p.rule.Severity-1, say)
	default:
		p.passed(o, say)
	}
}

// AtMost judges a figure that must not be larger than one of the rule's limits.
func (p *Pass) AtMost(measured float64, limit string, say Say) {
	l := p.Limit(limit)
	p.judge(Outcome{Unit: p.limitUnit(limit), Measured: measured, Limit: l, Margin: l - measured, Room: l, Off: math.Max(measured, 0)}, say)
}

// AtLeast judges a length that must not be smaller than what is needed.
func (p *Pass) AtLeast(measured, needed float64, say Say) {
	p.judge(Outcome{Unit: Millimetres, Measured: measured, Limit: needed, Margin: measured - needed, Room: needed, Off: math.Max(needed-measured, 0)}, say)
}

// Within judges a length that must lie in a range. The limit named, where one
// is, is a tolerance past either end.
func (p *Pass) Within(measured float64, r model.Range, tolerance string, say Say) {
	spare := 0.0
	if tolerance != "" {
		spare = p.Limit(tolerance)
	}
	with := model.Range{Low: r.Low - spare, High: r.High + spare}
	o := Outcome{Unit: Millimetres, Measured: measured, Limit: with.Nearer(measured), Margin: with.Room(measured), Off: math.Abs(r.Beyond(measured))}
	if width := with.High - with.Low; !math.IsInf(width, 0) {
		o.Room = width / 2
	}
	p.judge(o, say)
}

// Figure is a figure that a rule has judged by itself.
type Figure struct {
	Unit     Unit
	Measured float64 // in Unit
	Limit    float64
	Margin   float64 // room to spare; negative when broken
	Room     float64 // the margin at its best; 0 when unknown
}

// Verdict reports what a rule has come to about a figure. How far off it is
// follows from the margin.
func (p *Pass) Verdict(holds bool, f Figure, say Say) {
	o := Outcome{Unit: f.Unit, Measured: f.Measured, Limit: f.Limit, Margin: f.Margin, Room: f.Room, Off: math.Max(-f.Margin, 0)}
	if holds {
		p.passed(o, say)
		return
	}
	p.finding(o, p.rule.Severity, say)
}

// Fault reports something wrong that has no figure.
func (p *Pass) Fault(say Say) { p.finding(Outcome{}, p.rule.Severity, say) }

// Good reports that something without a figure is as it must be.
func (p *Pass) Good(say Say) { p.passed(Outcome{}, say) }

// Cannot reports that the look was not possible, and why.
func (p *Pass) Cannot(err error, say Say) {
	p.add(Outcome{Status: NotPossible, Reason: err.Error()}, say)
}

// NothingHere says that the rule has nothing to judge on this thing.
func (p *Pass) NothingHere() { p.answered = true }

func (p *Pass) limitUnit(name string) Unit {
	for _, l := range p.rule.Limits {
		if l.Name == name {
			return l.Unit
		}
	}
	return Millimetres
}

// rounding is how far a figure may pass its limit by the computer's arithmetic
// alone: 1.2 cm taken twice is not quite 2.4 cm in binary.
const rounding = 1e-9

// judge decides by the margin alone: the tolerance has been applied in it, once.
func (p *Pass) judge(o Outcome, say Say) {
	if o.Margin < -rounding {
		p.finding(o, p.rule.Severity, say)
		return
	}
	p.passed(o, say)
}

func (p *Pass) passed(o Outcome, say Say) {
	o.Status, o.Margin = Passed, math.Max(o.Margin, 0)
	p.add(o, say)
}

func (p *Pass) finding(o Outcome, severity Severity, say Say) {
	o.Status = Found
	if say.Mild {
		severity--
	}
	if say.Note {
		severity = Note
	}
	o.Severity = min(severity, p.ceiling)
	if severity == p.rule.Severity {
		o.Severity = p.ceiling // the house may have raised it
	}
	o.Message = say.Message()
	o.Related, o.Mend = say.Related, say.Mend
	o.cures, o.only, o.under = say.Cures, say.Only, append(slices.Clip(say.Under), p.atSources(say.Key)...)
	p.add(o, say)
}

func (p *Pass) add(o Outcome, say Say) {
	p.answered = true
	o.Numeric = o.Unit != ""
	o.Rule, o.Subject, o.Key, o.Size = p.rule, p.thing.Address(), say.Key, p.Garment.Size
	o.End = say.End
	o.account, o.Spot = say.Account, say.Spot
	if say.Size != "" {
		o.Size = say.Size
	}
	o.Place = say.Place
	if o.Place.IsZero() {
		o.Place = p.thing.Where()
	}
	p.out = append(p.out, o)
}
