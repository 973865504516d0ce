package house

import (
	"math"

	"understitch/model"
	"understitch/model/measured"
)

// The garment, its layers, and what they are made of.

var garmentKind = &kind{
	name:  "garment",
	roots: []string{"garment"},
	list:  func(g *model.Garment) []model.Thing { return []model.Thing{g} },
	above: func(any) []any { return nil },
	figures: []figure{
		textOf("name", func(g *model.Garment) string { return g.Name }),
		textOf("title", func(g *model.Garment) string { return g.Title }),
		textOf("size", func(g *model.Garment) string { return g.Size }),
		{name: "sizes", shape: texts, texts: func(x any) []string { return x.(*model.Garment).Sizes }},
		manyOf("layers", "layer", layerName, func(g *model.Garment) []*model.Layer { return g.Layers }),
		manyOf("pieces", "piece", addressOf, (*model.Garment).Pieces),
		manyOf("edges", "edge", addressOf, (*model.Garment).Edges),
		manyOf("darts", "dart", addressOf, (*model.Garment).Darts),
		manyOf("pleats", "pleat", addressOf, (*model.Garment).Pleats),
		manyOf("notches", "notch", addressOf, (*model.Garment).Notches),
		manyOf("levels", "level", func(l *model.Level) string { return l.Name }, func(g *model.Garment) []*model.Level { return g.Levels }),
		manyOf("seams", "seam", func(s *model.Seam) string { return s.Name }, func(g *model.Garment) []*model.Seam { return g.Seams }),
		manyOf("shares", "share", func(s *model.Share) string { return s.Name }, func(g *model.Garment) []*model.Share { return g.Shares }),
		manyOf("inside", "inside", func(n *model.Inside) string { return n.Name }, func(g *model.Garment) []*model.Inside { return g.Insides }),
		manyOf("closures", "closure", func(c *model.Closure) string { return c.Name }, func(g *model.Garment) []*model.Closure { return g.Closures }),
		manyOf("elastics", "elastic", func(e *model.Elastic) string { return e.Name }, func(g *model.Garment) []*model.Elastic { return g.Elastics }),
		manyOf("bones", "bone", func(b *model.Bone) string { return b.Name }, func(g *model.Garment) []*model.Bone { return g.Bones }),
		manyOf("runs", "measure", func(m *model.Measure) string { return m.Name }, func(g *model.Garment) []*model.Measure { return g.Measures }),
	},
}

func layerName(l *model.Layer) string { return l.Name }

var layerKind = &kind{
	name:  "layer",
	roots: []string{"layer"},
	list:  listOf(func(g *model.Garment) []*model.Layer { return g.Layers }),
	above: func(any) []any { return nil },
	figures: []figure{
		textOf("name", layerName),
		address[*model.Layer](),
		textOf("side", func(l *model.Layer) string { return string(l.Side) }),
		said(numberOf("order", plain, func(_ *model.Garment, l *model.Layer) float64 { return float64(l.Order) })),
		textOf("fabric", func(l *model.Layer) string {
			if l.Fabric == nil {
				return ""
			}
			return l.Fabric.Name
		}),
		said(fabricOf("thickness", length, func(f *model.Fabric) float64 { return f.Thickness })),
		said(fabricOf("stretch_across", percent, func(f *model.Fabric) float64 { return f.StretchAcross })),
		said(fabricOf("stretch_along", percent, func(f *model.Fabric) float64 { return f.StretchAlong })),
		said(fabricOf("shrink_across", percent, func(f *model.Fabric) float64 { return f.ShrinkAcross })),
		said(fabricOf("shrink_along", percent, func(f *model.Fabric) float64 { return f.ShrinkAlong })),
		levelsOf("girth", measured.Girths),
		manyOf("pieces", "piece", func(p *model.Piece) string { return p.Name }, func(l *model.Layer) []*model.Piece { return l.Pieces }),
	},
}

func fabricOf(name string, d dim, get func(*model.Fabric) float64) figure {
	return numberOf(name, d, func(_ *model.Garment, l *model.Layer) float64 {
		if l.Fabric == nil {
			return model.Unknown()
		}
		return get(l.Fabric)
	})
}

var pieceKind = &kind{
	name:  "piece",
	roots: []string{"piece", "layer"},
	list:  listOf((*model.Garment).Pieces),
	above: func(x any) []any { return []any{x.(*model.Piece).Layer} },
	figures: []figure{
		textOf("name", func(p *model.Piece) string { return p.Name }),
		address[*model.Piece](),
		textOf("layer", func(p *model.Piece) string { return p.Layer.Name }),
		said(numberOf("cut", plain, func(_ *model.Garment, p *model.Piece) float64 { return float64(p.Cut) })),
		flagOf("mirrored", func(p *model.Piece) bool { return p.Mirrored }),
		textOf("fold", func(p *model.Piece) string {
			if p.Fold == nil {
				return ""
			}
			return p.Fold.Name
		}),
		textOf("drawn", func(p *model.Piece) string { return string(p.DrawnOn) }),
		flagOf("paper", (*model.Piece).Paper),
		numberOf("grain", degrees, func(_ *model.Garment, p *model.Piece) float64 { return grain(p) }),
		maybe("area", area, func(_ *model.Garment, p *model.Piece) *float64 { return measured.Area(p) }),
		maybe("perimeter", length, func(_ *model.Garment, p *model.Piece) *float64 { return measured.Perimeter(p) }),
		levelsOf("width", measured.Widths),
		manyOf("edges", "edge", func(e *model.Edge) string { return e.Name }, func(p *model.Piece) []*model.Edge { return p.Edges }),
		manyOf("darts", "dart", func(d *model.Dart) string { return d.Name }, (*model.Piece).OnlyDarts),
		manyOf("pleats", "pleat", func(d *model.Dart) string { return d.Name }, (*model.Piece).Pleats),
		manyOf("notches", "notch", notchName, func(p *model.Piece) []*model.Notch { return p.Notches }),
	},
}

// grain is how far the grain line leans from straight up and down: 0 on the
// straight, 45 or -45 on the bias, 90 across; NaN where it is not stated.
func grain(p *model.Piece) float64 {
	if len(p.Grain) != 2 {
		return model.Unknown()
	}
	across, down := p.Grain[1].X-p.Grain[0].X, p.Grain[1].Y-p.Grain[0].Y
	if down < 0 { // a line has no direction here
		across, down = -across, -down
	}
	return math.Atan2(across, down) * 180 / math.Pi
}

func notchName(n *model.Notch) string { return n.Name }

var edgeKind = &kind{
	name:  "edge",
	roots: []string{"edge", "piece", "layer"},
	list:  listOf((*model.Garment).Edges),
	above: func(x any) []any { p := x.(*model.Edge).Piece; return []any{p, p.Layer} },
	figures: []figure{
		textOf("name", func(e *model.Edge) string { return e.Name }),
		address[*model.Edge](),
		textOf("piece", func(e *model.Edge) string { return e.Piece.Name }),
		textOf("layer", func(e *model.Edge) string { return e.Piece.Layer.Name }),
		textOf("finish", func(e *model.Edge) string { return e.Finish }),
		textOf("role", func(e *model.Edge) string { return e.Role }),
		flagOf("paper", func(e *model.Edge) bool { return e.Path == nil }),
		lengthOf("length", (*model.Edge).Length),
		lengthOf("sewn_length", (*model.Edge).SewnLength),
		lengthOf("drafted_length", func(e *model.Edge) float64 {
			if e.Drafted == nil {
				return model.Unknown() // no alteration re-drew it
			}
			return e.Drafted.Length()
		}),
		said(lengthOf("allowance", func(e *model.Edge) float64 { return e.Allowance.Width })),
		manyOf("notches", "notch", notchName, func(e *model.Edge) []*model.Notch {
			var out []*model.Notch
			for _, n := range e.Piece.Notches {
				if n.On == e {
					out = append(out, n)
				}
			}
			return out
		}),
	},
}

var notchKind = &kind{
	name:  "notch",
	roots: []string{"notch", "edge", "piece", "layer"},
	list:  listOf((*model.Garment).Notches),
	above: func(x any) []any { n := x.(*model.Notch); return []any{n.On, n.Piece, n.Piece.Layer} },
	figures: []figure{
		textOf("name", notchName),
		address[*model.Notch](),
		textOf("piece", func(n *model.Notch) string { return n.Piece.Name }),
		textOf("layer", func(n *model.Notch) string { return n.Piece.Layer.Name }),
		textOf("on", func(n *model.Notch) string { return n.On.Name }),
		textOf("kind", func(n *model.Notch) string { return n.Kind }),
		said(lengthOf("depth", func(n *model.Notch) float64 { return n.Depth })),
		maybe("at", length, func(_ *model.Garment, n *model.Notch) *float64 { return measured.OfNotch(n).At }),
		maybe("x", length, func(_ *model.Garment, n *model.Notch) *float64 { return measured.OfNotch(n).X }),
		maybe("y", length, func(_ *model.Garment, n *model.Notch) *float64 { return measured.OfNotch(n).Y }),
	},
}

var dartKind = &kind{
	name:  "dart",
	roots: []string{"dart", "edge", "piece", "layer"},
	list:  listOf((*model.Garment).Darts),
	above: func(x any) []any {
		d := x.(*model.Dart)
		if d.On == nil { // inside the piece
			return []any{nil, d.Piece, d.Piece.Layer}
		}
		return []any{d.On, d.Piece, d.Piece.Layer}
	},
	figures: []figure{
		textOf("name", func(d *model.Dart) string { return d.Name }),
		address[*model.Dart](),
		textOf("piece", func(d *model.Dart) string { return d.Piece.Name }),
		textOf("layer", func(d *model.Dart) string { return d.Piece.Layer.Name }),
		textOf("on", func(d *model.Dart) string {
			if d.On == nil {
				return ""
			}
			return d.On.Name
		}),
		lengthOf("intake", func(d *model.Dart) float64 { return d.Intake }),
		pairOf("legs", func(_ *model.Garment, d *model.Dart) *[2]float64 { return measured.OfDart(d).Legs }),
	},
}

var pleatKind = &kind{
	name:  "pleat",
	roots: []string{"pleat", "edge", "piece", "layer"},
	list:  listOf((*model.Garment).Pleats),
	above: func(x any) []any {
		d := x.(*model.Dart)
		return []any{d.On, d.Piece, d.Piece.Layer}
	},
	figures: []figure{
		textOf("name", func(d *model.Dart) string { return d.Name }),
		address[*model.Dart](),
		textOf("piece", func(d *model.Dart) string { return d.Piece.Name }),
		textOf("layer", func(d *model.Dart) string { return d.Piece.Layer.Name }),
		textOf("on", func(d *model.Dart) string { return d.On.Name }),
		textOf("kind", func(d *model.Dart) string { return d.Pleat.Kind }),
		lengthOf("depth", func(d *model.Dart) float64 { return d.Pleat.Depth }),
		lengthOf("takes_up", func(d *model.Dart) float64 { return d.Intake }),
	},
}
