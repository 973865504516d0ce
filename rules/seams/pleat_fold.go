package seams

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/rules"
)

//go:embed testdata/pleat-fold.bad.garment.hcl
var pleatFoldBad string

//go:embed testdata/pleat-fold.good.garment.hcl
var pleatFoldGood string

// PleatFold checks that every pleat can be folded where it is drawn, and that its
// edge is true over it when it is.
var PleatFold = rules.Rule{
	Name:     "pleat-fold",
	Family:   "seams",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "A pleat can be folded where it is drawn, and its edge runs on smoothly over the closed pleat",
		Why: "A pleat that runs off its edge, or into the one beside it, cannot be folded as drawn. An edge that bends over the closed pleat " +
			"leaves a peak or a hollow in the seam that holds it.",
		How: "Lay what the pleat folds away along its edge: twice its depth, and four times for a box or inverted pleat, half of it on either side " +
			"of its middle. All of it must lie on the edge. Only at a fold, or at the seam of an edge with itself, may half of it lie beyond: the " +
			"other half of the piece carries that. No other pleat or dart may take the same cloth, and the piece must reach as far as the pleat is " +
			"folded. Then fold it: its lines run side by side, so the edge behind it is moved and not turned. How far the edge turns there is the " +
			"angle given. At a fold the other half is its mirror image.",
		Fix: "Move the pleat along its edge, or make it less deep. Fold it on paper, true the edge over it, and draw the edge as it lies when it is " +
			"opened again.",
		Bad: pleatFoldBad, Good: pleatFoldGood, Since: "0.2",
	},
	Limits: []rules.Limit{
		{Name: "place", Value: 1, Unit: rules.Millimetres, Text: "how far a pleat may lie beyond its edge, its piece, or the pleat beside it", Source: "common practice, no source"},
		{Name: "cap", Value: 3, Unit: rules.Degrees, Text: "how far the edge may turn over the closed pleat", Source: "common practice, no source, as over a closed dart"},
	},
	Each: rules.Pleats(pleatFold),
}

func pleatFold(p *rules.Pass, d *model.Dart) {
	if err := d.Piece.Undrawn(); err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	m, _ := d.Mouth()
	lies := pleatEnds(p, d)
	pleatBeside(p, d, m)
	if d.Pleat.To != nil || d.Pleat.Reach > 0 {
		pleatReach(p, d)
	}
	if !lies {
		return // how the edge runs on is a question for when the pleat lies on it
	}
	angle, err := d.CapAngle()
	if err != nil {
		return // it takes up the whole edge: nothing is left to run on
	}
	p.AtMost(angle, "cap", rules.Say{Key: "cap", Mild: true, Account: capAccount(d, angle), Message: func() string {
		return fmt.Sprintf("%s turns by %s° over %s once it is folded; no more than %s° is allowed. Fold the pleat and true the edge over it.",
			d.On.Address(), model.Decimal(angle, 1), d.Address(), model.Decimal(p.Limit("cap"), 1))
	}, Related: []rules.Related{{Message: "the edge it is on", Place: d.On.Place}}})
}

// pleatEnds checks, and reports, whether the pleat lies on its edge.
func pleatEnds(p *rules.Pass, d *model.Dart) bool {
	lies := true
	start, end := d.Overhang()
	for i, over := range []float64{start, end} {
		atEnd := i == 1
		goesOn := p.Garment.GoesOnBeyond(d.On, atEnd)
		if goesOn && math.Abs(over-d.Intake/2) <= p.Limit("place") {
			over = 0 // its other half is on the other half of the piece
		}
		lies = lies && over <= p.Limit("place")
		name := []string{"start", "end"}[i]
		p.AtMost(over, "place", rules.Say{Key: name, Account: overhangOf(d, over, atEnd), Message: func() string {
			mend := "Move it in, or make it less deep."
			if goesOn {
				mend = fmt.Sprintf("There the other half of the piece begins: put its middle there (at = %s), or all of it on this half.", name)
			}
			return fmt.Sprintf("%s folds away %s, and %s of it lies beyond the %s of %s. %s",
				d.Address(), p.Show(d.Intake), p.Show(over), name, d.On.Address(), mend)
		}, Related: []rules.Related{{Message: "the edge it is on", Place: d.On.Place}}})
	}
	return lies
}

func overhangOf(d *model.Dart, over float64, atEnd bool) rules.Account {
	if over == 0 {
		return func(l *reckoned.Lines) {
			l.Beside(1, d.Intake, "%s folds away", d.Address())
			l.Beside(1, d.Middle(), "along %s lies its middle", d.On.Address())
			l.Beside(1, d.On.Length(), "%s, all of it", d.On.Address())
			l.Result(0, 0, "lies beyond it, but for what the other half of the piece carries")
		}
	}
	return overhangAccount(d, over, atEnd)
}

// pleatBeside checks that no pleat or dart takes cloth that this one folds away.
func pleatBeside(p *rules.Pass, d *model.Dart, m model.Mouth) {
	for _, other := range d.On.Mouths() {
		if other.Dart == d || other.From < m.From || other.From == m.From && other.Dart.Name < d.Name {
			continue // said of the first of the two
		}
		over := m.To - other.From
		if over <= 0 {
			continue
		}
		p.AtMost(over, "place", rules.Say{Key: "beside " + other.Dart.Word() + " " + other.Dart.Name, Account: overlapAccount(m, other, over), Message: func() string {
			return fmt.Sprintf("%s and %s lie on each other along %s for %s: the cloth cannot be folded away twice. Move one of them, or make it less deep.",
				d.Address(), other.Dart.Address(), d.On.Address(), p.Show(over))
		}, Related: []rules.Related{{Message: "the other", Place: other.Dart.Place}}})
	}
}

// pleatReach checks that the piece reaches as far as the pleat is folded.
func pleatReach(p *rules.Pass, d *model.Dart) {
	s, ok := d.Strip()
	if !ok || math.IsInf(d.Pleat.Reach, 1) {
		return
	}
	say := rules.Say{Key: "to"}
	long := d.Pleat.Reach
	middle := s.A.Lerp(s.B, 0.5)
	if to := d.Pleat.To; to != nil {
		say.Related = []rules.Related{{Message: "the level " + to.Name, Place: to.Place}}
		y, known := d.Piece.LevelY(to)
		if !known || math.Abs(s.Down.Y) < 1e-6 || (y-middle.Y)*s.Down.Y <= 0 {
			say.Message = func() string {
				return fmt.Sprintf("%s is to be folded to the %s level, which does not lie before it where it leaves %s. Name another level, or a length.",
					d.Address(), to.Name, d.On.Address())
			}
			p.Fault(say)
			return
		}
		long = (y - middle.Y) / s.Down.Y
	}
	room := d.Room(s)
	over := math.Max(long-room, 0)
	say.Account = reachAccount(d, long, math.Min(room, long))
	say.Message = func() string {
		return fmt.Sprintf("%s is folded for %s from %s, and the piece ends %s before that. Write to = end to fold it all the way, or a shorter length.",
			d.Address(), p.Show(long), d.On.Address(), p.Show(over))
	}
	p.AtMost(over, "place", say)
}
