package closures

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/tape-pair.bad.garment.hcl
var tapePairBad string

//go:embed testdata/tape-pair.good.garment.hcl
var tapePairGood string

// TapePair checks that the two halves of a tape closure are of one pitch.
var TapePair = &rules.Rule{
	Name:     "tape-pair",
	Family:   "closures",
	Severity: rules.Error,
	Under:    []string{"tape-cut"},
	Doc: rules.Doc{
		Title: "Both halves of a tape closure have one pitch, and can be cut at the same place",
		Why: "Hooks and eyes bought as two tapes look alike on the card and drift out of step along the edge. A tenth of a millimetre from one to " +
			"the next is a whole hook at the end of a long back, and is only got rid of by tucks in the tape.",
		How: "Where a closure names another tape for its second half, take the difference of the two pitches as often as there are gaps between " +
			"the fasteners over the length. It must stay small. The second half must also be free to be cut at that length with as many fasteners " +
			"as the first. A closure of one tape is in step with itself. Where the closure says by first where the metal " +
			"of its halves is, each fastener of the one half is compared with that of the other, measured from the upper end.",
		Nothing: "The closure names neither two tapes nor where its first fastener is.",
		Fix:     "Take both halves from one tape, or measure both pitches again over a whole card.",
		Bad:     tapePairBad, Good: tapePairGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "apart", Value: 0.2, Unit: rules.Millimetres, Source: "common practice, no source",
		Text: "how far the halves may drift apart over the length of the closure",
	}},
	Each: rules.Closures(tapePair),
}

func tapePair(p *rules.Pass, c *model.Closure) {
	p.NothingHere() // unless two tapes are named, or two places
	if c.Kind == "tape" && c.Tape != nil && c.First != nil {
		places(p, c)
	}
	if c.Kind != "tape" || c.Tape == nil || c.OtherTape == nil || c.Tape == c.OtherTape {
		return
	}
	a, b := c.Tape, c.OtherTape
	say := rules.Say{Related: []rules.Related{
		{Message: "the one tape, tape." + a.Name, Place: a.Place},
		{Message: "the other, tape." + b.Name, Place: b.Place},
	}}
	if a.Kind != b.Kind {
		say.Message = func() string {
			return fmt.Sprintf("tape.%s is of kind %s and tape.%s of kind %s; they do not close on each other.", a.Name, a.Kind, b.Name, b.Kind)
		}
		p.Fault(say)
		return
	}
	whole, err := sewing.WholeClosure(p.Garment, c, 0)
	length := whole.Length
	if err != nil {
		p.Cannot(err, say)
		return
	}
	w, _ := a.Nearest(length)
	gaps := max(w.Fasteners-1, 0)
	apart := math.Abs(a.Pitch-b.Pitch) * float64(gaps)
	say.Key, say.Account = "pitch", driftAccount(p, a, b, gaps, apart)
	say.Message = func() string {
		return fmt.Sprintf("tape.%s has a pitch of %s and tape.%s one of %s: over the %s of %s they drift %s apart; no more than %s is allowed. "+
			"Take both halves from one tape, or measure the pitches again.", a.Name, fine(p, a.Pitch), b.Name, fine(p, b.Pitch), count(w.Fasteners, a),
			c.Address(), p.Show(apart), p.Show(p.Limit("apart")))
	}
	p.AtMost(apart, "apart", say)
	cutAlike(p, c, w, length, apart, say)
}

// places compares where the metal of the two halves is, from the upper end.
func places(p *rules.Pass, c *model.Closure) {
	a, b := c.Tape, c.OtherTape
	if b == nil {
		b = a
	}
	whole, err := sewing.WholeClosure(p.Garment, c, 0)
	if err != nil {
		p.Cannot(err, rules.Say{Key: "places"})
		return
	}
	w, _ := a.NearestFrom(c.First[0], whole.Length)
	apart, at := 0.0, 0
	for i := range w.Fasteners {
		if off := math.Abs(c.First[0] - c.First[1] + float64(i)*(a.Pitch-b.Pitch)); off > apart {
			apart, at = off, i
		}
	}
	p.AtMost(apart, "apart", rules.Say{Key: "places", Place: c.Stated.Or("first", c.Place), Account: placesAccount(a, b, *c.First, w.Fasteners, apart), Message: func() string {
		return fmt.Sprintf("fastener %d of %s is %s from the upper end on the one half and %s on the other: %s apart; no more than %s is allowed. "+
			"Sew both halves on at the same place.", at+1, c.Address(), p.Show(c.First[0]+float64(at)*a.Pitch), p.Show(c.First[1]+float64(at)*b.Pitch),
			p.Show(apart), p.Show(p.Limit("apart")))
	}})
}

// cutAlike checks whether the second half can be cut where the first is, once the
// halves are in step. Where the first cannot be cut either, tape-cut reports it.
func cutAlike(p *rules.Pass, c *model.Closure, w model.Window, length, apart float64, say rules.Say) {
	if apart > p.Limit("apart") {
		return
	}
	other := c.OtherTape.Window(w.Fasteners)
	say.Under = []rules.Under{{Rule: "tape-cut", Subject: c.Address()}}
	say.Key, say.Account = "cut", cutAccount(p.Garment, c, c.OtherTape)
	say.Message = func() string {
		text := fmt.Sprintf("%s is %s long; tape.%s can be cut there with %s, but tape.%s cannot: ", c.Address(), p.Show(length), c.Tape.Name,
			count(w.Fasteners, c.Tape), c.OtherTape.Name)
		if other.High < other.Low {
			return text + "its metal leaves no gap to cut in. Look at its head and clear again."
		}
		return text + fmt.Sprintf("it can be cut from %s to %s with as many. Draft the closure to a length that both can have.", p.Show(other.Low), p.Show(other.High))
	}
	p.Within(length, model.Range{Low: other.Low, High: other.High}, "", say)
}

// fine writes a pitch to the hundredth of a millimetre: two that differ by less
// than a tenth are what the rule is about.
func fine(p *rules.Pass, mm float64) string {
	if p.Garment.Unit == model.Inch {
		return p.Show(mm)
	}
	return model.Decimal(mm, 2) + " mm"
}
