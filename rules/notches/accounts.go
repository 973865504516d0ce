package notches

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/model/sewing"
	"understitch/rules"
)

func depthAccount(n *model.Notch, share float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, n.Depth, "the depth of %s", n.Address())
		l.Allowance(1, n.On)
		l.ResultIn(rules.Ratio, 0, share, "is how much of the allowance the notch is deep")
	}
}

// placeAccount tells how a notch lies to what it is to meet, a notch or a join.
func placeAccount(p *rules.Pass, own, other side, n sewing.WalkNotch, meets string, at float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Misplaced(p.Garment, n.At, fmt.Sprintf("%s along the seam, darts closed, from %s", n.Notch.Address(), start(own.walk)),
			at, fmt.Sprintf("%s along its own side from %s", meets, start(other.walk)), own.longer)
	}
}

func offLineAccount(p *rules.Pass, n *model.Notch, along, off float64) rules.Account {
	return func(l *reckoned.Lines) {
		unit := p.Garment.Unit
		l.Say(1, "%s is given at [%s, %s]", n.Address(), unit.Bare(n.Point.X), unit.Bare(n.Point.Y))
		l.Beside(1, along, "is where along %s, as it is now, the place nearest to that lies", n.On.Address())
		l.Result(0, off, "is how far it is from there")
	}
}

func alongAccount(n *model.Notch, beyond float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Add(1, n.At, "%s is to lie along %s", n.Address(), n.On.Address())
		switch {
		case beyond > 0:
			l.Add(1, -n.On.Length(), "less %s, all of it", n.On.Address())
			l.Sum(0, beyond, "is how far it lies beyond the end")
		case beyond < 0:
			l.Sum(0, beyond, "is how far it lies before the start")
		default:
			l.Beside(1, n.On.Length(), "%s, all of it", n.On.Address())
			l.Result(0, 0, "is how far it lies beyond an end")
		}
	}
}

// apartAccount tells how far a notch lies from what it must keep clear of.
func apartAccount(n *model.Notch, r sewing.NotchRoom, what string) rules.Account {
	return func(l *reckoned.Lines) {
		at, _, _ := n.Position()
		var places []float64
		switch {
		case r.Corner != nil:
			places = []float64{0, n.On.Length()}
		case r.Notch != nil:
			there, _, _ := r.Notch.Position()
			places = []float64{there}
		default:
			for _, m := range n.On.Mouths() {
				if m.Dart == r.Dart {
					places = []float64{m.From, m.To}
				}
			}
		}
		for _, place := range places {
			if math.Abs(math.Abs(at-place)-r.Apart) < 1e-6 {
				l.Differ(rules.Millimetres, 0, at, n.Address()+" along its edge as drawn", place, what)
				return
			}
		}
		l.Beside(1, at, "%s along its edge as drawn", n.Address())
		l.Result(0, r.Apart, "is how far it lies from %s", what)
	}
}

// alikeAccount tells what two seams are told apart by.
func alikeAccount(s, other *model.Seam, a, b *sewing.Walk) rules.Account {
	return func(l *reckoned.Lines) {
		for _, side := range []struct {
			seam *model.Seam
			walk *sewing.Walk
		}{{s, a}, {other, b}} {
			l.Beside(0, side.walk.Length, "%s, darts closed", side.seam.Address())
			for _, n := range side.walk.Notches {
				l.Beside(1, n.At, "along it lies %s, a %s notch", n.Notch.Address(), n.Kind())
			}
		}
	}
}
