package drawing

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/drafting"
)

// piece draws a piece, moved. Its name stands at a share of its height.
func (d *drawer) piece(b *board, p *model.Piece, m curve.Motion, name float64) {
	b.layer(p.Layer.Name)
	b.frames[p.Address()] = m
	cut, err := drafting.CutLine(p)
	if err != nil {
		b.Facts = append(b.Facts, "no cut line: "+err.Error())
	}
	if text := tracedText(p); text != "" {
		b.Facts = append(b.Facts, text)
	}
	for i, line := range cut {
		if p.Edges[i] != p.Fold {
			b.put(own(p, Mark{Kind: CutLine, Subject: p.Edges[i].Address(), Line: line.Move(m)}))
		}
	}
	region, err := p.Region()
	if err != nil {
		return // only asked for pieces that are drawn
	}
	for _, e := range p.Edges {
		d.edge(b, e, m, region)
	}
	for _, dart := range p.Darts {
		d.dart(b, dart, m)
	}
	for _, n := range p.Notches {
		d.notch(b, n, m, region)
	}
	if len(p.Grain) == 2 {
		grain(b, p, m)
	}
	d.pieceName(b, p, m, name)
}

// own makes a mark one of the piece's layer.
func own(p *model.Piece, m Mark) Mark {
	m.Layer, m.Side = p.Layer.Name, p.Layer.Side
	if m.Subject == "" {
		m.Subject = p.Address()
	}
	return m
}

func (d *drawer) edge(b *board, e *model.Edge, m curve.Motion, region *curve.Region) {
	if e.Drafted != nil {
		b.put(own(e.Piece, Mark{Kind: DraftedLine, Subject: e.Address(), Line: e.Drafted.Move(m)}))
	}
	line := e.Path.Move(m)
	kind := StitchLine
	if e == e.Piece.Fold {
		kind = FoldLine
		fold(b, e, m, region)
	}
	b.put(own(e.Piece, Mark{Kind: kind, Subject: e.Address(), Line: line}))
	middle := e.Length() / 2
	here := spot{at: line.At(middle), away: m.Direction(outward(e.Path, middle, region)), line: line}
	b.spot(e.Address(), here)
	b.spot(e.Piece.Address()+"/"+e.Name, here)
}

// outward is the direction off the cloth at a distance along one of its edges.
func outward(p *curve.Path, s float64, region *curve.Region) curve.Point {
	side := p.Direction(s).Perp() // to the right of the way the edge runs
	if region.Clockwise() {
		return side.Scale(-1)
	}
	return side
}

// fold draws the sign for an edge on the fold: a line beside it that points to
// it at both ends.
func fold(b *board, e *model.Edge, m curve.Motion, region *curve.Region) {
	length := e.Length()
	in := b.points(11)
	if e.Piece.Layer.Side != model.Outer { // beside the sign of the layer over it
		in = b.points(19)
	}
	var at, beside [2]curve.Point
	for i, share := range []float64{0.14, 0.86} {
		s := share * length
		at[i] = e.Path.At(s)
		beside[i] = at[i].Sub(outward(e.Path, s, region).Scale(in))
	}
	line := curve.Polyline(at[0], beside[0], beside[1], at[1]).Move(m)
	b.put(own(e.Piece, Mark{Kind: GrainLine, Subject: e.Address(), Line: line}))
	for i := range at {
		b.put(own(e.Piece, Mark{Kind: GrainLine, Subject: e.Address(), At: m.Apply(at[i]), Dir: m.Direction(at[i].Sub(beside[i]).Unit()), Sign: ArrowHead}))
	}
	b.folds = append(b.folds, foldWord{
		own(e.Piece, Mark{Kind: EdgeName, Subject: e.Address(), At: m.Direction(beside[0].Sub(at[0]).Unit().Scale(b.points(24) - in)), Text: []string{"fold"}, Align: Start, Small: true}),
		curve.Polyline(beside[0], beside[1]).Move(m),
	})
}

func grain(b *board, p *model.Piece, m curve.Motion) {
	from, to := m.Apply(p.Grain[0]), m.Apply(p.Grain[1])
	along := to.Sub(from).Unit()
	b.put(
		own(p, Mark{Kind: GrainLine, Line: curve.Polyline(from, to), At: to, Dir: along, Sign: ArrowHead}),
		own(p, Mark{Kind: GrainLine, At: from, Dir: along.Scale(-1), Sign: ArrowHead}),
	)
}

// pleat draws the lines by which a pleat is folded, as far as it is.
func (d *drawer) pleat(b *board, p *model.Dart, m curve.Motion) {
	s, ok := p.Strip()
	if !ok {
		return
	}
	from, to := p.FoldedBetween(s)
	long := b.points(14) // where it is folded at its edge only
	if math.Abs(s.Down.Y) > 1e-6 && from != to {
		long = (to - from) / s.Down.Y
	}
	mouth, _ := p.Mouth()
	for i, at := range p.Lines() {
		top := s.A.Lerp(s.B, min(max((at-mouth.From)/(mouth.To-mouth.From), 0), 1))
		line := curve.Polyline(top, top.Add(s.Down.Scale(long))).Move(m)
		b.put(own(p.Piece, Mark{Kind: DartLeg, Subject: p.Address(), Line: line}))
		if i == 0 {
			b.spot(p.Address(), spot{at: line.At(line.Length() / 2), away: m.Direction(s.A.Sub(s.B).Unit()), line: line})
		}
	}
}

func (d *drawer) dart(b *board, dart *model.Dart, m curve.Motion) {
	if dart.Pleat != nil {
		d.pleat(b, dart, m)
		return
	}
	for i, legs := range dart.Legs() {
		line := curve.Polyline(legs.A, legs.Tip, legs.B).Move(m)
		tip := m.Apply(legs.Tip)
		b.put(
			own(dart.Piece, Mark{Kind: DartLeg, Subject: dart.Address(), Line: line}),
			own(dart.Piece, Mark{Kind: DartTip, Subject: dart.Address(), At: tip, Sign: Dot}),
		)
		if i == 0 {
			away := tip.Sub(m.Apply(legs.A.Lerp(legs.B, 0.5))).Unit()
			b.spot(dart.Address(), spot{at: tip, away: away, line: line})
		}
	}
}

// Sizes of notches that say nothing of their own, in millimetres.
const (
	notchLong  = 8.0 // where the allowance is not known
	notchApart = 6.0 // between the two cuts of a double one (common practice, no source)
)

// notch draws a notch where it is cut: across the allowance, from the stitch
// line outward. A double one is two cuts beside each other.
func (d *drawer) notch(b *board, n *model.Notch, m curve.Motion, region *curve.Region) {
	s, _, err := n.Position()
	if err != nil {
		b.Facts = append(b.Facts, "not drawn: "+n.Address()+", "+err.Error())
		return
	}
	e := n.On
	s = min(max(s, 0), e.Length())
	long := notchLong
	if w := e.Allowance.Width; model.Known(w) && w > 0 {
		long = w
	}
	for _, at := range notchCuts(n, s) {
		at = min(max(at, 0), e.Length())
		from := e.Path.At(at)
		to := from.Add(outward(e.Path, at, region).Scale(long))
		b.put(own(n.Piece, Mark{Kind: NotchMark, Subject: n.Address(), Line: curve.Polyline(from, to).Move(m)}))
	}
	at, away := e.Path.At(s), outward(e.Path, s, region)
	b.spot(n.Address(), spot{at: m.Apply(at.Add(away.Scale(long))), away: m.Direction(away), line: around(e.Path, s, b.points(8)).Move(m)})
}

// notchCuts are the places of a notch's cuts along its edge.
func notchCuts(n *model.Notch, s float64) []float64 {
	switch n.Kind {
	case "double":
		return []float64{s - notchApart/2, s + notchApart/2}
	case "triple":
		return []float64{s - notchApart, s, s + notchApart}
	}
	return []float64{s}
}

// around is the stretch of a line about a place on it.
func around(p *curve.Path, s, reach float64) *curve.Path {
	return p.Part(max(s-reach, 0), min(s+reach, p.Length()))
}

// pieceName notes where a piece's name should stand, as a share of its height;
// its place is settled when all else is drawn.
func (d *drawer) pieceName(b *board, p *model.Piece, m curve.Motion, share float64) {
	lines := make([]*curve.Path, len(p.Edges))
	for i, e := range p.Edges {
		lines[i] = e.Path.Move(m)
	}
	home := curve.NewRegion(lines)
	box := home.Bounds()
	at := curve.Point{X: (box.Min.X + box.Max.X) / 2, Y: box.Min.Y + share*box.Height()}
	widest := 0.0
	for _, s := range home.Spans(at.Y) {
		if w := s.X1 - s.X0; w > widest {
			widest, at.X = w, (s.X0+s.X1)/2
		}
	}
	mark := own(p, Mark{Kind: PieceName, At: at, Text: []string{p.Address(), CutText(p)}, Bold: true})
	b.put(mark)
	b.names = append(b.names, pieceWord{mark, p, home, share, cutAcross(home)})
	b.spot(p.Address(), spot{at: at, away: curve.Point{Y: 1}})
	b.spot(p.Layer.Address(), spot{at: at, away: curve.Point{Y: 1}})
}

// CutText tells how many of a piece are cut, in the words that stand on it:
// "cut 1 on the fold", "cut 2, a mirrored pair".
func CutText(p *model.Piece) string {
	text := fmt.Sprintf("cut %d", p.Cut)
	switch {
	case p.Fold != nil:
		text += " on the fold"
	case p.Cut == 2 && p.Mirrored:
		text += ": left and right"
	case p.Cut > 2 && p.Cut%2 == 0 && p.Mirrored:
		text += fmt.Sprintf(": %d left, %d right", p.Cut/2, p.Cut/2)
	case p.Cut > 1 && !p.Mirrored:
		text += " alike"
	}
	return text
}
