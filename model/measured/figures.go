package measured

import (
	"understitch/model"
	"understitch/model/layering"
	"understitch/model/measuring"
	"understitch/model/sewing"
)

// The figures of the document one by one, for readers who need few of them and
// would not wait for all.

// Girths are a layer's girths in millimetres, at the levels where it has one.
func Girths(g *model.Garment, l *model.Layer) Levels {
	out := Levels{}
	for _, level := range g.Levels {
		girth, err := measuring.Girth(g, l, level)
		out.put(level, girth, err)
	}
	return out
}

// Widths are a piece's widths in millimetres at the levels it reaches, darts closed;
// of a piece on a fold, those of the drawn half.
func Widths(g *model.Garment, p *model.Piece) Levels {
	out := Levels{}
	for _, level := range g.Levels {
		w, err := measuring.WidthOf(p, level)
		out.put(level, w.Net, err)
	}
	return out
}

// Area of a piece in square millimetres, inside the stitch line as drawn: darts
// open, of a piece on a fold the drawn half. It is nil where nothing is drawn.
func Area(p *model.Piece) *float64 {
	region, err := p.Region()
	if err != nil {
		return nil
	}
	return known(region.Area())
}

// Perimeter of a piece in millimetres, round the stitch line as drawn, darts
// open and the fold counted in. It is nil where a length is not known.
func Perimeter(p *model.Piece) *float64 {
	round := 0.0
	for _, e := range p.Edges {
		round += e.Length()
	}
	return known(round)
}

// OfEdge measures an edge, in millimetres.
func OfEdge(e *model.Edge) Edge {
	out := Edge{Length: known(e.Length()), SewnLength: known(e.SewnLength()), Allowance: known(e.Allowance.Width)}
	if e.Traced != nil {
		out.TracedFrom = e.Traced.Of.Address()
	}
	if e.Drafted != nil {
		out.Drafted = known(e.Drafted.Length())
	}
	return out
}

// OfDart measures a dart, in millimetres.
func OfDart(d *model.Dart) Dart {
	out := Dart{Intake: known(d.Intake)}
	if legs := d.Legs(); len(legs) > 0 {
		a, b := legs[0].Lengths()
		out.Legs = &[2]float64{a, b}
	}
	return out
}

// OfPleat measures a pleat or a tuck, in millimetres.
func OfPleat(d *model.Dart) Pleat {
	out := Pleat{Kind: d.Pleat.Kind, Depth: known(d.Pleat.Depth), TakesUp: known(d.Intake)}
	if m, ok := d.Mouth(); ok {
		out.Drawn = known(m.To - m.From)
	}
	return out
}

// OfNotch measures where a notch lies: in millimetres along its edge from where
// that begins, and on the paper, where y runs downward.
func OfNotch(n *model.Notch) Notch {
	out := Notch{On: n.On.Name}
	at, _, err := n.Position()
	out.At = figure(at, err)
	if mark, err := n.Mark(); err == nil {
		out.X, out.Y = &mark.X, &mark.Y
	}
	return out
}

// OfSeam measures the two sides of a seam, in millimetres, darts closed.
func OfSeam(g *model.Garment, s *model.Seam) Pair { return join(g, g.JoinOf(s)) }

// OfShare measures the two sides of edges that layers share, in millimetres, darts
// closed.
func OfShare(g *model.Garment, s *model.Share) Share {
	out := Share{Pair: pair(sewing.ShareWalks(g, s))}
	outer, inner, _, err := sewing.ShareWalks(g, s)
	if s.Match != model.Eased || err != nil {
		return out
	}
	spread, err := sewing.SpreadOf(s, outer, inner)
	if err != nil {
		return out
	}
	out.Ease = &Ease{Length: spread.Ease, Percent: known(spread.Percent()), Spread: []EaseStretch{}}
	for _, st := range spread.Stretches {
		out.Ease.Spread = append(out.Ease.Spread, EaseStretch{
			From: st.From.Name, To: st.To.Name, Outer: st.Outer, Inner: st.Inner, Length: st.Ease(), Percent: known(st.Percent()),
		})
	}
	return out
}

// OfClosure measures the two edges of a closure and what it adds when closed, in
// millimetres; an edge that is drawn by its half counts both.
func OfClosure(g *model.Garment, c *model.Closure) Closure {
	out := Closure{Pair: join(g, g.JoinOf(c))}
	first, errFirst := sewing.WholeClosure(g, c, 0)
	second, errSecond := sewing.WholeClosure(g, c, 1)
	if out.Sides != nil && errFirst == nil && errSecond == nil {
		difference := first.Length - second.Length
		out.Sides, out.Difference = &[2]float64{first.Length, second.Length}, &difference
	}
	if c.Tape != nil {
		out.Across = figure(sewing.Across(c))
	}
	if whole, err := sewing.WholeClosure(g, c, 0); err == nil && c.Tape != nil && c.First != nil {
		w, _ := c.Tape.NearestFrom(c.First[0], whole.Length)
		out.Metal = c.Tape.Metal(c.First[0], w.Fasteners)
	}
	if c.Gap != nil {
		if serves := measuring.Serves(measuring.Needs(g, c, nil), *c.Gap); serves.Low <= serves.High {
			out.Gap = &[2]float64{serves.Low, serves.High}
		}
	}
	return out
}

func join(g *model.Garment, j *model.Join) Pair {
	a, b, err := sewing.Walks(g, j)
	return pair(a, b, sewing.Way(j), err)
}

func pair(a, b *sewing.Walk, foundBy string, err error) Pair {
	if err != nil {
		return Pair{}
	}
	out := Pair{Way: "along", FoundBy: foundBy}
	if a.Runs[0].Backward() != b.Runs[0].Backward() {
		out.Way = "against"
	}
	if model.Known(a.Length) && model.Known(b.Length) {
		difference := a.Length - b.Length
		out.Sides, out.Difference = &[2]float64{a.Length, b.Length}, &difference
	}
	return out
}

// OfElastic measures what an elastic is sewn to, and its own length, in
// millimetres.
func OfElastic(g *model.Garment, e *model.Elastic) Elastic {
	whole, err := sewing.WholeOf(g, e.Edges)
	out := Elastic{Edges: figure(whole.Length, err), Length: known(e.Length)}
	parts, _, _ := sewing.Sections(g, e)
	for _, s := range parts {
		if s.Takes.High-s.Takes.High != 0 || s.Takes.Low-s.Takes.Low != 0 {
			continue // open at one end
		}
		out.Sections = append(out.Sections, Section{s.Along(), s.Edges, [2]float64{s.Takes.Low, s.Takes.High}})
	}
	return out
}

// OfBone measures the line that a bone lies along, and its own length, in
// millimetres.
func OfBone(b *model.Bone) Bone { return Bone{figure(b.Along.SewnLength()), known(b.Length)} }

// Clearances are the room in an inside at the levels that both pieces reach, in
// millimetres; negative where the inner piece is the wider.
func Clearances(g *model.Garment, n *model.Inside) Levels {
	out := Levels{}
	for _, level := range layering.Compared(n, g) {
		c, err := layering.ClearanceAt(n, level)
		out.put(level, c, err)
	}
	return out
}

// Least is the least room of an inside anywhere between the levels compared, in
// millimetres; nil where it cannot be had.
func Least(g *model.Garment, n *model.Inside) *float64 {
	top, bottom, ok := between(g, n)
	if !ok || !n.OneFrame() {
		return nil
	}
	least, err := layering.LeastBetween(n, top, bottom)
	return figure(least.High, err)
}

// Outside is how far the inner piece of an inside stands outside the outer one at
// most, in millimetres; nil where it cannot be had.
func Outside(g *model.Garment, n *model.Inside) *float64 {
	top, bottom, ok := between(g, n)
	if !ok {
		return nil
	}
	if len(n.Outer) > 1 || len(n.Inner) > 1 {
		return nil // of several pieces there is no one outline
	}
	if beside, err := layering.BesideEachOther(n, g); err != nil || beside {
		return nil
	}
	bound, err := layering.OutsideBetween(n, g, top, bottom)
	return figure(bound.High, err)
}

// between is the stretch between the first and the last level at which the
// pieces of an inside can be compared.
func between(g *model.Garment, n *model.Inside) (top, bottom float64, ok bool) {
	levels := layering.Compared(n, g)
	if len(levels) < 2 || !layering.SameHalves(n) {
		return 0, 0, false
	}
	top, _ = n.Outer.LevelY(levels[0])
	bottom, _ = n.Outer.LevelY(levels[len(levels)-1])
	return top, bottom, true
}
