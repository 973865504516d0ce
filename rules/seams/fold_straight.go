package seams

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/fold-straight.bad.garment.hcl
var foldStraightBad string

//go:embed testdata/fold-straight.good.garment.hcl
var foldStraightGood string

// FoldStraight checks that an edge on the fold is straight and that the edges at
// its ends meet it square.
var FoldStraight = rules.Rule{
	Name:     "fold-straight",
	Family:   "seams",
	Severity: rules.Warning,
	Under:    []string{"shared-edge"},
	Doc: rules.Doc{
		Title: "An edge on the fold is straight, and the edges at its ends meet it square",
		Why: "Cloth folds along a straight line only. A curved edge laid to the fold loses or gains what lies beyond it. An edge that is not " +
			"square to the fold makes a peak or a dip at the centre once the piece is opened out.",
		How: "Lay a ruler from end to end of the fold: the figure is how far the line strays from it at most. Then the corner at each end is held " +
			"against a set square. An edge that is nowhere near square is a note, unless " +
			"the pattern shows that it is meant. It does where two layers have it so. It does where what it is sewn to answers it, as a skirt that comes up to " +
			"a pointed bodice. And so it does where the edge is a point by its looks and not hemmed, as the neckline of a V. A corner that is square " +
			"on one of two layers which share the edge, and not on the other, is left to shared-edge.",
		Nothing: "The piece is not on the fold.",
		Fix:     "Draw the fold with line = [a, b]. Curve the neighbouring edge so that it leaves the fold at 90°.",
		Bad:     foldStraightBad, Good: foldStraightGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "straight", Value: 0.5, Unit: rules.Millimetres, Text: "how far the fold may lie from the straight line between its ends", Source: "common practice, no source"},
		{Name: "square", Value: 1, Unit: rules.Degrees, Text: "how far an edge may be from square to the fold", Source: "common practice, no source"},
		{Name: "shared", Value: 2, Unit: rules.Degrees, Text: "a corner that is square on the other of two layers which share the edge, and differs by more than this, is one that the layers do not have in common", Source: "common practice, no source"},
		{Name: "near", Value: 10, Unit: rules.Degrees, Text: "an edge further than this from square to the fold is no slip, and may be meant", Source: "common practice, no source"},
		{Name: "point", Value: 20, Unit: rules.Degrees, Text: "an edge further than this from square, and not hemmed, is a point by its looks", Source: "common practice, no source; as seam-true has it where the halves of one edge meet at a centre"},
	},
	Each: rules.Pieces(foldStraight),
}

func foldStraight(p *rules.Pass, piece *model.Piece) {
	fold := piece.Fold
	if fold == nil {
		p.NothingHere()
		return
	}
	if err := piece.Undrawn(); err != nil && !fold.Drawn() {
		p.Cannot(err, rules.Say{Place: fold.Place})
		return
	}
	bow := fold.Path.Straightness()
	p.AtMost(bow, "straight", rules.Say{Key: "straight", Place: fold.Place, Account: bowAccount(fold, bow), Message: func() string {
		return fmt.Sprintf("%s is laid to the fold but lies up to %s off the straight line between its ends; no more than %s is allowed. Draw it as one straight line, or cut the piece with a seam there.",
			fold.Address(), p.Show(bow), p.Show(p.Limit("straight")))
	}})
	if bow > p.Limit("straight") {
		return // what is square to a bent fold is not worth saying
	}
	run := sewing.Run{Edge: fold, To: fold.Length()}
	for _, atEnd := range []bool{false, true} {
		square(p, fold, fold.Neighbour(atEnd), run.CornerAngle(atEnd))
	}
}

// layersDiffer reports whether the same corner of another layer that shares the
// edge is square: the edges differ then.
func layersDiffer(p *rules.Pass, fold, next *model.Edge, angle float64) bool {
	other, ok := sewing.OtherCorner(p.Garment, fold, next)
	return ok && math.Abs(other-90) <= p.Limit("square") && math.Abs(angle-other) > p.Limit("shared")
}

func square(p *rules.Pass, fold, next *model.Edge, angle float64) {
	say := rules.Say{Key: "square to " + next.Name, Place: next.Place, Account: squareAccount(fold, next, angle)}
	if layersDiffer(p, fold, next, angle) {
		say.Under = shares(p.Garment, next)
	}
	off := angle - 90
	switch {
	case next == fold:
	case !model.Known(angle):
		p.Cannot(fmt.Errorf("the angle between %s and %s cannot be measured: the outline is not all drawn", fold.Address(), next.Address()), say)
	case math.Abs(off) > p.Limit("near"):
		pointMeant(p, fold, next, angle, say)
	default:
		say.Message = func() string {
			return fmt.Sprintf("%s meets the fold of %s at %s°, not square; opened out it makes a %s at the centre. Let it leave the fold at 90°, within %s°.",
				next.Address(), fold.Piece.Address(), model.Decimal(angle, 1), peakOrDip(angle), model.Decimal(p.Limit("square"), 1))
		}
		say.Related = []rules.Related{{Message: "the fold", Place: fold.Place}}
		p.AtMost(math.Abs(off), "square", say)
	}
}

// peakOrDip is what an edge makes at the centre that meets the fold at an angle.
func peakOrDip(angle float64) string {
	if angle < 90 {
		return "peak"
	}
	return "dip"
}

// pointMeant judges an edge that meets the fold too far from square for a slip of
// the pencil: a point that was drawn on purpose, or one that lies in the wrong
// place.
func pointMeant(p *rules.Pass, fold, next *model.Edge, angle float64, say rules.Say) {
	off := math.Abs(angle - 90)
	other, shared := sewing.OtherCorner(p.Garment, fold, next)
	switch {
	case shared && math.Abs(angle-other) <= p.Limit("shared"), answered(p, next, angle):
		p.Good(say)
		return
	case off > p.Limit("point") && next.Finish != layering.FinishedHem && len(p.Garment.Partners(next)) == 0:
		p.Good(say)
		return
	}
	say.Note = true
	say.Related = []rules.Related{{Message: "the fold", Place: fold.Place}}
	say.Message = func() string {
		return fmt.Sprintf("%s meets the fold of %s at %s°; opened out it makes a %s at the centre. More than %s° off square it is taken as meant, but nothing else on the pattern shows that it is. "+
			"Look whether one of its points lies in the wrong place; if the %[4]s is meant, accept it with the reason (waive).",
			next.Address(), fold.Piece.Address(), model.Decimal(angle, 1), peakOrDip(angle), model.Decimal(p.Limit("near"), 0))
	}
	p.Verdict(false, rules.Figure{Unit: rules.Degrees, Measured: off, Limit: p.Limit("near"), Margin: p.Limit("near") - off}, say)
}

// answered reports whether an edge is sewn to one that meets the centre, a fold or
// a seam, so that both lie flat together: their corners there make 180 degrees.
func answered(p *rules.Pass, e *model.Edge, angle float64) bool {
	for _, other := range p.Garment.Partners(e) {
		for _, atEnd := range []bool{false, true} {
			centre := other.Neighbour(atEnd)
			if centre != other.Piece.Fold && p.Garment.JoinedToItself(centre) == nil {
				continue
			}
			run := sewing.Run{Edge: other, To: other.Length()}
			if math.Abs(run.CornerAngle(atEnd)+angle-180) <= p.Limit("shared") {
				return true
			}
		}
	}
	return false
}
