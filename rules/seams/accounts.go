package seams

import (
	"fmt"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/model/sewing"
	"understitch/rules"
)

// account lays open how much longer the first side is than the second, and how far
// that lies outside the ease.
func (w walked) account(way string) rules.Account {
	return func(l *reckoned.Lines) {
		first, second := sewing.SideText(w.seam.Sides[0]), sewing.SideText(w.seam.Sides[1])
		l.Sides(1, w.a, w.b, first, second, way)
		l.Off(0, w.longer, w.seam.Ease, w.Garment.ShowRange(w.seam.Ease))
	}
}

func lineAccount(s *model.Seam, line sewing.LineEnd) rules.Account {
	return func(l *reckoned.Lines) {
		l.AddIn(rules.Degrees, 1, line.AngleA, "the corner of %s with %s", line.A.Address(), s.Address())
		l.AddIn(rules.Degrees, 1, line.AngleB, "the corner of %s with it", line.B.Address())
		l.AddIn(rules.Degrees, 1, -180, "less a straight line")
		l.SumIn(rules.Degrees, 0, line.Sum()-180, "is how far the two together are from straight")
	}
}

func easeSideAccount(eased, other *sewing.Walk, easedText, otherText string) rules.Account {
	return func(l *reckoned.Lines) {
		shorter, depth := other.Length-eased.Length, 1
		if shorter <= 0 {
			depth = 2
		}
		l.Walk(depth, 1, other, otherText)
		l.Walk(depth, -1, eased, easedText+", which is to be eased in,")
		if shorter > 0 {
			l.Sum(0, shorter, "is how much shorter it is")
			return
		}
		l.Sum(1, shorter, "is how much shorter it is; below nothing, longer")
		l.Result(0, 0, "is how much too short it is")
	}
}

func legsAccount(a, b float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Differ(rules.Millimetres, 0, a, "one leg, from the tip to the end of the mouth", b, "the other leg")
	}
}

func overhangAccount(d *model.Dart, over float64, atEnd bool) rules.Account {
	return func(l *reckoned.Lines) {
		at := d.Middle()
		name := "the start"
		if atEnd {
			at, name = d.On.Length()-d.Middle(), "the end"
		}
		l.Add(1, d.Intake/2, "half of what %s folds away", d.Address())
		l.Add(1, -at, "less how far its middle lies from %s of %s", name, d.On.Address())
		l.Sum(0, over, "is how far it lies beyond")
	}
}

func overlapAccount(first, second model.Mouth, over float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Add(1, first.To, "along the edge %s ends", first.Dart.Address())
		l.Add(1, -second.From, "less where %s begins", second.Dart.Address())
		l.Sum(0, over, "is how far they lie on each other")
	}
}

func reachAccount(d *model.Dart, long, room float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Add(1, long, "%s is folded so far from its edge", d.Address())
		l.Add(1, -room, "less how far the piece goes on there")
		l.Sum(0, long-room, "is how far it runs off the piece")
	}
}

func capAccount(d *model.Dart, angle float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, d.Intake, "%s takes out", d.Address())
		l.Beside(1, d.At, "is where along %s the middle of its mouth lies", d.On.Address())
		l.ResultIn(rules.Degrees, 0, angle, "with the dart closed and a ruler along the edge before the mouth, is how far the edge behind it turns from the ruler")
	}
}

func bowAccount(fold *model.Edge, bow float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, fold.Path.Start().Dist(fold.Path.End()), "is the straight line between the ends of %s", fold.Address())
		l.Beside(1, fold.Length(), "is the line as it is drawn")
		l.Result(0, bow, "is the most that it lies off the straight line")
	}
}

func squareAccount(fold, next *model.Edge, angle float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Differ(rules.Degrees, 0, angle, fmt.Sprintf("the corner of %s with %s", next.Address(), fold.Address()), 90, "a square corner")
	}
}

// partAccount tells which part of an edge is meant, and what is done with the edge.
func partAccount(g *model.Garment, e *model.Edge, part model.Part, what string) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, e.Length(), "%s, all of it as drawn", e.Address())
		said := map[string]bool{}
		for _, u := range g.Uses(e) {
			if by := u.Describe(); !said[by] {
				said[by] = true // once for both sides of a seam
				l.Say(1, "%s is taken by %s", e.Address(), by)
			}
		}
		if part.Length() == 0 {
			l.Result(0, 0, "is the longest part of it that %s", what)
			return
		}
		l.Add(1, part.To, "along it ends what %s", what)
		if part.From > 0 {
			l.Add(1, -part.From, "less where that begins")
		}
		l.Sum(0, part.Length(), "is the longest part of it that %s", what)
	}
}

func shareAccount(d *model.Dart, place string, has float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(0, d.Intake, "is what %s takes out", d.Address())
		l.Beside(0, has, "is what %s has", place)
		l.ResultIn(rules.Ratio, 0, d.Intake/has, "is the share that the dart takes")
	}
}
