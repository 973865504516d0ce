package drawing

import (
	"cmp"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// Of draws a garment, with findings where they are.
func Of(g *model.Garment, findings []Finding, o Options) *Sheet {
	s := &Sheet{Title: cmp.Or(g.Title, g.Name), Name: g.Name, Size: g.Size}
	for _, l := range g.LayersInward() {
		layer := Layer{Name: l.Name, Side: l.Side}
		if l.Fabric != nil {
			layer.Cloth = l.Fabric.Name
		}
		s.Layers = append(s.Layers, layer)
	}
	d := &drawer{g: g, o: o}
	nested := map[*model.Piece]bool{}
	for _, n := range g.Nests {
		d.nest(n)
		for _, p := range slices.Concat(n.Outer, n.Inner) {
			nested[p] = true
		}
	}
	for _, p := range g.Pieces() {
		d.alone(p, nested[p])
	}
	for _, j := range g.Joins() {
		a, b, err := g.Walks(j)
		d.strip(j.Thing, a, b, err)
	}
	for _, share := range g.Shares {
		a, b, _, err := g.ShareWalks(share)
		d.strip(share, a, b, err)
	}
	for _, c := range g.Closures {
		if c.Kind == "tape" && c.Tape != nil {
			d.tape(c)
		}
	}
	s.Elsewhere = d.findings(findings)
	for _, b := range d.boards {
		s.Panels = append(s.Panels, b.finish())
	}
	return s
}

// drawer draws one sheet.
type drawer struct {
	g      *model.Garment
	o      Options
	boards []*board
}

// board is a panel that is being drawn, and what lies where on it.
type board struct {
	*Panel
	room   curve.Box // what the pieces take up, without words
	spots  map[string]spot
	tagged []curve.Point // where tags are already
	anchor map[string]int
}

// spot is a place on a board that a finding can be pinned to.
type spot struct {
	at, away curve.Point
	line     *curve.Path // what the finding is about; nil for a point
	reach    float64     // how far the tag hangs off, in points; 0 for as far as usual
	told     bool        // the figure stands there already
}

// Sizes of panels in points: what the cloth takes at most, and the margins that
// words and tags need beside it.
const (
	clothWide, clothHigh = 270.0, 520.0
	marginLeft           = 44.0
	marginRight          = 124.0
	marginTop            = 30.0
	marginBottom         = 40.0
	levelWide            = 84.0 // words beside a level
	stripWide            = 430.0
	smallestPoint        = 0.1 // millimetres
)

// board starts a panel of a kind whose drawing takes up a box.
func (d *drawer) board(kind PanelKind, subject, title string, room curve.Box) *board {
	wide, high := clothWide, clothHigh
	if kind == Strip || kind == Taped {
		wide, high = stripWide, math.Inf(1)
	}
	point := max(room.Width()/wide, room.Height()/high, smallestPoint)
	if d.o.Point > 0 {
		point = d.o.Point
	}
	b := &board{
		Panel:  &Panel{Kind: kind, Subject: subject, Title: title, Point: point},
		room:   room,
		spots:  map[string]spot{},
		anchor: map[string]int{},
	}
	d.boards = append(d.boards, b)
	return b
}

// missing is a panel of which nothing can be drawn.
func (d *drawer) missing(kind PanelKind, subject, title string, err error) {
	d.board(kind, subject, title, curve.Box{}).Missing = err.Error()
}

// finish settles how much room the panel takes.
func (b *board) finish() *Panel {
	m := b.Point
	box := curve.Box{
		Min: b.room.Min.Sub(curve.Point{X: marginLeft * m, Y: marginTop * m}),
		Max: b.room.Max.Add(curve.Point{X: marginRight * m, Y: marginBottom * m}),
	}
	if b.Kind == Strip || b.Kind == Taped {
		box.Min.X, box.Max.X = b.room.Min.X-24*m, b.room.Max.X+40*m
		box.Min.Y, box.Max.Y = b.room.Min.Y-26*m, b.room.Max.Y+26*m
	}
	for _, mark := range b.Marks {
		if mark.Sign == Tag {
			box = box.Union(mark.tagRoom(m))
		}
		if mark.Kind == LevelWidth {
			box.Max.X = max(box.Max.X, mark.At.X+(mark.Reach+levelWide)*m)
		}
	}
	b.Box = box
	b.Beside = [2]int{beside(b.room.Min.X-box.Min.X, m), beside(box.Max.X-b.room.Max.X, m)}
	return b.Panel
}

// beside is how much of a margin is taken by words, in points: all but a
// little air.
func beside(margin, point float64) int {
	const gap = 4
	return int(max(margin/point-gap, 0))
}

func (b *board) put(m ...Mark) { b.Marks = append(b.Marks, m...) }

// spot notes where something lies; the first place counts.
func (b *board) spot(name string, s spot) {
	if _, ok := b.spots[name]; !ok {
		b.spots[name] = s
	}
}

func (b *board) layer(name string) {
	if !slices.Contains(b.Layers, name) {
		b.Layers = append(b.Layers, name)
	}
}

// points are so many points in millimetres.
func (b *board) points(n float64) float64 { return n * b.Point }
