package seams

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/rules"
)

//go:embed testdata/dart-legs.bad.garment.hcl
var dartLegsBad string

//go:embed testdata/dart-legs.good.garment.hcl
var dartLegsGood string

// DartLegs checks that the two legs of every dart are equally long and that the
// edge is true over the closed dart.
var DartLegs = rules.Rule{
	Name:     "dart-legs",
	Family:   "seams",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "The legs of a dart are equally long, the edge runs on smoothly over the closed dart, and the dart takes no more than its place has",
		Why: "Legs of unequal length leave a step in the edge, or the longer one is eased in and the dart puckers. An edge that is not true over " +
			"the closed dart makes a peak or a hollow there, and a bubble under it.",
		How: "Measure both legs from the tip to the ends of the mouth. A dart inside the piece has two pairs of legs. Then fold the dart shut and " +
			"lay a ruler along the edge before the mouth: how far the edge behind the mouth turns from it is the angle given. That is left while " +
			"the legs differ, and where the mouth reaches the end of the edge. A dart on a paper edge has no legs to measure. A dart that takes more than its share of its edge, or of its piece at that height, or " +
			"more than any dart does, is an error; the rest are warnings.",
		Fix: "Move the tip, or the middle of the mouth, until the legs are equal. Fold the dart shut on paper and true the edge over it; open " +
			"again, the line bends at the mouth.",
		Bad: dartLegsBad, Good: dartLegsGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "legs", Value: 1, Unit: rules.Millimetres, Text: "how much longer one leg may be than the other", Source: "common practice, no source"},
		{Name: "share", Value: 0.5, Unit: rules.Ratio, Text: "how much of its edge, or of its piece's width, a dart may take", Source: "common practice, no source"},
		{Name: "widest", Value: 150, Unit: rules.Millimetres, Text: "the widest dart there is", Source: "common practice, no source"},
		{Name: "cap", Value: 3, Unit: rules.Degrees, Text: "how far the edge may turn over the closed dart", Source: "common practice, no source; that the edge must run on smoothly: What is truing, telus.net/inspiredsewing"},
	},
	Each: rules.Darts(dartLegs),
}

func dartLegs(p *rules.Pass, d *model.Dart) {
	if tooWide(p, d) {
		return
	}
	legs := d.Legs()
	if len(legs) == 0 {
		err := d.Piece.Undrawn()
		if err == nil {
			err = fmt.Errorf("%s has no tip", d.Address())
		}
		p.Cannot(err, rules.Say{})
		return
	}
	keys := []string{"legs"}
	if len(legs) == 2 {
		keys = []string{"upper legs", "lower legs"}
	}
	unequal := false
	for i, l := range legs {
		a, b := l.Lengths()
		unequal = unequal || math.Abs(a-b) > p.Limit("legs")
		p.AtMost(math.Abs(a-b), "legs", rules.Say{Key: keys[i], Mild: true, Account: legsAccount(a, b), Cures: evenLegs(d), Message: func() string {
			return fmt.Sprintf("the %s of %s are %s and %s long and differ by %s; no more than %s is allowed. Move the tip, or the middle of the mouth, until both are equal.",
				keys[i], d.Address(), p.Show(a), p.Show(b), p.Show(math.Abs(a-b)), p.Show(p.Limit("legs")))
		}})
	}
	if unequal {
		return // how the edge runs on is a question for when the legs are equal
	}
	angle, err := d.CapAngle()
	if err != nil {
		return // inside the piece, or at a corner: there is no edge to run on
	}
	p.AtMost(angle, "cap", rules.Say{Key: "cap", Mild: true, Account: capAccount(d, angle), Message: func() string {
		return fmt.Sprintf("%s turns by %s° over %s once it is closed; no more than %s° is allowed. Close the dart and true the edge over it.",
			d.On.Address(), model.Decimal(angle, 1), d.Address(), model.Decimal(p.Limit("cap"), 1))
	}, Related: []rules.Related{{Message: "the edge it opens on", Place: d.On.Place}}})
}

// evenLegs are the ways to give a dart on an edge two legs of one length: its
// mouth or its tip is moved.
func evenLegs(d *model.Dart) []rules.Cure {
	if d.On == nil || !d.On.Drawn() || !d.HasTip {
		return nil
	}
	address := d.Address()
	moved := func(move func(*model.Dart)) func(*model.Garment) {
		return func(g *model.Garment) {
			for _, o := range g.Darts() {
				if o.Address() == address {
					move(o)
				}
			}
		}
	}
	return []rules.Cure{
		{Title: "move the mouth of " + address + " until its legs are equal", Make: moved(evenMouth)},
		{Title: "move the tip of " + address + " until its legs are equal", Make: moved(evenTip)},
	}
}

// evenMouth moves the mouth along its edge: the leg that is too long grows shorter
// as the mouth comes nearer, so the place is found by halving.
func evenMouth(d *model.Dart) {
	low, high := d.Intake/2, d.On.Length()-d.Intake/2
	uneven := func(at float64) float64 {
		d.At, d.On.Store, d.Piece.Store = at, model.Store{}, model.Store{}
		a, b := d.Legs()[0].Lengths()
		return a - b
	}
	if uneven(low) > uneven(high) {
		low, high = high, low
	}
	for range 60 {
		if mid := (low + high) / 2; uneven(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	uneven((low + high) / 2)
}

// evenTip moves the tip along the mouth to where it is as far from both its ends.
func evenTip(d *model.Dart) {
	l := d.Legs()[0]
	along := l.B.Sub(l.A)
	length := along.Len()
	if length == 0 {
		return
	}
	middle := l.A.Add(l.B).Scale(0.5)
	d.Tip = d.Tip.Sub(along.Scale(d.Tip.Sub(middle).Dot(along) / (length * length)))
	d.On.Store, d.Piece.Store = model.Store{}, model.Store{}
}
