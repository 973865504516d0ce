package layering

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/measuring"
	"understitch/model/sewing"
)

// Where the clearance at a level is stated, or the inside itself.
func AllowedAt(n *model.Inside, l *model.Level) model.Place {
	for _, c := range n.Clearance {
		if c.Level == l {
			return c.Place
		}
	}
	if from := n.From(l); from != nil {
		return from.Place
	}
	return n.Place
}

// Compared are the levels that both pieces reach, from the top down.
func Compared(n *model.Inside, g *model.Garment) []*model.Level {
	var out []*model.Level
	for _, l := range g.Levels {
		if n.Outer.Reaches(l) && n.Inner.Reaches(l) {
			out = append(out, l)
		}
	}
	slices.SortStableFunc(out, func(a, b *model.Level) int {
		ya, _ := n.Outer.LevelY(a)
		yb, _ := n.Outer.LevelY(b)
		switch {
		case ya < yb:
			return -1
		case ya > yb:
			return 1
		}
		return 0
	})
	return out
}

// ClearanceAt is the width of the outer piece less that of the inner at a
// level, darts closed, as drawn. Where one is drawn as a half on the fold and
// the other whole, both are taken whole.
func ClearanceAt(n *model.Inside, l *model.Level) (float64, error) {
	outer, err := measuring.GroupWidth(n.Outer, l)
	if err != nil {
		return 0, err
	}
	inner, err := measuring.GroupWidth(n.Inner, l)
	as, bs := n.Outer.Times(), n.Inner.Times()
	return (outer.Net*as - inner.Net*bs) / min(as, bs), err
}

// Frame is the motion that lays the inner piece on the outer one: none where
// both are drawn in one frame, else by the share that the inside names.
func Frame(n *model.Inside, g *model.Garment) (curve.Motion, error) {
	if n.Align == nil {
		return curve.Identity(), n.Framed()
	}
	fixed, moving, over, err := aligned(n, g)
	if err != nil {
		return curve.Identity(), err
	}
	return curve.Fit(fixed, moving, over), nil
}

// aligned are the lines by which a share lays the inner piece on the outer one,
// darts closed, and whether one of the pieces lies turned over.
func aligned(n *model.Inside, g *model.Garment) (fixed, moving *curve.Path, over bool, err error) {
	outer, inner, _, err := sewing.ShareWalks(g, n.Align)
	if err != nil {
		return nil, nil, false, err
	}
	ro, okO := runOn(outer, n.Outer)
	ri, okI := runOn(inner, n.Inner)
	if !okO || !okI {
		return nil, nil, false, model.Missingf("%s has no edge of both %s and %s", n.Align.Address(), n.Outer.Address(), n.Inner.Address())
	}
	if fixed, err = ro.Closed(); err != nil {
		return nil, nil, false, err
	}
	if moving, err = ri.Closed(); err != nil {
		return nil, nil, false, err
	}
	over = sewing.TurnedOver(ro, ri)
	if n.Align.Match != model.Eased {
		return fixed, moving, over, nil
	}
	spread, err := sewing.SpreadOf(n.Align, outer, inner)
	if err != nil {
		return nil, nil, false, err
	}
	fixed, moving = alikeFrom(n.AlignEnd, fixed, moving, spread.From-ro.Start, ro.Start+ro.Length-spread.To)
	return fixed, moving, over, nil
}

// layBy is how long, in millimetres, two lines must run alike from an end for a
// piece to be laid by that stretch; else a quarter of them serves (from memory: a
// hand's breadth of a side seam).
const (
	layBy   = 20
	layPart = 0.25
)

// alikeFrom are the stretches of two lines, eased on to each other, that a cutter
// lays together at one end: as far as there is no ease, which is given from
// either end.
func alikeFrom(end model.MarkKind, fixed, moving *curve.Path, alikeAtStart, alikeAtEnd float64) (a, b *curve.Path) {
	alike := alikeAtStart
	if end == model.AtEnd {
		alike = alikeAtEnd
	}
	la, lb := fixed.Length(), moving.Length()
	da, db := math.Min(alike, la), math.Min(alike, lb)
	if alike < layBy {
		da = layPart * math.Min(la, lb)
		db = da
	}
	if end == model.AtEnd {
		return fixed.Part(la-da, la), moving.Part(lb-db, lb)
	}
	return fixed.Part(0, da), moving.Part(0, db)
}

// Doubt is what there is to doubt in how a share lays the inner piece on the
// outer: off is how far the two lines lie apart at most, and at, in millimetres,
// how far a point at some height may be out of its place up or down by that. Both
// are nothing for pieces drawn in one frame.
func Doubt(n *model.Inside, g *model.Garment) (off float64, at func(y float64) float64, err error) {
	d, err := doubtOfLaid(n, g)
	return d.off, d.atHeight, err
}

// laidDoubt is how far lines by which two pieces are laid together lie apart.
type laidDoubt struct {
	off  float64
	line *curve.Path // nil where nothing needs laying
}

func doubtOfLaid(n *model.Inside, g *model.Garment) (laidDoubt, error) {
	if n.Align == nil {
		return laidDoubt{}, nil
	}
	fixed, moving, over, err := aligned(n, g)
	if err != nil {
		return laidDoubt{}, err
	}
	off := curve.Deviation(fixed, moving.Move(curve.Fit(fixed, moving, over)), leastTolerance).High
	return laidDoubt{off, fixed}, nil
}

func (d laidDoubt) atHeight(y float64) float64 {
	if d.line == nil {
		return 0
	}
	box := d.line.Bounds()
	return d.from(math.Max(math.Abs(y-box.Min.Y), math.Abs(y-box.Max.Y)))
}

// at is how far, in millimetres, a point may be out of its place.
func (d laidDoubt) at(p curve.Point) float64 {
	if d.line == nil {
		return 0
	}
	return d.from(math.Max(p.Dist(d.line.Start()), p.Dist(d.line.End())))
}

// from is the doubt at a distance from the lines: such as agree to so much over
// their length may be turned against each other by twice as much in that length.
func (d laidDoubt) from(away float64) float64 {
	return d.off * (1 + 2*away/d.line.End().Dist(d.line.Start()))
}

func runOn(w *sewing.Walk, pieces model.Group) (sewing.Run, bool) {
	for _, r := range w.Runs {
		if pieces.Has(r.Edge.Piece) {
			return r, true
		}
	}
	return sewing.Run{}, false
}

// WidthsAtHeight are what both sides of an inside measure across at a height of their
// common frame, darts closed, in millimetres.
func WidthsAtHeight(n *model.Inside, y float64) (outer, inner float64, err error) {
	a, err := measuring.GroupWidthAt(n.Outer, y)
	if err != nil {
		return 0, 0, err
	}
	b, err := measuring.GroupWidthAt(n.Inner, y)
	return a.Net, b.Net, err
}
