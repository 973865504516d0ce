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

//go:embed testdata/seam-true.bad.garment.hcl
var trueBad string

//go:embed testdata/seam-true.good.garment.hcl
var trueGood string

// True checks that a line which goes on across a seam runs smoothly over it.
var True = rules.Rule{
	Name:     "seam-true",
	Family:   "seams",
	Severity: rules.Error,
	Under:    []string{"shared-edge"},
	Doc: rules.Doc{
		Title: "A line that goes on across a seam runs smoothly over it",
		Why: "A hem, a neckline or an armhole is drawn on two pieces and sewn as one line. Where the two corners at the seam do not make one " +
			"straight line together, there is a point or a scoop. It shows, and no pressing takes it out.",
		How: "At each end of the seam, lay a protractor into the corner of either piece, between the seam and the edge it runs into. The two " +
			"angles must add up to 180°; neither need be 90°. This is asked where the two edges are one line: finished alike, in one share, held " +
			"in by one elastic, sewn to one edge that runs on past the seam, or the two halves of one edge of a mirrored pair. Where a seam " +
			"crosses on both sides, as at a waist, a bend may be meant. Where the line is true on one of two layers that share it and not on the other, the finding of shared-edge stands for this one. A bend further " +
			"from straight than its limit is no slip of the pencil, and is a note, unless the pattern shows that it is meant. It does where both pieces turn into it " +
			"alike, where two layers have it, and at the centre of anything but a hem, as in a V. Corners at a fold are for fold-straight.",
		Nothing: "No line goes on across an end of the seam.",
		Fix:     "Lay the two pieces together along the seam as sewn, and re-draw the line over it as one.",
		Bad:     trueBad, Good: trueGood, Since: "0.1",
	},
	Limits: append(rules.Steps(3, 8, rules.Degrees, "how far the two corners together may be from 180 degrees",
		"common practice, no source; that the angles must make 180 together, and need not be 90: What is truing, telus.net/inspiredsewing"),
		rules.Limit{Name: "meant", Value: 40, Unit: rules.Degrees, Text: "a corner further than this from 180 degrees is no slip, and may be meant", Source: "common practice, no source"},
		rules.Limit{Name: "alike", Value: 15, Unit: rules.Degrees, Text: "how far the two angles of a corner may differ that is meant so, as where both sides of a shirt's tail rise to the seam", Source: "common practice, no source"},
		rules.Limit{Name: "shared", Value: 2, Unit: rules.Degrees, Text: "a line that is true on the other of two layers which share it, and differs by more than this, is one that the layers do not have in common", Source: "common practice, no source"},
		rules.Limit{Name: "centre", Value: 20, Unit: rules.Degrees, Text: "as the limit meant, where the halves of one edge meet at a centre, as in a shallow V or a pointed waist", Source: "common practice, no source; twice what fold-straight takes as meant"},
	),
	Each: rules.Seams(trueSeam),
}

func trueSeam(p *rules.Pass, s *model.Seam) {
	a, b, err := sewing.Walks(p.Garment, p.Garment.JoinOf(s))
	if err != nil {
		p.Cannot(err, rules.Say{Place: s.Join})
		return
	}
	p.NothingHere()
	if !trueEnds(p, s, a, b) && sewing.Way(p.Garment.JoinOf(s)) == sewing.ByOutlines {
		undrawnEnds(p, s, a, b.Reversed()) // on paper either way is possible
	}
}

// trueEnds judges both ends of a seam, and reports whether a line goes on across
// either.
func trueEnds(p *rules.Pass, s *model.Seam, a, b *sewing.Walk) (any bool) {
	for _, atEnd := range []bool{false, true} {
		line, ok, err := sewing.LineAcross(p.Garment, a, b, atEnd)
		switch {
		case !ok:
			continue
		case err != nil:
			p.Cannot(err, rules.Say{Key: lineKey(line), End: endName(atEnd), Place: s.Join})
		default:
			trueLine(p, s, line, endName(atEnd))
		}
		any = true
	}
	return any
}

// undrawnEnds says which lines would go on across a seam if its second side ran
// the other way, where a piece is not drawn and nothing tells which way it runs.
func undrawnEnds(p *rules.Pass, s *model.Seam, a, b *sewing.Walk) {
	for _, atEnd := range []bool{false, true} {
		if line, ok, err := sewing.LineAcross(p.Garment, a, b, atEnd); ok && err != nil {
			p.Cannot(err, rules.Say{Key: lineKey(line), Place: s.Join})
		}
	}
}

// endName is how a waiver names an end of a seam.
func endName(atEnd bool) string {
	if atEnd {
		return "end"
	}
	return "start"
}

func lineKey(l sewing.LineEnd) string { return l.A.Address() + " and " + l.B.Address() }

func trueLine(p *rules.Pass, s *model.Seam, l sewing.LineEnd, end string) {
	meant := p.Limit("meant")
	if l.Centre() {
		meant = p.Limit("centre")
	}
	off := l.Sum() - 180
	other, shared := sewing.OtherLayer(p.Garment, l)
	var under []rules.Under
	if shared && math.Abs(other-180) <= p.Limit("warn") && math.Abs(l.Sum()-other) > p.Limit("shared") { // the layers differ
		under = shares(p.Garment, l.A, l.B)
	}
	if !(math.Abs(off) <= meant) {
		cornerMeant(p, s, l, end, meant, under, shared && math.Abs(l.Sum()-other) <= p.Limit("shared"))
		return
	}
	names, related := sewing.Listed([]string{l.A.Address(), l.B.Address()}), []rules.Related{{Message: corner(l.A, l.AngleA), Place: l.A.Place}}
	if l.Centre() {
		names = "the two halves of " + l.A.Address()
	} else {
		related = append(related, rules.Related{Message: corner(l.B, l.AngleB), Place: l.B.Place})
	}
	p.Steps(off, rules.Say{
		Key: lineKey(l), End: end, Place: s.Join, Related: related, Under: under, Account: lineAccount(s, l),
		Message: func() string {
			wrong := "dip"
			if off < 0 {
				wrong = "peak"
			}
			return fmt.Sprintf("%s do not run on across %s: their corners make %s° and %s°, together %s° and not 180°, which is a %s of %s° at the seam. Butt the pieces along it and re-draw the line over it as one.",
				names, s.Address(), model.Decimal(l.AngleA, 1), model.Decimal(l.AngleB, 1), model.Decimal(l.Sum(), 1), wrong, model.Decimal(math.Abs(off), 1))
		},
		Mend: &rules.Mend{Title: "true " + names + " over " + s.Address()},
	})
}

// cornerMeant judges a line that bends over a seam too far for a slip of the
// pencil. It is a corner that was drawn on purpose where two layers have it, where
// both pieces turn alike into it, as in the points of a shirt's tail, and at the
// centre of anything but a hem, as in a V. Else a point may lie in the wrong place.
func cornerMeant(p *rules.Pass, s *model.Seam, l sewing.LineEnd, end string, meant float64, under []rules.Under, shared bool) {
	say := rules.Say{Key: lineKey(l), End: end, Place: s.Join, Note: true, Under: under, Account: lineAccount(s, l)}
	alike := math.Abs(l.AngleA-l.AngleB) <= p.Limit("alike")
	if l.Centre() {
		alike = l.A.Finish != layering.FinishedHem
	}
	off := math.Abs(l.Sum() - 180)
	if !model.Known(off) || shared || alike {
		p.Good(say)
		return
	}
	say.Related = []rules.Related{{Message: corner(l.A, l.AngleA), Place: l.A.Place}}
	names := "the two halves of " + l.A.Address()
	if !l.Centre() {
		names = sewing.Listed([]string{l.A.Address(), l.B.Address()})
		say.Related = append(say.Related, rules.Related{Message: corner(l.B, l.AngleB), Place: l.B.Place})
	}
	say.Message = func() string {
		return fmt.Sprintf("%s bend by %s° over %s: their corners make %s° and %s°. More than %s° off a straight line it is taken as a corner that is meant, but nothing else on the pattern shows that it is. "+
			"Look whether a point lies in the wrong place; if the corner is meant, accept it with the reason (waive).",
			names, model.Decimal(off, 1), s.Address(), model.Decimal(l.AngleA, 1), model.Decimal(l.AngleB, 1), model.Decimal(meant, 0))
	}
	p.Verdict(false, rules.Figure{Unit: rules.Degrees, Measured: off, Limit: meant, Margin: meant - off}, say)
}

func corner(e *model.Edge, angle float64) string {
	return fmt.Sprintf("%s makes a corner of %s° with the seam", e.Address(), model.Decimal(angle, 1))
}

// shares names the findings about the shares that take any of some edges.
func shares(g *model.Garment, edges ...*model.Edge) []rules.Under {
	var out []rules.Under
	for _, e := range edges {
		for _, u := range g.Uses(e) {
			if u.Kind == model.Shared {
				out = append(out, rules.Under{Rule: "shared-edge", Subject: u.Thing.Address()})
			}
		}
	}
	return out
}
