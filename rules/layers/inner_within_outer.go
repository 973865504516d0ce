package layers

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/measuring"
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
		Title: "At every level and everywhere between and beyond, an inner piece is smaller than its outer piece by what is meant, or larger by what is meant",
		Why: "An inner piece that is wider than its shell creases under it, and the creases show. One that is too narrow takes the strain, pulls " +
			"the shell in and tears first. A lining that is meant to be larger fails in the same way when it is not.",
		How: "At each level that both pieces reach, measure both across, darts closed, as drawn: halves on the fold as halves. Outer less inner " +
			"must lie in the inside's clearance. Between two levels the place where they come closest is sought, and the wider of the two levels' " +
			"clearances holds there. Above the highest level and below the lowest the same is done as far as both pieces have sides there, which an " +
			"armhole or a leg is not. By as much as the clearance at that level lets the inner piece be wider it may be wider beyond; room that it asks for " +
			"is not asked for there, where layers often run together. Where it is the darts that do not take out alike, they are named. Where both are drawn, " +
			"the inner piece is also laid on the outer, as drafted on one sheet or along the share " +
			"that the inside names, over the whole height that both have. Pieces that lie at no level, as sleeves do, are compared by their outlines alone: sideways " +
			"over the fold, and over seams with other such pieces. It must not stand out by more than is meant and its darts take up. Beyond the levels only what stands out sideways is " +
			"out: over a side, or over a seam of its own name, such as the shoulder. A neck, an armhole or a waist that lies higher is left to shared-edge where the layers share it; " +
			"else the report says that it is not known whether it is meant. What hangs lower than a finished edge is left to hem-drop, and where only one of the pieces has cloth there is nothing to compare. Several pieces named on a side are laid together along the seams between them, as taped " +
			"together on the table, from level to level, or in shorter parts where a curved seam does not lie flat in one; seams that lie elsewhere on the two layers make no difference. " +
			"Where the seams do not lie flat within a limit the report says so, and there only the widths are judged. Where the share's two lines differ, laying " +
			"them together may turn the piece a little; that is allowed for, the more the further off the place lies.",
		Fix: "Take the inner piece in or let the outer one out at the place named, and carry it through the seam to the next piece. Where the " +
			"figure is meant, state it in the inside's clearance.",
		Bad: innerWithinOuterBad, Good: innerWithinOuterGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "beyond", Value: 0.5, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "how far past the stated clearance a piece may be",
	}, {
		Name: "flat", Value: 2, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "of several pieces laid together, how far the two lines of a seam may part and still be taken to lie flat",
	}, {
		Name: "doubt", Value: 15, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "the outlines of several pieces are not judged where laying them together leaves more than this in doubt",
	}, {
		Name: "legs", Value: 1, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "what a dart takes out is not known where its legs differ by more than this",
	}, {
		Name: "aligned", Value: 1, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "pieces are not laid together by a share whose two lines differ by more than this",
	}},
	Each: rules.Insides(innerWithinOuter),
}

// laying is one inside while it is judged.
type laying struct {
	*rules.Pass
	inside *model.Inside
	levels []*model.Level
	short  []float64 // how far below what is asked each level's clearance lies
}

func innerWithinOuter(p *rules.Pass, inside *model.Inside) {
	n := &laying{Pass: p, inside: inside, levels: layering.Compared(inside, p.Garment)}
	asked := n.notReached()
	if len(n.levels) == 0 {
		if n.outlineAlone() {
			return
		}
		if !asked {
			p.Cannot(fmt.Errorf("no level is reached by both %s and %s", inside.Outer.Address(), inside.Inner.Address()), rules.Say{})
		}
		return
	}
	for _, l := range n.levels {
		n.short = append(n.short, n.level(l))
	}
	var left []band // of whose widths nothing is told
	for _, b := range n.bands() {
		if n.lame(b) {
			continue
		}
		if !n.between(b) && b.short <= p.Limit("beyond") {
			left = append(left, b)
		}
	}
	if n.several() {
		n.joined(left)
		return
	}
	n.outlines(left)
}

// notReached reports levels at which a clearance is asked for and that one of
// the pieces does not reach, and those at which the width of one was not measured.
func (n *laying) notReached() (any bool) {
	for _, c := range slices.Concat(n.inside.Clearance, n.inside.ClearanceFrom) {
		if slices.Contains(n.levels, c.Level) {
			continue
		}
		any = true
		err := errors.New("no figure at the " + c.Level.Name + " level")
		for _, piece := range []model.Group{n.inside.Inner, n.inside.Outer} {
			if _, reason := measuring.GroupWidth(piece, c.Level); reason != nil {
				err = reason
			}
		}
		n.Cannot(err, rules.Say{Key: c.Level.Name, Place: c.Place})
	}
	for _, l := range n.Garment.Levels {
		if slices.Contains(n.levels, l) || n.inside.States(l) || !n.inside.Inner.Reaches(l) && !n.inside.Outer.Reaches(l) {
			continue
		}
		for _, piece := range slices.Concat(n.inside.Inner, n.inside.Outer) {
			if reason := measuring.Unmeasured(n.Garment, piece, l); reason != nil && len(piece.Widths) > 0 {
				any = true
				n.Cannot(reason, rules.Say{Key: l.Name, Place: n.inside.Place})
				break
			}
		}
	}
	return any
}

// level judges the clearance at one level, and gives how far it falls short.
func (n *laying) level(l *model.Level) float64 {
	inside, allowed := n.inside, n.inside.Allowed(l)
	say := rules.Say{Key: l.Name, Place: layering.AllowedAt(inside, l), Account: clearanceAccount(n.Garment, inside, l), Related: n.pieces()}
	clearance, err := layering.ClearanceAt(inside, l)
	if err != nil {
		n.Cannot(err, say)
		return 0
	}
	if allowed.Any() {
		n.Good(say)
		return 0
	}
	darts := n.blame(&say, func() []layering.DartTakes { return layering.DartsAt(inside, l) }, clearance, allowed)
	say.Message = func() string {
		outer, _ := measuring.GroupWidth(inside.Outer, l)
		inner, _ := measuring.GroupWidth(inside.Inner, l)
		as, bs := inside.Outer.Times(), inside.Inner.Times() // as ClearanceAt counts them
		outer.Net, inner.Net = outer.Net*as/min(as, bs), inner.Net*bs/min(as, bs)
		return fmt.Sprintf("%s at the %s level (%s across against %s, darts closed%s); %s asks for %s. %s%s",
			n.compared(clearance), l.Name, n.Show(inner.Net), n.Show(outer.Net), n.halves(),
			inside.Address(), n.clearance(allowed), darts, n.mend(allowed.Beyond(clearance), darts != ""))
	}
	n.Within(clearance, allowed, "beyond", say)
	return math.Max(0, allowed.Low-clearance)
}

// compared says which piece is the wider, by how much.
func (n *laying) compared(clearance float64) string {
	if n.Show(clearance) == n.Show(0) {
		return fmt.Sprintf("%s is as wide as %s", n.inside.Inner.Address(), n.inside.Outer.Address())
	}
	word := "narrower"
	if clearance < 0 {
		word = "wider"
	}
	return fmt.Sprintf("%s is %s %s than %s", n.inside.Inner.Address(), n.Show(math.Abs(clearance)), word, n.inside.Outer.Address())
}

// clearance writes a range of clearance for a cutter.
func (n *laying) clearance(r model.Range) string {
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
func (n *laying) mend(beyond float64, darts bool) string {
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
func (n *laying) halves() string {
	if n.inside.Outer.OnFold() && n.inside.Inner.OnFold() {
		return ", from the fold"
	}
	return ""
}

func (n *laying) pieces() []rules.Related {
	return []rules.Related{
		{Message: "the outer piece, " + n.inside.Outer.Address(), Place: n.inside.Outer.Where()},
		{Message: "the inner piece, " + n.inside.Inner.Address(), Place: n.inside.Inner.Where()},
	}
}
