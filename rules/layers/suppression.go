package layers

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/measuring"
	"understitch/rules"
)

//go:embed testdata/suppression.bad.garment.hcl
var suppressionBad string

//go:embed testdata/suppression.good.garment.hcl
var suppressionGood string

// Suppression checks that layers take in and let out alike from level to level.
var Suppression = &rules.Rule{
	Name:     "suppression",
	Family:   "layers",
	Severity: rules.Warning,
	Under:    []string{"layer-girth", "inner-within-outer", "body-ease"},
	Doc: rules.Doc{
		Title: "What one layer takes out by a dart the other takes out in a seam: from level to level both fall and rise alike",
		Why: "Layers seldom carry their shaping in the same places. When a dart is pinned deeper at a fitting, or a seam taken in, the other layer " +
			"has to answer it by its own darts and seams. Where it does not, each layer still fits by itself, and the two pull on each other " +
			"where they should lie together.",
		How: "At each level that both layers close round, or where insides lay every piece of the one in the other, take the inner girth off the " +
			"outer: that is the room between them. How much the room changes from one level to the next is the figure. A level along which the " +
			"layers share an edge is left out: there they have one girth, and part below it as they may. What the clearances of the insides, or the " +
			"eases of both layers, state differently at the two levels is allowed. Where darts of pieces that lie in each other account for it, " +
			"they are named. A level at which the room leaps and falls back again is " +
			"reported once. Where layer-girth, inner-within-outer or body-ease report one of the two levels, that finding stands for this one.",
		Nothing: "No layer over it closes round the body with it at two levels.",
		Fix: "Look for the dart or seam that was altered on one layer only, and alter the other layer by as much. Where a layer is meant to fall " +
			"otherwise, as a flared skirt over a narrow lining, state the clearances at both levels.",
		Bad: suppressionBad, Good: suppressionGood, Since: "0.1",
	},
	Limits: append(rules.NoteSteps(10, 20, rules.Millimetres, "how much more one layer may take out from a level to the next than the other",
		"common practice, no source"), sharedNear, rules.Limit{
		Name: "darts", Value: 0.5, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "darts of two layers that take out alike within this are not named as the cause",
	}),
	Each: rules.Layers(suppression),
}

func suppression(p *rules.Pass, inner *model.Layer) {
	p.NothingHere() // unless a layer lies over it that closes round at two levels with it
	g := p.Garment
	for outer := measuring.LayerOver(g, inner); outer != nil; outer = measuring.LayerOver(g, outer) {
		rooms := slices.DeleteFunc(measuring.Rooms(g, outer, inner), func(r measuring.RoomAt) bool {
			return measuring.SharedAlong(g, outer, inner, r.Level, p.Limit(sharedNear.Name))
		})
		unknown := notCompared(p, outer, inner, rooms)
		if len(rooms)+len(unknown) < 2 {
			continue
		}
		for _, u := range unknown {
			p.Cannot(u.reason, rules.Say{Key: u.level.Name, Place: inner.Place})
		}
		before := 0.0 // how far the last one was off
		for i := 1; i < len(rooms); i++ {
			before = judgeSuppression(p, outer, inner, rooms[i-1], rooms[i], before)
		}
		return
	}
}

// unknownAt is why the girth of a layer is not known at a level.
type unknownAt struct {
	level  *model.Level
	reason error
}

// notCompared are the levels at which two layers may close round the body, but a
// width that was not measured leaves the room between them unknown.
func notCompared(p *rules.Pass, outer, inner *model.Layer, rooms []measuring.RoomAt) []unknownAt {
	g := p.Garment
	var out []unknownAt
	for _, l := range measuring.LevelsDown(g) {
		_, errOuter := measuring.Girth(g, outer, l)
		_, errInner := measuring.Girth(g, inner, l)
		reason := errOuter
		if !model.NotMeasured(reason) {
			reason = errInner
		}
		mayClose := func(err error) bool { return err == nil || model.NotMeasured(err) }
		switch {
		case slices.ContainsFunc(rooms, func(r measuring.RoomAt) bool { return r.Level == l }):
		case measuring.SharedAlong(g, outer, inner, l, p.Limit(sharedNear.Name)):
		case !model.NotMeasured(reason) || !mayClose(errOuter) || !mayClose(errInner):
			if open := measuring.RunsOut(g, outer, inner, l); open != nil {
				out = append(out, unknownAt{l, open})
			}
		default:
			out = append(out, unknownAt{l, reason})
		}
	}
	return out
}

// judgeSuppression judges one level and the next, and gives how far they are off.
// Where the levels before were off the other way by as much, it is the level
// between that is wrong, and that has been said.
func judgeSuppression(p *rules.Pass, outer, inner *model.Layer, upper, lower measuring.RoomAt, before float64) float64 {
	g := p.Garment
	say := rules.Say{
		Key: upper.Level.Name + " to " + lower.Level.Name, Place: inner.Place,
		Related: []rules.Related{
			{Message: "the layer over it, " + outer.Address(), Place: outer.Place},
			{Message: "the level " + upper.Level.Name, Place: upper.Level.Place},
			{Message: "the level " + lower.Level.Name, Place: lower.Level.Place},
		},
	}
	for _, l := range []*model.Level{upper.Level, lower.Level} {
		say.Under = append(say.Under, tooWide(p, outer, inner, l)...)
		for _, layer := range []*model.Layer{outer, inner} {
			say.Under = append(say.Under, rules.Under{Rule: "body-ease", Subject: layer.Address(), Key: l.Name})
		}
	}
	meant := measuring.RoomChange(g, outer, inner, upper.Level, lower.Level)
	if meant.Any() {
		p.Good(say)
		return 0
	}
	off := meant.Beyond(lower.Room() - upper.Room())
	say.Account = fallAccount(g, outer, inner, upper, lower, meant)
	darts := unlikeBetween(p, &say, outer, inner, upper.Level, lower.Level, off)
	say.Message = func() string {
		more, less := inner, outer
		if off < 0 {
			more, less = outer, inner
		}
		return fmt.Sprintf("from the %s to the %s level %s takes out %s more round than %s%s: %s goes from %s to %s, %s from %s to %s. %s",
			upper.Level.Name, lower.Level.Name, more.Address(), p.Show(math.Abs(off)), less.Address(), beyondStated(meant),
			outer.Address(), p.Show(upper.Outer), p.Show(lower.Outer), inner.Address(), p.Show(upper.Inner), p.Show(lower.Inner), answerIt(darts))
	}
	if off*before < 0 && grade(p, off) > 0 && grade(p, before) >= grade(p, off) {
		return off
	}
	p.Steps(off, say)
	return off
}

// unlikeBetween names the darts that account for what the layers do not take out
// alike from a level to the next, at that of the two where they do: with darts
// that took out alike they would.
func unlikeBetween(p *rules.Pass, say *rules.Say, outer, inner *model.Layer, upper, lower *model.Level, off float64) string {
	if grade(p, off) == 0 {
		return ""
	}
	above, darts := unlikeAt(p, outer, inner, upper)
	below, others := unlikeAt(p, outer, inner, lower)
	if !accounts(off, off+below-above, below-above, p.Limit("note")) {
		return ""
	}
	at := upper
	if math.Abs(below) > math.Abs(above) {
		at, darts = lower, others
	}
	return fmt.Sprintf("The darts differ at the %s level: %s", at.Name, nameDarts(p, say, darts))
}

// unlikeAt are the darts of two layers' insides that differ at a level, and how much
// more the outer ones take out round.
func unlikeAt(p *rules.Pass, outer, inner *model.Layer, l *model.Level) (more float64, out []unlike) {
	for _, n := range measuring.InsidesAt(p.Garment, outer, inner, l) {
		takes := layering.DartsAt(n, l)
		for _, t := range takes {
			more += t.Round()
		}
		out = append(out, unlikeDarts(n, takes, p.Limit("darts")))
	}
	return more, out
}

// answerIt says what to correct, at the darts where they account for it.
func answerIt(darts string) string {
	if darts != "" {
		return darts + ". Put them right, or state the clearances that are meant at both levels."
	}
	return "Look for a dart or seam that was altered on one layer only, or state the clearances that are meant at both levels."
}

// grade is 2 for what is past the second limit, 1 for what is past the first.
func grade(p *rules.Pass, off float64) int {
	switch {
	case math.Abs(off) > p.Limit("warn"):
		return 2
	case math.Abs(off) > p.Limit("note"):
		return 1
	}
	return 0
}

// beyondStated tells a reader that the figure is what goes past something stated.
func beyondStated(meant model.Range) string {
	if meant == model.Exactly(0) {
		return ""
	}
	return ", beyond what is stated"
}
