package sewing

import (
	"slices"

	"understitch/model"
)

// Walk is one side of a seam, a share or a measured run, laid out from its
// start to its end along the stitch line with the darts closed: the edges that
// make it up end to end, the notches on it, and the places where pieces join.
type Walk struct {
	Runs    []Run
	Length  float64
	Notches []WalkNotch    // in order along it
	Lost    []*model.Notch // notches of these edges that lie on no place of them
}

// Run is one stretch of edge in a walk.
type Run struct {
	Edge     *model.Edge
	From, To float64 // along the edge as drawn; From > To when walked against the drawing
	Start    float64 // where in the walk it starts, darts closed
	Length   float64 // darts closed
}

// Backward reports whether the edge is walked against its drawing order.
func (r Run) Backward() bool { return r.From > r.To }

// WalkNotch is a notch met on a walk, at a distance from its start.
type WalkNotch struct {
	Notch *model.Notch
	At    float64
}

// Joins are the places along the walk where one edge ends and the next starts.
func (w *Walk) Joins() []float64 {
	var out []float64
	for _, r := range w.Runs[1:] {
		out = append(out, r.Start)
	}
	return out
}

// Reversed is the same walk from its end.
func (w *Walk) Reversed() *Walk {
	out := &Walk{Length: w.Length, Lost: w.Lost}
	for _, r := range slices.Backward(w.Runs) {
		out.Runs = append(out.Runs, Run{r.Edge, r.To, r.From, w.Length - r.Start - r.Length, r.Length})
	}
	for _, n := range slices.Backward(w.Notches) {
		out.Notches = append(out.Notches, WalkNotch{n.Notch, w.Length - n.At})
	}
	return out
}

// Place turns a distance along the walk into the edge there and the distance
// along that edge as drawn.
func (w *Walk) Place(at float64) (*model.Edge, float64) {
	r := w.runAt(at)
	step := min(max(at-r.Start, 0), r.Length)
	if r.Backward() {
		step = -step
	}
	return r.Edge, r.Edge.Raw(r.Edge.Net(r.From) + step)
}

// PlaceIn is Place among some of the runs, from first to last: a place at the end
// of the last is the end of its edge, and not the start of what follows.
func (w *Walk) PlaceIn(first, last int, at float64) (*model.Edge, float64) {
	part := &Walk{Runs: w.Runs[first : last+1]}
	return part.Place(at)
}

// runAt is the run of the walk that a place falls on.
func (w *Walk) runAt(at float64) Run {
	i := len(w.Runs) - 1
	for i > 0 && at < w.Runs[i].Start {
		i--
	}
	return w.Runs[i]
}

// LayOut lays stretches end to end. The way each edge is walked is found from how
// the pieces meet; the walk as a whole runs in the drawing order of its first
// edge where nothing else decides.
func LayOut(g *model.Garment, stretches []model.Stretch) (*Walk, error) {
	w := &Walk{}
	extents := make([][2]float64, len(stretches))
	for i, s := range stretches {
		from, to, err := s.Extent()
		if err != nil {
			return nil, err
		}
		extents[i] = [2]float64{from, to}
	}
	for i, backward := range ways(g, stretches, extents) {
		from, to := extents[i][0], extents[i][1]
		if backward {
			from, to = to, from
		}
		w.add(stretches[i].Edge, from, to)
	}
	return w, nil
}

// add appends a run and the notches on it.
func (w *Walk) add(e *model.Edge, from, to float64) {
	r := Run{Edge: e, From: from, To: to, Start: w.Length, Length: e.Net(max(from, to)) - e.Net(min(from, to))}
	w.Runs = append(w.Runs, r)
	w.Length += r.Length
	for _, n := range e.Piece.Notches {
		if n.On != e || n.OnPleat(atStep) != nil {
			continue // one that marks the line of a pleat is not for the seam
		}
		at, _, err := n.Position()
		if err != nil || at < -model.CornerReach || at > e.Length()+model.CornerReach {
			w.Lost = append(w.Lost, n)
			continue
		}
		at = min(max(at, 0), e.Length())
		if at < min(from, to)-model.NearEnd || at > max(from, to)+model.NearEnd {
			continue // on another part of the edge
		}
		step := e.Net(at) - e.Net(from)
		if r.Backward() {
			step = -step
		}
		w.Notches = append(w.Notches, WalkNotch{n, r.Start + step})
	}
	slices.SortStableFunc(w.Notches, func(a, b WalkNotch) int {
		switch {
		case a.At < b.At:
			return -1
		case a.At > b.At:
			return 1
		}
		return 0
	})
}
