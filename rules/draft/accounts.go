package draft

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/drafting"
	"understitch/model/measuring"
	"understitch/model/reckoned"
	"understitch/model/sewing"
	"understitch/rules"
	"understitch/rules/guess"
)

func grainAccount(g *model.Garment, pair sewing.GrainPair) rules.Account {
	return func(l *reckoned.Lines) {
		a, b := pair.AngleA, pair.AngleB
		for _, turn := range []float64{180, -180} { // a grain line has no direction
			if math.Abs(a+turn-b) < math.Abs(a-b) {
				a += turn
			}
		}
		l.Say(1, "as the pieces are sewn, each to its levels or, without them, to the straight line between the ends of %s:", pair.Seam.Address())
		l.Differ(rules.Degrees, 0, a, "the angle of the grain of "+pair.A.Address(), b, "that of "+pair.B.Address())
	}
}

func gapAccount(g *model.Garment, c model.Corner) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(1, "%s ends at [%s, %s]", c.Before.Address(), g.Unit.Bare(c.End.X), g.Unit.Bare(c.End.Y))
		l.Say(1, "%s starts at [%s, %s]", c.After.Address(), g.Unit.Bare(c.Start.X), g.Unit.Bare(c.Start.Y))
		l.Result(0, c.Gap, "is how far that is apart")
	}
}

// cutAccount tells how a piece is cut, which is all that its halves are judged by.
func cutAccount(piece *model.Piece) rules.Account {
	return func(l *reckoned.Lines) {
		often := "once"
		if piece.Cut != 1 {
			often = fmt.Sprintf("%d times", piece.Cut)
		}
		l.Say(0, "%s is cut %s", piece.Address(), often)
		mirrored, fold := "it is not mirrored", "it is not on the fold"
		if piece.Mirrored {
			mirrored = "it is mirrored"
		}
		if piece.Fold != nil {
			fold = "it is on the fold at " + piece.Fold.Name
		}
		l.Say(0, "%s, and %s", mirrored, fold)
	}
}

// stepAccount tells what one figure is in every size, and how far the one that is
// out of step lies from what its neighbours suggest.
func stepAccount(sizes []*model.Garment, s measuring.Series, name string, slip measuring.Slip) rules.Account {
	return func(l *reckoned.Lines) {
		for i, v := range s.Values {
			l.Beside(2, v, "%s in size %s", name, sizes[i].Size)
		}
		if slip.Off == 0 {
			l.Result(0, 0, "is how far one of them is out of step with the rest")
			return
		}
		l.Differ(rules.Millimetres, 0, s.Values[slip.At], "that in size "+sizes[slip.At].Size, slip.Meant, "what its neighbours suggest, half way between them or, at an end, the last step once more")
	}
}

// figureAccount tells a figure and the range that such figures lie in.
func figureAccount(p *rules.Pass, v float64, r model.Range, what string) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(1, "such figures are %s", p.Garment.ShowRange(r))
		l.Result(0, v, "is %s", what)
	}
}

func levelAccount(level *model.Level, away float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, level.Y, "the height of the %s level on the draft", level.Name)
		l.ResultIn(rules.Ratio, 0, away, "is how many times the height of all pieces it lies away from them")
	}
}

func pointAccount(g *model.Garment, piece *model.Piece, far guess.FarOff) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(1, "[%s, %s] of %s lies farthest from all other points", g.Unit.Bare(far.At.X), g.Unit.Bare(far.At.Y), far.Edge.Address())
		l.ResultIn(rules.Ratio, 0, far.Times, "is how many times as large %s is with that point as without it", piece.Address())
	}
}

func girthAccount(g *model.Garment, layer *model.Layer, level *model.Level, meant model.Range) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(0, level.Body, "the body there")
		l.Say(0, "layers over it are %s round", g.ShowRange(meant))
		l.Girth(0, 1, g, layer, level)
	}
}

// crossingsAccount tells where the outline crosses itself.
func crossingsAccount(g *model.Garment, piece *model.Piece, crossings []drafting.OutlineCrossing) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(0, "the %d edges of %s were held against each other, and each against itself", len(piece.Edges), piece.Address())
		for _, c := range crossings {
			if c.A != nil && c.B != nil {
				l.Say(0, "%s meets %s at [%s, %s]", c.B.Address(), c.A.Address(), g.Unit.Bare(c.At.X), g.Unit.Bare(c.At.Y))
			}
		}
	}
}
