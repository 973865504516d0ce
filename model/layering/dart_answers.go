package layering

import (
	"cmp"
	"math"
	"slices"

	"understitch/model"
)

// DartShift is how far something of an inner dart lies from where the outer dart
// has it, in millimetres, and what of that the pieces and the darts differ by in
// any case, nothing always among it: a dart of a piece that is narrower, or
// meant larger, may lie anywhere between where it would lie from the one side
// and from the other.
type DartShift struct {
	By    float64
	Meant model.Range

	Outer, Inner float64 // the places or lengths on either layer that By is the difference of
}

// of tells what a shift is the difference of.
func (s DartShift) of(outer, inner float64) DartShift {
	s.Outer, s.Inner = outer, inner
	return s
}

// Off is how far the shift goes past what is meant.
func (s DartShift) Off() float64 { return s.Meant.Beyond(s.By) }

// DartAnswer is a dart of an inside's outer piece and the dart of its inner piece
// that answers it.
type DartAnswer struct {
	Outer, Inner *model.Dart
	Share        *model.Share // that names the edges they open on; nil where none does
	Aside        DartShift    // along the edge, darts closed, to its end; of a dart with two points to the right
	Lower        DartShift    // of a dart with two points: how much lower its widest place lies
	Points       []DartPoint
}

// off is how far from the outer dart's place the inner one lies.
func (a DartAnswer) off() float64 { return math.Hypot(a.Aside.Off(), a.Lower.Off()) }

// DartPoint is how the point of an inner dart lies to that of the outer: how
// much longer the dart is, and how far the point lies off the outer dart's
// middle line, which is nothing where no frame tells.
type DartPoint struct {
	Name         string
	Longer, Lean DartShift
}

// DartAnswers pairs the darts of an inside of one piece in one piece. Darts answer
// each other where they open on edges that a share names together or that bear
// one name, or where both have two points, and a dart on an edge may be answered
// by a pleat; where the pieces have as many there,
// for one dart may answer two; and where they bear one name, or else lie no
// further than near from each other in their order. The error tells why darts
// with two points could not be compared; what could be is returned with it.
func DartAnswers(g *model.Garment, n *model.Inside, near float64) ([]DartAnswer, error) {
	if len(n.Outer) != 1 || len(n.Inner) != 1 || len(n.Outer[0].Darts) == 0 || len(n.Inner[0].Darts) == 0 {
		return nil, nil
	}
	laid := layDarts(g, n)
	var out []DartAnswer
	outer, inner := n.Outer[0], n.Inner[0]
	for _, e := range outer.Edges {
		darts := dartsOn(outer, e)
		if len(darts) == 0 {
			continue
		}
		if f, share := laid.answering(e); f != nil && len(dartsOn(inner, f)) == len(darts) {
			out = append(out, paired(darts, dartsOn(inner, f), near, func(o, i *model.Dart) DartAnswer { return laid.onEdges(o, i, share) })...)
		}
	}
	inside, answering := dartsOn(outer, nil), dartsOn(inner, nil)
	if len(inside) == 0 || len(inside) != len(answering) {
		return out, nil
	}
	if laid.err != nil {
		return out, laid.err
	}
	return append(out, paired(inside, answering, near, laid.inside)...), nil
}

// dartsOn are the piece's darts that open on an edge, or with nil those that
// have two points.
func dartsOn(p *model.Piece, e *model.Edge) []*model.Dart {
	var out []*model.Dart
	for _, d := range p.Darts {
		if d.On == e {
			out = append(out, d)
		}
	}
	return out
}

// paired pairs as many darts as many, by name and then the nearest first.
func paired(outer, inner []*model.Dart, near float64, lay func(o, i *model.Dart) DartAnswer) []DartAnswer {
	var out, maybe []DartAnswer
	used := map[*model.Dart]bool{}
	take := func(a DartAnswer) {
		if !used[a.Outer] && !used[a.Inner] {
			used[a.Outer], used[a.Inner] = true, true
			out = append(out, a)
		}
	}
	for _, o := range outer {
		for _, i := range inner {
			a := lay(o, i)
			if o.Name == i.Name {
				take(a)
			} else if a.off() <= near {
				maybe = append(maybe, a)
			}
		}
	}
	slices.SortStableFunc(maybe, func(a, b DartAnswer) int {
		return cmp.Compare(a.off(), b.off())
	})
	for _, a := range maybe {
		take(a)
	}
	slices.SortStableFunc(out, func(a, b DartAnswer) int { return slices.Index(outer, a.Outer) - slices.Index(outer, b.Outer) })
	return out
}
