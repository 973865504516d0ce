package layering

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/measuring"
)

// Least is a proven span for the smallest clearance between two heights: the
// true value lies in [Low, High], and High is met at the height Y.
type Least struct{ Low, High, Y float64 }

// leastTolerance is how closely the smallest clearance is enclosed.
const leastTolerance = 0.01

// corner is how far from an outline's corner, in millimetres, heights are
// looked at one by one instead of enclosed: within it the width may jump.
const corner = 1e-5

// heights are two heights of a draft, the upper first.
type heights struct{ top, bottom float64 }

// rooms are what was found of an inside between two heights.
type rooms struct {
	least   map[heights]*model.Once[Least]
	outside map[heights]*model.Once[curve.Bound]
}

// mostBands is how many bands are looked at before giving up: a hundred times
// what a garment's pieces need.
const mostBands = 100_000

// LeastBetween encloses the smallest width of the outer piece less that of the
// inner, darts closed, at any height from top to bottom; both pieces lie in one
// frame. Between two heights every boundary stays as close to its chord as its
// arc length h and chord c allow, sqrt(h²-c²)/2 (a point that is no further
// than its share of h from either end lies no further from the chord's point at
// that share); the spans are halved where that leaves room for doubt.
func LeastBetween(n *model.Inside, top, bottom float64) (Least, error) {
	return model.OnceAt(&model.In[rooms](&n.Store).least, heights{top, bottom}, func() (Least, error) { return least(n, top, bottom) })
}

func least(n *model.Inside, top, bottom float64) (Least, error) {
	both := pair{n.Outer, n.Inner}
	return leastOf(n, both.members(), both.heights(top, bottom))
}

// GreatestBetween encloses the largest clearance in the same way: the true value
// lies in [Low, High], and Low is met at the height Y.
func GreatestBetween(n *model.Inside, top, bottom float64) (Least, error) {
	both := pair{n.Outer, n.Inner}
	members := both.members()
	for i := range members {
		members[i].counts = -members[i].counts
	}
	l, err := leastOf(n, members, both.heights(top, bottom))
	return Least{Low: -l.High, High: -l.Low, Y: l.Y}, err
}

func leastOf(n *model.Inside, members []member, cuts []float64) (Least, error) {
	best := Least{High: math.Inf(1)}
	var open []band
	for i := 1; i < len(cuts); i++ {
		b, err := between(members, cuts[i-1]+corner, cuts[i]-corner)
		if err != nil {
			return Least{}, err
		}
		open = append(open, b)
	}
	for looked := 0; len(open) > 0; looked++ {
		if looked > mostBands {
			return Least{}, model.Missingf("the least clearance of %s cannot be enclosed: look at what is drawn between its levels", n.Address())
		}
		b := open[len(open)-1]
		open = open[:len(open)-1]
		for _, s := range []sample{b.top, b.bottom} {
			if s.clearance < best.High {
				best.High, best.Y = s.clearance, s.y
			}
		}
		if b.low >= best.High-leastTolerance || b.bottom.y-b.top.y < corner {
			continue // nothing in here is lower by more than the tolerance
		}
		middle := (b.top.y + b.bottom.y) / 2
		for _, half := range [][2]float64{{b.top.y, middle}, {middle, b.bottom.y}} {
			h, err := between(members, half[0], half[1])
			if err != nil {
				return Least{}, err
			}
			open = append(open, h)
		}
	}
	best.Low = best.High - leastTolerance
	return best, nil
}

// pair is an outer and an inner group of pieces in one frame.
type pair [2]model.Group

// member is a piece of a pair and how its width counts in the clearance.
type member struct {
	*model.Piece
	counts float64
}

func (p pair) members() []member {
	var out []member
	for i, group := range p {
		for _, piece := range group {
			counts := piece.Times() / group.Times()
			if i == 1 {
				counts = -counts
			}
			out = append(out, member{piece, counts})
		}
	}
	return out
}

// sample is every piece measured at one height.
type sample struct {
	y, clearance float64
	spans        [][]curve.Span // by member
}

// band is the clearance between two heights, with a bound on it.
type band struct {
	top, bottom sample
	low         float64
}

func (b band) ends() float64 { return math.Min(b.top.clearance, b.bottom.clearance) }

// heights are top and bottom and every height between them at which a width
// may bend: the outlines' corners and the darts' ends.
func (p pair) heights(top, bottom float64) []float64 {
	out := []float64{top, bottom}
	add := func(y float64) {
		if y > top && y < bottom {
			out = append(out, y)
		}
	}
	for _, piece := range p.members() {
		for _, e := range piece.Edges {
			add(e.Path.Start().Y)
			add(e.Path.Bounds().Min.Y)
			add(e.Path.Bounds().Max.Y)
		}
		for _, d := range piece.Darts {
			for _, l := range d.Legs() {
				add(l.Tip.Y)
				add(l.A.Y)
				add(l.B.Y)
			}
			if s, ok := d.Strip(); ok {
				from, to := d.FoldedBetween(s)
				add(from)
				add(to)
				add(to + math.Copysign(4*corner, s.Down.Y)) // where it opens the width jumps
			}
		}
	}
	slices.Sort(out)
	kept := out[:1]
	for _, y := range out[1:] {
		if y-kept[len(kept)-1] > 3*corner {
			kept = append(kept, y)
		}
	}
	if len(kept) == 1 {
		kept = append(kept, bottom)
	}
	return kept
}

func at(members []member, y float64) (sample, error) {
	out := sample{y: y, spans: make([][]curve.Span, len(members))}
	for i, m := range members {
		w, err := measuring.WidthAtHeight(m.Piece, y)
		if err != nil {
			return sample{}, err
		}
		out.clearance += m.counts * w.Net
		out.spans[i] = w.Spans
	}
	return out, nil
}

func between(members []member, top, bottom float64) (band, error) {
	a, err := at(members, top)
	if err != nil {
		return band{}, err
	}
	b, err := at(members, bottom)
	if err != nil {
		return band{}, err
	}
	out := band{top: a, bottom: b, low: math.Inf(-1)}
	slack := 0.0
	for i, m := range members {
		s, ok := spanSlack(a.spans[i], b.spans[i], bottom-top)
		if !ok {
			return out, nil // the outline changes its make-up in between: halve
		}
		slack += s * math.Abs(m.counts)
	}
	out.low = out.ends() - slack
	return out, nil
}

// spanSlack bounds how far the boundaries of the spans can stray, sideways,
// from straight lines between two heights.
func spanSlack(a, b []curve.Span, fall float64) (float64, bool) {
	if len(a) != len(b) {
		return 0, false
	}
	sum := 0.0
	for i := range a {
		if a[i].E0 != b[i].E0 || a[i].E1 != b[i].E1 {
			return 0, false
		}
		sum += stray(math.Abs(a[i].S0-b[i].S0), a[i].X0-b[i].X0, fall)
		sum += stray(math.Abs(a[i].S1-b[i].S1), a[i].X1-b[i].X1, fall)
	}
	return sum, true
}

// stray turns the enclosure of an arc about its chord into a sideways distance.
func stray(arc, run, fall float64) float64 {
	chord := math.Hypot(run, fall)
	if arc <= chord {
		return 0
	}
	return math.Sqrt((arc-chord)*(arc+chord)) / 2 * chord / fall
}

// OutsideBetween bounds how far the inner piece's outline stands outside the
// outer piece between two heights of the outer's frame, the inner laid on it by
// the inside's own frame.
func OutsideBetween(n *model.Inside, g *model.Garment, top, bottom float64) (curve.Bound, error) {
	return model.OnceAt(&model.In[rooms](&n.Store).outside, heights{top, bottom}, func() (curve.Bound, error) { return outside(n, g, top, bottom) })
}

func outside(n *model.Inside, g *model.Garment, top, bottom float64) (curve.Bound, error) {
	frame, err := Frame(n, g)
	if err != nil {
		return curve.Bound{}, err
	}
	outer, err := n.Outer[0].Region()
	if err != nil {
		return curve.Bound{}, err
	}
	if e := n.Inner[0].FirstPaper(); e != nil {
		return curve.Bound{}, e.Undrawn()
	}
	var worst curve.Bound
	for _, e := range n.Inner[0].Edges {
		for _, part := range betweenHeights(e.Path.Move(frame), top, bottom) {
			b := outer.Outside(part, leastTolerance)
			worst.Low, worst.High = math.Max(worst.Low, b.Low), math.Max(worst.High, b.High)
		}
	}
	return worst, nil
}

// betweenHeights are the parts of a path that lie between two heights.
func betweenHeights(p *curve.Path, top, bottom float64) []*curve.Path {
	cuts := append([]float64{0, p.Length()}, p.Crossings(top)...)
	cuts = append(cuts, p.Crossings(bottom)...)
	slices.Sort(cuts)
	var out []*curve.Path
	for i := 1; i < len(cuts); i++ {
		if cuts[i]-cuts[i-1] < corner {
			continue
		}
		if y := p.At((cuts[i] + cuts[i-1]) / 2).Y; y >= top && y <= bottom {
			out = append(out, p.Part(cuts[i-1], cuts[i]))
		}
	}
	return out
}
