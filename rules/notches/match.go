package notches

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/notch-match.bad.garment.hcl
var matchBad string

//go:embed testdata/notch-match.good.garment.hcl
var matchGood string

// Match checks that every notch on one side of a seam has its partner on the
// other, at the same distance along it and of the same kind.
var Match = rules.Rule{
	Name:     "notch-match",
	Family:   "notches",
	Severity: rules.Error,
	Under:    []string{"notch-on-line"},
	Doc: rules.Doc{
		Title: "Each notch of a seam meets its partner on the other side, of the same kind",
		Why: "The machinist lays notch on notch and eases in what lies between. A notch in the wrong place twists the seam, or puts the ease where " +
			"it is not meant. A notch without a partner stops the work, or is matched with a wrong one.",
		How: "Walk the two sides along each other on the stitch line, darts closed, and see which notch comes to lie by which, in order. Where one " +
			"side is longer, by ease or by a fault that seam-walk reports, the extra length may come in anywhere along the seam; a notch is wrong " +
			"only by what that cannot explain. A notch may also meet the place where two pieces of the other side are joined, as a sleeve's top " +
			"notch meets the shoulder seam. One at the very end of a seam needs no partner.",
		Nothing: "There is no notch to meet another.",
		Fix:     "Move the notch to the place given, or add the missing one. Cut single to single and double to double.",
		Bad:     matchBad, Good: matchGood, Since: "0.1",
	},
	Limits: append(matchSteps,
		rules.Limit{Name: "join", Value: 10, Unit: rules.Millimetres, Text: "a notch without a partner is taken to be meant for a join of two pieces no further off than this", Source: "common practice, no source"},
		rules.Limit{Name: "end", Value: 1, Unit: rules.Millimetres, Text: "a notch as near as this to the end of a seam needs no partner", Source: "common practice, no source"},
	),
	Each: rules.Joins(match),
}

var matchSteps = rules.Steps(1.5, 3, rules.Millimetres, "how far a notch may lie from where its partner is", "common practice (1 to 2 mm), no source")

// side is one side of a join, for what is said about its notches.
type side struct {
	walk   *sewing.Walk
	longer float64 // than the other side
}

func match(p *rules.Pass, j *model.Join) {
	a, b, err := sewing.Walks(p.Garment, j)
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	p.NothingHere() // until there is a notch to judge
	sides := [2]side{{a, a.Length - b.Length}, {b, b.Length - a.Length}}
	pairs, onlyA, onlyB := sewing.PairNotches(a, b)
	for _, pair := range pairs {
		if pair.A.Notch == pair.B.Notch {
			continue // the halves of a mirrored pair
		}
		place(p, sides, pair)
		kind(p, pair)
	}
	lostB, lostA := partnersLost(onlyA, b.Lost), partnersLost(onlyB, a.Lost)
	if pair, ok := strayed(p, sides, onlyA, onlyB); ok {
		place(p, sides, pair)
		kind(p, pair)
		return
	}
	for _, n := range onlyA {
		alone(p, sides[0], sides[1], n, lostB[n.Notch])
	}
	for _, n := range onlyB {
		alone(p, sides[1], sides[0], n, lostA[n.Notch])
	}
}

// strayed are two notches too far apart to be taken for partners by their places,
// which are so by their name, when each is the only one of its side that has none:
// a figure of one of them was mistyped, or is in another unit.
func strayed(p *rules.Pass, sides [2]side, onlyA, onlyB []sewing.WalkNotch) (pair sewing.NotchPair, ok bool) {
	if len(onlyA) != 1 || len(onlyB) != 1 {
		return pair, false
	}
	a, b := onlyA[0], onlyB[0]
	if a.Notch == b.Notch || a.Notch.Name != b.Notch.Name {
		return pair, false
	}
	for i, n := range []sewing.WalkNotch{a, b} {
		if _, off, near := nearestJoin(sides[i], sides[1-i], n); near && math.Abs(off) <= p.Limit("join") {
			return pair, false // it may be meant to meet the join
		}
	}
	return sewing.NotchPair{A: a, B: b}, true
}

// place judges where the two notches of a pair lie. The one that was put there
// by hand is named for moving, rather than one that follows a level; else the one
// that lies where no notch belongs.
func place(p *rules.Pass, sides [2]side, pair sewing.NotchPair) {
	own, other, at, partner := sides[1], sides[0], pair.B, pair.A
	if firstMoves(pair.A.Notch, pair.B.Notch) {
		own, other, at, partner = other, own, partner, at
	}
	off := sewing.Misplaced(at.At-partner.At, own.longer)
	edge, along := own.walk.Place(at.At - off)
	back, backAlong := other.walk.Place(partner.At + off)
	p.Steps(off, rules.Say{
		Key:     at.Notch.Address(),
		Place:   at.Notch.Given,
		Under:   []rules.Under{{Rule: "notch-on-line", Subject: at.Notch.Address()}, {Rule: "notch-on-line", Subject: partner.Notch.Address()}},
		Account: placeAccount(p, own, other, at, partner.Notch.Address(), partner.At),
		Message: func() string {
			text := fmt.Sprintf("%s does not meet %s: it lies %s along the seam from %s, and its partner %s from %s",
				at.Notch.Address(), partner.Notch.Address(), p.Show(at.At), start(own.walk), p.Show(partner.At), start(other.walk))
			if d := math.Abs(own.longer); d > p.Limit("warn") {
				text += fmt.Sprintf("; the %s by which the sides differ does not explain %s of it", p.Show(d), p.Show(math.Abs(off)))
			}
			text += fmt.Sprintf(". Move it to %s along %s", p.Show(along), edge.Address())
			if partner.Notch.Level == nil {
				text += fmt.Sprintf(", or the other to %s along %s", p.Show(backAlong), back.Address())
			}
			return text + "."
		},
		Related: []rules.Related{{Message: "its partner", Place: partner.Notch.Given}},
		Mend:    move(p, at.Notch, edge, along),
		Cures:   slices.Concat(moving(p, at.Notch, edge, along), moving(p, partner.Notch, back, backAlong)),
	})
}

// firstMoves reports whether the first of two notches is the one to move.
func firstMoves(a, b *model.Notch) bool {
	if (a.Level == nil) != (b.Level == nil) {
		return a.Level == nil
	}
	return sewing.Crowded(a) && !sewing.Crowded(b)
}

// start names where a walk begins.
func start(w *sewing.Walk) string {
	if corner := w.Corner(false); corner != nil {
		return corner.Address()
	}
	return "the start of " + w.Runs[0].Edge.Address()
}

func kind(p *rules.Pass, pair sewing.NotchPair) {
	say := rules.Say{Key: "kind of " + pair.B.Notch.Address(), Place: pair.B.Notch.Place}
	if pair.SameKind() {
		p.Good(say)
		return
	}
	say.Message = func() string {
		return fmt.Sprintf("%s is a %s notch and %s, which it meets, a %s one. Make both alike.",
			pair.B.Notch.Address(), pair.B.Kind(), pair.A.Notch.Address(), pair.A.Kind())
	}
	say.Related = []rules.Related{{Message: "its partner", Place: pair.A.Notch.Place}}
	p.Fault(say)
}

// alone judges a notch that has no partner: it may meet a join of two pieces.
func alone(p *rules.Pass, own, other side, n sewing.WalkNotch, lost *model.Notch) {
	if n.At < p.Limit("end") || n.At > own.walk.Length-p.Limit("end") {
		return
	}
	var under []rules.Under
	if lost != nil {
		under = []rules.Under{{Rule: "notch-on-line", Subject: lost.Address()}}
	}
	if join, off, ok := nearestJoin(own, other, n); ok && math.Abs(off) <= p.Limit("join") {
		edge, along := own.walk.Place(n.At - off)
		before, after := other.walk.Around(join)
		p.Steps(off, rules.Say{
			Key:     n.Notch.Address(),
			Place:   n.Notch.Given,
			Under:   under,
			Account: placeAccount(p, own, other, n, "the join of "+before.Address()+" and "+after.Address(), join),
			Message: func() string {
				return fmt.Sprintf("%s does not meet the join of %s and %s: it lies %s along the seam, the join %s. Move it to %s along %s.",
					n.Notch.Address(), before.Address(), after.Address(), p.Show(n.At), p.Show(join), p.Show(along), edge.Address())
			},
			Mend: move(p, n.Notch, edge, along),
		})
		return
	}
	share := 0.0
	if own.walk.Length > 0 {
		share = n.At / own.walk.Length
	}
	edge, along := other.walk.Place(share * other.walk.Length)
	p.Fault(rules.Say{
		Key:   n.Notch.Address(),
		Place: edge.Place,
		Under: under,
		Message: func() string {
			return fmt.Sprintf("%s has no notch to meet %s; put one at %s along it, or take the other away.", edge.Address(), n.Notch.Address(), p.Show(along))
		},
		Related: []rules.Related{{Message: "the notch without a partner", Place: n.Notch.Place}},
		Mend:    &rules.Mend{Title: fmt.Sprintf("put a notch at %s along %s", p.Show(along), edge.Address())},
	})
}

// nearestJoin finds the join of two pieces on the other side that the notch lies
// nearest to, and how far off it is.
func nearestJoin(own, other side, n sewing.WalkNotch) (join, off float64, ok bool) {
	for _, at := range other.walk.Joins() {
		if d := sewing.Misplaced(n.At-at, own.longer); !ok || math.Abs(d) < math.Abs(off) {
			join, off, ok = at, d, true
		}
	}
	return join, off, ok
}

// partnersLost are the notches of the other side that lie off their line, each for
// the notch whose partner it may well be: the one of its name, else one of those
// that are left. Notch-on-line reports them.
func partnersLost(alone []sewing.WalkNotch, lost []*model.Notch) map[*model.Notch]*model.Notch {
	out := map[*model.Notch]*model.Notch{}
	var spare []*model.Notch
	for _, l := range lost {
		i := slices.IndexFunc(alone, func(n sewing.WalkNotch) bool { return n.Notch.Name == l.Name && out[n.Notch] == nil })
		if i < 0 {
			spare = append(spare, l)
			continue
		}
		out[alone[i].Notch] = l
	}
	for _, n := range alone {
		if len(spare) > 0 && out[n.Notch] == nil {
			out[n.Notch], spare = spare[0], spare[1:]
		}
	}
	return out
}
