package layering

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// laidTogether are pieces of one layer that lie flat side by side, each against
// the one it is sewn to, as taped together on the table.
type laidTogether struct {
	pieces []laidPiece
	seams  []*model.Edge // the edges along which they lie against each other
	joints []joint
	height float64
}

// laidPiece is a piece and the motion that lays it.
type laidPiece struct {
	*model.Piece
	motion curve.Motion
	turn   float64 // how its levels lie turned, in radians
}

// joint is where two pieces lie against each other.
type joint struct {
	at    curve.Point    // the middle of the seam
	lines [2]*curve.Path // its two sides, from the top down
	off   float64        // how far they part, in millimetres
	reach float64        // how much farther a place beyond may be out by that
	turn  float64        // by how much the levels turn from the one piece to the other
}

// turned is by how much levels lie turned at most, with its sign.
func (t *laidTogether) turned() float64 {
	most := 0.0
	for _, p := range t.pieces {
		if math.Abs(p.turn) > math.Abs(most) {
			most = p.turn
		}
	}
	return most
}

// doubtOf is how far layers that are alike may lie apart by how their pieces are
// laid together. Lines that part by so much over their length may be turned against each
// other by twice as much in that length; but where the seams of the two layers are alike,
// both are laid alike, and only what they differ by counts. What lies beyond a
// slanting seam is turned by it: moved by d and turned by φ there a side comes
// out by d·(1−cos φ); turned by another angle, by that angle over the height.
func doubtOf(outer, inner *laidTogether) float64 {
	sum := math.Abs(outer.turned()-inner.turned()) * outer.height
	used := make([]bool, len(outer.joints))
	for _, j := range inner.joints {
		near := -1
		for k, o := range outer.joints {
			if !used[k] && (near < 0 || o.at.Dist(j.at) < outer.joints[near].at.Dist(j.at)) {
				near = k
			}
		}
		if near < 0 {
			sum += j.off * j.reach
			continue
		}
		used[near] = true
		o := outer.joints[near]
		sum += math.Min(o.off+j.off, j.unlike(o))*math.Max(o.reach, j.reach) + o.at.Dist(j.at)*(1-math.Cos(j.turn))
	}
	for k, o := range outer.joints {
		if !used[k] {
			sum += o.off * o.reach
		}
	}
	return sum
}

// unlike is how far the two sides of a seam differ in shape from those of another.
func (j joint) unlike(o joint) float64 {
	apart := func(a, b *curve.Path) float64 {
		least := math.Inf(1)
		for _, over := range []bool{false, true} {
			least = math.Min(least, curve.Deviation(a, b.Move(curve.Fit(a, b, over)), leastTolerance).High)
		}
		return least
	}
	straight := apart(o.lines[0], j.lines[0]) + apart(o.lines[1], j.lines[1])
	return math.Min(straight, apart(o.lines[0], j.lines[1])+apart(o.lines[1], j.lines[0]))
}

// layTogether lays pieces against each other over a stretch of height, from one
// that is laid already.
func layTogether(g *model.Garment, pieces model.Group, first *model.Piece, motion curve.Motion, h Heights, flat float64) (*laidTogether, error) {
	out := &laidTogether{pieces: []laidPiece{{Piece: first, motion: motion, turn: levelTurn(motion)}}}
	if top, bottom, ok := h.of(first); ok {
		out.height = bottom - top
	} else {
		return nil, model.Missingf("%s does not reach so far", first.Address())
	}
	for len(out.pieces) < len(pieces) {
		grown := false
		for _, p := range pieces {
			if slices.ContainsFunc(out.pieces, func(l laidPiece) bool { return l.Piece == p }) {
				continue
			}
			for _, beside := range out.pieces {
				j, a, b := sewnSideBySide(g, beside.Piece, p)
				if j == nil {
					continue
				}
				if err := out.lay(j, beside, p, a, b, h, flat); err != nil {
					return nil, err
				}
				grown = true
				break
			}
		}
		if !grown {
			return nil, model.Missingf("no seam joins edge to edge, one whole edge each, all of %s, so they cannot be laid together", pieces.Address())
		}
	}
	return out, nil
}

// sewnSideBySide is the seam or closure that joins one edge of each of two
// pieces, nil where there is none.
func sewnSideBySide(g *model.Garment, p, q *model.Piece) (j *model.Join, a, b *model.Edge) {
	for _, j := range g.Joins() {
		if len(j.Sides[0]) != 1 || len(j.Sides[1]) != 1 {
			continue
		}
		a, b := j.Sides[0][0].Edge, j.Sides[1][0].Edge
		if b.Piece == p {
			a, b = b, a
		}
		if a.Piece == p && b.Piece == q && steep(a) && steep(b) {
			return j, a, b
		}
	}
	return nil, nil, nil
}

// lay lays a piece against another along a seam.
func (t *laidTogether) lay(j *model.Join, beside laidPiece, p *model.Piece, a, b *model.Edge, h Heights, flat float64) error {
	fixed, rightA, err := downPart(a, h)
	if err != nil {
		return err
	}
	moving, rightB, err := downPart(b, h)
	if err != nil {
		return err
	}
	fixed = fixed.Move(beside.motion)
	right := rightA != beside.motion.Mirrored()
	motion := curve.Fit(fixed, moving, rightB == right)
	off := curve.Deviation(fixed, moving.Move(motion), leastTolerance).High
	if off > flat {
		return &NotFlat{j.Thing, off}
	}
	region, err := p.Region()
	if err != nil {
		return err
	}
	turn := levelTurn(motion)
	start, end := fixed.Start(), fixed.End()
	t.pieces = append(t.pieces, laidPiece{p, motion, turn})
	t.seams = append(t.seams, a, b)
	t.joints = append(t.joints, joint{start.Lerp(end, 0.5), [2]*curve.Path{fixed, moving}, off,
		1 + 2*region.Bounds().Width()/start.Dist(end), turn - beside.turn})
	return nil
}

// downPart is the part of an edge within a stretch of height, from the top down,
// and whether the cloth lies on its right as seen on paper.
func downPart(e *model.Edge, h Heights) (part *curve.Path, right bool, err error) {
	top, bottom, ok := h.of(e.Piece)
	if !ok {
		return nil, false, model.Missingf("%s does not reach so far", e.Piece.Address())
	}
	for _, m := range e.Mouths() {
		box := e.Path.Part(m.From, m.To).Bounds()
		if box.Max.Y > top && box.Min.Y < bottom {
			return nil, false, model.Missingf("a dart opens on %s, so that it does not lie flat against what it is sewn to", e.Address())
		}
	}
	parts := betweenHeights(e.Path, top, bottom)
	if len(parts) != 1 {
		return nil, false, model.Missingf("%s does not run down once over the height that is compared", e.Address())
	}
	part = parts[0]
	if box := part.Bounds(); box.Min.Y > top+model.CornerReach || box.Max.Y < bottom-model.CornerReach {
		return nil, false, model.Missingf("%s ends within the height that is compared", e.Address())
	}
	region, err := e.Piece.Region()
	if err != nil {
		return nil, false, err
	}
	down := part.End().Y > part.Start().Y
	if !down {
		part = part.Reverse()
	}
	return part, region.Clockwise() == down, nil
}

// levelTurn is how a level lies turned once the paper is moved, in radians
// between −π/2 and π/2.
func levelTurn(m curve.Motion) float64 {
	d := m.Direction(curve.Point{X: 1})
	return math.Atan2(math.Copysign(d.Y, d.Y*d.X), math.Abs(d.X))
}

// SewnBeyond is how far above (or below) a level all pieces of the inside are sewn
// side by side, in millimetres: to where the first of the seams between them ends;
// and how far both sides of the inside have any cloth.
func SewnBeyond(n *model.Inside, g *model.Garment, l *model.Level, above bool) (sewn, cloth float64) {
	beyond := func(p *model.Piece, box curve.Box) float64 {
		y, ok := p.LevelY(l)
		switch {
		case !ok:
			return 0
		case above:
			return math.Max(0, y-box.Min.Y)
		}
		return math.Max(0, box.Max.Y-y)
	}
	sewn, cloth = math.Inf(1), math.Inf(1)
	for _, group := range []model.Group{n.Outer, n.Inner} {
		most := 0.0
		for i, p := range group {
			region, err := p.Region()
			if err != nil {
				return 0, 0
			}
			most = math.Max(most, beyond(p, region.Bounds()))
			for _, q := range group[i+1:] {
				if j, a, b := sewnSideBySide(g, p, q); j != nil {
					sewn = min(sewn, beyond(p, a.Path.Bounds()), beyond(q, b.Path.Bounds()))
				}
			}
		}
		cloth = math.Min(cloth, most)
	}
	return math.Min(sewn, cloth), cloth
}
