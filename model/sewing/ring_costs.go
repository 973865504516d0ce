package sewing

import (
	"cmp"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// What may speak against a way to lay rings.
const (
	costKinds  = iota // notches of two kinds on each other
	costNames         // notches on each other whose namesakes lie elsewhere
	costPlaces        // notches that miss each other, or meet nothing
	costEnds          // edges that are sewn on in one go, and do not meet
	costJoins         // joins of pieces that do not meet
	costLevels        // the one join of a side not at the lowest of the other
	ringCosts
)

// costBy tells what a cost is of.
var costBy = [ringCosts]string{ByKinds, ByNames, ByNotches, ByEnds, ByJoins, ByLevels}

// What it costs, in millimetres of misplaced notches, when something does not
// fit. The weights only choose between ways to lay a ring; no figure depends on
// them (by judgement, no source: a kind weighs more than a notch that is 3 cm
// out of its place, and that more than a name).
const (
	ringKind    = 40.0
	ringName    = 25.0
	ringAlone   = 60.0 // a notch that meets neither a notch nor a join
	ringEnd     = 60.0
	ringJoin    = 20.0 // at most, for each join
	ringLowest  = 15.0
	ringNear    = 1.0 / 8 // of its length, round a ring: as far apart the same place may lie on both sides
	openedAtOne = 2.0     // the ring is opened at one notch, the place of which may be wrong, and a join
	openedAtTwo = 10.0    // at two notches
	ringDoubt   = 3.0     // two ways that differ by less are both possible
)

// weigh lays notch on notch at the least cost, where a notch may also lie on a
// join or an end of the other side, as the crown notch of a sleeve does.
func (r *ring) weigh(g *model.Garment) {
	a, b := r.a, r.b
	longer := a.Length - b.Length
	type costs = [ringCosts]float64
	plus := func(x, y costs) costs {
		for i := range x {
			x[i] += y[i]
		}
		return x
	}
	less := func(x, y costs) costs {
		if (&ring{costs: y}).cost() < (&ring{costs: x}).cost() {
			return y
		}
		return x
	}
	alone := func(at, longer float64, other *Walk) costs {
		cost := ringAlone
		for _, join := range append(other.Joins(), 0, other.Length) {
			cost = min(cost, math.Abs(Misplaced(at-join, longer)))
		}
		return costs{costPlaces: cost}
	}
	named := namesakes(a.Notches, b.Notches)
	paired := func(n, m WalkNotch) costs {
		out := costs{costPlaces: math.Abs(Misplaced(n.At-m.At, longer))}
		if n.Kind() != m.Kind() {
			out[costKinds] = ringKind
		}
		if n.Notch.Name != m.Notch.Name && (named[n.Notch.Name] || named[m.Notch.Name]) {
			out[costNames] = ringName
		}
		return out
	}
	row := make([]costs, len(b.Notches)+1)
	for j, m := range b.Notches {
		row[j+1] = plus(row[j], alone(m.At, -longer, a))
	}
	for _, n := range a.Notches {
		before := row[0]
		row[0] = plus(row[0], alone(n.At, longer, b))
		for j, m := range b.Notches {
			both := plus(before, paired(n, m))
			before = row[j+1]
			row[j+1] = less(both, less(plus(before, alone(n.At, longer, b)), plus(row[j], alone(m.At, -longer, a))))
		}
	}
	r.costs = row[len(b.Notches)]
	r.costs[costJoins] = joinsApart(a, b)
	if lowestElsewhere(g, a, b) || lowestElsewhere(g, b, a) {
		r.costs[costLevels] = ringLowest
	}
}

// namesakes are the names that stand once in either of two rows of notches. A
// single one shows nothing of their order.
func namesakes(a, b []WalkNotch) map[string]bool {
	count := func(list []WalkNotch) map[string]int {
		out := map[string]int{}
		for _, n := range list {
			out[n.Notch.Name]++
		}
		return out
	}
	inB, out := count(b), map[string]bool{}
	for name, n := range count(a) {
		if n == 1 && inB[name] == 1 {
			out[name] = true
		}
	}
	if len(out) < 2 {
		return nil
	}
	return out
}

// junction is a place where two edges of a ring meet, and the edges of their
// pieces that cross it there: the one that the edge before runs into, and the one
// that the edge after comes from.
type junction struct {
	at            float64
	before, after *model.Edge
	corner        curve.Point // as the edge after is drawn
}

func (w *Walk) junctions() []junction {
	var out []junction
	for i, r := range w.Runs {
		last := w.Runs[(i+len(w.Runs)-1)%len(w.Runs)]
		starts, ends := r.Backward(), !last.Backward()
		if !atCorner(r.Edge, r.From, starts) {
			continue // opened in the middle of an edge
		}
		j := junction{at: r.Start, before: last.Edge.Neighbour(ends), after: r.Edge.Neighbour(starts)}
		if r.Edge.Drawn() {
			j.corner = r.Edge.Path.At(r.From)
		}
		out = append(out, j)
	}
	return out
}

// farApart reports whether two places of two rings, as shares of their lengths,
// are not the same one.
func farApart(at, other float64) bool {
	d := math.Abs(at - other)
	return math.Abs(d-math.Round(d)) > ringNear
}

// lowestElsewhere reports whether the one piece of a side is closed elsewhere than
// at the lowest join of the other, as a sleeve's own seam lies at the underarm.
func lowestElsewhere(g *model.Garment, one, other *Walk) bool {
	own, joins := one.junctions(), other.junctions()
	if len(own) != 1 || len(joins) < 2 || !upright(g, other) {
		return false
	}
	slices.SortFunc(joins, func(x, y junction) int { return cmp.Compare(y.corner.Y, x.corner.Y) })
	return joins[0].corner.Y > joins[1].corner.Y+clearly && farApart(own[0].at/one.Length, joins[0].at/other.Length)
}

// joinsApart is how far the places where pieces join within one side lie from
// those of the other, where both have any.
func joinsApart(a, b *Walk) float64 {
	sum := 0.0
	for _, sides := range [2][2]*Walk{{a, b}, {b, a}} {
		for _, at := range sides[0].Joins() {
			nearest := math.Inf(1)
			for _, other := range sides[1].Joins() {
				nearest = min(nearest, math.Abs(Misplaced(at-other, sides[0].Length-sides[1].Length)))
			}
			if !math.IsInf(nearest, 1) {
				sum += min(nearest, ringJoin)
			}
		}
	}
	return sum
}

// missedEnds counts the edges that run into one side, are sewn on in one go with
// one that runs into the other, and do not meet it: the seam of a sleeve may go on
// in the side seam.
func missedEnds(g *model.Garment) func(a, b *Walk) float64 {
	inOne := func(x, y *model.Edge) bool {
		return x != y && slices.ContainsFunc(g.Joins(), func(j *model.Join) bool {
			return model.Has(j.Sides[0], x) && model.Has(j.Sides[0], y) || model.Has(j.Sides[1], x) && model.Has(j.Sides[1], y)
		})
	}
	return func(a, b *Walk) float64 {
		missed := 0.0
		for _, x := range a.junctions() {
			for _, y := range b.junctions() {
				apart := farApart(x.at/a.Length, y.at/b.Length)
				for _, one := range [2]*model.Edge{x.before, x.after} {
					for _, other := range [2]*model.Edge{y.before, y.after} {
						if inOne(one, other) && (apart || (one == x.before) != (other == y.before)) {
							missed++
						}
					}
				}
			}
		}
		return missed
	}
}
