package model

import (
	"math"

	"understitch/model/curve"
)

// Pleat says how a pleat or tuck folds cloth away along an edge. Such a dart has
// no tip: its lines run square to its mouth, side by side, as far as it is folded.
type Pleat struct {
	Kind    string // Knife, Box, Inverted or Tuck
	Depth   float64
	Towards string  // Left or Right as it is drawn; "" where it is not stated
	AtEnd   bool    // its middle is the end of its edge
	To      *Level  // it is folded down (or up) to this level
	Reach   float64 // or so far from its edge; +Inf through the whole piece
}

// The kinds of Pleat.
const (
	Knife    = "knife"    // one fold, which lies to one side
	Box      = "box"      // two folds that lie away from each other
	Inverted = "inverted" // two folds that lie towards each other
	Tuck     = "tuck"     // one fold, stitched down
)

// The sides to which a knife pleat lies, and those of a wearer.
const (
	Left  = "left"
	Right = "right"
)

// TakesUp is how much cloth a pleat folds away: twice its depth, and four times
// where it has two folds (common practice, no source; a fold of paper shows it).
func (p *Pleat) TakesUp() float64 {
	if p.Kind == Box || p.Kind == Inverted {
		return 4 * p.Depth
	}
	return 2 * p.Depth
}

// TurnOver makes the pleat lie to the other side, as on a piece that is turned over.
func (p *Pleat) TurnOver() {
	switch p.Towards {
	case Left:
		p.Towards = Right
	case Right:
		p.Towards = Left
	}
}

// Word is the block by which the spec states a dart: "dart" or "pleat".
func (d *Dart) Word() string {
	if d.Pleat != nil {
		return "pleat"
	}
	return "dart"
}

// Middle of the mouth along the edge as drawn.
func (d *Dart) Middle() float64 {
	if d.Pleat != nil && d.Pleat.AtEnd {
		return d.On.Length()
	}
	return d.At
}

// OnlyDarts are the darts of a piece without its pleats.
func (p *Piece) OnlyDarts() []*Dart { return p.folded(false) }

// Pleats are the pleats and tucks of a piece.
func (p *Piece) Pleats() []*Dart { return p.folded(true) }

func (p *Piece) folded(pleats bool) []*Dart {
	var out []*Dart
	for _, d := range p.Darts {
		if (d.Pleat != nil) == pleats {
			out = append(out, d)
		}
	}
	return out
}

// Mouth of a dart on a drawn edge.
func (d *Dart) Mouth() (Mouth, bool) {
	if d.On == nil {
		return Mouth{}, false
	}
	for _, m := range d.On.Mouths() {
		if m.Dart == d {
			return m, true
		}
	}
	return Mouth{}, false
}

// Strip is the cloth that a pleat folds away, as drawn: it begins between A and B
// on the edge and runs Down into the piece, a unit vector square to AB.
type Strip struct{ A, B, Down curve.Point }

// Strip of a pleat on a drawn edge.
func (d *Dart) Strip() (Strip, bool) {
	m, ok := d.Mouth()
	if d.Pleat == nil || !ok {
		return Strip{}, false
	}
	region, err := d.Piece.Region()
	if err != nil {
		return Strip{}, false
	}
	s := Strip{A: d.On.Path.At(m.From), B: d.On.Path.At(m.To)}
	if s.A == s.B {
		return Strip{}, false
	}
	s.Down = s.B.Sub(s.A).Unit().Perp()
	if !region.Clockwise() {
		s.Down = s.Down.Scale(-1)
	}
	return s, true
}

// Overhang is how far what a pleat folds away reaches beyond the start and the
// end of its edge, in millimetres; nothing on an edge that is not drawn.
func (d *Dart) Overhang() (start, end float64) {
	if !d.On.Drawn() {
		return 0, 0
	}
	at, half := d.Middle(), d.Intake/2
	return max(half-at, 0), max(at+half-d.On.Length(), 0)
}

// GoesOnBeyond reports whether the cloth goes on past an end of an edge in the
// other half of the piece: over the fold, or over the seam of an edge with itself.
func (g *Garment) GoesOnBeyond(e *Edge, atEnd bool) bool {
	next := e.Neighbour(atEnd)
	return e.Piece.Fold == next || g.JoinedToItself(next) != nil
}

// foldedTurn is the turn that the edge makes over a pleat once it is folded. Its
// lines run side by side, so that folding moves the edge and does not turn it; what
// is folded at an end of the edge runs on in the other half, which is its mirror image.
func (d *Dart) foldedTurn() (float64, error) {
	m, ok := d.Mouth()
	if !ok {
		return 0, Missingf("%s is not on a drawn edge", d.Address())
	}
	path, length := d.On.Path, d.On.Length()
	atStart, atEnd := m.From < besideMouth, m.To > length-besideMouth
	before := path.DirectionBefore(max(m.From-besideMouth, 0))
	after := path.Direction(min(m.To+besideMouth, length))
	switch {
	case atStart && atEnd:
		return 0, Missingf("%s takes up all of %s", d.Address(), d.On.Address())
	case atStart:
		before = d.acrossFrom(after, d.On.Neighbour(false))
	case atEnd:
		after = d.acrossFrom(before, d.On.Neighbour(true))
	}
	return math.Abs(math.Atan2(before.Cross(after), before.Dot(after))) * 180 / math.Pi, nil
}

// acrossFrom is a direction that meets the line of an edge as it is mirrored on
// the other side: along the edge it turns round, across it goes on.
func (d *Dart) acrossFrom(dir curve.Point, line *Edge) curve.Point {
	along := line.Path.End().Sub(line.Path.Start()).Unit()
	return dir.Sub(along.Scale(2 * dir.Dot(along)))
}

// Room is how far the piece goes on from the middle of a strip, the way that the
// pleat is folded, in millimetres.
func (d *Dart) Room(s Strip) float64 {
	middle := s.A.Lerp(s.B, 0.5)
	turn := curve.Rotate(middle, -math.Atan2(s.Down.Y, s.Down.X))
	room := math.Inf(1)
	for _, e := range d.Piece.Edges {
		line := e.Path.Move(turn)
		for _, at := range line.Crossings(middle.Y) {
			if x := line.At(at).X - middle.X; e != d.On && x > NearEnd {
				room = min(room, x)
			}
		}
	}
	return room
}

// lies is how steeply a pleat's lines must run for it to take out width: flatter
// ones take out height.
const lies = 0.5 // sine of 30 degrees

// FoldedAt is what a pleat takes out of its piece's width at a height in the
// piece's own frame, in millimetres: all of it from its edge as far as it is
// folded, both ends counted, and nothing beyond.
func (d *Dart) FoldedAt(y float64) float64 {
	s, ok := d.Strip()
	if !ok || math.Abs(s.Down.Y) < lies {
		return 0
	}
	from, to := d.FoldedBetween(s)
	if y < min(from, to)-NearEnd || y > max(from, to)+NearEnd {
		return 0
	}
	return s.A.Dist(s.B) / math.Abs(s.Down.Y)
}

// OpensAt is the cloth that a pleat lets out at a height in the piece's own frame,
// in millimetres across: all of it beyond where it is folded.
func (d *Dart) OpensAt(y float64) float64 {
	s, ok := d.Strip()
	if !ok || math.Abs(s.Down.Y) < lies {
		return 0
	}
	if _, to := d.FoldedBetween(s); (y-to)*s.Down.Y <= NearEnd {
		return 0
	}
	return s.A.Dist(s.B) / math.Abs(s.Down.Y)
}

// Opened is the cloth that the pleats of a group's pieces let out at a level, as
// often as the pieces count in a girth.
func (g Group) Opened(l *Level) float64 {
	sum := 0.0
	for _, p := range g {
		if y, ok := p.LevelY(l); ok {
			sum += p.Opened(y) * p.Times()
		}
	}
	return sum
}

// Opened is the cloth that the pleats of a piece let out at a height.
func (p *Piece) Opened(y float64) float64 {
	sum := 0.0
	for _, d := range p.Pleats() {
		sum += d.OpensAt(y)
	}
	return sum
}

// FoldedBetween are the heights between which a strip is folded, from its edge.
func (d *Dart) FoldedBetween(s Strip) (from, to float64) {
	from = s.A.Lerp(s.B, 0.5).Y
	to = from + d.Pleat.Reach*s.Down.Y
	if d.Pleat.To != nil {
		if y, ok := d.Piece.LevelY(d.Pleat.To); ok && (y-from)*s.Down.Y > 0 {
			return from, y
		}
		return from, from // not a level that it can run to
	}
	if math.IsInf(to, 0) {
		if region, err := d.Piece.Region(); err == nil {
			box := region.Bounds()
			to = min(max(to, box.Min.Y), box.Max.Y)
		}
	}
	return from, to
}

// Lines are the places along its edge, as drawn, of the lines by which a pleat is
// folded: the ends of what is folded away and the folds between them, those that
// lie on the edge. They may be notched.
func (d *Dart) Lines() []float64 {
	if d.Pleat == nil || d.On == nil || !d.On.Drawn() {
		return nil
	}
	var out []float64
	first := d.Middle() - d.Intake/2
	for at := first; at < first+d.Intake+NearEnd; at += d.Pleat.Depth {
		if at > -NearEnd && at < d.On.Length()+NearEnd {
			out = append(out, at)
		}
	}
	return out
}

// OnPleat is the pleat that a notch marks, one of whose lines lies within so many
// millimetres of the notch; nil where there is none.
func (n *Notch) OnPleat(near float64) *Dart {
	at, _, err := n.Position()
	if err != nil {
		return nil
	}
	for _, d := range n.On.Piece.Darts {
		if d.On != n.On {
			continue
		}
		for _, line := range d.Lines() {
			if math.Abs(at-line) <= near {
				return d
			}
		}
	}
	return nil
}
