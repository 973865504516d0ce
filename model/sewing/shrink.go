package sewing

import (
	"math"

	"understitch/model"
	"understitch/model/curve"
)

// shrinkSteps is at how many places of an edge its direction is taken. What a
// cloth shrinks changes by a few percent from along to across, and the mean
// of so many is far finer than anybody measures it.
const shrinkSteps = 64

// Shrinks is what the edges of two layers that are sewn together shrink by, in
// percent of their length. A range that is wide is one of edges known by tape
// alone, which do not show how they lie to the grain.
type Shrinks struct {
	Thing        model.Thing // the share or seam
	Outer, Inner model.Range
}

// ShrinksOf are the shares and seams that two layers have in common, with what
// both shrink by along them.
func ShrinksOf(g *model.Garment, outer, inner *model.Layer) ([]Shrinks, error) {
	var out []Shrinks
	add := func(thing model.Thing, a, b *Walk) error {
		shrinks := Shrinks{Thing: thing}
		var err error
		if shrinks.Outer, err = a.Shrink(); err != nil {
			return err
		}
		if shrinks.Inner, err = b.Shrink(); err != nil {
			return err
		}
		out = append(out, shrinks)
		return nil
	}
	for _, s := range g.Shares {
		if len(s.Outer) == 0 || len(s.Inner) == 0 || s.Outer[0].Edge.Piece.Layer != outer || s.Inner[0].Edge.Piece.Layer != inner {
			continue
		}
		a, b, _, err := ShareWalks(g, s)
		if err != nil {
			return nil, err
		}
		if err := add(s, a, b); err != nil {
			return nil, err
		}
	}
	for _, j := range g.Joins() {
		first, second := j.Sides[0][0].Edge.Piece.Layer, j.Sides[1][0].Edge.Piece.Layer
		if (first != outer || second != inner) && (first != inner || second != outer) {
			continue
		}
		a, b, err := Walks(g, j)
		if err != nil {
			return nil, err
		}
		if first == inner {
			a, b = b, a
		}
		if err := add(j.Thing, a, b); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// Shrink is by how many percent the walk shortens in the first wash: the mean
// over its edges by their lengths. Nothing where the cloth was washed before it
// was cut.
func (w *Walk) Shrink() (model.Range, error) {
	var sum model.Range
	for _, r := range w.Runs {
		s, err := r.shrink()
		if err != nil {
			return model.Range{}, err
		}
		sum.Low += s.Low * r.Length / w.Length
		sum.High += s.High * r.Length / w.Length
	}
	return sum, nil
}

// shrink is the run's own. A line at an angle to the grain shrinks by
// along × cos² + across × sin² (closed form: small strains without shear).
func (r Run) shrink() (model.Range, error) {
	f := r.Edge.Piece.Layer.Fabric
	switch {
	case f == nil:
		return model.Range{}, model.Missingf("%s names no fabric", r.Edge.Piece.Layer.Address())
	case f.Washed:
		return model.Range{}, nil
	case !model.Known(f.ShrinkAlong) || !model.Known(f.ShrinkAcross):
		return model.Range{}, model.Missingf("fabric.%s does not state how much it shrinks along and across", f.Name)
	case !r.Edge.Drawn():
		return model.Range{Low: min(f.ShrinkAlong, f.ShrinkAcross), High: max(f.ShrinkAlong, f.ShrinkAcross)}, nil
	}
	grain, from, to := grainDirection(r.Edge.Piece), min(r.From, r.To), max(r.From, r.To)
	sum := 0.0
	for i := range shrinkSteps {
		d := r.Edge.Path.Direction(from + (to-from)*(float64(i)+0.5)/shrinkSteps)
		with := d.Dot(grain)
		sum += f.ShrinkAcross + (f.ShrinkAlong-f.ShrinkAcross)*with*with
	}
	return model.Exactly(sum / shrinkSteps), nil
}

// grainDirection is the direction of the piece's grain line, down the paper where
// none is drawn.
func grainDirection(p *model.Piece) curve.Point {
	if len(p.Grain) == 2 {
		if d := p.Grain[1].Sub(p.Grain[0]); math.Hypot(d.X, d.Y) > 0 {
			return d.Scale(1 / math.Hypot(d.X, d.Y))
		}
	}
	return curve.Point{Y: 1}
}
