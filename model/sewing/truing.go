package sewing

import (
	"math"
	"slices"

	"understitch/model"
)

// LineEnd is an end of a seam at which a line goes on across it: a hem, a
// neckline, an armhole. A and B are the edges of that line, one on either side,
// and the angles those of cloth, in degrees, between them and the seam; together
// they make 180 where the line is smooth.
type LineEnd struct {
	A, B           *model.Edge
	AngleA, AngleB float64
}

// Centre reports whether the line's two edges are one edge of a mirrored pair,
// so that the line is at the centre of the garment.
func (l LineEnd) Centre() bool { return l.A == l.B }

// Sum of the two angles, in degrees.
func (l LineEnd) Sum() float64 { return l.AngleA + l.AngleB }

// LineAcross is the line that goes on across the end (or the start) of a seam,
// whose sides are laid out as two walks. There is none where a side ends in the
// middle of an edge or beside a fold, where a dart opens at the corner, or where
// the two edges are not of one sort: see oneLine. A piece or an edge without a
// drawing is the error.
func LineAcross(g *model.Garment, a, b *Walk, atEnd bool) (line LineEnd, ok bool, err error) {
	line.A, line.B = a.Corner(atEnd), b.Corner(atEnd)
	if line.A == nil || line.B == nil || !oneLine(g, line.A, line.B) {
		return line, false, nil
	}
	for _, e := range []*model.Edge{line.A, line.B} {
		if e.Piece.Fold == e || dartAtCorner(e) {
			return line, false, nil
		}
		if err := e.Piece.Undrawn(); err != nil {
			return line, true, err
		}
	}
	line.AngleA, line.AngleB = a.EndAngle(atEnd), b.EndAngle(atEnd)
	return line, true, nil
}

func dartAtCorner(e *model.Edge) bool {
	return slices.ContainsFunc(e.Mouths(), func(m model.Mouth) bool { return m.From < model.NearEnd || m.To > e.Length()-model.NearEnd })
}

// OtherLayer is the sum of the angles that the same line makes on the other of
// two layers which share it identically; 180 and by how much it turns where no
// seam crosses it there. Where a dart opens on it there is none.
func OtherLayer(g *model.Garment, l LineEnd) (sum float64, ok bool) {
	for _, s := range g.Shares {
		if s.Match != model.Identical {
			continue
		}
		outer, inner, _, err := ShareWalks(g, s)
		if err != nil {
			continue
		}
		for _, pair := range PairCrossings(outer, inner, meetNear) {
			switch {
			case outer.meets(pair.A, l.A, l.B):
				sum = inner.CrossingAngle(pair.B)
			case inner.meets(pair.B, l.A, l.B):
				sum = outer.CrossingAngle(pair.A)
			default:
				continue
			}
			return sum, model.Known(sum)
		}
		for _, walks := range [2][2]*Walk{{outer, inner}, {inner, outer}} {
			for _, c := range walks[0].Crossings() {
				if walks[0].meets(c, l.A, l.B) {
					return walks[1].straightOn(c.At)
				}
			}
		}
	}
	return 0, false
}

// straightOn is 180 and how much the walk turns, in degrees, at a place inside
// one of its edges where no dart opens.
func (w *Walk) straightOn(at float64) (float64, bool) {
	e, along := w.Place(at)
	if !e.Drawn() || slices.ContainsFunc(e.Mouths(), func(m model.Mouth) bool { return along > m.From-meetNear && along < m.To+meetNear }) {
		return 0, false
	}
	before, after := e.Path.DirectionBefore(along), e.Path.Direction(along)
	return 180 + math.Abs(math.Atan2(before.Cross(after), before.Dot(after)))*180/math.Pi, true
}

// OtherCorner is the angle of cloth, in degrees, that the corner of two edges
// makes on the other of two layers which share the second of them identically;
// there is none where a share does not begin or end at that corner.
func OtherCorner(g *model.Garment, beside, shared *model.Edge) (angle float64, ok bool) {
	for _, s := range g.Shares {
		if s.Match != model.Identical {
			continue
		}
		outer, inner, _, err := ShareWalks(g, s)
		if err != nil {
			continue
		}
		for _, walks := range [2][2]*Walk{{outer, inner}, {inner, outer}} {
			for _, atEnd := range []bool{false, true} {
				run := walks[0].Runs[0]
				if atEnd {
					run = walks[0].Runs[len(walks[0].Runs)-1]
				}
				if run.Edge == shared && walks[0].Corner(atEnd) == beside {
					angle = walks[1].EndAngle(atEnd)
					return angle, model.Known(angle)
				}
			}
		}
	}
	return 0, false
}

// meets reports whether two edges meet at a crossing of the walk.
func (w *Walk) meets(c Crossing, a, b *model.Edge) bool {
	before, after := w.Runs[c.Run-1].Edge, w.Runs[c.Run].Edge
	return before == a && after == b || before == b && after == a
}

// meetNear is how close two layers' meeting pieces must lie to be laid on each
// other, in millimetres: well over any limit, and well under the width of a
// panel (common practice, no source).
const meetNear = 5

// oneLine reports whether two edges that meet at a seam are one line of the
// garment: the same edge of a mirrored pair, edges finished alike, shared by the
// same share, held in by the same elastic, or sewn to one edge that runs on past
// the seam. Where a seam crosses on the other side as well, as at a waist, the
// line may bend there on both sides and is not one line.
func oneLine(g *model.Garment, a, b *model.Edge) bool {
	if a == b {
		return true
	}
	if a.Finish != "" && a.Finish == b.Finish {
		return true
	}
	for _, u := range g.Uses(a) {
		for _, v := range g.Uses(b) {
			if u.Thing == v.Thing && (u.Kind == model.Gathered || u.Kind == model.Shared) {
				return true
			}
		}
	}
	return sewnToOne(g, a, b)
}

// sewnToOne reports whether two edges are sewn end to end to one edge that runs
// on where they meet.
func sewnToOne(g *model.Garment, a, b *model.Edge) bool {
	for _, j := range laying(g, a).by {
		first, second, err := Walks(g, j)
		if err != nil {
			continue
		}
		if at, ok := first.between(a, b); ok && !second.crossedNear(at, first.Length) {
			return true
		}
		if at, ok := second.between(a, b); ok && !first.crossedNear(at, second.Length) {
			return true
		}
	}
	// Or by two seams, each of which takes a part of the other edge.
	across := laying(g, b).across
	for p, of := range laying(g, a).across {
		if other, ok := across[p]; ok && (of != other || of == nil) {
			return true
		}
	}
	return false
}

// onEdge is what a garment's joins do with one edge: which they are, and which
// edges they lay on it, each with the join that does so, nil where there are
// several.
type onEdge struct {
	by     []*model.Join
	across map[*model.Edge]*model.Join
}

// layings are those of every edge of a garment, once they are found.
type layings struct{ of map[*model.Edge]*onEdge }

func laying(g *model.Garment, e *model.Edge) *onEdge {
	kept := model.In[layings](&g.Store)
	if kept.of == nil {
		kept.of = map[*model.Edge]*onEdge{}
		for _, j := range g.Joins() {
			lay(g, j)
		}
	}
	if l := kept.of[e]; l != nil {
		return l
	}
	return &onEdge{}
}

// lay enters a join at the edges of both of its sides.
func lay(g *model.Garment, j *model.Join) {
	kept := model.In[layings](&g.Store)
	for i, side := range j.Sides {
		for _, s := range side {
			l := kept.of[s.Edge]
			if l == nil {
				l = &onEdge{across: map[*model.Edge]*model.Join{}}
				kept.of[s.Edge] = l
			}
			if n := len(l.by); n == 0 || l.by[n-1] != j {
				l.by = append(l.by, j)
			}
			for _, o := range j.Sides[1-i] {
				if by, ok := l.across[o.Edge]; ok && by != j {
					l.across[o.Edge] = nil
				} else {
					l.across[o.Edge] = j
				}
			}
		}
	}
}

// between is the place along the walk where one of two edges follows the other.
func (w *Walk) between(a, b *model.Edge) (float64, bool) {
	for i := 1; i < len(w.Runs); i++ {
		before, after := w.Runs[i-1].Edge, w.Runs[i].Edge
		if before == a && after == b || before == b && after == a {
			return w.Runs[i].Start, true
		}
	}
	return 0, false
}

// crossingNear is how far, in millimetres, a seam that crosses one side may lie
// from one that crosses the other and still be laid on it. A sleeve's seams are
// set off from a bodice's by several centimetres where they are meant to be.
const crossingNear = 10

// crossedNear reports whether a seam crosses the walk near a place that lies at
// a distance along another walk of the given length.
func (w *Walk) crossedNear(at, length float64) bool {
	near := model.Range{Low: at + min(0, w.Length-length) - crossingNear, High: at + max(0, w.Length-length) + crossingNear}
	return slices.ContainsFunc(w.Crossings(), func(c Crossing) bool { return near.Beyond(c.At) == 0 })
}
