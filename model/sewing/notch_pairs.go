package sewing

import (
	"math"
	"slices"

	"understitch/model"
)

// NotchPair is a notch of one walk and the notch of the other that it is laid
// on.
type NotchPair struct{ A, B WalkNotch }

// Off is how much further along its own walk the first notch lies than the
// second, in millimetres.
func (p NotchPair) Off() float64 { return p.A.At - p.B.At }

// SameKind reports whether both notches are cut alike: single on single, double
// on double. A notch whose kind is not stated counts as a single one.
func (p NotchPair) SameKind() bool { return p.A.Kind() == p.B.Kind() }

// Kind of the notch; a single one where it states none.
func (n WalkNotch) Kind() string {
	if n.Notch.Kind == "" {
		return "single"
	}
	return n.Notch.Kind
}

// Misplaced tells how far a notch lies from where its partner is, when the walks
// differ in length: off is how much further along its walk it lies, longer how
// much longer that whole walk is. Somewhere up to the notch the length may have
// come in, or not yet, so anything between nothing and the whole of it is the
// fault (or the ease) of the lengths and not of the notch.
func Misplaced(off, longer float64) float64 {
	return model.Range{Low: min(0, longer), High: max(0, longer)}.Beyond(off)
}

// What it costs, in millimetres of misplacing, to leave a notch without partner
// and to pair notches of two kinds. They only choose between pairings, no figure
// depends on them (common practice, no source: notches that belong together lie
// within a finger's breadth).
const (
	withoutPartner = 10.0
	otherKind      = 5.0
)

// PairNotches pairs the notches of two walks in order along them, so that they
// are misplaced as little as can be; walks of different lengths may put their
// notches off by as much as the lengths differ. A notch without a partner is
// listed by its own walk. Two that are left over between the same neighbours are
// taken for one notch in the wrong place, however far apart they lie.
func PairNotches(a, b *Walk) (pairs []NotchPair, onlyA, onlyB []WalkNotch) {
	steps := alignment(a, b)
	i, j := 0, 0
	for _, paired := range append(steps, [2]int{len(a.Notches), len(b.Notches)}) {
		looseA, looseB := a.Notches[i:paired[0]], b.Notches[j:paired[1]]
		if len(looseA) == len(looseB) {
			for k := range looseA {
				pairs = append(pairs, NotchPair{looseA[k], looseB[k]})
			}
		} else {
			onlyA, onlyB = append(onlyA, looseA...), append(onlyB, looseB...)
		}
		if i, j = paired[0], paired[1]; i < len(a.Notches) {
			pairs = append(pairs, NotchPair{a.Notches[i], b.Notches[j]})
			i, j = i+1, j+1
		}
	}
	return pairs, onlyA, onlyB
}

// alignment are the notches paired at the least cost, by their places in both
// lists: an alignment of two rows by dynamic programming.
func alignment(a, b *Walk) [][2]int {
	cost := alignmentCosts(a, b)
	var out [][2]int
	for i, j := len(a.Notches), len(b.Notches); i > 0 && j > 0; {
		switch cost[i][j] {
		case cost[i-1][j-1] + pairCost(a, b, i-1, j-1):
			i, j = i-1, j-1
			out = append(out, [2]int{i, j})
		case cost[i-1][j] + withoutPartner:
			i--
		default:
			j--
		}
	}
	slices.Reverse(out)
	return out
}

// alignmentCosts are the least costs of pairing the first i notches of one walk
// with the first j of the other; the last of them is that of all.
func alignmentCosts(a, b *Walk) [][]float64 {
	na, nb := len(a.Notches), len(b.Notches)
	cost := make([][]float64, na+1)
	for i := range cost {
		cost[i] = make([]float64, nb+1)
		for j := range cost[i] {
			switch {
			case i == 0 || j == 0:
				cost[i][j] = float64(i+j) * withoutPartner
			default:
				cost[i][j] = min(cost[i-1][j-1]+pairCost(a, b, i-1, j-1), cost[i-1][j]+withoutPartner, cost[i][j-1]+withoutPartner)
			}
		}
	}
	return cost
}

func pairCost(a, b *Walk, i, j int) float64 {
	pair := NotchPair{a.Notches[i], b.Notches[j]}
	cost := math.Abs(Misplaced(pair.Off(), a.Length-b.Length))
	if !pair.SameKind() {
		cost += otherKind
	}
	return cost
}
