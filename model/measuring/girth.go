package measuring

import (
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// Girth is what a layer measures round at a level, done up: the widths of its
// pieces, darts closed, each as often as it is cut and twice on a fold, less what
// laps over where a closure is crossed. It stands only where the layer closes
// round the body there: where the level runs out over an armhole or a neckline,
// or into a piece whose width is not known, the figure is missing, and the reason
// names the edge or the piece. A level that lies on a seam between pieces above
// and pieces below is measured on those above.
func Girth(g *model.Garment, layer *model.Layer, level *model.Level) (float64, error) {
	sum, err := SumGirth(g, layer, level)
	return sum.Total, err
}

// GirthSum is a girth and what it is made of, in millimetres.
type GirthSum struct {
	Total  float64
	Pieces []*model.Piece // whose widths are added, each as often as its Times
	Laps   []GirthLap
}

// SumGirth adds up a layer's girth at a level; see Girth.
func SumGirth(g *model.Garment, layer *model.Layer, level *model.Level) (GirthSum, error) {
	for _, p := range layer.Pieces {
		if err := Unmeasured(g, p, level); err != nil {
			return GirthSum{}, err
		}
	}
	var sum GirthSum
	for _, p := range layer.Pieces {
		if !p.Reaches(level) || hangsFrom(g, p, level) {
			continue
		}
		w, err := WidthOf(p, level)
		if err != nil {
			return GirthSum{}, err
		}
		for _, s := range w.Spans {
			if err := GoesOn(g, p, level, s.E0, s.S0); err != nil {
				return GirthSum{}, err
			}
			if err := GoesOn(g, p, level, s.E1, s.S1); err != nil {
				return GirthSum{}, err
			}
		}
		sum.Total += w.Net * p.Times()
		sum.Pieces = append(sum.Pieces, p)
	}
	if len(sum.Pieces) == 0 {
		return GirthSum{}, model.NotRound("no piece of %s reaches the %s level", layer.Address(), level.Name)
	}
	var err error
	if sum.Laps, err = lapsAt(g, sum.Pieces, level); err != nil {
		return GirthSum{}, err
	}
	for _, l := range sum.Laps {
		sum.Total -= l.Length()
	}
	return sum, nil
}

// hangsFrom reports whether the piece only begins at the level, sewn there to
// one that ends at it: the two are one line of cloth, and measured once. Of two
// pieces that are not both drawn, sewn at edges that lie along the level, it is
// not known which lies above: the one listed first is measured.
func hangsFrom(g *model.Garment, p *model.Piece, l *model.Level) bool {
	begins := p.Drawn() && touches(p, l, func(b curve.Box) float64 { return b.Min.Y })
	for _, e := range p.Edges {
		for _, partner := range g.Partners(e) {
			above := partner.Piece
			switch {
			case above == p || above.Layer != p.Layer:
			case p.Drawn() && above.Drawn():
				if begins && touches(above, l, func(b curve.Box) float64 { return b.Max.Y }) {
					return true
				}
			case liesAlong(e, l, model.CornerReach) && liesAlong(partner, l, model.CornerReach) && above.Reaches(l):
				if slices.Index(p.Layer.Pieces, above) < slices.Index(p.Layer.Pieces, p) {
					return true
				}
			}
		}
	}
	return false
}

// HangFrom reports whether all pieces of the group only begin at the level, and
// are left out of a girth there.
func HangFrom(g *model.Garment, pieces model.Group, l *model.Level) bool {
	return pieces.Every(func(p *model.Piece) bool { return hangsFrom(g, p, l) })
}

// touches reports whether the level runs through one end of the piece's height.
func touches(p *model.Piece, l *model.Level, end func(curve.Box) float64) bool {
	y, ok := p.LevelY(l)
	region, err := p.Region()
	return ok && err == nil && math.Abs(end(region.Bounds())-y) < model.NearEnd
}

// GoesOn tells why the cloth of the layer does not go on along the level past a
// place of the piece's outline, or nil where it does.
func GoesOn(g *model.Garment, p *model.Piece, level *model.Level, edge int, at float64) error {
	if edge < 0 {
		return nil // a gap in the outline is reported as such
	}
	e := p.Edges[edge]
	var into *model.Piece
	uses := usesAt(g, e, at)
	if half := onOneHalf(uses); half != "" {
		return &model.Open{Missing: model.Missing{Reason: fmt.Sprintf("%s is open at the %s level: %s is closed there on its %s half only, and not sewn on the other",
			p.Layer.Address(), level.Name, e.Address(), half)}, Edge: e}
	}
	for _, u := range uses {
		if u.Kind == model.Folded {
			return nil
		}
		for _, next := range across(g, u, e) {
			if next.Reaches(level) {
				return nil
			}
			into = next
			if next.Paper() && !next.OwnLevels {
				return model.Missingf("%s has no drawing and no width at the %s level, which runs over %s into it", next.Address(), level.Name, e.Address())
			}
		}
	}
	if into != nil {
		return model.NotRound("%s is not closed at the %s level: it runs over %s into %s, which has no width there", p.Layer.Address(), level.Name, e.Address(), into.Address())
	}
	return &model.Open{Missing: model.Missing{Reason: fmt.Sprintf("%s is open at the %s level: %s is not sewn, folded or closed there", p.Layer.Address(), level.Name, e.Address())}, Edge: e}
}

// onOneHalf is the half of the garment that all of some uses are on; "" where both
// halves have one.
func onOneHalf(uses []model.Use) string {
	half := ""
	for _, u := range uses {
		if u.Half == "" || half != "" && u.Half != half {
			return ""
		}
		half = u.Half
	}
	return half
}

// across are the pieces that a use joins an edge, or its neighbour at a corner,
// to.
func across(g *model.Garment, u model.Use, e *model.Edge) []*model.Piece {
	var out []*model.Piece
	for _, j := range joinsOf(g, u.Thing) {
		for i, side := range j.Sides {
			for _, s := range side {
				if s.Edge.Piece != e.Piece {
					continue
				}
				for _, other := range j.Sides[1-i] {
					out = append(out, other.Edge.Piece)
				}
			}
		}
	}
	return out
}

// joinsOf are the joins by a seam, or by a closure on all layers that it closes.
func joinsOf(g *model.Garment, thing model.Thing) []*model.Join {
	if c, ok := thing.(*model.Closure); ok {
		return g.JoinsOf(c)
	}
	if j := g.JoinOf(thing); j != nil {
		return []*model.Join{j}
	}
	return nil
}

// laidOn are the stretches that a seam or closure lays on an edge.
func laidOn(g *model.Garment, thing model.Thing, e *model.Edge) []model.Stretch {
	var out []model.Stretch
	for _, j := range joinsOf(g, thing) {
		for i, side := range j.Sides {
			if model.Has(side, e) {
				out = append(out, j.Sides[1-i]...)
			}
		}
	}
	return out
}

// usesAt are the uses by which the cloth may go on past a place of an edge.
func usesAt(g *model.Garment, e *model.Edge, s float64) []model.Use {
	var out []model.Use
	for _, u := range g.Uses(e) {
		if u.Kind.Joining() && u.Err == nil && s > u.From-model.CornerReach && s < u.To+model.CornerReach {
			out = append(out, u)
		}
	}
	atStart, atEnd := s < model.CornerReach, s > e.Length()-model.CornerReach
	if !atStart && !atEnd {
		return out
	}
	next := e.Neighbour(atEnd)
	for _, u := range g.Uses(next) {
		meets := u.From < model.CornerReach
		if atStart {
			meets = u.To > next.Length()-model.CornerReach
		}
		if u.Kind.Joining() && u.Err == nil && meets {
			out = append(out, u)
		}
	}
	return out
}
