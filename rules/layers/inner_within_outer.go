package layers

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/model"
	"understitch/rules"
)

//go:embed testdata/inner-within-outer.bad.garment.hcl
var innerWithinOuterBad string

//go:embed testdata/inner-within-outer.good.garment.hcl
var innerWithinOuterGood string

// InnerWithinOuter checks that each inner piece lies in its outer piece with the
// clearance that is meant.
var InnerWithinOuter = &rules.Rule{
	Name:     "inner-within-outer",
	Family:   "layers",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "At every level and everywhere between, an inner piece is smaller than its outer piece by what is meant, or larger by what is meant",
		Why: "An inner piece that is wider than its shell creases under it, and the creases show. One that is too narrow takes the strain, pulls " +
			"the shell in and tears first. A lining that is meant to be larger fails in the same way when it is not.",
		How: "At each level that both pieces reach, measure both across, darts closed, as drawn: halves on the fold as halves. Outer less inner " +
			"must lie in the nest's clearance. Between two levels the place where they come closest is sought, and the wider of the two levels' " +
			"clearances holds there. Where it is the darts that do not take out alike there, they are named. Where both are drawn, " +
			"the inner piece is also laid on the outer, as drafted on one sheet or along the share " +
			"that the nest names. It must not stand out by more than is meant and its darts take up. Where the share's two lines differ, laying " +
			"them together may turn the piece a little; that is allowed for, the more the further off the place lies.",
		Fix: "Take the inner piece in or let the outer one out at the place named, and carry it through the seam to the next piece. Where the " +
			"figure is meant, state it in the nest's clearance.",
		Bad: innerWithinOuterBad, Good: innerWithinOuterGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "beyond", Value: 0.5, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "how far past the stated clearance a piece may be",
	}, {
		Name: "share", Value: 1, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "pieces are not laid together by a share whose lines differ by more than this, which is left to shared-edge",
	}, {
		Name: "legs", Value: 1, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "nor over a dart whose legs differ by more than this, which is left to dart-legs",
	}},
	Each: rules.Nests(innerWithinOuter),
}

// nesting is one nest while it is judged.
type nesting struct {
	*rules.Pass
	nest   *model.Nest
	levels []*model.Level
	short  []float64 // how far below what is asked each level's clearance lies
}

func innerWithinOuter(p *rules.Pass, nest *model.Nest) {
	n := &nesting{Pass: p, nest: nest, levels: nest.Compared(p.Garment)}
	asked := n.notReached()
	if len(n.levels) == 0 {
		if !asked {
			p.Cannot(fmt.Errorf("no level is reached by both %s and %s", nest.Outer.Address(), nest.Inner.Address()), rules.Say{})
		}
		return
	}
	for _, l := range n.levels {
		n.short = append(n.short, n.level(l))
	}
	if len(n.levels) == 1 {
		return
	}
	covered := make([]bool, len(n.levels)-1) // bands in which the widths show a fault
	for i := range covered {
		covered[i] = n.between(i) || n.short[i] > p.Limit("beyond") || n.short[i+1] > p.Limit("beyond")
	}
	n.outlines(covered)
}

// notReached reports levels at which a clearance is asked for and that one of
// the pieces does not reach, and those at which the width of one was not measured.
func (n *nesting) notReached() (any bool) {
	for _, c := range n.nest.Clearance {
		if slices.Contains(n.levels, c.Level) {
			continue
		}
		any = true
		err := errors.New("no figure at the " + c.Level.Name + " level")
		for _, piece := range []model.Group{n.nest.Inner, n.nest.Outer} {
			if _, reason := piece.Width(c.Level); reason != nil {
				err = reason
			}
		}
		n.Cannot(err, rules.Say{Key: c.Level.Name, Place: c.Place})
	}
	for _, l := range n.Garment.Levels {
		if slices.Contains(n.levels, l) || n.nest.States(l) || !n.nest.Inner.Reaches(l) && !n.nest.Outer.Reaches(l) {
			continue
		}
		for _, piece := range slices.Concat(n.nest.Inner, n.nest.Outer) {
			if reason := n.Garment.Unmeasured(piece, l); reason != nil && len(piece.Widths) > 0 {
				any = true
				n.Cannot(reason, rules.Say{Key: l.Name, Place: n.nest.Place})
				break
			}
		}
	}
	return any
}

// level judges the clearance at one level, and gives how far it falls short.
func (n *nesting) level(l *model.Level) float64 {
	nest, allowed := n.nest, n.nest.Allowed(l)
	say := rules.Say{Key: l.Name, Place: nest.AllowedAt(l), Account: clearanceAccount(n.Garment, nest, l), Related: n.pieces()}
	clearance, err := nest.ClearanceAt(l)
	if err != nil {
		n.Cannot(err, say)
		return 0
	}
	if allowed.Any() {
		n.Good(say)
		return 0
	}
	darts := n.blame(&say, func() []model.DartTakes { return nest.DartsAt(l) }, clearance, allowed)
	say.Message = func() string {
		outer, _ := nest.Outer.Width(l)
		inner, _ := nest.Inner.Width(l)
		as, bs := nest.Outer.Times(), nest.Inner.Times() // as ClearanceAt counts them
		outer.Net, inner.Net = outer.Net*as/min(as, bs), inner.Net*bs/min(as, bs)
		return fmt.Sprintf("%s at the %s level (%s across against %s, darts closed%s); %s asks for %s. %s%s",
			n.compared(clearance), l.Name, n.Show(inner.Net), n.Show(outer.Net), n.halves(),
			nest.Address(), n.clearance(allowed), darts, n.mend(allowed.Beyond(clearance), darts != ""))
	}
	n.Within(clearance, allowed, "beyond", say)
	return math.Max(0, allowed.Low-clearance)
}

// between seeks the least clearance between a level and the next, where heights
// are the same in both pieces; it reports whether that is at fault.
func (n *nesting) between(i int) bool {
	upper, lower := n.levels[i], n.levels[i+1]
	low := math.Min(n.nest.Allowed(upper).Low, n.nest.Allowed(lower).Low)
	top, bottom, ok := n.band(i)
	if !ok || math.IsInf(low, -1) || !n.nest.OneFrame() || !n.nest.SameHalves() {
		return false
	}
	say := rules.Say{Key: upper.Name + " to " + lower.Name, Place: n.nest.AllowedAt(upper), Related: n.pieces()}
	least, err := n.nest.LeastBetween(top, bottom)
	if err != nil {
		n.Cannot(err, say)
		return false
	}
	broken := low-least.Low > n.Limit("beyond")
	if broken && low-least.Low <= math.Max(n.short[i], n.short[i+1])+n.Limit("beyond") {
		return true // the levels themselves have told it
	}
	darts := n.blame(&say, func() []model.DartTakes { return n.nest.DartsAtHeight(least.Y) }, least.Low, model.AnyFrom(low))
	say.Message = func() string {
		return fmt.Sprintf("%s between the levels %s and %s, %s below the first (darts closed%s); from the one to the other %s asks for %s. %s%s",
			n.compared(least.Low), upper.Name, lower.Name, n.Show(least.Y-top), n.halves(), n.nest.Address(), n.clearance(model.AnyFrom(low)), darts,
			n.mend(least.Low-low, darts != ""))
	}
	n.Within(least.Low, model.AnyFrom(low), "beyond", say)
	return broken
}

// outlines lays the inner piece on the outer in each band between levels. Of
// several pieces taken together there is no one outline: their widths at every
// height have been judged.
func (n *nesting) outlines(covered []bool) {
	nest := n.nest
	if len(nest.Outer) > 1 || len(nest.Inner) > 1 {
		return
	}
	_, err := nest.LaidOn(n.Garment)
	if err == nil && !nest.SameHalves() {
		err = fmt.Errorf("%s and %s are not drawn as the same part of their layers, so only their widths can be compared", nest.Outer.Address(), nest.Inner.Address())
	}
	var off float64
	var doubt func(y float64) float64
	if err == nil {
		off, doubt, err = nest.Doubt(n.Garment)
	}
	if err == nil && nest.Align != nil {
		for _, s := range slices.Concat(nest.Align.Outer, nest.Align.Inner) {
			if lameDart(s.Edge, n.Limit("legs")) {
				err = fmt.Errorf("a dart on %s, by which they are laid together, has legs that differ", s.Edge.Address())
				break
			}
		}
	}
	if err == nil && off > n.Limit("share") {
		err = fmt.Errorf("%s, by which they are laid together, differs by %s on the two layers", nest.Align.Address(), n.Show(off))
	}
	if err != nil {
		n.Cannot(err, rules.Say{Key: "outline"})
		return
	}
	for i, done := range covered {
		top, bottom, ok := n.band(i)
		low := math.Min(n.nest.Allowed(n.levels[i]).Low, n.nest.Allowed(n.levels[i+1]).Low)
		if done || !ok || math.IsInf(low, -1) {
			continue
		}
		upper, lower := n.levels[i], n.levels[i+1]
		say := rules.Say{Key: "outline " + upper.Name + " to " + lower.Name, Place: nest.Place, Related: n.pieces()}
		outside, err := nest.OutsideBetween(n.Garment, top, bottom)
		var darts float64
		if err == nil {
			darts, err = nest.DartsBetween(upper, lower)
		}
		if err != nil {
			n.Cannot(err, say)
			continue
		}
		meant := math.Max(0, -low) + darts + math.Max(doubt(top), doubt(bottom))
		say.Message = func() string {
			return fmt.Sprintf("%s stands %s out of %s between the levels %s and %s, where their widths agree; no more than %s is meant. "+
				"Look how one is drawn on the other, and move the edge that stands out.",
				nest.Inner.Address(), n.Show(outside.High), nest.Outer.Address(), upper.Name, lower.Name, n.Show(meant))
		}
		n.Within(outside.High, model.Range{Low: math.Inf(-1), High: meant}, "beyond", say)
	}
}

// band is where a level and the next lie in the outer piece's frame.
func (n *nesting) band(i int) (top, bottom float64, ok bool) {
	top, okTop := n.nest.Outer.LevelY(n.levels[i])
	bottom, okBottom := n.nest.Outer.LevelY(n.levels[i+1])
	return top, bottom, okTop && okBottom && bottom-top > 1
}

// compared says which piece is the wider, by how much.
func (n *nesting) compared(clearance float64) string {
	if n.Show(clearance) == n.Show(0) {
		return fmt.Sprintf("%s is as wide as %s", n.nest.Inner.Address(), n.nest.Outer.Address())
	}
	word := "narrower"
	if clearance < 0 {
		word = "wider"
	}
	return fmt.Sprintf("%s is %s %s than %s", n.nest.Inner.Address(), n.Show(math.Abs(clearance)), word, n.nest.Outer.Address())
}

// clearance writes a range of clearance for a cutter.
func (n *nesting) clearance(r model.Range) string {
	switch {
	case math.IsInf(r.High, 1) && r.Low == 0:
		return "it to be no wider"
	case math.IsInf(r.High, 1) && r.Low < 0:
		return "it to be wider by no more than " + n.Show(-r.Low)
	case r.High < 0:
		return "it to be wider by " + n.Garment.ShowRange(model.Range{Low: -r.High, High: -r.Low})
	case r.Low < 0:
		return "a clearance of " + n.Garment.ShowRange(r)
	}
	return "it to be narrower by " + n.Garment.ShowRange(r)
}

// mend says what to correct, at the darts first where they account for it.
func (n *nesting) mend(beyond float64, darts bool) string {
	text := "take the inner piece in, or let the outer one out"
	if beyond > 0 {
		text = "let the inner piece out, or take the outer one in"
	}
	if darts {
		text = "put them right; or " + text
	}
	return fmt.Sprintf("%s, by %s.", strings.ToUpper(text[:1])+text[1:], n.Show(math.Abs(beyond)))
}

// halves tells a reader of widths that they are those of halves.
func (n *nesting) halves() string {
	if n.nest.Outer.OnFold() && n.nest.Inner.OnFold() {
		return ", from the fold"
	}
	return ""
}

func (n *nesting) pieces() []rules.Related {
	return []rules.Related{
		{Message: "the outer piece, " + n.nest.Outer.Address(), Place: n.nest.Outer.Where()},
		{Message: "the inner piece, " + n.nest.Inner.Address(), Place: n.nest.Inner.Where()},
	}
}
