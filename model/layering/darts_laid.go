package layering

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/measuring"
	"understitch/model/sewing"
)

// laidDarts is an inside whose darts are laid on each other.
type laidDarts struct {
	garment *model.Garment
	over    *model.Inside
	frame   curve.Motion
	doubt   laidDoubt
	err     error // why there is no frame
}

func layDarts(g *model.Garment, n *model.Inside) laidDarts {
	l := laidDarts{garment: g, over: n}
	if l.frame, l.err = LaidOn(n, g); l.err == nil {
		l.doubt, l.err = doubtOfLaid(n, g)
	}
	return l
}

// answering is the inner edge that belongs with an outer one: by a share, or by
// its name.
func (l laidDarts) answering(e *model.Edge) (*model.Edge, *model.Share) {
	on := func(side []model.Stretch, is func(*model.Edge) bool) *model.Edge {
		for _, st := range side {
			if is(st.Edge) {
				return st.Edge
			}
		}
		return nil
	}
	for _, s := range l.garment.Shares {
		if on(s.Outer, func(f *model.Edge) bool { return f == e }) == nil {
			continue
		}
		if f := on(s.Inner, func(f *model.Edge) bool { return f.Piece == l.over.Inner[0] && len(dartsOn(f.Piece, f)) > 0 }); f != nil {
			return f, s
		}
	}
	for _, f := range l.over.Inner[0].Edges {
		if f.Name == e.Name {
			return f, nil
		}
	}
	return nil, nil
}

// onEdges compares two darts that open on edges.
func (l laidDarts) onEdges(o, i *model.Dart, share *model.Share) DartAnswer {
	out := DartAnswer{Outer: o, Inner: i, Share: share, Aside: l.along(o, i, share)}
	if o.Pleat != nil && i.Pleat != nil {
		out.Points = l.folds(o, i)
		return out
	}
	a, b := o.Legs(), i.Legs()
	if len(a) != 1 || len(b) != 1 {
		return out
	}
	mouthA, mouthB := a[0].A.Lerp(a[0].B, 0.5), b[0].A.Lerp(b[0].B, 0.5)
	to, other := a[0].Tip.Sub(mouthA), b[0].Tip.Sub(mouthB)
	long, deeper, doubt, lean := to.Len(), 0.0, 0.0, 0.0
	if long == 0 || other.Len() == 0 {
		return out
	}
	longer := other.Len() - long
	if l.err == nil {
		along := to.Scale(1 / long)
		other = l.frame.Direction(other)
		longer, lean = other.Dot(along)-long, math.Abs(other.Cross(along))
		deeper = l.frame.Apply(mouthB).Sub(mouthA).Dot(along)
		doubt = l.doubt.at(a[0].Tip)
	}
	out.Points = []DartPoint{{"tip", shift(longer, doubt, -deeper, byIntake(long, o, i)).of(long, long+longer),
		shift(lean, doubt, 0).of(0, lean)}}
	return out
}

// folds compares how far two pleats are folded.
func (l laidDarts) folds(o, i *model.Dart) []DartPoint {
	long, ok := folded(o)
	longInner, okInner := folded(i)
	if !ok || !okInner {
		return nil
	}
	return []DartPoint{{Name: "end", Longer: shift(longInner-long, 0, 0).of(long, longInner)}}
}

// folded is how far from its edge a pleat is folded, in millimetres.
func folded(d *model.Dart) (float64, bool) {
	s, ok := d.Strip()
	if !ok || math.Abs(s.Down.Y) < 1e-6 {
		return 0, false
	}
	from, to := d.FoldedBetween(s)
	return (to - from) / s.Down.Y, true
}

// along is how far the inner dart lies nearer to the end of its edge, darts
// closed. Where the edges are not of one length, each of their ends may be what
// the darts are placed from.
func (l laidDarts) along(o, i *model.Dart, share *model.Share) DartShift {
	if share != nil {
		outer, inner, _, err := sewing.ShareWalks(l.garment, share)
		if err == nil {
			a, okA := dart(outer, o)
			b, okB := dart(inner, i)
			if okA && okB {
				if len(outer.Runs) != len(inner.Runs) || a.run != b.run {
					return shiftBetween(a.start, outer.Length-a.start, b.start, inner.Length-b.start)
				}
				return shiftBetween(a.before, a.after, b.before, b.after)
			}
		}
	}
	before, after := o.On.Net(o.Middle()), o.On.SewnLength()-o.On.Net(o.Middle())
	innerBefore, innerAfter := i.On.Net(i.Middle()), i.On.SewnLength()-i.On.Net(i.Middle())
	same := shiftBetween(before, after, innerBefore, innerAfter)
	other := shiftBetween(before, after, innerAfter, innerBefore)
	if l.err == nil && o.On.Drawn() && i.On.Drawn() {
		chord := func(e *model.Edge) curve.Point { return e.Path.End().Sub(e.Path.Start()) }
		if chord(o.On).Dot(l.frame.Direction(chord(i.On))) < 0 {
			return other
		}
		return same
	}
	if math.Abs(other.Off()) < math.Abs(same.Off()) {
		return other // nothing tells which way round the one was measured
	}
	return same
}

// shiftBetween is how far a place lies nearer to the end of its line than another
// on its own. Both its distance from the start and that from the end may be kept.
func shiftBetween(before, after, otherBefore, otherAfter float64) DartShift {
	moved := otherBefore - before
	return shift(moved, 0, moved+otherAfter-after).of(before, otherBefore)
}

// shift is a figure that may be nothing or what else is allowed for, or anything
// between, give or take what there is to doubt in it.
func shift(by, doubt float64, allowed ...float64) DartShift {
	return DartShift{By: by, Meant: model.Range{Low: math.Min(0, slices.Min(allowed)) - doubt, High: math.Max(0, slices.Max(allowed)) + doubt}}
}

// walkDart is where a dart lies on a walk, darts closed.
type walkDart struct {
	run           int
	start         float64 // from the walk's start
	before, after float64 // within its run
}

func dart(w *sewing.Walk, d *model.Dart) (walkDart, bool) {
	for i, r := range w.Runs {
		if r.Edge != d.On || d.Middle() < min(r.From, r.To)-model.NearEnd || d.Middle() > max(r.From, r.To)+model.NearEnd {
			continue
		}
		before := math.Abs(r.Edge.Net(d.Middle()) - r.Edge.Net(r.From))
		return walkDart{i, r.Start + before, before, r.Length - before}, true
	}
	return walkDart{}, false
}

// inside compares two darts with two points.
func (l laidDarts) inside(o, i *model.Dart) DartAnswer {
	moved, doubt := l.frame.Apply(i.Centre).Sub(o.Centre), l.doubt.at(o.Centre)
	lower := l.lower(o, i, moved.Y)
	out := DartAnswer{Outer: o, Inner: i, Aside: shift(moved.X, doubt, l.sides(o, i, moved.X)...).of(o.Centre.X, o.Centre.X+moved.X),
		Lower: shift(lower, doubt, 0).of(o.Centre.Y, o.Centre.Y+lower)}
	up, down := i.Up, i.Down
	if l.frame.Direction(curve.Point{Y: 1}).Y < 0 {
		up, down = down, up // drafted upside down
	}
	out.Points = []DartPoint{
		{Name: "upper point", Longer: shift(up-o.Up, doubt, moved.Y, byIntake(o.Up, o, i)).of(o.Up, up)},
		{Name: "lower point", Longer: shift(down-o.Down, doubt, -moved.Y, byIntake(o.Down, o, i)).of(o.Down, down)},
	}
	return out
}

// byIntake is how much longer than a length of the outer dart the inner one is
// with the same angle, in millimetres. One that takes out something where the other
// takes out nothing may be of any length.
func byIntake(length float64, o, i *model.Dart) float64 {
	if length == 0 || i.Intake == o.Intake { // both may take out nothing
		return 0
	}
	return length * (i.Intake/o.Intake - 1)
}

// sides are how far the inner piece's left and right outline lie further to the
// right than the outer's, at the darts' widest places. A half on the fold and a
// whole piece have only one of the two in common.
func (l laidDarts) sides(o, i *model.Dart, moved float64) []float64 {
	left, right, ok := fromSides(o)
	innerLeft, innerRight, okInner := fromSides(i)
	if !ok || !okInner {
		return []float64{0}
	}
	if l.frame.Direction(curve.Point{X: 1}).X < 0 {
		innerLeft, innerRight = innerRight, innerLeft
	}
	out := []float64{moved - (innerLeft - left), moved + (innerRight - right)}
	if !SameHalves(l.over) {
		if math.Abs(out[1]) < math.Abs(out[0]) {
			return out[1:]
		}
		return out[:1]
	}
	return out
}

// fromSides is how far the middle of a dart with two points lies from the
// piece's outline on either side, as drawn.
func fromSides(d *model.Dart) (left, right float64, ok bool) {
	w, err := measuring.WidthAtHeight(d.Piece, d.Centre.Y)
	if err != nil {
		return 0, 0, false
	}
	for _, s := range w.Spans {
		if d.Centre.X >= s.X0 && d.Centre.X <= s.X1 {
			return d.Centre.X - s.X0, s.X1 - d.Centre.X, true
		}
	}
	return 0, 0, false
}

// lower is how far the inner dart's widest place lies lower, as laid, or by the
// level nearest to the outer one's where that is less.
func (l laidDarts) lower(o, i *model.Dart, moved float64) float64 {
	near, byLevel := math.Inf(1), moved
	for _, level := range l.garment.Levels {
		a, okA := o.Piece.LevelY(level)
		b, okB := i.Piece.LevelY(level)
		if from := o.Centre.Y - a; okA && okB && math.Abs(from) < near {
			near, byLevel = math.Abs(from), i.Centre.Y-b-from
		}
	}
	if math.Abs(byLevel) < math.Abs(moved) {
		return byLevel
	}
	return moved
}
