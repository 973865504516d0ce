package seams

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/guess"
)

//go:embed testdata/edge-unused.bad.garment.hcl
var edgeUnusedBad string

//go:embed testdata/edge-unused.good.garment.hcl
var edgeUnusedGood string

// EdgeUnused checks that something is done with every edge, and nothing twice.
var EdgeUnused = rules.Rule{
	Name:     "edge-unused",
	Family:   "seams",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "Every edge is sewn, shared, folded, closed or finished, and none of it twice",
		Why: "An edge with which nothing is done is a seam that was forgotten, and the checks over seams and layers pass it by. An edge that is " +
			"claimed twice cannot be sewn as written: one of the two is meant for another edge, or for a part of this one.",
		How: "Mark along each edge what its seams, shares, closures and elastics take up, and its fold or its finish. What stays unmarked is " +
			"unused. Where two seams, closures or folds lie on each other it is used twice. A mirrored pair that one seam joins is one use. A closure that " +
			"opens one half only (half) leaves the seam of the same edges to the other half, which must then have one. An " +
			"edge with a finish or elastic may be sewn as well. An edge with which nothing at all is done is an error where it leaves its layer open at a " +
			"level at which what the layer measures round is held against the body or another layer. It is one too where it looks like a forgotten seam: by its name, " +
			"by the edge of its name on another layer, which is sewn, or by another edge of its piece that is as long. Else it is a warning.",
		Fix: "Name the edge in the seam, share or closure it belongs to, lay it to the fold, or state its finish. Give each of two seams its part of the edge: " +
			"part(shell.back.centre, hip, end).",
		Bad: edgeUnusedBad, Good: edgeUnusedGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "unused", Value: 1, Unit: rules.Millimetres, Text: "the longest part of an edge that may be left over", Source: "common practice, no source"},
		{Name: "fits", Value: 3.2, Unit: rules.Millimetres, Text: "how near the sides of a seam must come to its ease for the edge to be taken as forgotten there", Source: "1/8 inch, 10 Patternwork Skills, Threads 200, 2018/19"},
		{Name: "straight", Value: 0.5, Unit: rules.Millimetres, Text: "how far an edge may bend and still be taken for one that was to lie on the fold", Source: "common practice, no source"},
		{Name: "shortest", Value: 80, Unit: rules.Millimetres, Text: "the shortest edge that is taken for a forgotten seam by its length", Source: "common practice, no source"},
		{Name: "twice", Value: 1, Unit: rules.Millimetres, Text: "how far two uses of an edge may overlap", Source: "common practice, no source"},
	},
	Each: rules.Edges(edgeUnused),
}

func edgeUnused(p *rules.Pass, e *model.Edge) {
	unused, err := p.Garment.Unused(e)
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	var longest model.Part
	for _, part := range unused {
		if part.Length() > longest.Length() {
			longest = part
		}
	}
	say := rules.Say{Key: "unused", Account: partAccount(p.Garment, e, longest, "nothing takes"), Mild: true, Message: func() string { return leftOver(p, e, longest, "") }}
	if longest.Length() > p.Limit("unused") && longest.Half != "" {
		say.Mild = false
		say.Message = func() string {
			return fmt.Sprintf("on the %s half nothing is done with %s %s: its closure opens the other half only. Sew it there: name the edge in its seam, over its whole length.",
				longest.Half, e.Address(), fromTo(p, e, longest))
		}
	} else if longest.Length() > p.Limit("unused") {
		fold := forgotten(p, e, &say)
		if open := guess.LeavesOpen(p.Garment, e); open != nil {
			say.Mild = false
			why := fmt.Sprintf(" By it %s is open at the %s level, and what it measures round cannot be checked.", e.Piece.Layer.Address(), open.Name)
			if fold != "" {
				why += " If it is the middle of the piece, " + fold + ". If not, one of these:"
			}
			say.Message = func() string { return leftOver(p, e, longest, why) }
		} else if why := guess.Unsewn(p.Garment, e, p.Limit("fits"), p.Limit("shortest")); why != "" {
			say.Mild = false
			say.Message = func() string {
				return leftOver(p, e, longest, " It looks like a seam that was forgotten: "+why+".")
			}
		}
	}
	p.AtMost(longest.Length(), "unused", say)

	twice, _ := p.Garment.UsedTwice(e)
	var worst model.Overlap
	for _, o := range twice {
		if o.Length() > worst.Length() {
			worst = o
		}
	}
	if worst.A.Thing == nil {
		return
	}
	p.AtMost(worst.Length(), "twice", rules.Say{
		Key: "twice", Mild: true, Account: partAccount(p.Garment, e, worst.Part, "two take"),
		Message: func() string {
			return fmt.Sprintf("%s is used twice: %s and %s both take it %s. Name another edge in one of them, or give each its part of this one.",
				e.Address(), worst.A.Describe(), worst.B.Describe(), fromTo(p, e, worst.Part))
		},
		Related: []rules.Related{
			{Message: worst.A.Describe(), Place: worst.A.Thing.Where()},
			{Message: worst.B.Describe(), Place: worst.B.Thing.Where()},
		},
	})
}

func leftOver(p *rules.Pass, e *model.Edge, part model.Part, why string) string {
	fix := why + " Name it in the seam, share or closure it belongs to, or state its finish."
	if len(p.Garment.Uses(e)) == 0 {
		return fmt.Sprintf("nothing is done with %s: it is not sewn, shared, folded, closed or finished.", e.Address()) + fix
	}
	return fmt.Sprintf("nothing is done with %s %s.", e.Address(), fromTo(p, e, part)) + fix
}

// fromTo says a part of an edge in words.
func fromTo(p *rules.Pass, e *model.Edge, part model.Part) string {
	if part.Length() >= e.Length() {
		return "all along"
	}
	end := "its end"
	if part.To < e.Length() {
		end = p.Show(part.To)
	}
	start := "its start"
	if part.From > 0 {
		start = p.Show(part.From)
	}
	return "from " + start + " to " + end
}
