package drawing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/measuring"
	"understitch/model/sewing"
)

// Of draws a garment, with findings where they are. Where panels may take only
// so much room across, those that their words make wider are drawn again with
// their cloth smaller.
func Of(g *model.Garment, findings []Finding, o Options) *Sheet {
	const tries = 4
	cloth := map[string]float64{}
	for try := 1; ; try++ {
		d := &drawer{g: g, o: o, cloth: cloth}
		s := d.sheet(findings)
		if o.Wide == 0 || o.Point > 0 || try == tries || !d.narrow(s) {
			return s
		}
	}
}

// narrow notes by how much the cloth of panels that are too wide must give way,
// and tells whether any is.
func (d *drawer) narrow(s *Sheet) bool {
	any := false
	for _, p := range s.Panels {
		over := p.Box.Width()/p.Point - d.o.Wide
		if p.Missing != "" || over <= 0.5 {
			continue
		}
		is := p.Box.Width()/p.Point - p.Beside[0] - p.Beside[1]
		if less := max(is-over, leastCloth); less < is {
			d.cloth[p.key()], any = less, true
		}
	}
	return any
}

func (p *Panel) key() string { return fmt.Sprint(p.Kind, " ", p.Subject) }

func (d *drawer) sheet(findings []Finding) *Sheet {
	g := d.g
	s := &Sheet{Title: cmp.Or(g.Title, g.Name), Name: g.Name, Size: g.Size, Findings: findings}
	for _, l := range measuring.LayersInward(g) {
		layer := Layer{Name: l.Name, Side: l.Side}
		if l.Fabric != nil {
			layer.Cloth = l.Fabric.Name
		}
		s.Layers = append(s.Layers, layer)
	}
	laidInside := map[*model.Piece]bool{}
	for _, n := range g.Insides {
		d.inside(n)
		for _, p := range slices.Concat(n.Outer, n.Inner) {
			laidInside[p] = true
		}
	}
	for _, p := range g.Pieces() {
		d.alone(p, laidInside[p])
	}
	for _, j := range g.Joins() {
		a, b, err := sewing.Walks(g, j)
		d.strip(j.Thing, a, b, err)
	}
	for _, share := range g.Shares {
		a, b, _, err := sewing.ShareWalks(g, share)
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
	cloth  map[string]float64 // points that the cloth of a panel may take across, where its words need more room
	boards []*board
}

// board is a panel that is being drawn, and what lies where on it.
type board struct {
	*Panel
	room   curve.Box // what the pieces take up, without words
	spots  map[string]spot
	frames map[string]curve.Motion // how each piece lies on it
	anchor map[string]int
	folds  []foldWord
	names  []pieceWord
	grows  bool    // a page draws the cloth larger and the words not
	under  float64 // points that a renderer needs under a name for more words
}

// spot is a place on a board that a finding can be pinned to.
type spot struct {
	at, away curve.Point
	line     *curve.Path // what the finding is about; nil for a point
	reach    float64     // how far the tag hangs off, in points; 0 for as far as usual
	told     bool        // the figure stands there already
}

// Sizes of panels in points: what the cloth takes at most, and the margins about
// it; where words and tags need more, they get it.
const (
	clothWide, clothHigh = 270.0, 520.0
	marginSide           = 26.0
	marginTop            = 20.0
	stripWide            = 430.0
	leastCloth           = 90.0
	frameAir             = 7.0 // between words and the frame
	smallestPoint        = 0.1 // millimetres
	underName            = 2 * LineStep
)

// board starts a panel of a kind whose drawing takes up a box.
func (d *drawer) board(kind PanelKind, subject, title string, room curve.Box) *board {
	wide, high := clothWide, clothHigh
	if kind == Strip || kind == Taped {
		wide, high = stripWide, math.Inf(1)
	}
	if d.o.Wide > 0 {
		wide = min(wide, d.o.Wide-2*marginSide)
	}
	if narrow, ok := d.cloth[(&Panel{Kind: kind, Subject: subject}).key()]; ok {
		wide = narrow
	}
	point := max(room.Width()/wide, room.Height()/high, smallestPoint)
	if d.o.Point > 0 {
		point = d.o.Point
	}
	b := &board{
		Panel: &Panel{Kind: kind, Subject: subject, Title: title, Point: point},
		room:  room,
		spots: map[string]spot{}, frames: map[string]curve.Motion{},
		anchor: map[string]int{},
	}
	if d.o.Point > 0 {
		b.under = underName
	}
	b.grows = d.o.Wide > 0
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
	out := curve.Point{X: marginSide * m, Y: marginTop * m}
	box := curve.Box{Min: b.room.Min.Sub(out), Max: b.room.Max.Add(out)}
	for _, mark := range b.Marks {
		if words, ok := mark.wordBox(m); ok {
			box = box.Union(grown(words, b.points(frameAir)))
		}
		if mark.Sign == Tag {
			box = box.Union(grown(mark.tagBox(m), b.points(frameAir)))
		}
	}
	b.Box = box
	b.Beside = [4]float64{
		(b.room.Min.X - box.Min.X) / m, (box.Max.X - b.room.Max.X) / m,
		(b.room.Min.Y - box.Min.Y) / m, (box.Max.Y - b.room.Max.Y) / m,
	}
	return b.Panel
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
