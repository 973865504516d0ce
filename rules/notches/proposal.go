package notches

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

// proposal is the place along its edge that a notch is to be moved to, and why
// there.
type proposal struct {
	along   float64
	level   *model.Level // it marks this one
	partner *model.Notch // it meets this one there
	clear   bool         // it is the nearest place but for what it must keep clear of
}

// placeFor finds where a notch belongs that lies on no place of its edge as it is
// now: nearest is the place on the edge that lies nearest to it.
func placeFor(p *rules.Pass, n *model.Notch, nearest float64) proposal {
	if level, along := sewing.MeantLevel(n, p.Garment.Levels, p.Limit("off")); level != nil {
		return proposal{along: along, level: level}
	}
	for _, m := range sewing.Meetings(p.Garment, n) {
		if model.Known(m.Along) && (!model.Known(m.Off) || math.Abs(m.Off) > p.Limit("off")) && !sewing.OffLine(m.Partner, p.Limit("off")) {
			return proposal{along: m.Along, partner: m.Partner}
		}
	}
	if clear, ok := sewing.ClearPlace(n, nearest, p.Limit("clear")); ok && math.Abs(clear-nearest) > p.Limit("off") {
		return proposal{along: clear, clear: true}
	}
	return proposal{along: nearest}
}

// says tells the place, with its point where the edge is drawn.
func (to proposal) says(p *rules.Pass, n *model.Notch) string {
	place := p.Show(to.along) + " along it"
	if n.On.Drawn() {
		at, unit := n.On.Path.At(to.along), p.Garment.Unit
		place += fmt.Sprintf(", at [%s, %s]", unit.Bare(at.X), unit.Bare(at.Y))
	}
	switch {
	case to.level != nil:
		return fmt.Sprintf("The %s level, which it marks, crosses the line %s.", to.level.Name, place)
	case to.partner != nil:
		return fmt.Sprintf("It meets %s %s.", to.partner.Address(), place)
	case to.clear:
		return fmt.Sprintf("The nearest place on the line that keeps %s clear of corners, darts and other notches is %s.", p.Show(p.Limit("clear")), place)
	}
	return fmt.Sprintf("The nearest place on the line is %s.", place)
}
