package draft

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/model/curve"
	"understitch/rules"
)

//go:embed testdata/outline-closed.bad.garment.hcl
var outlineClosedBad string

//go:embed testdata/outline-closed.good.garment.hcl
var outlineClosedGood string

// OutlineClosed checks that each edge of a piece starts where the one before it
// ended.
var OutlineClosed = rules.Rule{
	Name:     "outline-closed",
	Family:   "draft",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "The edges of a piece close to an outline",
		Why: "Where an edge does not start at the end of the one before it, one of the two was moved and the other was not. A length, a corner or " +
			"a width of the piece is wrong, and it cannot be cut as drawn.",
		How: "Go round the piece in drawing order and measure from the end of each edge to the start of the next, and from the last to the first. " +
			"A paper piece has no outline. Where there is a gap, each of its two ends is brought to the other, or an edge that lies off at both its ends moved as a whole, " +
			"and all else is looked at again: what is then found no longer came of the gap and is told as a note of it; what is found all the same is told by itself.",
		Fix: "Give both edges the same point at that corner. A point with a name keeps them together.",
		Bad: outlineClosedBad, Good: outlineClosedGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "gap", Value: 0.1, Unit: rules.Millimetres, Text: "how far apart the ends of two edges may lie", Source: "common practice, no source: what no pencil can draw"},
	},
	Firm: "every width, girth and area of the piece rests on its outline",
	Each: rules.Pieces(outlineClosed),
}

func outlineClosed(p *rules.Pass, piece *model.Piece) {
	corners, err := piece.Corners()
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	for i, c := range corners {
		p.AtMost(c.Gap, "gap", rules.Say{
			Key:     c.Before.Name + " to " + c.After.Name,
			Place:   c.After.Place,
			Account: gapAccount(p.Garment, c),
			Message: func() string {
				unit := p.Garment.Unit
				return fmt.Sprintf("%s starts at [%s, %s], %s from the end of %s at [%s, %s]. Let both meet in one point.",
					c.After.Address(), unit.Bare(c.Start.X), unit.Bare(c.Start.Y), p.Show(c.Gap), c.Before.Address(), unit.Bare(c.End.X), unit.Bare(c.End.Y))
			},
			Related: []rules.Related{{Message: "the edge before it", Place: c.Before.Place}},
			Cures:   closings(corners, i),
		})
	}
}

// closings are the ways to close the n-th of a piece's gaps: to bring the one end
// to the other, or the other to the one, its handle going along or staying where
// it is; where an edge lies as far off at both its ends, to move it as a whole; and
// where it would fit the other way round, to turn it.
func closings(corners []model.Corner, n int) []rules.Cure {
	c := corners[n]
	piece, at := c.Before.Piece.Address(), c.Before.Index
	cure := func(title string, redraw func(before, after *model.Edge)) rules.Cure {
		return rules.Cure{Title: title + "; all that is told of it here is put right with that", Make: func(g *model.Garment) {
			for _, p := range g.Pieces() {
				if p.Address() == piece {
					redraw(p.Edges[at], p.Edges[at].Neighbour(true))
				}
			}
		}}
	}
	var out []rules.Cure
	for _, handle := range []bool{false, true} {
		out = append(out,
			cure(fmt.Sprintf("end %s where %s starts", c.Before.Address(), c.After.Address()), func(before, after *model.Edge) {
				before.EndAt(after.Path.Start(), handle)
			}),
			cure(fmt.Sprintf("start %s where %s ends", c.After.Address(), c.Before.Address()), func(before, after *model.Edge) {
				after.StartAt(before.Path.End(), handle)
			}))
	}
	count := len(corners)
	if gap(corners[(n+1)%count]).Add(gap(c)).Len() < together { // the edge after it lies off by as much at its end
		out = append(out, cure(fmt.Sprintf("move %s as a whole to where its neighbours end", c.After.Address()), func(before, after *model.Edge) {
			after.MoveBy(before.Path.End().Sub(after.Path.Start()))
		}))
	}
	if gap(corners[(n+count-1)%count]).Add(gap(c)).Len() < together {
		out = append(out, cure(fmt.Sprintf("move %s as a whole to where its neighbours end", c.Before.Address()), func(before, after *model.Edge) {
			before.MoveBy(after.Path.Start().Sub(before.Path.End()))
		}))
	}
	if next := corners[(n+1)%count]; c.End.Sub(next.End).Len() < together && c.Start.Sub(next.Start).Len() < together {
		out = append(out, cure(fmt.Sprintf("write the points of %s in the other order: it is drawn against the run of its piece", c.After.Address()), func(_, after *model.Edge) { after.Turn() }))
	}
	return out
}

// together is how near to each other, in millimetres, the gaps at both ends of an
// edge must be for the edge to have been moved as a whole: what no pencil can draw.
const together = 0.1

// gap is from the start of the edge after a corner to the end of the one before.
func gap(c model.Corner) curve.Point { return c.End.Sub(c.Start) }
