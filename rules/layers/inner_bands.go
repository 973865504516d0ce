package layers

import (
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/layering"
	"understitch/rules"
)

// band is a stretch of height that an inside is judged over: from a level to the
// next, or from the highest or the lowest level on to where one of the pieces
// ends. There the clearance of that level is carried on as far as it lets the
// inner piece be the wider one; room that it asks for is not asked for beyond.
type band struct {
	upper, lower *model.Level      // nil where it has no end at a level
	top, bottom  float64           // heights of the outer piece's frame
	low          float64           // the least clearance meant
	from         *model.LevelRange // the clearance that is asked for from a level down, where it holds all along the band; nil without one
	short        float64           // by how much the widths at its levels fall short of what is asked
}

// at is a level that the band ends at, the upper of two.
func (b band) at() *model.Level {
	if b.upper != nil {
		return b.upper
	}
	return b.lower
}

func (b band) beyond() bool { return b.upper == nil || b.lower == nil }

func (b band) key() string {
	switch {
	case b.upper == nil:
		return "above " + b.lower.Name
	case b.lower == nil:
		return "below " + b.upper.Name
	}
	return b.upper.Name + " to " + b.lower.Name
}

func (b band) where() string {
	switch {
	case b.upper == nil:
		return "above the " + b.lower.Name + " level"
	case b.lower == nil:
		return "below the " + b.upper.Name + " level"
	}
	return "between the levels " + b.upper.Name + " and " + b.lower.Name
}

// several reports whether pieces are taken together on one of the sides.
func (n *laying) several() bool { return len(n.inside.Outer) > 1 || len(n.inside.Inner) > 1 }

// bands are those between neighbouring levels, then the ones above the highest
// and below the lowest, as far as both pieces reach, or where several are taken
// together as far as all are sewn to each other.
func (n *laying) bands() []band {
	var out []band
	add := func(upper, lower *model.Level, top, bottom float64) {
		b := band{upper: upper, lower: lower, top: top, bottom: bottom, low: math.Inf(1)}
		for i, l := range n.levels {
			if l == upper || l == lower {
				b.low, b.short = math.Min(b.low, n.inside.Allowed(l).Low), math.Max(b.short, n.short[i])
			}
		}
		if upper != nil {
			b.from = n.inside.From(upper)
		}
		if b.beyond() && b.from == nil {
			b.low = math.Min(b.low, 0) // where the layers may run together in an edge they share
			b.low -= n.openedBeyond(b)
		}
		if bottom-top > 1 && !math.IsInf(b.low, -1) {
			out = append(out, b)
		}
	}
	for i := 1; i < len(n.levels); i++ {
		top, okTop := n.inside.Outer.LevelY(n.levels[i-1])
		bottom, okBottom := n.inside.Outer.LevelY(n.levels[i])
		if okTop && okBottom {
			add(n.levels[i-1], n.levels[i], top, bottom)
		}
	}
	first, last := n.levels[0], n.levels[len(n.levels)-1]
	if n.several() {
		for _, l := range []*model.Level{first, last} {
			y, ok := n.inside.Outer.LevelY(l)
			if !ok {
				continue
			}
			if l == first {
				add(nil, l, y-n.sewnBeyond(l, true), y)
			}
			if l == last {
				add(l, nil, y, y+n.sewnBeyond(l, false))
			}
		}
		return out
	}
	highest, okFirst := n.inside.Outer.LevelY(first)
	lowest, okLast := n.inside.Outer.LevelY(last)
	if top, bottom, err := layering.CommonHeights(n.inside, n.Garment); err == nil && okFirst && okLast {
		add(nil, first, top, highest)
		add(last, nil, lowest, bottom)
	}
	return out
}

// openedBeyond is how much wider the inner side may be beyond the outermost level
// than at it, by what its pleats let out there.
func (n *laying) openedBeyond(b band) float64 {
	own, ok := n.inside.Inner.LevelY(b.at())
	y, okOuter := n.inside.Outer.LevelY(b.at())
	if !ok || !okOuter {
		return 0
	}
	sum := 0.0
	for _, p := range n.inside.Inner {
		at := p.Opened(own)
		sum += max(p.Opened(own+b.top-y)-at, p.Opened(own+b.bottom-y)-at, 0) * p.Times()
	}
	return sum / min(n.inside.Outer.Times(), n.inside.Inner.Times())
}

// lame reports, as a look that is not possible, a dart in the band whose legs
// differ: what such a dart takes out is not known.
func (n *laying) lame(b band) bool {
	for i, pieces := range []model.Group{n.inside.Outer, n.inside.Inner} {
		for _, p := range pieces {
			for _, d := range p.Darts {
				if d.On == nil || !lame(d, n.Limit("legs")) {
					continue
				}
				reaches := slices.ContainsFunc(d.Legs(), func(l model.Legs) bool {
					high, low := min(l.Tip.Y, l.A.Y, l.B.Y), max(l.Tip.Y, l.A.Y, l.B.Y)
					return low > b.top && high < b.bottom
				})
				if i == 1 && !n.inside.OneFrame() || reaches {
					n.Cannot(fmt.Errorf("the legs of %s differ, so what it takes out %s is not known", d.Address(), b.where()),
						rules.Say{Key: b.key(), Place: layering.AllowedAt(n.inside, b.at())})
					return true
				}
			}
		}
	}
	return false
}

// between seeks the least clearance in a band, where heights are the same in
// both pieces; it reports whether that is at fault. Beyond the levels the widths
// are compared as far as both pieces have sides.
func (n *laying) between(b band) bool {
	if !n.inside.OneFrame() || !layering.SameHalves(n.inside) {
		if b.from != nil {
			n.Cannot(fmt.Errorf("%s and %s are not drawn in one frame, so that their room %s is not known", n.inside.Outer.Address(), n.inside.Inner.Address(), b.where()),
				rules.Say{Key: b.key(), Place: b.from.Place})
		}
		return false
	}
	top, bottom := b.top, b.bottom
	switch {
	case b.upper == nil:
		top = layering.SidesEnd(n.inside, n.Garment, bottom, top)
	case b.lower == nil:
		bottom = layering.SidesEnd(n.inside, n.Garment, top, bottom)
	}
	if bottom-top <= 1 {
		return false
	}
	say := rules.Say{Key: b.key(), Place: layering.AllowedAt(n.inside, b.at()), Related: n.pieces()}
	least, err := layering.LeastBetween(n.inside, top, bottom)
	if err != nil {
		n.Cannot(err, say)
		return false
	}
	broken := b.low-least.Low > n.Limit("beyond")
	if broken && b.low-least.Low <= b.short+n.Limit("beyond") {
		return true // the levels themselves have told it
	}
	meant := model.AnyFrom(b.low)
	darts := n.blame(&say, func() []layering.DartTakes { return layering.DartsAtHeight(n.inside, least.Y) }, least.Low, meant)
	say.Message = func() string {
		place, holds := fmt.Sprintf("%s, %s below the first", b.where(), n.Show(least.Y-b.top)), "from the one to the other"
		if b.beyond() {
			y, _ := n.inside.Outer.LevelY(b.at())
			place, holds = n.Show(math.Abs(least.Y-y))+" "+b.where(), "there"
		}
		return fmt.Sprintf("%s %s (darts closed%s); %s %s asks for %s. %s%s",
			n.compared(least.Low), place, n.halves(), holds, n.inside.Address(), n.clearance(meant), darts, n.mend(least.Low-b.low, darts != ""))
	}
	say.Spot = layering.SideAtHeight(n.inside, least.Y)
	say.Account = leastAccount(n.Pass, n.inside, least, "the top of that stretch", least.Y-b.top)
	n.Within(least.Low, meant, "beyond", say)
	if b.from != nil && !broken && !math.IsInf(b.from.Range.High, 1) {
		return n.widest(b, top, bottom)
	}
	return broken
}

// widest seeks the largest clearance in a band where no more than so much is asked
// for all along it; it reports whether that is at fault.
func (n *laying) widest(b band, top, bottom float64) bool {
	say := rules.Say{Key: b.key() + ", widest", Place: b.from.Place, Related: n.pieces()}
	most, err := layering.GreatestBetween(n.inside, top, bottom)
	if err != nil {
		n.Cannot(err, say)
		return false
	}
	high := b.from.Range.High
	for _, l := range []*model.Level{b.upper, b.lower} {
		if l == nil {
			continue
		}
		high = math.Max(high, n.inside.Allowed(l).High) // a level may ask for more itself
		c, err := layering.ClearanceAt(n.inside, l)
		if err == nil && c > n.inside.Allowed(l).High+n.Limit("beyond") && most.Low <= c+n.Limit("beyond") {
			return true // it is reported at the level
		}
	}
	asked := model.Range{Low: math.Inf(-1), High: high}
	say.Message = func() string {
		y, _ := n.inside.Outer.LevelY(b.upper)
		return fmt.Sprintf("%s %s below the %s level (darts closed%s); from the %s level down %s asks for %s. %s",
			n.compared(most.Low), n.Show(most.Y-y), b.upper.Name, n.halves(), b.from.Level.Name, n.inside.Address(),
			n.clearance(b.from.Range), n.mend(most.Low-high, false))
	}
	say.Spot = layering.SideAtHeight(n.inside, most.Y)
	say.Account = leastAccount(n.Pass, n.inside, most, "the top of that stretch", most.Y-b.top)
	n.Within(most.Low, asked, "beyond", say)
	return most.Low > high+n.Limit("beyond")
}

// lay finds how the inner piece lies on the outer: how far a place at some height
// may be out by what there is to doubt in it.
func (n *laying) lay() (doubt func(y float64) float64, err error) {
	inside := n.inside
	if _, err = layering.LaidOn(inside, n.Garment); err != nil {
		return nil, err
	}
	if !layering.SameHalves(inside) {
		return nil, fmt.Errorf("%s and %s are not drawn as the same part of their layers, so only their widths can be compared", inside.Outer.Address(), inside.Inner.Address())
	}
	return n.shareDoubt()
}

// shareDoubt is what there is to doubt in the share that lays one piece on the
// other, or why it cannot.
func (n *laying) shareDoubt() (doubt func(y float64) float64, err error) {
	inside := n.inside
	off, doubt, err := layering.Doubt(inside, n.Garment)
	if err != nil {
		return nil, err
	}
	if inside.Align != nil {
		for _, s := range slices.Concat(inside.Align.Outer, inside.Align.Inner) {
			if lameDart(s.Edge, n.Limit("legs")) {
				return nil, fmt.Errorf("a dart on %s, by which they are laid together, has legs that differ", s.Edge.Address())
			}
		}
	}
	if off > n.Limit("aligned") {
		return nil, fmt.Errorf("%s, by which they are laid together, differs by %s on the two layers", inside.Align.Address(), n.Show(off))
	}
	return doubt, nil
}

// outlines judges, in each band of whose widths nothing was told, how far the
// inner piece stands out of the outer one it is laid on.
func (n *laying) outlines(bands []band) {
	doubt, err := n.lay()
	if err != nil {
		n.Cannot(err, rules.Say{Key: "outline"})
		return
	}
	worst := 0.0
	for _, b := range bands {
		say := rules.Say{Key: "outline " + b.key(), Place: n.inside.Place, Related: n.pieces()}
		darts, err := n.dartsIn(b)
		if err != nil {
			n.Cannot(err, say)
			continue
		}
		meant := math.Max(0, -b.low) + darts + math.Max(doubt(b.top), doubt(b.bottom))
		var out layering.Beyond
		if b.beyond() {
			level, _ := n.inside.Outer.LevelY(b.at())
			out, err = layering.OutsideBeyond(n.inside, n.Garment, b.top, b.bottom, level)
		} else {
			out.Wider, err = layering.OutsideBetween(n.inside, n.Garment, b.top, b.bottom)
		}
		if err != nil {
			n.Cannot(err, say)
			continue
		}
		outside := out.Wider.High
		switch past := meant + n.Limit("beyond"); {
		case outside > past && b.beyond() && outside <= worst+n.Limit("beyond"):
			continue // it goes on from between the levels, where it was told
		case outside > past:
			worst = math.Max(worst, outside)
		case out.Longer > past:
			n.Cannot(fmt.Errorf("%s, %s stands %s out over %s, which no share lays on it: whether it is meant to lie so is not known",
				b.where(), n.inside.Inner.Address(), n.Show(out.Longer), out.Over.Address()), say)
			continue
		}
		say.Message = func() string {
			agree := ", where their widths agree"
			if b.beyond() {
				agree = ""
			}
			return fmt.Sprintf("%s stands %s out of %s %s%s; no more than %s is meant. Look how one is drawn on the other, and move the edge that stands out.",
				n.inside.Inner.Address(), n.Show(outside), n.inside.Outer.Address(), b.where(), agree, n.Show(meant))
		}
		say.Account = outsideAccount(n.inside, b.low, darts, math.Max(doubt(b.top), doubt(b.bottom)), outside)
		n.Within(outside, model.Range{Low: math.Inf(-1), High: meant}, "beyond", say)
	}
}

// dartsIn is what the inner piece's darts take out more than the outer's in a
// band: by so much it may stand out as it lies on paper.
func (n *laying) dartsIn(b band) (float64, error) {
	y, _ := n.inside.Outer.LevelY(b.at())
	own, ok := n.inside.Inner.LevelY(b.at())
	if !ok {
		return 0, fmt.Errorf("%s has no %s level of its own", n.inside.Inner.Address(), b.at().Name)
	}
	top, bottom, lower := own+b.top-y, own+b.bottom-y, y-own
	if b.upper != nil && b.lower != nil {
		if below, ok := n.inside.Inner.LevelY(b.lower); ok && math.Abs(below-bottom) > 1 {
			bottom, lower = below, model.Unknown() // the levels lie farther apart in one frame than in the other
		}
	}
	return layering.DartsBetween(n.inside, top, bottom, lower)
}

// lame reports whether the legs of a dart differ by more than so much, in
// millimetres: what it takes out is then not known.
func lame(d *model.Dart, most float64) bool {
	return slices.ContainsFunc(d.Legs(), func(l model.Legs) bool {
		a, b := l.Lengths()
		return math.Abs(a-b) > most
	})
}

// lameDart reports whether the legs of a dart on an edge differ by more than so much.
func lameDart(e *model.Edge, most float64) bool {
	return slices.ContainsFunc(e.Piece.Darts, func(d *model.Dart) bool { return d.On == e && lame(d, most) })
}
