package draft

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/rules"
)

// small is a kind of figure of which it is known how large it can be, whatever the
// body and the draft. It has two limits, least-NAME and greatest-NAME.
type small struct {
	name, text string  // what the two limits limit
	are        string  // for a message, with a place for either limit
	low, high  float64 // in millimetres
	source     string
}

var (
	buttonSize      = small{"button", "diameter of a button", "buttons are from %s to %s across", 4, 80, "common practice, no source"}
	buttonThickness = small{"button-thickness", "thickness of a button", "buttons are from %s to %s thick", 0.5, 30, "common practice, no source"}
	extension       = small{"extension", "length by which an edge runs on past its buttons", "edges run on past their buttons by %s to %s", 3, 150, "common practice, no source"}
	lap             = small{"lap", "length by which closed edges lap", "closed edges lap by %s to %s", 3, 500, "common practice, no source"}
	pitch           = small{"pitch", "pitch of a fastener tape", "tapes have a pitch of %s to %s", 5, 110, "common practice, no source; tapes met have 12.7 to 51 mm"}
	metal           = small{"metal", "length of metal along a fastener tape", "the metal of a fastener is from %s to %s long", 1, 40, "common practice, no source"}
	clearOfMetal    = small{"clear", "space between metal and a cut", "metal is kept clear of a cut by %s to %s", 0.2, 15, "common practice, no source"}
	closedWidth     = small{"tape-width", "width of a closed tape", "closed tapes are from %s to %s wide", 5, 150, "common practice, no source"}
	notchDepth      = small{"notch", "depth of a notch", "notches are from %s to %s deep", 1, 20, "common practice, no source; the allowance, which they stay within, is mostly 6 to 25 mm"}
	clothThickness  = small{"cloth", "thickness of a cloth", "cloths are from %s to %s thick", 0.03, 10, "common practice, no source"}
)

// smallLimits are the limits of all small figures.
func smallLimits() []rules.Limit {
	var out []rules.Limit
	for _, s := range []small{buttonSize, buttonThickness, extension, lap, pitch, metal, clearOfMetal, closedWidth, notchDepth, clothThickness} {
		out = append(out,
			rules.Limit{Name: "least-" + s.name, Value: s.low, Unit: rules.Millimetres, Text: "the least " + s.text + ", but for none", Source: s.source},
			rules.Limit{Name: "greatest-" + s.name, Value: s.high, Unit: rules.Millimetres, Text: "the greatest " + s.text, Source: s.source})
	}
	return out
}

// judge looks at one figure that a block states. Nothing is a figure of its own,
// and one that is sound says nothing about how sound.
func (s small) judge(p *rules.Pass, mm float64, what string, place model.Place, under ...rules.Under) {
	if !(mm > 0) {
		return
	}
	meant := model.Range{Low: p.Limit("least-" + s.name), High: p.Limit("greatest-" + s.name)}
	within(p, mm, meant, rules.Say{Key: s.name, Place: place, Under: under, Message: func() string {
		text := fmt.Sprintf("%s is %s; "+s.are+".", what, p.Show(mm), p.Show(meant.Low), p.Show(meant.High))
		if place.File != p.Garment.Place.File {
			return text + " Look at the figure and at its unit." // a house has units of its own
		}
		return text + " " + read(p, mm, meant)
	}})
}

// closureUnits looks at what a closure states, and at its tapes where no closure
// before it has them.
func closureUnits(p *rules.Pass, c *model.Closure, seen map[model.Place]bool) {
	p.NothingHere()
	at := func(attribute string) model.Place { return c.Stated.Or(attribute, c.Place) }
	buttonSize.judge(p, c.Diameter, "the diameter of the buttons of "+c.Address(), at("diameter"))
	buttonThickness.judge(p, c.Thickness, "the thickness of the buttons of "+c.Address(), at("thickness"))
	extension.judge(p, c.Extension, "the extension of "+c.Address(), at("extension"))
	lap.judge(p, c.Lap, "the lap of "+c.Address(), at("lap"))
	for _, t := range []*model.Tape{c.Tape, c.OtherTape} {
		if t == nil || seen[t.Place] {
			continue
		}
		seen[t.Place] = true
		at := func(attribute string) model.Place { return t.Stated.Or(attribute, t.Place) }
		pitch.judge(p, t.Pitch, "the pitch of tape."+t.Name, at("pitch"))
		metal.judge(p, t.Head, "the metal of tape."+t.Name, at("head"))
		clearOfMetal.judge(p, t.Clear, "what tape."+t.Name+" keeps clear of metal", at("clear"))
		if odd := mostOdd(t.WidthClosed, closedWidth); len(t.WidthClosed) > 0 {
			closedWidth.judge(p, odd, "the closed width of tape."+t.Name, at("width_closed"))
		}
	}
}

// mostOdd is the figure of a list that is farthest from what can be, or any where
// all can be: a list in the wrong unit is one slip.
func mostOdd(list []float64, s small) float64 {
	odd, times := math.NaN(), 0.0
	for _, v := range list {
		if off := max(s.low/v, v/s.high); v > 0 && off > times {
			odd, times = v, off
		}
	}
	return odd
}

// clothUnits looks at the cloth of a layer, once for layers of one cloth.
func clothUnits(p *rules.Pass, l *model.Layer) {
	p.NothingHere()
	clothThickness.judge(p, l.Fabric.Thickness, "the thickness of fabric."+l.Fabric.Name, l.Fabric.Stated.Or("thickness", l.Fabric.Place))
}

// notchUnits looks at a depth that notches of the garment have.
func notchUnits(p *rules.Pass, n *model.Notch) {
	p.NothingHere()
	notchDepth.judge(p, n.Depth, "the depth of "+n.Address(), n.Deep, rules.Under{Rule: "notch-depth", Subject: n.Address()})
}
