package sewing

import (
	"strings"

	"understitch/model"
)

// SideText names the side of a seam or share as a cutter would say it:
// "shell.front.side", or "shell.front.upper and shell.front.lower" where it is
// made of several edges. An edge that comes in several parts is named once.
func SideText(side []model.Stretch) string {
	var names []string
	for _, s := range side {
		if name := s.Edge.Address(); len(names) == 0 || names[len(names)-1] != name {
			names = append(names, name)
		}
	}
	return Listed(names)
}

// Listed joins names to a list in words: "a", "a and b", "a, b and c".
func Listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}

// Corner is the edge that the walk runs into at its end (or its start), or nil
// where it ends in the middle of an edge.
func (w *Walk) Corner(atEnd bool) *model.Edge {
	r, s := w.Runs[0], w.Runs[0].From
	if atEnd {
		r = w.Runs[len(w.Runs)-1]
		s = r.To
	}
	edgeEnd := atEnd != r.Backward()
	if n := r.Edge.Neighbour(edgeEnd); n != r.Edge && atCorner(r.Edge, s, edgeEnd) {
		return n
	}
	return nil
}

// Around are the edges that meet at a join of the walk: the one that ends there
// and the one that starts there.
func (w *Walk) Around(join float64) (before, after *model.Edge) {
	i := 1
	for i < len(w.Runs)-1 && w.Runs[i].Start < join {
		i++
	}
	return w.Runs[i-1].Edge, w.Runs[i].Edge
}

// Segment is what lies on both walks of a join between two paired notches, or
// between one and the end: the lengths in millimetres, darts closed.
type Segment struct {
	First, Last *NotchPair // nil at the start, and at the end
	A, B        float64
}

// Longer is how much longer the first walk is there than the second.
func (s Segment) Longer() float64 { return s.A - s.B }

// Segments cuts the two walks of a join at their paired notches.
func Segments(a, b *Walk) []Segment {
	pairs, _, _ := PairNotches(a, b)
	var out []Segment
	var last Segment
	atA, atB := 0.0, 0.0
	for i := range pairs {
		p := &pairs[i]
		last.Last, last.A, last.B = p, p.A.At-atA, p.B.At-atB
		out = append(out, last)
		last = Segment{First: p}
		atA, atB = p.A.At, p.B.At
	}
	last.A, last.B = a.Length-atA, b.Length-atB
	return append(out, last)
}
