package sewing

import (
	"math"

	"understitch/model"
	"understitch/model/curve"
)

// Closed is the drawn line of the run in walking direction with the darts on it
// closed: what lies beyond each dart is turned about its tip until the legs
// meet.
func (r Run) Closed() (*curve.Path, error) {
	e := r.Edge
	if !e.Drawn() {
		return nil, e.Undrawn()
	}
	from, to := min(r.From, r.To), max(r.From, r.To)
	mouths := e.Mouths()
	rest, end := (*curve.Path)(nil), to
	for i := len(mouths) - 1; i >= 0; i-- {
		m := mouths[i]
		if m.To <= from || m.From >= to {
			continue
		}
		beyond := e.Path.Part(min(m.To, end), end)
		if rest != nil {
			beyond = curve.Join(beyond, rest)
		}
		rest, end = beyond.Move(closing(m)), m.From
	}
	path := e.Path.Part(from, max(end, from))
	if rest != nil {
		path = curve.Join(path, rest)
	}
	if r.Backward() {
		path = path.Reverse()
	}
	return path, nil
}

// closing is the motion that closes a dart's mouth. A dart without a tip can
// only be pushed together.
func closing(m model.Mouth) curve.Motion {
	if legs := m.Dart.Legs(); len(legs) == 1 {
		return legs[0].Close()
	}
	path := m.Dart.On.Path
	return curve.Translate(path.At(m.From).Sub(path.At(m.To)))
}

// Laid is the drawn line of the walk's runs from first to last (inclusive), the
// pieces laid together as they are sewn: each next piece is turned, and turned
// over where it was drawn the other way round, so that the seam between them
// closes at the line.
func (w *Walk) Laid(first, last int) (*curve.Path, error) {
	var paths []*curve.Path
	total := curve.Identity()
	for i := first; i <= last; i++ {
		path, err := w.Runs[i].Closed()
		if err != nil {
			return nil, err
		}
		if i > first {
			total = w.butt(i, paths[len(paths)-1], total, path)
		}
		paths = append(paths, path.Move(total))
	}
	return curve.Join(paths...), nil
}

// butt is the motion that lays run i on to the end of the run before it, which
// has been laid by the motion before.
func (w *Walk) butt(i int, laid *curve.Path, before curve.Motion, path *curve.Path) curve.Motion {
	prev, next := w.Runs[i-1], w.Runs[i]
	end, arriving := laid.End(), laid.DirectionBefore(laid.Length())
	seamA, okA := prev.crossing(true)
	seamB, okB := next.crossing(false)
	if prev.Edge.Piece == next.Edge.Piece && prev.Edge != next.Edge {
		return before // one piece: its edges lie as they were drawn
	}
	if !okA || !okB {
		return curve.Lay(path.Start(), path.Direction(0), end, arriving, false)
	}
	seamA = before.Direction(seamA)
	leaving := path.Direction(0)
	// The two pieces must lie on either side of the seam between them.
	mirrored := seamA.Cross(arriving.Scale(-1))*seamB.Cross(leaving) > 0
	return curve.Lay(path.Start(), seamB, end, seamA, mirrored)
}

// crossing is the direction in which the seam that crosses the run's end (or
// start) leaves it, as drawn. There is none where the run ends in the middle of
// an edge.
func (r Run) crossing(atEnd bool) (curve.Point, bool) {
	n, nEnd, ok := r.neighbour(atEnd)
	if !ok {
		return curve.Point{}, false
	}
	_, leaving := n.End(nEnd)
	return leaving, true
}

// neighbour is the edge that meets the run at its end (or start), and whether
// it does so with its own end.
func (r Run) neighbour(atEnd bool) (e *model.Edge, withEnd, ok bool) {
	edgeEnd := atEnd != r.Backward() // the end of the edge that the run has there
	s := r.From
	if atEnd {
		s = r.To
	}
	if !r.Edge.Drawn() || !atCorner(r.Edge, s, edgeEnd) {
		return nil, false, false
	}
	n := r.Edge.Neighbour(edgeEnd)
	if !n.Drawn() {
		return nil, false, false
	}
	return n, !edgeEnd, true
}

// CornerAngle is the angle of cloth, in degrees, between the run and the edge
// that it meets at its end (or start); NaN where the run ends in the middle of
// an edge or something is not drawn.
func (r Run) CornerAngle(atEnd bool) float64 {
	n, withEnd, ok := r.neighbour(atEnd)
	region, err := r.Edge.Piece.Region()
	if !ok || err != nil {
		return model.Unknown()
	}
	_, own := r.Edge.End(!withEnd)
	_, other := n.End(withEnd)
	// From the edge that leaves the corner in drawing order to the one that
	// arrives there, through the cloth.
	leaving, arriving := own, other
	if !withEnd {
		leaving, arriving = other, own
	}
	angle := math.Atan2(leaving.Cross(arriving), leaving.Dot(arriving))
	if !region.Clockwise() {
		angle = -angle
	}
	if angle < 0 {
		angle += 2 * math.Pi
	}
	return angle * 180 / math.Pi
}

// TurnedOver reports whether one run must be turned over to lie on the other,
// both walked in the same direction: the cloth is on its left in one drawing
// and on its right in the other.
func TurnedOver(a, b Run) bool {
	ra, errA := a.Edge.Piece.Region()
	rb, errB := b.Edge.Piece.Region()
	if errA != nil || errB != nil {
		return false
	}
	return (ra.Clockwise() != a.Backward()) != (rb.Clockwise() != b.Backward())
}
