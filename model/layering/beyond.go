package layering

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// CommonHeights are the heights of the outer piece's frame, in millimetres, from
// which and down to which both pieces have cloth, the inner laid on the outer by
// the inside's own frame. Above and below there is nothing to compare sideways.
func CommonHeights(n *model.Inside, g *model.Garment) (top, bottom float64, err error) {
	frame, err := Frame(n, g)
	if err != nil {
		return 0, 0, err
	}
	outer, err := n.Outer[0].Region()
	if err != nil {
		return 0, 0, err
	}
	if e := n.Inner[0].FirstPaper(); e != nil {
		return 0, 0, model.Missingf("%s has no drawing", e.Address())
	}
	top, bottom = math.Inf(1), math.Inf(-1)
	for _, e := range n.Inner[0].Edges {
		b := e.Path.Move(frame).Bounds()
		top, bottom = math.Min(top, b.Min.Y), math.Max(bottom, b.Max.Y)
	}
	return math.Max(top, outer.Bounds().Min.Y), math.Min(bottom, outer.Bounds().Max.Y), nil
}

// Beyond is how far an inner piece stands out of its outer piece above the
// highest of the levels compared, or below the lowest, in millimetres.
type Beyond struct {
	// Wider is how far it stands out sideways: over edges of the outer piece that
	// run down, and over seams that go by the name of the inner piece's own.
	Wider curve.Bound
	// Longer is how far it was seen to stand out over any other edge, as a neckline
	// that lies higher does; Over is that edge, nil where there is none. What hangs
	// below a finished edge is left out, and so is what stands out no farther than an
	// edge that a share lays on this one.
	Longer float64
	Over   *model.Edge
}

// OutsideBeyond tells how far the inner piece stands out of the outer between two
// heights of the outer piece's frame that both lie above, or both below, all
// levels compared; level is the height of the level next to them. An edge runs
// down if it falls more than it runs across, and crosses that level or is sewn,
// folded or closed as the sides of a body are.
func OutsideBeyond(n *model.Inside, g *model.Garment, top, bottom, level float64) (Beyond, error) {
	return outsideWhere(n, g, func(p *curve.Path) []*curve.Path { return betweenHeights(p, top, bottom) },
		func(outer, inner *model.Edge, f curve.Foot) bool { return widens(g, outer, inner, f, level) },
		func(over *model.Edge) bool { return over.Finish != "" && top >= level })
}

// OutsideAll tells how far the inner piece stands out of the outer anywhere, of pieces
// that lie at no level, as sleeves do. Such a draft may lie any way round, so its
// sides are the edges that are folded, closed, or sewn to pieces that lie at no level
// either; its cap is not.
func OutsideAll(n *model.Inside, g *model.Garment) (Beyond, error) {
	return outsideWhere(n, g, func(p *curve.Path) []*curve.Path { return []*curve.Path{p} },
		func(outer, _ *model.Edge, f curve.Foot) bool { return widensAlone(g, outer, f) },
		func(over *model.Edge) bool { return over.Finish != "" })
}

// outsideWhere tells how far parts of the inner piece's outline stand out of the
// outer piece; over edges that are free they may.
func outsideWhere(n *model.Inside, g *model.Garment, parts func(*curve.Path) []*curve.Path, widens func(outer, inner *model.Edge, f curve.Foot) bool, free func(*model.Edge) bool) (Beyond, error) {
	var out Beyond
	frame, err := Frame(n, g)
	if err != nil {
		return out, err
	}
	outer, err := n.Outer[0].Region()
	if err != nil {
		return out, err
	}
	told := map[*model.Edge]float64{} // how far the edges that a share lays on an outer edge stand out over it
	longer := map[*model.Edge]float64{}
	for _, e := range n.Inner[0].Edges {
		for _, part := range parts(e.Path.Move(frame)) {
			wider, past := outer.OutsideWhere(part, leastTolerance, func(f curve.Foot) bool {
				return f.Edge < 0 || widens(n.Outer[0].Edges[f.Edge], e, f)
			})
			out.Wider.Low, out.Wider.High = math.Max(out.Wider.Low, wider.Low), math.Max(out.Wider.High, wider.High)
			if past.Edge < 0 {
				continue
			}
			over := n.Outer[0].Edges[past.Edge]
			if g.Shared(over, e) {
				told[over] = math.Max(told[over], past.Distance)
			}
			longer[over] = math.Max(longer[over], past.Distance)
		}
	}
	for _, over := range n.Outer[0].Edges {
		if d := longer[over]; !free(over) && d > told[over]+model.CornerReach && d > out.Longer {
			out.Longer, out.Over = d, over
		}
	}
	return out, nil
}

// widensAlone reports whether what stands out over a place of an edge, of a piece
// that lies at no level, is out sideways. What goes on past the end of a side is not.
func widensAlone(g *model.Garment, e *model.Edge, f curve.Foot) bool {
	if !sideAlone(g, e) {
		return false
	}
	for _, atEnd := range []bool{false, true} {
		away := f.Along
		if atEnd {
			away = e.Length() - f.Along
		}
		if away > model.CornerReach || sideAlone(g, e.Neighbour(atEnd)) {
			continue
		}
		off, along := f.From.Sub(f.On), e.Path.Direction(f.Along)
		if math.Abs(off.Dot(along)) > math.Abs(off.Cross(along)) {
			return false
		}
	}
	return true
}

// sideAlone reports whether an edge of a piece that lies at no level is one of its
// sides; see OutsideAll.
func sideAlone(g *model.Garment, e *model.Edge) bool {
	partners := g.Partners(e)
	for _, u := range g.Uses(e) {
		if u.Kind == model.Folded || u.Kind == model.Closed {
			return true
		}
	}
	return len(partners) > 0 && !slices.ContainsFunc(partners, func(p *model.Edge) bool { return !AtNoLevel(p.Piece) })
}

// AtNoLevel reports whether the piece says that it lies at no level of the body.
func AtNoLevel(p *model.Piece) bool { return p.OwnLevels && len(p.LevelsAt) == 0 }

// widens reports whether an inner edge that stands out over a place of an outer
// one is out sideways there. At a corner where the side ends, what lies over the
// edge beside it is not.
func widens(g *model.Garment, outer, inner *model.Edge, f curve.Foot, level float64) bool {
	counts := func(e *model.Edge) bool {
		return runsDown(g, e, level) || e.Name == inner.Name && sewnToBody(g, e) && sewnToBody(g, inner)
	}
	if !counts(outer) {
		return false
	}
	for _, atEnd := range []bool{false, true} {
		away := f.Along
		if atEnd {
			away = outer.Length() - f.Along
		}
		off := f.From.Sub(f.On)
		if away < model.CornerReach && math.Abs(off.Y) > math.Abs(off.X) && !counts(outer.Neighbour(atEnd)) {
			return false
		}
	}
	return true
}

// runsDown reports whether an edge bounds its piece sideways, going on from a
// level at that height; see OutsideBeyond.
func runsDown(g *model.Garment, e *model.Edge, level float64) bool {
	if !steep(e) {
		return false
	}
	box := e.Path.Bounds()
	crosses := box.Min.Y < level-model.NearEnd && box.Max.Y > level+model.NearEnd
	return crosses || sewnToBody(g, e)
}

// steep reports whether a drawn edge falls more than it runs across.
func steep(e *model.Edge) bool {
	if !e.Drawn() {
		return false
	}
	run := e.Path.End().Sub(e.Path.Start())
	return math.Abs(run.Y) >= math.Abs(run.X)
}

// sewnToBody reports whether the cloth goes on past the edge round the body:
// over a fold, a closure, or a seam with a piece that lies at the body's levels,
// which a sleeve, a collar or a skirt with levels = {} does not.
func sewnToBody(g *model.Garment, e *model.Edge) bool {
	for _, u := range g.Uses(e) {
		if u.Kind == model.Folded || u.Kind == model.Closed {
			return true
		}
	}
	return slices.ContainsFunc(g.Partners(e), func(p *model.Edge) bool { return !AtNoLevel(p.Piece) })
}

// SidesEnd is the height, between a level and another height above or below it,
// to which both pieces are bounded on either side by edges that run down, so that
// their widths can be compared; all in the frame that both are drawn in.
func SidesEnd(n *model.Inside, g *model.Garment, level, to float64) float64 {
	for _, p := range slices.Concat(n.Outer, n.Inner) {
		for _, e := range p.Edges {
			if runsDown(g, e, level) {
				continue
			}
			b := e.Path.Bounds()
			switch {
			case to < level && b.Min.Y < level:
				to = math.Max(to, math.Min(b.Max.Y, level))
			case to > level && b.Max.Y > level:
				to = math.Min(to, math.Max(b.Min.Y, level))
			}
		}
	}
	return to
}
