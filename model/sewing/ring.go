package sewing

import (
	"cmp"
	"math"
	"slices"

	"understitch/model"
)

// Closed reports whether the walk ends where it starts, as round an armhole: a
// ring has no first edge and no direction of its own.
func (w *Walk) Closed(g *model.Garment) bool {
	first, last := w.Runs[0], w.Runs[len(w.Runs)-1]
	starts, ends := first.Backward(), !last.Backward() // which end of its edge each of them has there
	return atCorner(first.Edge, first.From, starts) && atCorner(last.Edge, last.To, ends) &&
		meet(g, last.Edge, ends, first.Edge, starts)
}

// roundOnePiece reports whether the walk is the whole outline of one piece, which
// begins where its list does unless the other side is a ring of seams.
func (w *Walk) roundOnePiece() bool {
	return !slices.ContainsFunc(w.Runs, func(r Run) bool { return r.Edge.Piece != w.Runs[0].Edge.Piece }) &&
		len(w.Runs) == len(w.Runs[0].Edge.Piece.Edges)
}

// openedAt is a closed walk that begins at another place of it. An edge that it
// is opened in the middle of becomes two runs, and a notch there comes first.
func (w *Walk) openedAt(at float64) *Walk {
	out := &Walk{}
	first := 0
	for first < len(w.Runs)-1 && at >= w.Runs[first].Start+w.Runs[first].Length-model.NearEnd {
		first++
	}
	opened := w.Runs[first]
	_, along := w.PlaceIn(first, first, at)
	if math.Abs(at-opened.Start) <= model.NearEnd {
		along = opened.From
	}
	out.add(opened.Edge, along, opened.To)
	for i := 1; i < len(w.Runs); i++ {
		r := w.Runs[(first+i)%len(w.Runs)]
		out.add(r.Edge, r.From, r.To)
	}
	if along != opened.From {
		out.add(opened.Edge, opened.From, along)
		if n := len(out.Notches); n > 1 && out.Notches[n-1].Notch == out.Notches[0].Notch {
			out.Notches = out.Notches[:n-1]
		}
	}
	out.Lost = w.Lost
	return out
}

// ring is one way to lay two closed walks along each other, and what speaks
// against it, in millimetres of misplaced notches.
type ring struct {
	a, b     *Walk
	reversed bool    // the second runs against the way in which it was laid out
	shift    float64 // where on the second, as laid out, the first begins, as a share of its length
	costs    [ringCosts]float64
}

func (r *ring) cost() float64 {
	sum := 0.0
	for _, c := range r.costs {
		sum += c
	}
	return sum
}

// rings lays two closed walks along each other. They are opened, and the way
// round is found, by what they show: kinds, names and places of their notches,
// edges that belong together at their ends, joins of pieces, heights. The order of
// a list and the direction of a line count for nothing. Where two ways round have
// as much for them, ok is false.
func rings(g *model.Garment, a, b *Walk, missed func(a, b *Walk) float64, only func(ring) bool) (best ring, by string, ok bool) {
	var all []ring
	for _, reversed := range []bool{false, true} {
		other := b
		if reversed {
			other = b.Reversed()
		}
		for i, sa := range openings(a) {
			for k, sb := range openings(other) {
				r := ring{a: a.openedAt(sa), b: other.openedAt(sb), reversed: reversed, shift: sb/other.Length - sa/a.Length}
				if only != nil && !only(r) {
					continue
				}
				r.weigh(g)
				r.costs[costEnds] = ringEnd * missed(r.a, r.b)
				switch notched := i >= len(a.Runs); {
				case notched && k >= len(b.Runs):
					r.costs[costPlaces] += openedAtTwo
				case notched || k >= len(b.Runs):
					r.costs[costPlaces] += openedAtOne
				}
				all = append(all, r)
			}
		}
	}
	slices.SortStableFunc(all, func(x, y ring) int {
		if c := cmp.Compare(x.cost(), y.cost()); c != 0 {
			return c
		}
		return slices.Compare(x.opening(), y.opening()) // names, which cost more to tell
	})
	best = all[0]
	for _, r := range all[1:] {
		if !best.likens(r) {
			return best, best.decidedAgainst(r), r.cost()-best.cost() > ringDoubt
		}
	}
	return best, ByNotches, true
}

// openings are the places where a closed walk may be opened: where its edges
// join, then its notches.
func openings(w *Walk) []float64 {
	out := []float64{0}
	out = append(out, w.Joins()...)
	for _, n := range w.Notches {
		out = append(out, n.At)
	}
	return out
}

// decidedAgainst is what speaks most for the ring and against the next best way.
func (r ring) decidedAgainst(other ring) string {
	most := 0
	for i := range r.costs {
		if other.costs[i]-r.costs[i] > other.costs[most]-r.costs[most] {
			most = i
		}
	}
	return costBy[most]
}

// likens reports whether two ways lay the same on the same, though they open the
// ring at other places: round the same way, and shifted by no more than the
// sides differ and a notch is mistaken for another.
func (r ring) likens(other ring) bool {
	if r.reversed != other.reversed {
		return false
	}
	return !farApart(r.shift, other.shift)
}

// opening names the edges at which both sides are opened.
func (r ring) opening() []string {
	var out []string
	for _, w := range []*Walk{r.a, r.b} {
		last := w.Runs[len(w.Runs)-1]
		out = append(out, w.Runs[0].Edge.Address(), last.Edge.Address())
	}
	return out
}

// EitherWay is the error of two sides that close into rings, where nothing shows
// how the one lies on the other and it makes a difference.
type EitherWay struct {
	A, B *Walk // each laid out by itself
	Flip bool  // which way round is stated, and it does not settle where they begin
}

// Error says what to do about it.
func (e *EitherWay) Error() string {
	const both = "both sides close into a ring, and nothing shows "
	const notch = "notch both sides alike, single in front and double at the back"
	if e.Flip {
		return both + "where the one begins on the other: " + notch
	}
	return both + "how the one lies on the other: " + notch + ", or state flip = true or flip = false"
}

// pairRings lays two closed walks along each other as rings does. Where both ways
// remain, flip settles it: false is against each other as the first edges of
// both sides are drawn, true along each other.
func pairRings(g *model.Garment, a, b *Walk, sides [2][]model.Stretch, flip *bool, missed func(a, b *Walk) float64) (*Walk, *Walk, string, error) {
	best, by, ok := rings(g, a, b, missed, nil)
	if flip != nil {
		turned := best.reversed
		only := func(r ring) bool { return r.reversed != turned }
		if !ok {
			only = func(r ring) bool { return r.asDrawn(sides) == *flip }
		}
		if *flip || !ok {
			best, _, ok = rings(g, a, b, missed, only)
			by = ByFlip
		}
	}
	if !ok && !best.alikeAnyWay() {
		return nil, nil, "", &EitherWay{a, b, flip != nil}
	}
	if !ok {
		by = ByNothing
		if len(a.Runs) == 1 && len(b.Runs) == 1 {
			if same, _ := alongside(g, a, b); !same {
				b = b.Reversed()
			}
			return a, b, by, nil
		}
	}
	if best.backToFront() {
		best.a, best.b = best.a.Reversed(), best.b.Reversed()
	}
	return best.a, best.b, by, nil
}

// asDrawn reports whether the first edges of both sides run the same way as they
// are drawn.
func (r ring) asDrawn(sides [2][]model.Stretch) bool {
	backward := func(w *Walk, e *model.Edge) bool {
		return w.Runs[slices.IndexFunc(w.Runs, func(r Run) bool { return r.Edge == e })].Backward()
	}
	return backward(r.a, sides[0][0].Edge) == backward(r.b, sides[1][0].Edge)
}

// alikeAnyWay reports whether the two sides show nothing that could meet rightly
// or wrongly: no notch, and one allowance along one of them at least.
func (r ring) alikeAnyWay() bool {
	even := func(w *Walk) bool {
		return !slices.ContainsFunc(w.Runs, func(x Run) bool { return x.Edge.Allowance.Width != w.Runs[0].Edge.Allowance.Width })
	}
	return len(r.a.Notches)+len(r.b.Notches) == 0 && (even(r.a) || even(r.b))
}

// backToFront reports whether the rings are walked from the edge of the later
// name to the earlier: the other way is taken, so that no figure depends on how
// the lines are drawn.
func (r ring) backToFront() bool {
	for _, w := range []*Walk{r.a, r.b} {
		if c := cmp.Compare(w.Runs[0].Edge.Address(), w.Runs[len(w.Runs)-1].Edge.Address()); c != 0 {
			return c > 0
		}
	}
	return false
}
