package layering

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/sewing"
)

// NotFlat is the reason why pieces cannot be laid together on the table: the
// seam between two of them does not lie flat, its lines part by Off millimetres.
type NotFlat struct {
	Seam model.Thing
	Off  float64
}

func (e *NotFlat) Error() string { return e.Seam.Address() + " does not lie flat" }

// Joined is how far the inner pieces of an inside stand out of the outer ones over
// some height, the pieces of either side laid together along their seams.
type Joined struct {
	Outside curve.Bound // in millimetres, over edges that run down
	Doubt   float64     // how far a place may be out by how the pieces are laid together
	Err     error       // why they cannot be laid together there, or nil
}

// Heights is a stretch of height that every piece measures from its own levels:
// between two of them, or for so many millimetres above or below the one named.
type Heights struct {
	Upper, Lower *model.Level
	Beyond       float64 // where one of the levels is nil
	from, to     float64 // the share of it that is looked at
}

// of are the heights in a piece's own frame.
func (h Heights) of(p *model.Piece) (top, bottom float64, ok bool) {
	at := func(l *model.Level, beside float64) (float64, bool) {
		if l == nil {
			return beside, true
		}
		return p.LevelY(l)
	}
	switch {
	case h.Upper == nil:
		bottom, ok = p.LevelY(h.Lower)
		top = bottom - h.Beyond
	default:
		top, ok = p.LevelY(h.Upper)
		var also bool
		bottom, also = at(h.Lower, top+h.Beyond)
		ok = ok && also
	}
	return top + (bottom-top)*h.from, top + (bottom-top)*h.to, ok && bottom > top
}

// mostHalved is how often a stretch of height is halved whose seams do not lie
// flat in one: a curved seam lies the flatter the shorter the piece of it.
const mostHalved = 3

// OutsideJoined lays the pieces of either side together along their seams over a
// stretch of height, the first of either side as the inside lays them, and tells
// how far the inner ones stand out. flat is how far the two lines of a seam may
// part, in millimetres, to be taken as lying flat. Where they part by more the stretch is halved, up to
// three times, and each part is laid and told by itself.
func OutsideJoined(n *model.Inside, g *model.Garment, h Heights, flat float64) []Joined {
	h.from, h.to = 0, 1
	return outsideJoined(n, g, h, flat, mostHalved)
}

func outsideJoined(n *model.Inside, g *model.Garment, h Heights, flat float64, halve int) []Joined {
	out, err := joinedOver(n, g, h, flat)
	if _, curved := err.(*NotFlat); curved && halve > 0 {
		upper, lower := h, h
		upper.to = (h.from + h.to) / 2
		lower.from = upper.to
		return append(outsideJoined(n, g, upper, flat, halve-1), outsideJoined(n, g, lower, flat, halve-1)...)
	}
	out.Err = err
	return []Joined{out}
}

func joinedOver(n *model.Inside, g *model.Garment, h Heights, flat float64) (Joined, error) {
	o, i, err := anchors(n, g)
	if err != nil {
		return Joined{}, err
	}
	frame, err := Frame(n, g)
	if err != nil {
		return Joined{}, err
	}
	outer, err := layTogether(g, n.Outer, o, curve.Identity(), h, flat)
	if err != nil {
		return Joined{}, err
	}
	inner, err := layTogether(g, n.Inner, i, frame, h, flat)
	if err != nil {
		return Joined{}, err
	}
	out := Joined{Doubt: doubtOf(outer, inner)}
	regions := make([]*curve.Region, len(outer.pieces))
	for k, p := range outer.pieces {
		var paths []*curve.Path
		for _, e := range p.Edges {
			paths = append(paths, e.Path.Move(p.motion))
		}
		regions[k] = curve.NewRegion(paths)
	}
	for _, p := range inner.pieces {
		top, bottom, _ := h.of(p.Piece)
		for _, e := range p.Edges {
			if slices.Contains(inner.seams, e) {
				continue // it lies within the pieces laid together
			}
			for _, part := range betweenHeights(e.Path, top, bottom) {
				b := curve.OutsideJoined(regions, part.Move(p.motion), leastTolerance, func(k int, f curve.Foot) bool {
					return f.Edge < 0 || outer.widens(g, outer.pieces[k], outer.pieces[k].Edges[f.Edge], f, h)
				})
				out.Outside.Low, out.Outside.High = math.Max(out.Outside.Low, b.Low), math.Max(out.Outside.High, b.High)
			}
		}
	}
	return out, nil
}

// widens reports whether what stands out over a place of an outer edge is out
// sideways there: over an edge that runs down, and not past its end.
func (t *laidTogether) widens(g *model.Garment, p laidPiece, e *model.Edge, f curve.Foot, h Heights) bool {
	top, bottom, _ := h.of(p.Piece)
	counts := func(e *model.Edge) bool {
		return slices.Contains(t.seams, e) || runsDown(g, e, (top+bottom)/2)
	}
	if !counts(e) {
		return false
	}
	for _, atEnd := range []bool{false, true} {
		away := f.Along
		if atEnd {
			away = e.Length() - f.Along
		}
		if away < model.NearEnd && !counts(e.Neighbour(atEnd)) {
			return false
		}
	}
	return true
}

// anchors are the pieces of either side that the inside's own frame lays on each
// other: those that a share names, else those of one name, else the first outer
// piece and the inner one that lies over it farthest across.
func anchors(n *model.Inside, g *model.Garment) (outer, inner *model.Piece, err error) {
	for _, p := range slices.Concat(n.Outer, n.Inner) {
		if e := p.FirstPaper(); e != nil {
			return nil, nil, e.Undrawn()
		}
		if p.Times() != n.Outer[0].Times() {
			return nil, nil, model.Missingf("%s and %s are not all drawn as the same part of their layers, so only their widths can be compared", n.Outer.Address(), n.Inner.Address())
		}
	}
	if n.Align != nil {
		o, i, _, err := sewing.ShareWalks(g, n.Align)
		if err != nil {
			return nil, nil, err
		}
		ro, okO := runOn(o, n.Outer)
		ri, okI := runOn(i, n.Inner)
		if !okO || !okI {
			return nil, nil, model.Missingf("%s has no edge of both %s and %s", n.Align.Address(), n.Outer.Address(), n.Inner.Address())
		}
		return ro.Edge.Piece, ri.Edge.Piece, nil
	}
	overlap := func(o, i *model.Piece) float64 {
		a, errA := o.Region()
		b, errB := i.Region()
		if errA != nil || errB != nil {
			return 0
		}
		return math.Min(a.Bounds().Max.X, b.Bounds().Max.X) - math.Max(a.Bounds().Min.X, b.Bounds().Min.X)
	}
	for _, o := range n.Outer {
		for _, i := range n.Inner {
			if o.Name == i.Name && overlap(o, i) > 0 {
				return o, i, nil
			}
		}
	}
	most := 0.0
	for _, i := range n.Inner {
		if across := overlap(n.Outer[0], i); across > most {
			outer, inner, most = n.Outer[0], i, across
		}
	}
	if inner == nil {
		err = model.Missingf("%s and %s are drawn beside each other; only a share named by align tells how one lies in the other",
			n.Outer.Address(), n.Inner.Address())
	}
	return outer, inner, err
}
