package layers

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/measuring"
	"understitch/model/reckoned"
	"understitch/model/sewing"
	"understitch/rules"
)

// shiftAccount tells how far something of an inner dart lies from that of the outer.
func shiftAccount(p *rules.Pass, a layering.DartAnswer, s layering.DartShift, what string) rules.Account {
	return func(l *reckoned.Lines) {
		if s.Meant.Low != 0 || s.Meant.High != 0 {
			l.Say(1, "the pieces and the darts differ by %s there in any case", p.Garment.ShowRange(s.Meant))
		}
		l.Differ(rules.Millimetres, 0, s.Inner, fmt.Sprintf(what, a.Inner.Address()), s.Outer, fmt.Sprintf(what, a.Outer.Address()))
	}
}

// where is what the place of a dart is told by.
func where(a layering.DartAnswer, lower bool) string {
	switch {
	case a.Outer.On != nil:
		return "the middle of the mouth of %s, along the edge, darts closed"
	case lower:
		return "the widest place of %s, down the sheet"
	}
	return "the widest place of %s, across the sheet"
}

// moreRound tells how much more one layer measures round at a level than another.
func moreRound(p *rules.Pass, more, less *model.Layer, level *model.Level, by float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Girth(1, 1, p.Garment, more, level)
		l.Girth(1, -1, p.Garment, less, level)
		l.Sum(0, by, "is how much more %s measures round than %s", more.Address(), less.Address())
	}
}

func turnAccount(p *rules.Pass, outer, inner *model.Layer, level *model.Level, room, needed float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, outer.Fabric.Thickness, "the thickness of fabric.%s", outer.Fabric.Name)
		l.Beside(1, inner.Fabric.Thickness, "the thickness of fabric.%s", inner.Fabric.Name)
		l.Beside(0, needed, "half of both together, twice 3.14 times, which is needed to go round")
		moreRound(p, outer, inner, level, room)(l)
	}
}

func fallAccount(g *model.Garment, outer, inner *model.Layer, upper, lower measuring.RoomAt, meant model.Range) rules.Account {
	return func(l *reckoned.Lines) {
		l.Room(2, 1, g, outer, inner, lower)
		l.Room(2, -1, g, outer, inner, upper)
		change := lower.Room() - upper.Room()
		l.Sum(1, change, "is how much more room there is at the %s level than at the %s level", lower.Level.Name, upper.Level.Name)
		l.Off(0, change, meant, g.ShowRange(meant))
	}
}

func hemAccount(d layering.HemDrop) rules.Account {
	return func(l *reckoned.Lines) {
		l.Add(1, d.OuterDown, "%s down to the hem, %s", d.Outer.Address(), d.From)
		l.Add(1, -d.InnerDown, "less %s down to the hem", d.Inner.Address())
		l.Sum(0, d.Drop, "is how far the inner hem ends above the outer")
	}
}

func reachAccount(p *rules.Pass, layer *model.Layer, level *model.Level, reach float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(0, level.Body, "the body there")
		l.Girth(1, 1, p.Garment, layer, level)
		l.BesideIn(rules.Percent, 1, layer.Fabric.StretchAcross, "is what fabric.%s stretches by across", layer.Fabric.Name)
		l.Result(0, reach, "is the girth stretched by that")
	}
}

func shrinkAccount(worst sewing.Shrinks, outer, inner *model.Layer, most float64) rules.Account {
	return func(l *reckoned.Lines) {
		exact := worst.Outer.Low == worst.Outer.High && worst.Inner.Low == worst.Inner.High
		for _, layer := range []*model.Layer{outer, inner} {
			f := layer.Fabric
			if f == nil {
				continue
			}
			if f.Washed {
				l.Say(2, "fabric.%s is washed before it is cut and shrinks no more", f.Name)
				continue
			}
			l.BesideIn(rules.Percent, 2, f.ShrinkAlong, "is what fabric.%s shrinks by along the grain", f.Name)
			l.BesideIn(rules.Percent, 2, f.ShrinkAcross, "across it")
		}
		along := func(layer *model.Layer) string {
			return fmt.Sprintf("%s along %s, as it lies to the grain", layer.Address(), worst.Thing.Address())
		}
		if exact {
			l.Differ(rules.Percent, 0, worst.Outer.Low, along(outer), worst.Inner.Low, along(inner))
			return
		}
		l.Say(1, "%s: %s", along(outer), percents(worst.Outer))
		l.Say(1, "%s: %s", along(inner), percents(worst.Inner))
		l.ResultIn(rules.Percent, 0, most, "is the most by which they can differ")
	}
}

// lengthAccount lays both sides of a share open.
func (s *sharing) lengthAccount() rules.Account {
	return func(l *reckoned.Lines) {
		_, _, way, _ := sewing.ShareWalks(s.Garment, s.share)
		l.Sides(0, s.outer, s.inner, sewing.SideText(s.share.Outer), sewing.SideText(s.share.Inner), way)
	}
}

// placeAccount tells how far a place along the outer side lies from one along the
// inner.
func (s *sharing) placeAccount(outer string, a float64, inner string, b float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Misplaced(s.Garment, a, outer+" along the share, darts closed", b, inner+" along its own side", s.longer)
	}
}

func (s *sharing) shapeAccount(part sewing.SharedPart, apart float64) rules.Account {
	return func(l *reckoned.Lines) {
		a, b := part.Lengths()
		l.Beside(1, a, "%s", s.partText(s.outer, part.FirstA, part.LastA))
		l.Beside(1, b, "%s", s.partText(s.inner, part.FirstB, part.LastB))
		l.Result(0, apart, "is the most that two places equally far along can stand apart, one laid on the other as closely as can be")
	}
}

func anglesAccount(outer float64, atOuter string, inner float64, atInner string) rules.Account {
	return func(l *reckoned.Lines) {
		l.Differ(rules.Degrees, 0, outer, "the corner where "+atOuter, inner, "the corner where "+atInner)
	}
}

func turnedAccount(share *model.Share, most float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(1, "%s laid on %s as it will be sewn", sewing.SideText(share.Inner), sewing.SideText(share.Outer))
		l.Result(0, most, "is the most that two places equally far along can stand apart, one laid on the other as closely as can be")
	}
}

// clearanceAccount lays the widths of an inside at a level open.
func clearanceAccount(g *model.Garment, inside *model.Inside, level *model.Level) rules.Account {
	return func(l *reckoned.Lines) { l.Clearance(g, inside, level) }
}

// leastAccount lays open the place at which an inside's pieces come closest.
func leastAccount(p *rules.Pass, inside *model.Inside, least layering.Least, from string, down float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(0, down, "below %s they come closest", from)
		outer, inner, err := layering.WidthsAtHeight(inside, least.Y)
		if err != nil {
			l.Result(0, least.Low, "is the least clearance there")
			return
		}
		as, bs := inside.Outer.Times(), inside.Inner.Times()
		outer, inner = outer*as/math.Min(as, bs), inner*bs/math.Min(as, bs)
		l.Add(1, outer, "%s across there, darts closed", inside.Outer.Address())
		l.Add(1, -inner, "less %s", inside.Inner.Address())
		l.Add(1, least.Low-(outer-inner), "for what may be less near by: the search stops at a hundredth of a millimetre")
		l.Sum(0, least.Low, "is the least clearance")
	}
}

// outsideAccount tells how far an inner piece stands out of its outer one, and what
// of that is meant.
func outsideAccount(inside *model.Inside, low, darts, doubt, outside float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, math.Max(0, -low), "it may be wider by what its inside says")
		l.Beside(1, darts, "more its darts take out than the outer's, which stands out until they are closed")
		l.Beside(1, doubt, "is to be doubted in how they are laid together")
		l.Result(0, outside, "is how far %s stands out of %s, laid on it", inside.Inner.Address(), inside.Outer.Address())
	}
}

// easeAccount tells how the ease of a share is made up, and how it is spread.
func (s *sharing) easeAccount(spread sewing.EaseSpread, ease float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Walk(1, 1, s.outer, "the outer side")
		l.Walk(1, -1, s.inner, "the inner side")
		if off := spread.Ease - ease; off != 0 {
			l.Add(1, -off, "less what lies outside the stretch that takes the ease")
		}
		l.Sum(0, ease, "is the ease")
		l.Spread(1, s.Garment, spread)
	}
}

// betweenAccount tells how long both sides of an eased share are between two marks.
func betweenAccount(from, to sewing.EaseMark) rules.Account {
	return func(l *reckoned.Lines) {
		l.Differ(rules.Millimetres, 0, math.Abs(to.Outer-from.Outer), fmt.Sprintf("the outer side from %s to %s", from.Name, to.Name),
			math.Abs(to.Along-from.Along), "the inner side there")
	}
}

// percentAccount tells what share of its stretch an ease is.
func percentAccount(ease, of, percent float64, what string) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, ease, "the ease")
		l.Beside(1, of, "%s, on the inner side", what)
		l.ResultIn(rules.Percent, 0, percent, "is the ease as a share of that")
	}
}
