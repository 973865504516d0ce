package house

import (
	"slices"

	"understitch/model"
	"understitch/model/measured"
)

// What ties pieces together, and what is held against the body.

// kinds are all the kinds of thing that a rule can be of. The list is never
// written to.
var kinds = []*kind{
	garmentKind, layerKind, pieceKind, edgeKind, notchKind, dartKind, pleatKind, seamKind, shareKind, insideKind, closureKind, levelKind,
	elasticKind, boneKind, measureKind,
}

func alone(any) []any { return nil }

// sides are the figures of two sides that meet.
func sides[T any](of func(g *model.Garment, x T) measured.Pair) []figure {
	return []figure{
		pairOf("sides", func(g *model.Garment, x T) *[2]float64 { return of(g, x).Sides }),
		maybe("difference", length, func(g *model.Garment, x T) *float64 { return of(g, x).Difference }),
	}
}

// hanging are the edges that sides name, and the notches on them.
func hanging[T any](of func(x T) [2][]model.Stretch) []figure {
	edges := func(x T) []*model.Edge {
		var out []*model.Edge
		for _, side := range of(x) {
			for _, s := range side {
				if !slices.Contains(out, s.Edge) {
					out = append(out, s.Edge)
				}
			}
		}
		return out
	}
	return []figure{
		manyOf("edges", "edge", addressOf[*model.Edge], edges),
		manyOf("notches", "notch", addressOf[*model.Notch], func(x T) []*model.Notch {
			var out []*model.Notch
			for _, e := range edges(x) {
				for _, n := range e.Piece.Notches {
					if n.On == e {
						out = append(out, n)
					}
				}
			}
			return out
		}),
	}
}

var seamKind = &kind{
	name: "seam", roots: []string{"seam"}, above: alone,
	list: listOf(func(g *model.Garment) []*model.Seam { return g.Seams }),
	figures: append([]figure{
		textOf("name", func(s *model.Seam) string { return s.Name }),
		address[*model.Seam](),
		said(lengthOf("ease_least", func(s *model.Seam) float64 { return s.Ease.Low })),
		said(lengthOf("ease_greatest", func(s *model.Seam) float64 { return s.Ease.High })),
	}, append(sides(measured.OfSeam), hanging(func(s *model.Seam) [2][]model.Stretch { return s.Sides })...)...),
}

var shareKind = &kind{
	name: "share", roots: []string{"share"}, above: alone,
	list: listOf(func(g *model.Garment) []*model.Share { return g.Shares }),
	figures: append([]figure{
		textOf("name", func(s *model.Share) string { return s.Name }),
		address[*model.Share](),
		textOf("match", func(s *model.Share) string { return string(s.Match) }),
		maybe("ease", length, func(g *model.Garment, s *model.Share) *float64 {
			if e := measured.OfShare(g, s).Ease; e != nil {
				return &e.Length
			}
			return nil
		}),
		maybe("ease_percent", plain, func(g *model.Garment, s *model.Share) *float64 {
			if e := measured.OfShare(g, s).Ease; e != nil {
				return e.Percent
			}
			return nil
		}),
	}, append(sides(func(g *model.Garment, s *model.Share) measured.Pair { return measured.OfShare(g, s).Pair }), hanging(func(s *model.Share) [2][]model.Stretch { return [2][]model.Stretch{s.Outer, s.Inner} })...)...),
}

var insideKind = &kind{
	name: "inside", roots: []string{"inside"}, above: alone,
	list: listOf(func(g *model.Garment) []*model.Inside { return g.Insides }),
	figures: []figure{
		textOf("name", func(n *model.Inside) string { return n.Name }),
		address[*model.Inside](),
		textOf("outer", func(n *model.Inside) string { return n.Outer.Address() }),
		textOf("inner", func(n *model.Inside) string { return n.Inner.Address() }),
		levelsOf("clearance", measured.Clearances),
		maybe("least", length, measured.Least),
		maybe("outside", length, measured.Outside),
	},
}

var closureKind = &kind{
	name: "closure", roots: []string{"closure"}, above: alone,
	list: listOf(func(g *model.Garment) []*model.Closure { return g.Closures }),
	figures: append([]figure{
		textOf("name", func(c *model.Closure) string { return c.Name }),
		address[*model.Closure](),
		textOf("kind", func(c *model.Closure) string { return c.Kind }),
		textOf("tape", func(c *model.Closure) string {
			if c.Tape == nil {
				return ""
			}
			return c.Tape.Name
		}),
		said(lengthOf("lap", func(c *model.Closure) float64 { return c.Lap })),
		said(lengthOf("diameter", func(c *model.Closure) float64 { return c.Diameter })),
		said(lengthOf("extension", func(c *model.Closure) float64 { return c.Extension })),
		maybe("across", length, func(g *model.Garment, c *model.Closure) *float64 { return measured.OfClosure(g, c).Across }),
		said(numberOf("buttons", plain, func(_ *model.Garment, c *model.Closure) float64 { return float64(len(c.Buttons)) })),
	}, sides(func(g *model.Garment, c *model.Closure) measured.Pair { return measured.OfClosure(g, c).Pair })...),
}

var levelKind = &kind{
	name: "level", roots: []string{"level"}, above: alone,
	list: listOf(func(g *model.Garment) []*model.Level { return g.Levels }),
	figures: []figure{
		textOf("name", func(l *model.Level) string { return l.Name }),
		address[*model.Level](),
		textOf("measure", func(l *model.Level) string { return l.Measure }),
		lengthOf("y", func(l *model.Level) float64 { return l.Y }),
		lengthOf("body", func(l *model.Level) float64 { return l.Body }),
	},
}

var elasticKind = &kind{
	name: "elastic", roots: []string{"elastic"}, above: alone,
	list: listOf(func(g *model.Garment) []*model.Elastic { return g.Elastics }),
	figures: []figure{
		textOf("name", func(e *model.Elastic) string { return e.Name }),
		address[*model.Elastic](),
		maybe("edges", length, func(g *model.Garment, e *model.Elastic) *float64 { return measured.OfElastic(g, e).Edges }),
		lengthOf("length", func(e *model.Elastic) float64 { return e.Length }),
	},
}

var boneKind = &kind{
	name: "bone", roots: []string{"bone"}, above: alone,
	list: listOf(func(g *model.Garment) []*model.Bone { return g.Bones }),
	figures: []figure{
		textOf("name", func(b *model.Bone) string { return b.Name }),
		address[*model.Bone](),
		maybe("along", length, func(_ *model.Garment, b *model.Bone) *float64 { return measured.OfBone(b).Along }),
		lengthOf("length", func(b *model.Bone) float64 { return b.Length }),
	},
}

var measureKind = &kind{
	name: "measure", roots: []string{"measure"}, above: alone,
	list: listOf(func(g *model.Garment) []*model.Measure { return g.Measures }),
	figures: []figure{
		textOf("name", func(m *model.Measure) string { return m.Name }),
		address[*model.Measure](),
		maybe("total", length, func(g *model.Garment, m *model.Measure) *float64 { return measured.OfRun(g, m).Total }),
		lengthOf("body", func(m *model.Measure) float64 { return m.Against }),
	},
}
