package allowances

import (
	_ "embed"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/allowance-match.bad.garment.hcl
var matchBad string

//go:embed testdata/allowance-match.good.garment.hcl
var matchGood string

// Match checks that both sides of a seam, and an edge that layers share, carry
// the same allowance.
var Match = rules.Rule{
	Name:     "allowance-match",
	Family:   "allowances",
	Severity: rules.Error,
	Settled:  true,
	Under:    []string{"allowance-closure", "unit-slip"},
	Doc: rules.Doc{
		Title: "Both sides of a seam, and a shared edge on both layers, carry the same allowance",
		Why: "The machinist lays cut edge on cut edge. Where the allowances differ, one stitch line is shifted by the difference on one side of " +
			"every such seam, and the garment comes out too wide or too narrow.",
		How: "Lay the two sides along each other and read off both allowances wherever an edge begins on either. Within a piece the allowance may " +
			"change along a seam only at a true corner, or where a notch tells the machinist so. Edges that run on over a seam and have the same finish, " +
			"hem to hem or neck to neck, carry the same allowance where they meet.",
		Nothing: "No allowance along it is known.",
		Fix: "Give both edges the same allowance, and put a notch where it changes. A difference that is meant, as in a lapped seam, is waived " +
			"with its reason.",
		Bad: matchBad, Good: matchGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "match", Value: 0.5, Unit: rules.Millimetres, Text: "how far the allowances of two edges that are sewn together may differ", Source: pencil},
		{Name: "corner", Value: 30, Unit: rules.Degrees, Text: "a line that turns by more than this is a true corner, where the allowance may change without a notch", Source: "common practice, no source"},
	},
	Each: func(g *model.Garment, look func(model.Thing, func(*rules.Pass))) {
		said := reported{map[[2]*model.Edge][]rules.Under{}, map[*model.Edge][]rules.Under{}, map[model.Place][]rules.Under{}}
		ran := map[[2]*model.Edge]bool{}
		for _, j := range g.Joins() {
			look(j, func(p *rules.Pass) {
				a, b, err := sewing.Walks(g, j)
				said.match(p, j.Thing, a, b, err)
				if err == nil {
					said.runOn(p, ran, j.Thing, a, b)
				}
			})
		}
		for _, s := range g.Shares {
			look(s, func(p *rules.Pass) {
				a, b, _, err := sewing.ShareWalks(g, s)
				said.match(p, s, a, b, err)
			})
		}
	},
}

// reported is what has been reported in this garment, and by which findings. Two
// edges may meet in several joins, as in a closure and the seam below it, and have
// one figure at fault; an edge may be wrong for all that it is laid on; and one
// figure of a piece may be wrong for several of its edges. The first finding of
// such a fault makes the others redundant.
type reported struct {
	pairs  map[[2]*model.Edge][]rules.Under // the doubtful edge first
	edges  map[*model.Edge][]rules.Under    // of which it is known that they are wrong
	pieces map[model.Place][]rules.Under    // where the piece states it
}

func (r reported) match(p *rules.Pass, thing model.Thing, a, b *sewing.Walk, err error) {
	if err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	p.NothingHere() // until there are allowances to compare
	differ := false
	var group []sewing.AllowanceSpan
	flush := func() {
		if len(group) > 0 {
			differ = r.alike(p, thing, a, group) || differ
		}
		group = nil
	}
	silent := false
	for _, s := range sewing.AllowancesAlong(a, b) {
		if e := s.Unstated(); e != nil {
			flush()
			if !silent {
				p.Cannot(unstated(e), rules.Say{Place: e.Place})
			}
			silent = true // one reason is enough for one seam
			continue
		}
		if len(group) > 0 && (apart(s) > p.Limit("match")) != (apart(group[0]) > p.Limit("match")) {
			flush()
		}
		group = append(group, s)
	}
	flush()
	if !differ { // where the sides differ it is in question whether there is to be a step at all
		steps(p, a)
		steps(p, b)
	}
}

func apart(s sewing.AllowanceSpan) float64 { return math.Abs(s.Apart()) }

// alike judges spans in a row, either all of which differ or none, by the worst
// of them, and reports whether they do.
func (r reported) alike(p *rules.Pass, thing model.Thing, along *sewing.Walk, group []sewing.AllowanceSpan) bool {
	worst := group[0]
	for _, s := range group[1:] {
		if apart(s) > apart(worst) {
			worst = s
		}
	}
	differ := apart(worst) > p.Limit("match")
	d := suspect(p, thing, worst.A, worst.B)
	pair := [2]*model.Edge{d.wrong, d.right}
	shared := ofPiece(p, d)
	key := group[0].A.Address() + " on " + group[0].B.Address()
	under := slices.Concat(r.pairs[pair], r.edges[d.wrong])
	if len(shared) > 1 {
		under = append(under, r.pieces[d.wrong.Allowance.Place]...)
	}
	own := rules.Under{Rule: "allowance-match", Subject: thing.Address(), Key: key}
	if differ {
		r.pairs[pair] = append(r.pairs[pair], own)
		if d.known() {
			r.edges[d.wrong] = append(r.edges[d.wrong], own)
		}
	}
	if c, ok := thing.(*model.Closure); ok {
		under = append(under, rules.Under{Rule: "allowance-closure", Subject: c.Address()})
	}
	under = append(under, wrongUnit(p.Garment, worst.A), wrongUnit(p.Garment, worst.B))
	wrong, right := d.wrong, d.right
	say := rules.Say{
		Key:   key,
		Place: stated(wrong),
		Under: under,
		Message: func() string {
			text := fmt.Sprintf("%s carries an allowance of %s and %s, which it is laid on, %s: they differ by %s %s. ",
				wrong.Address(), p.Show(wrong.Allowance.Width), right.Address(), p.Show(right.Allowance.Width), p.Show(apart(worst)), where(p, along, group))
			if len(shared) > 1 {
				return text + takenFromPiece(d, len(shared)-1)
			}
			return text + d.says(p)
		},
		Related: d.laidOn(p),
		Mend:    d.mend(p),
		Account: matchAccount(p, worst, where(p, along, group)),
	}
	if folded := differ && onFold(p, worst.A, worst.B, &say); !folded && differ && len(shared) > 1 {
		r.pieces[wrong.Allowance.Place] = append(r.pieces[wrong.Allowance.Place], own)
		say.Place, say.Mend = wrong.Allowance.Place, mendPiece(p, d, shared)
	}
	p.AtMost(apart(worst), "match", say)
	return differ
}

// where says along which part of the seam they differ.
func where(p *rules.Pass, along *sewing.Walk, group []sewing.AllowanceSpan) string {
	from, to := group[0].From, group[len(group)-1].To
	if from <= 0 && to >= along.Length {
		return "all along"
	}
	start := "its start"
	if from > 0 {
		start = p.Show(from)
	}
	end := "its end"
	if to < along.Length {
		end = p.Show(to)
	}
	return "from " + start + " to " + end + " along the seam"
}

// runOn checks the edges that run on across the ends of a seam or closure. One that
// is not as the house has it is the one at fault, at both its ends.
func (r reported) runOn(p *rules.Pass, ran map[[2]*model.Edge]bool, thing model.Thing, a, b *sewing.Walk) {
	for _, atEnd := range []bool{false, true} {
		x, y, ok := sewing.RunsOn(a, b, atEnd)
		if !ok || ran[[2]*model.Edge{x, y}] || ran[[2]*model.Edge{y, x}] {
			continue
		}
		ran[[2]*model.Edge{x, y}] = true
		key := runOnKey(x, y)
		apart := math.Abs(x.Allowance.Width - y.Allowance.Width)
		differ, known := apart > p.Limit("match"), strays(p, x) != strays(p, y)
		if strays(p, y) && !strays(p, x) {
			x, y = y, x
		}
		under := append(slices.Clone(r.edges[x]), wrongUnit(p.Garment, x), wrongUnit(p.Garment, y))
		if differ && known {
			r.edges[x] = append(r.edges[x], rules.Under{Rule: "allowance-match", Subject: thing.Address(), Key: key})
		}
		p.AtMost(apart, "match", rules.Say{
			Key: key, Place: stated(x), Account: runOnAccount(x, y), Under: under,
			Message: func() string {
				return fmt.Sprintf("%s carries an allowance of %s and %s, into which it runs on over the seam, %s: they differ by %s, and both are finished alike (%s). Give both the same allowance.",
					x.Address(), p.Show(x.Allowance.Width), y.Address(), p.Show(y.Allowance.Width), p.Show(apart), x.Finish)
			},
			Related: []rules.Related{{Message: "the other allowance", Place: stated(y)}},
			Mend:    &rules.Mend{Title: fmt.Sprintf("give %s and %s one allowance", x.Address(), y.Address())},
		})
	}
}

// runOnKey tells two edges that run on into each other from others.
func runOnKey(x, y *model.Edge) string { return x.Address() + " into " + y.Address() }

// strays reports whether an edge's allowance is not the house's.
func strays(p *rules.Pass, e *model.Edge) bool {
	return offStandard(p.Garment, e) > p.Limit("match")
}

// steps judges the places where the allowance changes within a piece.
func steps(p *rules.Pass, w *sewing.Walk) {
	for _, s := range w.AllowanceSteps(p.Limit("match")) {
		say := rules.Say{Key: "step at " + s.After.Address(), Place: s.After.Place, Account: stepAccount(s)}
		if s.Notched || s.Turn > p.Limit("corner") {
			p.Good(say)
			continue
		}
		say.Message = func() string {
			return fmt.Sprintf("the allowance changes from %s on %s to %s on %s, and no notch marks the place. Put one where the two edges meet.",
				p.Show(s.Before.Allowance.Width), s.Before.Address(), p.Show(s.After.Allowance.Width), s.After.Address())
		}
		say.Related = []rules.Related{{Message: "the edge before it", Place: s.Before.Place}}
		p.Fault(say)
	}
}
