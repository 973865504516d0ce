package sewing

import (
	"math"

	"understitch/model"
)

// Ways a piece can be laid on the cloth.
const (
	OnStraight = "straight" // its grain line along the selvedge
	OnCross    = "cross"    // across it
	OnBias     = "bias"
)

// GrainPair is two pieces that a seam joins, both with a grain line and cut the
// same way of the cloth. Off is the angle between their grains, in degrees and
// never negative, as the pieces are sewn.
type GrainPair struct {
	Seam *model.Seam
	A, B *model.Piece
	Off  float64

	AngleA, AngleB float64 // of the grains, as the pieces are sewn, to the level or to the seam; Off is what they differ by, but for half turns
}

// foundGrainPairs are a garment's, once they are found.
type foundGrainPairs struct{ model.Once[[]GrainPair] }

// GrainPairs are the pairs of pieces whose grains can be compared, seam by seam.
// Pieces that are drafted on levels are compared by the angles of their grains to
// those, since a level runs on round the body; the angle to the seam would not do,
// as a seam that shapes the body takes in more on one of its sides. Pieces without
// levels, as the two halves of a sleeve, are compared by the angle of the grain to
// the straight line between the seam's ends, laid on each other as for sewing; but
// only where the seam runs along the grain rather than across it. The
// halves of one piece agree by their making.
func GrainPairs(g *model.Garment) []GrainPair {
	out, _ := model.In[foundGrainPairs](&g.Store).Get(func() ([]GrainPair, error) { return grainPairs(g), nil })
	return out
}

func grainPairs(g *model.Garment) []GrainPair {
	var out []GrainPair
	for _, s := range g.Seams {
		a, b, err := Walks(g, g.JoinOf(s))
		if err != nil {
			continue
		}
		seen := map[[2]*model.Piece]bool{}
		for _, span := range AllowancesAlong(a, b) {
			p, q := span.A.Piece, span.B.Piece
			if seen[[2]*model.Piece{p, q}] || p == q || p.CutOn != q.CutOn || len(p.Grain) != 2 || len(q.Grain) != 2 {
				continue
			}
			seen[[2]*model.Piece{p, q}] = true
			if first, second, ok := grainsOf(g, a.runOf(span.A), b.runOf(span.B)); ok {
				out = append(out, GrainPair{s, p, q, math.Abs(halfTurn(first - second)), first, second})
			}
		}
	}
	return out
}

func (w *Walk) runOf(e *model.Edge) Run {
	for _, r := range w.Runs {
		if r.Edge == e {
			return r
		}
	}
	return Run{}
}

// alongGrain is how far, in degrees, a seam may run from the grain and still run
// along it.
const alongGrain = 45

// grainsOf are the angles of the grains of two runs that are laid on each other.
func grainsOf(g *model.Garment, a, b Run) (first, second float64, ok bool) {
	if !a.Edge.Piece.Drawn() || !b.Edge.Piece.Drawn() {
		return 0, 0, false
	}
	p, q := a.Edge.Piece, b.Edge.Piece
	if Levelled(g, p) != Levelled(g, q) {
		return 0, 0, false
	}
	if Levelled(g, p) {
		first, second := grainAngle(p), grainAngle(q)
		if !TurnedOver(a, b) { // side by side, one of the two drawings is turned over
			second = -second
		}
		return first, second, true
	}
	first, second = a.grainAgainst(), b.grainAgainst()
	return first, second, math.Abs(first) < alongGrain && math.Abs(second) < alongGrain
}

// Levelled reports whether the piece is drafted on levels, the garment's or its own,
// so that y runs downward in its frame; else it may lie any way round.
func Levelled(g *model.Garment, p *model.Piece) bool {
	return !p.OwnLevels && len(g.Levels) > 0 || len(p.LevelsAt) > 0
}

// grainAngle is the angle of the piece's grain to the level, in degrees.
func grainAngle(p *model.Piece) float64 {
	along := p.Grain[1].Sub(p.Grain[0])
	return math.Atan2(along.Y, along.X) * 180 / math.Pi
}

// grainAgainst is the angle from the straight line between the run's ends to its
// piece's grain, in degrees above -90 up to 90, positive towards the cloth.
func (r Run) grainAgainst() float64 {
	along := r.Edge.Path.At(r.To).Sub(r.Edge.Path.At(r.From))
	grain := r.Edge.Piece.Grain[1].Sub(r.Edge.Piece.Grain[0])
	angle := math.Atan2(along.Cross(grain), along.Dot(grain)) * 180 / math.Pi
	region, err := r.Edge.Piece.Region()
	// With y downward a positive turn is to the right, where the cloth of a
	// clockwise outline lies.
	if err == nil && region.Clockwise() == r.Backward() {
		angle = -angle
	}
	return halfTurn(angle)
}

// halfTurn brings an angle between lines, which have no direction, to above -90 up
// to 90.
func halfTurn(degrees float64) float64 {
	return degrees - 180*math.Ceil((degrees-90)/180)
}
